import { drawdown } from '../../cloth/drawdown.js';
import { type Face, faceMaker, strandKinds, type Threads } from '../../cloth/face.js';
import { scratch } from '../../cloth/scratch.js';
import type { Weave } from '../../draft/draft.js';
import {
  colours,
  endStrands,
  layout,
  pickStrands,
  repeated,
  type Strands,
  startCount,
  threadingPeriod,
  treadlingPeriod,
} from '../../order/lay.js';
import type { Order } from '../../order/order.js';
import type { Contrast } from '../model/figures.js';
import { effectsOn, linesOf } from './classic-effects.js';

/**
 * The classic orders, which every weaver has seen. Warp and weft have the same order, except for one colour crossed by
 * the other (gamp orders: common practice).
 */
export const CLASSICS: readonly { readonly name: string; readonly word: string; readonly weft?: string }[] = [
  { name: 'dark warp on light weft', word: 'D', weft: 'L' },
  { name: 'light warp on dark weft', word: 'L', weft: 'D' },
  { name: 'one and one', word: 'DL' },
  { name: 'two and two', word: 'DDLL' },
  { name: 'one and two', word: 'DLL' },
  { name: 'two and one', word: 'DDL' },
  { name: 'one and three', word: 'DLLL' },
  { name: 'three and one', word: 'DDDL' },
  { name: 'two and three', word: 'DDLLL' },
  { name: 'three and two', word: 'DDDLL' },
  { name: 'three and three', word: 'DDDLLL' },
  { name: 'hound’s tooth order', word: 'DDDDLLLL' },
  { name: 'six and six', word: 'DDDDDDLLLLLL' },
  { name: 'eight and eight', word: 'DDDDDDDDLLLLLLLL' },
  { name: 'log cabin order', word: 'DLDLDLDLLDLDLDLD' },
  { name: 'glen check order', word: 'DDDDLLLLDDDDLLLLDDLLDDLLDDLLDDLL' },
];

/** Cells of a weave up to which the classics are measured from every start. */
const FEW_CELLS = 1024;

/** The descriptor of a classic order on one structure. */
export interface Classic {
  /** What the effect is called on this structure, or else the order. */
  readonly name: string;
  readonly traits: readonly number[];
}

/**
 * The features by which novelty compares cloths: tone, line, figure, symmetry, dark share, mean runs across and down.
 */
export function featuresOf(face: Face, contrast: Omit<Contrast, 'contrast'>, symmetry: number): number[] {
  const { across, down } = runs(face);
  return [contrast.tone, contrast.line, contrast.figure, symmetry, contrast.darkShare, 1 - 1 / across, 1 - 1 / down];
}

/**
 * Lays every classic order, by thread and from every start that differs, on a weave and measures it. On a weave of more
 * than 1024 cells, where that would take long, from the first thread alone.
 */
export function classicsOn(weave: Weave, measure: (face: Face) => number[]): Classic[] {
  const ends = endStrands(weave);
  const picks = pickStrands(weave);
  const effects = effectsOn(weave);
  const everyStart = ends.count * picks.count <= FEW_CELLS;
  const cloth = drawdown(weave);
  const faceOf = faceMaker();
  const laid = (strands: Strands, kinds: Uint16Array, period: number, word: string): Threads[] =>
    layings(strands, word, everyStart).map((colours) => ({
      ...strandKinds(kinds, repeated(colours, period)),
      rooms: [],
    }));
  return CLASSICS.flatMap(({ name, word, weft = word }) => {
    const wefts = laid(picks, cloth.pickKind, treadlingPeriod(weave), weft);
    return laid(ends, cloth.endKind, threadingPeriod(weave), word).flatMap((warpThreads) =>
      wefts.map((weftThreads) => {
        const face = faceOf({ cloth, ends: warpThreads, picks: weftThreads });
        return { name: linesOf(face) ?? effects.get(word) ?? name, traits: measure(face) };
      }),
    );
  });
}

/** The colours of one system under an order in letters, by thread, from every start that differs or the first. */
function layings(strands: Strands, word: string, everyStart: boolean): Uint8Array[] {
  const order: Order = [...word].map((letter) => (letter === 'D' ? 0 : 1));
  const by = { by: 'thread', fill: 'solid', times: 1 } as const;
  return Array.from({ length: everyStart ? startCount(strands, order.length, by) : 1 }, (_, start) =>
    colours(layout(strands, order.length, { ...by, start }), order, 2, 1),
  );
}

/** The nearest classic and the mean absolute difference to it. */
export function noveltyOf(
  traits: readonly number[],
  classics: readonly Classic[],
): { novelty: number; nearest: string } {
  let novelty = 1;
  let farthest = traits.length;
  let nearest = '';
  for (const classic of classics) {
    let sum = 0;
    // Most are known to be farther off before all traits are compared.
    for (let t = 0; t < traits.length && sum <= farthest; t++) sum += Math.abs(traits[t]! - classic.traits[t]!);
    if (sum / traits.length < novelty) {
      novelty = sum / traits.length;
      farthest = sum;
      nearest = classic.name;
    }
  }
  return { novelty, nearest };
}

/** Mean length of runs of one colour across and down, cyclic; a line without a change is one run. */
function runs({ row, column, rowKinds, columnKinds, colour, ends, picks }: Face): { across: number; down: number } {
  const cells = ends * picks;
  return {
    across: cells / runCount(colour, row, rowKinds, columnKinds, column, 1),
    down: cells / runCount(colour, column, columnKinds, 1, row, columnKinds),
  };
}

const roomForRuns = scratch(Int32Array);

/** All runs along the lines of a face, of which `lines` are the kinds; the steps lead through `colour`. */
function runCount(
  colour: Uint8Array,
  lines: Uint16Array,
  kinds: number,
  kindStep: number,
  along: Uint16Array,
  step: number,
): number {
  const runsOf = roomForRuns(kinds);
  for (let kind = 0; kind < kinds; kind++) {
    const line = kind * kindStep;
    let changes = 0;
    let before = colour[line + along[along.length - 1]! * step]!;
    for (let s = 0; s < along.length; s++) {
      const here = colour[line + along[s]! * step]!;
      if (here !== before) changes++;
      before = here;
    }
    runsOf[kind] = Math.max(1, changes);
  }
  let count = 0;
  for (let s = 0; s < lines.length; s++) count += runsOf[lines[s]!]!;
  return count;
}
