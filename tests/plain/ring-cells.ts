// Overshot and crackle crossing by crossing, from rules in words about neighbouring shafts on a ring.
import type { Lifts } from './floats.js';

const modulo = (a: number, size: number): number => ((a % size) + size) % size;
const placeOf = (block: string): number => block.charCodeAt(0) - 65;

/**
 * Whether an end lies over a pattern pick: counted up from the first shaft of the block that shows, the first two ends
 * are under, the next two over, and then they are under and over in turn.
 */
function overPattern(shaft: number, block: string, size: number): boolean {
  const up = modulo(shaft - 1 - placeOf(block), size);
  return up === 2 || up === 3 || (up > 4 && up % 2 === 1);
}

/** Pattern picks that show these blocks one after the other, a tabby pick after each: odd shafts rise, then even ones. */
export function ringCells(ends: readonly number[], treadled: readonly string[], size: number): Lifts {
  return treadled.flatMap((block, pick) => [
    ends.map((shaft) => (overPattern(shaft, block, size) ? 1 : 0)),
    ends.map((shaft) => (shaft % 2 !== pick % 2 ? 1 : 0)),
  ]);
}

/**
 * The ends of crackle: a point of three shafts for each block; before another block, ends from the first shaft of the
 * block that is left, one shaft at a time, the shorter way; to the opposite block in the direction given.
 */
export function crackleEnds(profile: readonly string[], size: number, opposite: 1 | -1): number[] {
  return profile.flatMap((block, at) => {
    const from = placeOf(block);
    const up = modulo(placeOf(profile[(at + 1) % profile.length]!) - from, size);
    const rises = 2 * up === size ? opposite === 1 : 2 * up < size;
    const between = Array.from({ length: rises ? up : size - up }, (_, n) => from + (rises ? n : -n));
    return [from, from + 1, from + 2, from + 1, ...(up === 0 ? [] : between)].map((place) => modulo(place, size) + 1);
  });
}

/**
 * The ends of overshot: for each letter a step from the one shaft of the block to the other, from elsewhere first one
 * shaft at a time to the nearer of the two; over and over, until a round begins on a shaft on which one began before.
 * Of all shafts to begin on, the one that closes soonest.
 */
export function overshotEnds(profile: readonly string[], size: number): number[] {
  const walks = Array.from({ length: size }, (_, begin) => {
    const rounds: { readonly begin: number; readonly ends: number[] }[] = [];
    let at = begin;
    while (!rounds.some((round) => round.begin === at)) {
      const round = { begin: at, ends: [] as number[] };
      for (const block of profile) {
        const low = placeOf(block);
        const high = modulo(low + 1, size);
        const up = modulo(low - at, size);
        const down = modulo(at - high, size);
        const side = at === high || (at !== low && down < up) ? -1 : 1;
        while (at !== (side === 1 ? low : high)) {
          at = modulo(at + side, size);
          round.ends.push(at + 1);
        }
        at = side === 1 ? high : low;
        round.ends.push(at + 1);
      }
      rounds.push(round);
    }
    return rounds.slice(rounds.findIndex((round) => round.begin === at)).flatMap(({ ends }) => ends);
  });
  return walks.reduce((best, walk) => (walk.length < best.length ? walk : best));
}
