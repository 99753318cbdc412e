// A threaded warp and every way of weaving on it, cell by cell: each shed, each order of sheds, each weft word.

import { line, tone } from './contrast.js';
import { sameCloth } from './search.js';

type Rows = number[][];

export interface PlainLoom {
  /** Shaft of each end, from 1. */
  readonly threading: readonly number[];
  readonly shafts: number;
  /** Colour of each end, 0 or 1. */
  readonly warp: readonly number[];
  /** Picks of the treadling, and of the weft order. */
  readonly picks: number;
  readonly weft: number;
  readonly floatLimit: number;
}

const wordsOf = (letters: number, length: number): number[][] =>
  length === 0
    ? [[]]
    : wordsOf(letters, length - 1).flatMap((word) => Array.from({ length: letters }, (_, l) => [...word, l]));

/** Every different cloth that is sound, within the float limit and not flat. */
export function everyCloth({ threading, shafts, warp, picks, weft, floatLimit }: PlainLoom): Rows[] {
  const cloths: Rows[] = [];
  for (const sheds of wordsOf(2 ** shafts, picks)) {
    const weave = sheds.map((shed) => threading.map((shaft) => (shed >> (shaft - 1)) & 1));
    if (!holds(weave) || longestFloat(weave) > floatLimit) continue;
    for (const order of wordsOf(2, weft)) {
      const cloth = Array.from({ length: picks * weft }, (_, j) =>
        warp.map((colour, i) => (weave[j % picks]![i] === 1 ? colour : order[j % weft]!)),
      );
      const isFlat = Math.hypot(tone(cloth, 1), line(cloth, 1)) < 0.05;
      if (!isFlat && !cloths.some((known) => sameCloth(known, cloth))) cloths.push(cloth);
    }
  }
  return cloths;
}

/** From every strand every other is reached by going from the upper to the lower. */
function holds(weave: Rows): boolean {
  const [picks, ends] = [weave.length, weave[0]!.length];
  const size = ends + picks;
  const isOver = (a: number, b: number): boolean => {
    if (a < ends && b >= ends) return weave[b - ends]![a] === 1;
    if (a >= ends && b < ends) return weave[a - ends]![b] === 0;
    return false;
  };
  return Array.from({ length: size }, (_, from) => {
    const reached = new Set([from]);
    for (const at of reached) for (let to = 0; to < size; to++) if (isOver(at, to)) reached.add(to);
    return reached.size === size;
  }).every(Boolean);
}

/** Longest run of one kind round any row or column; without end where a line is all of a kind. */
function longestFloat(weave: Rows): number {
  const lines = [...weave, ...weave[0]!.map((_, i) => weave.map((row) => row[i]!))];
  return Math.max(
    ...lines.flatMap((cells) =>
      cells.map((_, from) => {
        let run = 1;
        while (run < cells.length && cells[(from + run) % cells.length] === cells[from]) run++;
        return run === cells.length ? Number.POSITIVE_INFINITY : run;
      }),
    ),
  );
}
