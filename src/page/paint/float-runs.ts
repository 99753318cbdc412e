import { type Drawdown, isUp } from '../../cloth/drawdown.js';

/** One float as a rectangle of crossings, which may run across the edge of the repeat. */
export interface FloatRun {
  readonly warp: boolean;
  /** First crossing. */
  readonly end: number;
  readonly pick: number;
  /** In threads; a strand that never interlaces has the length of the repeat. */
  readonly length: number;
}

/** Whether the longest floats of the face are in the minority, so that outlining them is useful. */
export function longestStandOut(cloth: Drawdown): boolean {
  const all = floatsOver(cloth, 'face', 0);
  const longest = all.reduce((most, { length }) => Math.max(most, length), 0);
  return 2 * all.filter(({ length }) => length === longest).length < all.length;
}

/** Every float on one side of the cloth that passes over more than `most` threads, ends first. */
export function floatsOver(cloth: Drawdown, side: 'face' | 'back', most: number): FloatRun[] {
  const { ends, picks } = cloth;
  const up = side === 'face';
  const found: FloatRun[] = [];
  for (let i = 0; i < ends; i++) {
    for (const { from, length } of runs(picks, (j) => isUp(cloth, j, i) === up)) {
      if (length > most) found.push({ warp: true, end: i, pick: from, length });
    }
  }
  for (let j = 0; j < picks; j++) {
    for (const { from, length } of runs(ends, (i) => isUp(cloth, j, i) !== up)) {
      if (length > most) found.push({ warp: false, end: from, pick: j, length });
    }
  }
  return found;
}

/** The cyclic runs of crossings for which `holds` is true. */
function runs(count: number, holds: (crossing: number) => boolean): { from: number; length: number }[] {
  let gap = 0;
  while (gap < count && holds(gap)) gap++;
  if (gap === count) return [{ from: 0, length: count }];
  const found: { from: number; length: number }[] = [];
  for (let step = 1; step <= count; step++) {
    const at = (gap + step) % count;
    if (!holds(at)) continue;
    const last = found.at(-1);
    if (last !== undefined && (last.from + last.length) % count === at) last.length++;
    else found.push({ from: at, length: 1 });
  }
  return found;
}
