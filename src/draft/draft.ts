import type { Yarn } from '../colour/yarn.js';

/** Most threads per inch, or per centimetre, that a sett may have: no cloth is denser. */
export const DENSEST = 400;

/** A pick of the only weft, a pick of a (thicker) pattern weft, or a plain-weave pick between pattern picks. */
export type PickKind = 'ground' | 'pattern' | 'tabby';

/** Threads per inch or per centimetre, across (ends) and along (picks). */
export interface Sett {
  readonly ends: number;
  readonly picks: number;
  readonly per: 'inch' | 'cm';
}

/** Relative thickness of the threads, used if the yarns have no size: 1 is the usual thickness of the warp. */
export type Widths = Readonly<Record<'warp' | PickKind, number>>;

/**
 * One whole repeat of a weave, before any colour. Indices start at 0, shafts and treadles are numbered from 1.
 * Rising shed: an end is up when any of its shafts is among the shafts lifted.
 */
export interface Weave {
  /** Shafts of each end. Nearly always one shaft an end. */
  readonly threading: readonly (readonly number[])[];
  /** Shafts raised by each treadle. */
  readonly tieUp: readonly (readonly number[])[];
  /** Treadles pressed at each pick; two where two feet work together. */
  readonly treadling: readonly (readonly number[])[];
  readonly pickKinds: readonly PickKind[];
  /** Ends in each threading unit, in order; they add up to the number of ends. */
  readonly endUnits: readonly number[];
  /** Picks in each treadling unit, in order; they add up to the number of picks. */
  readonly pickUnits: readonly number[];
  /**
   * For a weave whose blocks are made by the colour order: 1 for an end (pick) that takes the companion of its
   * element's colour instead of the colour itself, else 0. Absent: all 0.
   */
  readonly companions?: { readonly ends: readonly number[]; readonly picks: readonly number[] };
  readonly widths: Widths;
}

/** A weave with its colours: everything that is needed to weave it. Every folder of the program shares this type. */
export interface Draft extends Weave {
  readonly name?: string;
  readonly yarns: readonly Yarn[];
  /** Index into `yarns` of each end. */
  readonly warp: readonly number[];
  /** Index into `yarns` of each pick. */
  readonly weft: readonly number[];
  readonly sett: Sett;
}

/** All threads equally thick. */
export const EVEN_WIDTHS: Widths = { warp: 1, ground: 1, pattern: 1, tabby: 1 };

/** Shafts lifted at pick `j`: all that its treadles raise, ascending, each once. */
export function liftAt(weave: Pick<Weave, 'tieUp' | 'treadling'>, j: number): number[] {
  const shafts = new Set<number>();
  for (const treadle of weave.treadling[j]!) for (const shaft of weave.tieUp[treadle - 1]!) shafts.add(shaft);
  return [...shafts].sort((a, b) => a - b);
}

/** The highest shaft that is threaded or tied. */
export function shaftCount(weave: Pick<Weave, 'threading' | 'tieUp'>): number {
  let highest = 0;
  // A loop instead of Math.max(...list): a large lift plan has more numbers than a call may have arguments.
  for (const list of [weave.threading, weave.tieUp]) {
    for (const shafts of list) for (const shaft of shafts) highest = Math.max(highest, shaft);
  }
  return highest;
}

/** Ends and picks per centimetre. */
export function perCentimetre(sett: Sett): { readonly ends: number; readonly picks: number } {
  const scale = sett.per === 'cm' ? 1 : 1 / 2.54;
  return { ends: sett.ends * scale, picks: sett.picks * scale };
}

/** Millimetres from end to end (across) and from pick to pick (along). */
export function spacing(sett: Sett): { readonly across: number; readonly along: number } {
  const dense = perCentimetre(sett);
  return { across: 10 / dense.ends, along: 10 / dense.picks };
}

/** Whether a cell of the cloth is square: as many picks as ends in the same length. */
export function isSquareSett(sett: Sett): boolean {
  return Math.abs(sett.ends - sett.picks) <= 1e-9 * Math.max(sett.ends, sett.picks);
}
