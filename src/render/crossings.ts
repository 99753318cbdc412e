import { drawdown } from '../cloth/drawdown.js';
import type { Draft } from '../draft/draft.js';

/** One repeat, ready to be drawn: the strand on top at each crossing, and the yarn of each strand. */
export interface Crossings {
  readonly ends: number;
  readonly picks: number;
  /** For each pick and end: the bits END_ON_TOP, FROM_BEFORE and ON_AFTER. */
  readonly cells: Uint8Array;
  readonly warp: ArrayLike<number>;
  readonly weft: ArrayLike<number>;
  /** For each end, and for each pick, the index of the first one that looks the same all along. */
  readonly sameEnd: Uint16Array;
  readonly samePick: Uint16Array;
  /** Present if the warp closes over a fine weft. */
  readonly closing?: Closing;
}

/**
 * For each pick and each end that is down, the yarns that close over the crossing: over the first half of the end's
 * room, and over the second half.
 */
interface Closing {
  readonly before: Uint16Array;
  readonly after: Uint16Array;
}

/** Bits of a crossing: the strand on top is also on top at the crossing before, at the one after; it is the end. */
export const FROM_BEFORE = 1;
export const ON_AFTER = 2;
export const END_ON_TOP = 4;

/** Computes which strand is on top at each crossing of one repeat, seen from the face or from the back. */
export function crossings(draft: Draft, back: boolean): Crossings {
  const { ends, picks, endKinds, pickKind, up, ...cloth } = drawdown(draft);
  const endKind = back ? cloth.endKind.toReversed() : cloth.endKind;
  const warp = back ? draft.warp.toReversed() : draft.warp;
  const top = new Uint8Array(ends * picks);
  for (let j = 0, at = 0; j < picks; j++) {
    for (let i = 0; i < ends; i++, at++) top[at] = up[pickKind[j]! * endKinds + endKind[i]!]! ^ (back ? 1 : 0);
  }
  const cells = new Uint8Array(ends * picks);
  for (let j = 0; j < picks; j++) {
    const above = ((j + picks - 1) % picks) * ends;
    const below = ((j + 1) % picks) * ends;
    for (let i = 0; i < ends; i++) {
      const here = top[j * ends + i]!;
      const before = here ? top[above + i] : top[j * ends + ((i + ends - 1) % ends)];
      const after = here ? top[below + i] : top[j * ends + ((i + 1) % ends)];
      cells[j * ends + i] =
        (here ? END_ON_TOP : 0) | (before === here ? FROM_BEFORE : 0) | (after === here ? ON_AFTER : 0);
    }
  }
  // Only a structure whose own weft is fine has its ends set so close that they meet over it.
  const closing = draft.widths.ground < draft.widths.warp ? closingOver(top, ends, picks, warp) : undefined;
  const closed = (i: number): string => {
    if (closing === undefined) return '';
    const { before, after } = closing;
    return Array.from({ length: picks }, (_, j) => `${before[j * ends + i]} ${after[j * ends + i]}`).join();
  };
  return {
    ends,
    picks,
    cells,
    warp,
    weft: draft.weft,
    sameEnd: firstAlike(endKind, (i) => `${warp[i]} ${closed(i)}`),
    samePick: firstAlike(pickKind, (j) => `${draft.weft[j]} ${draft.pickKinds[j]}`),
    ...(closing && { closing }),
  };
}

/**
 * If a weft is finer than its room, the raised ends on both sides of a stretch of lowered ends close over the weft,
 * each over half of the stretch. In a pick without a raised end nothing closes.
 */
function closingOver(top: Uint8Array, ends: number, picks: number, warp: readonly number[]): Closing {
  const before = new Uint16Array(ends * picks);
  const after = new Uint16Array(ends * picks);
  for (let j = 0; j < picks; j++) {
    const row = j * ends;
    before.set(warp, row);
    after.set(warp, row);
    const raised = warp.flatMap((_, i) => (top[row + i] ? [i] : []));
    raised.forEach((left, k) => {
      const right = raised[k + 1] ?? raised[0]! + ends;
      const middle = (left + right) / 2;
      for (let i = left + 1; i < right; i++) {
        before[row + (i % ends)] = warp[(i <= middle ? left : right) % ends]!;
        after[row + (i % ends)] = warp[(i < middle ? left : right) % ends]!;
      }
    });
  }
  return { before, after };
}

/**
 * For each strand, the first strand with the same interlacement, the same neighbours' interlacement and the same yarn.
 */
function firstAlike(kind: Uint16Array, yarn: (strand: number) => string): Uint16Array {
  const n = kind.length;
  const known = new Map<string, number>();
  return kind.map((own, strand) => {
    const look = `${kind[(strand + n - 1) % n]} ${own} ${kind[(strand + 1) % n]} ${yarn(strand)}`;
    const first = known.get(look) ?? strand;
    known.set(look, first);
    return first;
  });
}
