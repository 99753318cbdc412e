// Near twins cell by cell, by trying every shift: a reader can check it against the definition by eye.

import { blurred, type Field, mean } from './contrast.js';

const mod = (value: number, n: number): number => ((value % n) + n) % n;
const lcm = (a: number, b: number): number => {
  let multiple = a;
  while (multiple % b !== 0) multiple += a;
  return multiple;
};

/** B v about its mean. `squareness`: picks per centimetre over ends per centimetre. */
export function seen(values: Field, squareness: number): Field {
  const field = blurred(values, 1.5, 1.5 * squareness);
  const middle = mean(field);
  return field.map((row) => row.map((cell) => cell - middle));
}

/**
 * The largest correlation of two such fields, each repeated without end, over all shifts and the allowed operations;
 * of either sign where the colours may be exchanged.
 */
export function likeness(
  a: Field,
  b: Field,
  ways: { readonly mirror: boolean; readonly halfTurn: boolean; readonly exchange: boolean },
): number {
  const [ends, picks] = [b[0]!.length, b.length];
  const turns = [
    [1, 1],
    ...(ways.halfTurn ? [[-1, -1]] : []),
    ...(ways.mirror
      ? [
          [-1, 1],
          [1, -1],
        ]
      : []),
  ];
  const root = Math.sqrt(
    meanProduct(a, (i, j) => cell(a, i, j), ends, picks) * meanProduct(b, (i, j) => cell(b, i, j), 1, 1),
  );
  let best = 0;
  for (const [across, along] of turns) {
    for (let y = 0; y < picks; y++) {
      for (let x = 0; x < ends; x++) {
        const product = meanProduct(a, (i, j) => cell(b, across! * i + x, along! * j + y), ends, picks);
        best = Math.max(best, (ways.exchange ? Math.abs(product) : product) / root);
      }
    }
  }
  return best;
}

const cell = (field: Field, i: number, j: number): number => field[mod(j, field.length)]![mod(i, field[0]!.length)]!;

/** Mean of a(x)·other(x) over a stretch in which both repeats, the other's of `ends` by `picks`, begin again. */
function meanProduct(a: Field, other: (i: number, j: number) => number, ends: number, picks: number): number {
  const width = lcm(a[0]!.length, ends);
  const height = lcm(a.length, picks);
  let sum = 0;
  for (let j = 0; j < height; j++) for (let i = 0; i < width; i++) sum += cell(a, i, j) * other(i, j);
  return sum / (width * height);
}
