import type { Draft } from '../../draft/draft.js';

import { smallestPeriod } from '../../order/order.js';
import type { Side, Throw } from '../warp/pick-list.js';
import type { TiedUp } from '../warp/warp-loom.js';
import type { PiecePlan } from './piece-plan.js';
import type { WarpPlan } from './warp-plan.js';

/** One line of the threading list: a group of ends that is threaded and checked by itself. */
export interface ThreadingLine {
  /** First and last end, numbered from 1 within the repeat. */
  readonly from: number;
  readonly to: number;
  /** Shaft and yarn of each end of the group, `1D 2D 3L 4D`. */
  readonly ends: readonly string[];
  /** How many times in a row the group occurs. */
  readonly times: number;
}

/** One line of the pick list: consecutive picks of one shuttle. */
export interface PickLine {
  /** First and last pick, numbered from 1 within the repeat. */
  readonly from: number;
  readonly to: number;
  readonly shuttle: string;
  readonly start: Side;
  readonly rests: Side;
  /** Treadles of each pick, or shafts raised on a lift plan: `1 2 3 4`; repetitions as `(1 2 3 4)×5`. */
  readonly steps: string;
  /** Picks that the weft is carried past. */
  readonly carry: number;
}

/** A group of lines that occurs one or more times in a row. */
export interface Fold<T> {
  readonly lines: readonly T[];
  readonly times: number;
}

/** Most ends in a group that the eye takes in at once (common practice, no source). */
const GROUP = 8;

/** The threading list of one repeat, in groups of whole units or of whole repeats of the threading. */
export function threadingLines(warp: Pick<WarpPlan, 'pieces' | 'yarns'>): ThreadingLine[] {
  const { draft } = warp.pieces[0]!;
  const said = draft.threading.map((shafts, i) => `${shafts.join('+')}${warp.yarns[draft.warp[i]!]!.letter}`);
  const lines: { from: number; to: number; ends: string[]; times: number }[] = [];
  let at = 0;
  for (const size of groupSizes(draft)) {
    const ends = said.slice(at, at + size);
    const last = lines.at(-1);
    at += size;
    if (last !== undefined && last.ends.join() === ends.join()) {
      last.times++;
      last.to = at;
    } else lines.push({ from: at - size + 1, to: at, ends, times: 1 });
  }
  return lines;
}

/** Tabby that follows every pattern pick, said once for all. */
interface TabbyLine {
  readonly shuttle: string;
  readonly start: Side;
  /** Treadles of the two alternating picks (shafts raised, on a lift plan). */
  readonly steps: string;
}

/** The pick list of one repeat. */
interface PickSheet {
  readonly tabby?: TabbyLine;
  readonly lines: readonly PickLine[];
}

/** The pick list of one repeat, a line for each time a shuttle is taken up. Steady tabby is listed separately. */
export function pickSheet(piece: PiecePlan): PickSheet {
  const tabby = steadyTabby(piece);
  const thrown = tabby === undefined ? piece.list : piece.list.filter((_, j) => piece.draft.pickKinds[j] !== 'tabby');
  return { ...(tabby !== undefined && { tabby }), lines: pickLines(piece, thrown) };
}

/** The tabby, if every other pick is tabby in one yarn with its two sheds alternating; else undefined. */
function steadyTabby({ draft, list, shuttles, tied }: PiecePlan): TabbyLine | undefined {
  const picks = list.filter((_, j) => draft.pickKinds[j] === 'tabby');
  const steady = draft.pickKinds.every((kind, j) => (kind === 'tabby') === (j % 2 === 1));
  const [first, second] = picks.map(({ pick }) => stepOf(tied, pick));
  const inTurn = picks.every(({ pick, shuttle }, k) => {
    return shuttle === picks[0]!.shuttle && stepOf(tied, pick) === (k % 2 === 0 ? first : second);
  });
  if (!steady || !inTurn || second === undefined || picks.length % 2 === 1) return undefined;
  const { shuttle, from } = picks[0]!;
  return { shuttle: shuttles[shuttle]!.name, start: from, steps: `${first} ${second}` };
}

function pickLines(piece: PiecePlan, thrown: readonly Throw[]): PickLine[] {
  const lines: {
    from: number;
    to: number;
    shuttle: number;
    start: Side;
    rests: Side;
    steps: string[];
    carry: number;
  }[] = [];
  for (const { pick, shuttle, from, to, carry } of thrown) {
    const step = stepOf(piece.tied, pick);
    const last = lines.at(-1);
    if (last !== undefined && last.shuttle === shuttle) {
      last.to = pick;
      last.rests = to;
      last.steps.push(step);
    } else lines.push({ from: pick, to: pick, shuttle, start: from, rests: to, steps: [step], carry });
  }
  return lines.map((line) => ({ ...line, shuttle: piece.shuttles[line.shuttle]!.name, steps: said(line.steps) }));
}

/** Treadles of a pick (`1+5` for two at once), or shafts raised on a lift plan (`1567` if none is above 9). */
function stepOf(tied: TiedUp, pick: number): string {
  if (tied.manner !== 'lift plan') return tied.treadling[pick - 1]!.join('+');
  const isShort = tied.lifts.every((lift) => lift.every((shaft) => shaft < 10));
  return tied.lifts[pick - 1]!.join(isShort ? '' : '+');
}

/**
 * Folds repeated groups of up to `most` lines, from the top down, taking the group that saves most lines at each step.
 */
export function folded<T>(lines: readonly T[], key: (line: T) => string, most = 8): Fold<T>[] {
  const words = lines.map(key);
  const folds: Fold<T>[] = [];
  let at = 0;
  while (at < lines.length) {
    let best = { size: 1, times: 1 };
    for (let size = 1; size <= most; size++) {
      let times = 1;
      while (sameBlock(words, at, at + size * times, size)) times++;
      if (times > 1 && size * (times - 1) > best.size * (best.times - 1)) best = { size, times };
    }
    folds.push({ lines: lines.slice(at, at + best.size), times: best.times });
    at += best.size * best.times;
  }
  return folds;
}

/** Writes steps with repetitions folded, as `(1 2 3 4)×4 1 2`. */
function said(steps: readonly string[]): string {
  const parts = folded(steps, (step) => step).map(({ lines, times }) => {
    const block = lines.join(' ');
    if (times === 1) return block;
    return `${lines.length === 1 ? block : `(${block})`}×${times}`;
  });
  return parts.join(' ');
}

function sameBlock(words: readonly string[], first: number, second: number, size: number): boolean {
  if (second + size > words.length) return false;
  for (let k = 0; k < size; k++) if (words[first + k] !== words[second + k]) return false;
  return true;
}

/** Numbers of ends in the groups in which a repeat is threaded. */
function groupSizes(draft: Draft): number[] {
  const ends = draft.threading.length;
  if (draft.endUnits.some((unit) => unit > 1)) return merged(draft.endUnits);
  const words = draft.threading.map((shafts) => shafts.join('+'));
  const period = smallestPeriod(words.map((word) => words.indexOf(word)));
  const size = period <= GROUP ? period * Math.floor(GROUP / period) : GROUP;
  return Array.from({ length: Math.ceil(ends / size) }, (_, g) => Math.min(size, ends - g * size));
}

/** Merges neighbouring units into groups of at most {@link GROUP} ends. */
function merged(units: readonly number[]): number[] {
  const groups: number[] = [];
  for (const unit of units) {
    const last = groups.at(-1);
    if (last !== undefined && last + unit <= GROUP) groups[groups.length - 1] = last + unit;
    else groups.push(unit);
  }
  return groups.flatMap((size) => (size <= GROUP * 2 ? [size] : halves(size)));
}

function halves(size: number): number[] {
  const whole = Array.from({ length: Math.floor(size / GROUP) }, () => GROUP);
  return size % GROUP === 0 ? whole : [...whole, size % GROUP];
}
