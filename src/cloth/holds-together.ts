import type { Drawdown } from './drawdown.js';

/**
 * Whether the cloth is one cloth: no set of strands lies wholly above the rest (C. R. J. Clapham, “When a fabric
 * hangs together”, Bull. London Math. Soc. 12, 1980).
 */
export function holdsTogether(cloth: Drawdown): boolean {
  return layers(cloth) === 1;
}

/**
 * The number of layers that lift off one another: strongly connected components of the graph on the strands of one
 * repeat with an arrow from the upper to the lower strand at each crossing.
 *
 * Clapham's test: with the uppermost picks and ends first, the first s picks and t ends lie wholly above the rest
 * exactly when (ends over picks, summed over those ends) − (the same, summed over those picks) = (picks − s)·t. Each
 * such cut separates two layers.
 *
 * One pick and one end of each kind are enough. Copies of a strand cross every other strand in the same way, so a cycle
 * through one copy can pass through any other: all copies of a kind that lies on a cycle are in one layer. A kind that
 * lies on no cycle is a layer by itself in the graph of kinds; its copies do not hold one another, so each copy counts
 * as a layer.
 */
export function layers(cloth: Drawdown): number {
  const picks = cloth.pickKinds;
  const ends = cloth.endKinds;
  const above = (r: number, c: number): number => cloth.up[r * ends + c]!;
  const endsOver = range(picks, (r) => sum(ends, (c) => above(r, c)));
  const picksUnder = range(ends, (c) => sum(picks, (r) => above(r, c)));
  const pickOrder = range(picks, (r) => r).sort((a, b) => endsOver[a]! - endsOver[b]!);
  const endOrder = range(ends, (c) => c).sort((a, b) => picksUnder[b]! - picksUnder[a]!);

  let count = 0;
  let lastPicks = 0;
  let lastEnds = 0;
  for (let s = 0, overPicks = 0; s <= picks; overPicks += endsOver[pickOrder[s++]!] ?? 0) {
    for (let t = 0, underEnds = 0; t <= ends; underEnds += picksUnder[endOrder[t++]!] ?? 0) {
      if (s + t === 0 || underEnds - overPicks !== (picks - s) * t) continue;
      const alone = s + t - lastPicks - lastEnds === 1;
      if (!alone) count++;
      else if (s > lastPicks) count += copies(cloth.pickKind, pickOrder[lastPicks]!);
      else count += copies(cloth.endKind, endOrder[lastEnds]!);
      lastPicks = s;
      lastEnds = t;
    }
  }
  return count;
}

const range = (length: number, say: (index: number) => number): number[] => Array.from({ length }, (_, i) => say(i));

const sum = (length: number, say: (index: number) => number): number => range(length, say).reduce((a, b) => a + b, 0);

const copies = (kinds: Uint16Array, kind: number): number => kinds.reduce((n, k) => n + (k === kind ? 1 : 0), 0);
