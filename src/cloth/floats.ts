import { type PickKind, type Sett, spacing } from '../draft/draft.js';
import type { Drawdown } from './drawdown.js';

/** Longest floats of the cloth in threads; null where a strand never interlaces. */
export interface Floats {
  readonly warpFace: number | null;
  readonly warpBack: number | null;
  readonly weftFace: number | null;
  readonly weftBack: number | null;
  readonly longest: number | null;
  /** Length of the longest of the four, in millimetres (a float over n threads is n spacings long). */
  readonly longestMm: number | null;
}

/** The four counts, in the order in which they are always listed. */
export const FLOAT_SIDES = ['warpFace', 'warpBack', 'weftFace', 'weftBack'] as const;
type FloatSide = (typeof FLOAT_SIDES)[number];

/** Where a longest float lies. */
export interface FloatPlace {
  readonly side: FloatSide;
  /** Index of the end (warp floats) or the pick (weft floats). */
  readonly strand: number;
  /** First crossing of the float: a pick for a warp float, an end for a weft float. It may run on over the repeat. */
  readonly from: number;
  /** In threads; null where the strand never interlaces. */
  readonly length: number | null;
}

/** Longest weft floats of the picks of one kind; null where such a pick never interlaces. */
export interface WeftFloats {
  readonly face: number | null;
  readonly back: number | null;
}

interface Run {
  readonly from: number;
  readonly length: number;
}

const NO_RUN: Run = { from: 0, length: 0 };

/** The longest floats of a cloth, counted round one repeat, in threads and in millimetres. */
export function floatsOf(cloth: Drawdown, sett: Sett): Floats {
  return floatsIn(longestOfEnds(cloth), longestOfPicks(cloth), sett);
}

/** The longest floats of the ends on face and back, in threads: they follow from the treadling and the kinds of ends. */
export const longestOfEnds = (cloth: Drawdown): readonly [face: number, back: number] => [
  longestOf(cloth, 'warpFace').run.length,
  longestOf(cloth, 'warpBack').run.length,
];

/** The longest floats of the picks on face and back, in threads: they follow from the threading and the kinds of picks. */
export const longestOfPicks = (cloth: Drawdown): readonly [face: number, back: number] => [
  longestOf(cloth, 'weftFace').run.length,
  longestOf(cloth, 'weftBack').run.length,
];

/** The floats of a cloth by those of its ends and of its picks. */
export function floatsIn(
  [warpFace, warpBack]: readonly [number, number],
  [weftFace, weftBack]: readonly [number, number],
  sett: Sett,
): Floats {
  const { across, along } = spacing(sett);
  const [ends, picks] = [Math.max(warpFace, warpBack), Math.max(weftFace, weftBack)];
  return {
    warpFace: finite(warpFace),
    warpBack: finite(warpBack),
    weftFace: finite(weftFace),
    weftBack: finite(weftBack),
    longest: finite(Math.max(ends, picks)),
    longestMm: finite(Math.max(ends * along, picks * across)),
  };
}

/**
 * Where the longest float lies: the longest in threads, or, if a sett is given, the longest in millimetres. Ties go to
 * the first side in {@link FLOAT_SIDES}, then to the first strand, then to the first crossing.
 */
export function longestFloatPlace(cloth: Drawdown, sett?: Sett): FloatPlace {
  const { across, along } = sett === undefined ? { across: 1, along: 1 } : spacing(sett);
  const places = FLOAT_SIDES.map((side) => {
    const { kind, run } = longestOf(cloth, side);
    const strand = (isWarp(side) ? cloth.endKind : cloth.pickKind).indexOf(kind);
    const size = run.length * (isWarp(side) ? along : across);
    return { size, place: { side, strand, from: run.from, length: finite(run.length) } };
  });
  return places.reduce((best, next) => (next.size > best.size ? next : best)).place;
}

/**
 * Longest weft floats on face and back, separately for ground, pattern and tabby picks; kinds without picks are left
 * out. `pickKinds` gives the kind of each pick of the cloth.
 */
export function weftFloatsByKind(
  cloth: Drawdown,
  pickKinds: readonly PickKind[],
): Readonly<Partial<Record<PickKind, WeftFloats>>> {
  const found: Partial<Record<PickKind, WeftFloats>> = {};
  for (const of of new Set(pickKinds)) {
    const kinds = new Set(cloth.pickKind.filter((_, j) => pickKinds[j] === of));
    const longest = (side: FloatSide): number | null =>
      finite(Math.max(...Array.from(kinds, (kind) => runOf(cloth, side, kind).length)));
    found[of] = { face: longest('weftFace'), back: longest('weftBack') };
  }
  return found;
}

/** Whether the threads that float on this side are ends. */
export const isWarp = (side: FloatSide): boolean => side === 'warpFace' || side === 'warpBack';

const finite = (length: number): number | null => (length === Number.POSITIVE_INFINITY ? null : length);

/** The longest run on one side of the cloth, and the first kind of strand that has it. */
function longestOf(cloth: Drawdown, side: FloatSide): { kind: number; run: Run } {
  const kinds = isWarp(side) ? cloth.endKinds : cloth.pickKinds;
  let longest = { kind: 0, run: runOf(cloth, side, 0) };
  for (let kind = 1; kind < kinds; kind++) {
    const run = runOf(cloth, side, kind);
    if (run.length > longest.run.length) longest = { kind, run };
  }
  return longest;
}

/** The longest run of one kind of strand on one side. */
function runOf(cloth: Drawdown, side: FloatSide, kind: number): Run {
  const { up, endKinds, endKind, pickKind } = cloth;
  switch (side) {
    case 'warpFace':
      return longestRun(cloth.picks, (j) => up[pickKind[j]! * endKinds + kind] === 1);
    case 'warpBack':
      return longestRun(cloth.picks, (j) => up[pickKind[j]! * endKinds + kind] === 0);
    case 'weftFace':
      return longestRun(cloth.ends, (i) => up[kind * endKinds + endKind[i]!] === 0);
    case 'weftBack':
      return longestRun(cloth.ends, (i) => up[kind * endKinds + endKind[i]!] === 1);
  }
}

/**
 * The longest cyclic run of crossings for which `holds` is true, the first of several; endless if it is true for all.
 */
function longestRun(crossings: number, holds: (crossing: number) => boolean): Run {
  let gap = 0;
  while (gap < crossings && holds(gap)) gap++;
  if (gap === crossings) return { from: 0, length: Number.POSITIVE_INFINITY };
  let longest = NO_RUN;
  let length = 0;
  // The walk begins at the first crossing for which `holds` is false, so that the edge of the repeat cuts no run.
  for (let step = 1; step <= crossings; step++) {
    const at = (gap + step) % crossings;
    if (holds(at)) {
      length++;
      continue;
    }
    const from = (at - length + crossings) % crossings;
    if (length > longest.length || (length === longest.length && from < longest.from)) {
      longest = { from, length };
    }
    length = 0;
  }
  return longest;
}
