import type { LoomKind } from '../../structure/loom/loom-fit.js';
import { INCH, type Per, sayLength, sayShare, upTo, YARD } from '../../words/measure.js';

/** What the length of a warp is reckoned from. Lengths in millimetres, shares from 0 to below 1. */
interface WarpNeeds {
  /** Finished length of each piece, hems included. */
  readonly pieces: readonly number[];
  /** Finished length woven between two pieces. */
  readonly divider: number;
  /** Finished length woven before the first piece, and again after the last. */
  readonly header: number;
  readonly footer: number;
  /** Share of the length off the loom that is lost in washing. */
  readonly shrinkage: number;
  /** Share of the warp used that is lost to the bending of the ends. */
  readonly takeUp: number;
  /** Warp that cannot be woven, both ends together. */
  readonly loomWaste: number;
  /** Warp for test weaving, cutting off and tying on again. */
  readonly testing: number;
}

/** One line of the reckoning: what it is, how it comes about, and its length in millimetres. */
interface WarpLine {
  readonly what: string;
  readonly how: string;
  readonly mm: number;
}

/** The length of a warp with its arithmetic. Millimetres. */
export interface WarpLength {
  readonly finished: number;
  readonly offLoom: number;
  readonly used: number;
  readonly total: number;
  /** Length to wind: the total, rounded up to a quarter yard or 10 cm; 0 if the warp is on the loom. */
  readonly wind: number;
  readonly lines: readonly WarpLine[];
}

/** Usual figures of a four-shaft floor loom (common practice, no source). */
export const USUAL_WARP: Omit<WarpNeeds, 'pieces'> = {
  divider: INCH,
  header: 2 * INCH,
  footer: 2 * INCH,
  shrinkage: 0.1,
  takeUp: 0.08,
  loomWaste: 27 * INCH,
  testing: 18 * INCH,
};

/** The usual lengths, and width, of a plan in inches, and in centimetres: round in each (common practice, no source). */
export const USUAL_LENGTHS: Readonly<
  Record<Per, Readonly<Record<'width' | 'piece' | 'divider' | 'header' | 'footer' | 'testing', number>>>
> = {
  inch: { ...USUAL_WARP, width: 20 * INCH, piece: 5 * INCH },
  cm: { width: 500, piece: 120, divider: 25, header: 50, footer: 50, testing: 450 },
};

/** Share of the width that a cloth draws in at the fell; 3 to 10 % are usual (common practice, no source). */
export const USUAL_DRAW_IN = 0.05;

/** Warp that cannot be woven on a loom; a table loom wastes 14 to 20 in (common practice, no source). */
export function usualWaste(kind: LoomKind, per: Per): number {
  if (per === 'cm') return kind === 'table' ? 450 : 700;
  return kind === 'table' ? 17 * INCH : USUAL_WARP.loomWaste;
}

/** Length before a loss that leaves `wanted`: divided, never added (10 in with a loss of 20 % is 12.5 in, not 12). */
export function before(wanted: number, loss: number): number {
  return wanted / (1 - loss);
}

/**
 * Computes the length of a warp, from the finished cloth back to the wound warp; of a warp on the loom, how much of it
 * must be left to weave.
 */
export function warpLength(needs: WarpNeeds, per: Per, onTheLoom = false): WarpLength {
  const { pieces, divider, header, footer, shrinkage, takeUp, loomWaste, testing } = needs;
  const dividers = Math.max(0, pieces.length - 1);
  const finished = pieces.reduce((sum, piece) => sum + piece, 0) + dividers * divider + header + footer;
  const offLoom = before(finished, shrinkage);
  const used = before(offLoom, takeUp);
  const total = used + testing + (onTheLoom ? 0 : loomWaste);
  const wind = onTheLoom ? 0 : upTo(total, per === 'inch' ? YARD / 4 : 100);
  const say = (mm: number): string => sayLength(mm, per).replace(/ \(.*/, '');
  const each = new Set(pieces).size === 1 ? `${pieces.length} × ${say(pieces[0]!)}` : pieces.map(say).join(' + ');
  const between = dividers === 0 ? '' : ` + ${dividers} × ${say(divider)}`;
  const line = (what: string, how: string, mm: number): WarpLine => ({ what, how, mm });
  return {
    finished,
    offLoom,
    used,
    total,
    wind,
    lines: [
      line('finished', `${each}${between} + ${say(header)} + ${say(footer)}`, finished),
      line('off the loom', `÷ (1 − ${sayShare(shrinkage)} shrinkage)`, offLoom),
      line('warp used', `÷ (1 − ${sayShare(takeUp)} take-up)`, used),
      ...(onTheLoom
        ? [line('must be left', `+ ${say(testing)} test weaving; the end that cannot be woven comes on top`, total)]
        : [
            line('in all', `+ ${say(loomWaste)} loom waste + ${say(testing)} test weaving and re-tying`, total),
            line('wind', per === 'inch' ? 'up to the next quarter yard' : 'up to the next 10 cm', wind),
          ]),
    ],
  };
}
