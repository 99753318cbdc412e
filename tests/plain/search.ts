// The whole search without any shortcut: every word, every start, every cell; straight from the definitions.

import { line, mean, tone } from './contrast.js';
import { type Cells, symmetry } from './symmetry.js';

export interface PlainQuestion {
  /** Rows of 1 (end up) and 0, one repeat of the weave; threading and treadling have no shorter period. */
  readonly weave: readonly (readonly number[])[];
  readonly lengths: readonly number[];
  readonly weft: 'same' | 'own';
  readonly times: number;
  /** Threads of a unit where orders are laid by unit, else 1. */
  readonly unit: number;
  readonly weights: { readonly contrast: number; readonly symmetry: number; readonly float: number };
  readonly floatLimit: number;
}

export interface PlainCloth {
  readonly score: number;
  readonly contrast: number;
  readonly symmetry: number;
  readonly cells: Cells;
}

const lcm = (a: number, b: number): number => {
  let multiple = a;
  while (multiple % b !== 0) multiple += a;
  return multiple;
};

const wordsOf = (length: number): number[][] =>
  Array.from({ length: 2 ** length }, (_, bits) => Array.from({ length }, (__, e) => (bits >> e) & 1));

/** Colours of threads 0, 1, 2 … under an order of which each element covers `span` threads, begun on thread `start`. */
const laid = (word: readonly number[], span: number, start: number, count: number): number[] =>
  Array.from({ length: count }, (_, thread) => {
    const place = (((thread - start) % (word.length * span)) + word.length * span) % (word.length * span);
    return word[Math.floor(place / span)]!;
  });

/** Every cloth once, best first; how many candidates were flat. */
export function search(question: PlainQuestion): { cloths: PlainCloth[]; flat: number } {
  const { weave, lengths, unit, times } = question;
  const [picks, ends] = [weave.length, weave[0]!.length];
  const span = unit * times;
  const cloths: PlainCloth[] = [];
  const flats: Cells[] = [];
  const longest = Math.max(longestRun(weave), longestRun(weave[0]!.map((_, i) => weave.map((row) => row[i]!))));
  const starts = (length: number, repeat: number): number[] =>
    Array.from({ length: lcm(length * span, repeat) / unit }, (_, s) => s * unit);
  for (const n of lengths) {
    for (const warp of wordsOf(n)) {
      for (const weft of question.weft === 'same' ? [warp] : lengths.flatMap(wordsOf)) {
        for (const a of starts(n, ends)) {
          for (const b of starts(weft.length, picks)) {
            const P = lcm(n * span, ends);
            const Q = lcm(weft.length * span, picks);
            const w = laid(warp, span, a, P);
            const f = laid(weft, span, b, Q);
            const cells = f.map((colour, j) => w.map((c, i) => (weave[j % picks]![i % ends] === 1 ? c : colour)));
            if (cloths.some((known) => sameCloth(known.cells, cells)) || flats.some((c) => sameCloth(c, cells)))
              continue;
            const contrast = Math.min(1, Math.hypot(tone(cells, 1), line(cells, 1)));
            if (contrast < 0.05) {
              flats.push(cells);
              continue;
            }
            const s = symmetry(cells, true).symmetry;
            const float = Math.min(1, Math.max(0, (question.floatLimit - longest) / (question.floatLimit - 1)));
            const { weights } = question;
            const score =
              (weights.contrast * contrast + weights.symmetry * s + weights.float * float) /
              (weights.contrast + weights.symmetry + weights.float);
            cloths.push({ score, contrast, symmetry: s, cells });
          }
        }
      }
    }
  }
  return { cloths: cloths.sort((x, y) => y.score - x.score), flat: flats.length };
}

const longestRun = (lines: readonly (readonly number[])[]): number =>
  Math.max(
    ...lines.flatMap((line) =>
      line.map((_, from) => {
        let length = 1;
        while (length < line.length && line[(from + length) % line.length] === line[from]) length++;
        return length;
      }),
    ),
  );

/** Whether a shift, mirror or half turn carries one cloth on the other, two colours exchanged or not. */
export function sameCloth(a: Cells, b: Cells): boolean {
  // Cloths of different lightness can only be the same when exchanged; this only saves time.
  const share = mean(a);
  const other = mean(b);
  if (Math.abs(share - other) > 1e-9 && Math.abs(share + other - 1) > 1e-9) return false;
  const picks = lcm(a.length, b.length);
  const ends = lcm(a[0]!.length, b[0]!.length);
  const cell = (cells: Cells, j: number, i: number): number => {
    const row = cells[((j % cells.length) + cells.length) % cells.length]!;
    return row[((i % row.length) + row.length) % row.length]!;
  };
  for (const [across, down] of [
    [1, 1],
    [-1, 1],
    [1, -1],
    [-1, -1],
  ] as const) {
    for (const flip of [0, 1]) {
      for (let y = 0; y < b.length; y++) {
        for (let x = 0; x < b[0]!.length; x++) {
          let same = true;
          for (let j = 0; same && j < picks; j++) {
            for (let i = 0; same && i < ends; i++) {
              same = cell(a, j, i) === (cell(b, down * j + y, across * i + x) ^ flip);
            }
          }
          if (same) return true;
        }
      }
    }
  }
  return false;
}
