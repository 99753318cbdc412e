import type { Sett } from '../../draft/draft.js';
import { MEASURES } from '../../words/measure.js';

/** A figure that results show, and the codes of the cloths in which it was found. */
export interface Finding {
  readonly value: number;
  readonly codes: readonly string[];
}

/** The figures that results give for one cloth; a figure is absent if no result gives it. */
export interface Learnt {
  /** Share of the width in the reed that is lost to draw-in. */
  readonly drawIn?: Finding;
  /** Share of the warp used that is lost to take-up. */
  readonly takeUp?: Finding;
  /** Share of the length off the loom that is lost in finishing. */
  readonly shrinkage?: Finding;
  /** Picks as a share of those planned; per millimetre where it is not known what was planned. */
  readonly picks?: Finding & { readonly ofPlanned: boolean };
  /** What was written of this very cloth. */
  readonly last?: string;
}

/** Picks per inch or per centimetre of a sett, to a hundredth, as results find them. */
export function picksAfter({ picks }: Learnt, sett: Sett): number {
  if (picks === undefined) return sett.picks;
  return hundredths(picks.ofPlanned ? sett.picks * picks.value : picks.value * MEASURES[sett.per]);
}

/** Picks as they were planned before results corrected them. */
export function picksBefore({ picks }: Learnt, sett: Sett): number {
  return picks?.ofPlanned ? hundredths(sett.picks / picks.value) : sett.picks;
}

function hundredths(count: number): number {
  return Math.round(count * 100) / 100;
}
