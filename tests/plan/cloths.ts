import * as fc from 'fast-check';
import type { Sett } from '../../src/draft/draft.js';
import type { KeptCloth } from '../../src/formats/shortlist.js';
import { colours, endStrands, layout, pickStrands, wholeRepeat } from '../../src/order/lay.js';
import { parseOrder } from '../../src/order/order.js';
import { readPlanOptions } from '../../src/plan/options/plan-options.js';
import { codeOf } from '../../src/score/symmetry/cloth-code.js';
import { findStructure, parseProfile, weaveOf } from '../../src/structure/catalogue/catalogue.js';

export const YARNS = [
  { letter: 'D', name: 'navy', hex: '#1f2a44' },
  { letter: 'L', name: 'natural', hex: '#efe6d2' },
];
export const SETT: Sett = { ends: 20, picks: 20, per: 'inch' };

/** The threads of a field: whole repeats and then the first threads once more. */
export const field = <T>(repeat: readonly T[], ends: number): T[] =>
  Array.from({ length: ends }, (_, i) => repeat[i % repeat.length]!);

/** How a cloth of the tests is made. */
export interface Made {
  readonly warp: string;
  /** Default: the warp's. */
  readonly weft?: string;
  readonly profile?: string;
  readonly by?: 'thread' | 'unit';
  readonly times?: number;
  readonly sett?: Sett;
}

/** A kept cloth of a known structure. */
export function kept(name: string, made: Made): KeptCloth {
  const structure = findStructure(name);
  const profile = made.profile === undefined ? structure.profile : parseProfile(made.profile, structure.blocks);
  const weave = weaveOf(structure, profile);
  const { by = 'thread', times = 1, warp, weft = warp } = made;
  const laid = (strands: ReturnType<typeof endStrands>, text: string): Uint8Array => {
    const order = parseOrder(text, YARNS);
    return colours(layout(strands, order.length, { by, fill: 'solid', times, start: 0 }), order, 2, 1);
  };
  const whole = wholeRepeat(weave, laid(endStrands(weave), warp), laid(pickStrands(weave), weft));
  const draft = { ...whole, yarns: YARNS, sett: made.sett ?? SETT };
  const covers = times === 1 ? `${by} by ${by}` : `${times} ${by}s each`;
  const wefts = weft === warp ? 'weft as warp' : `weft ${weft}`;
  const recipe = `${structure.name}, ${warp}, ${covers}, ${wefts}`;
  const order = { warp, weft, by, fill: 'solid', times, start: [0, 0] } as const;
  return { code: codeOf(draft), recipe, structure: structure.name, order, note: '', stars: 0, draft };
}

/** The twelve of a course: summer and winter, four weft orders in three sizes. */
export function twelve(): KeptCloth[] {
  return ['D', 'DL', 'DDLDL', 'DDDLL'].flatMap((weft) =>
    [1, 2, 4].map((times) => kept('summer and winter', { warp: 'DLDDL', weft, by: 'unit', times })),
  );
}

/** A plan's needs: the yarn has a size, all else is as usual or as flags say. */
export const needsOf = (flags: Record<string, string> = {}) =>
  readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', ...flags });

/** The towel of the worked examples. */
export const towel = () => kept('2/2 twill', { warp: 'DDLDL', times: 4 });

/** Cloths of unlike structures, orders and sizes. */
export const anyCloth = fc.record({
  name: fc.constantFrom('plain weave', '2/2 twill', 'summer and winter', 'huck', 'crackle', 'overshot'),
  warp: fc.constantFrom('D', 'DL', 'DDLDL', 'DDDLL', 'DDLLL'),
  weft: fc.constantFrom('L', 'DL', 'DDLDL'),
  times: fc.constantFrom(1, 2, 4),
});
