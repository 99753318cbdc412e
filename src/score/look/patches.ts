import type { Face } from '../../cloth/face.js';

/**
 * The variety of a face, thread by thread: Shannon's bits of the sixteen possible patches of 2 × 2
 * cells, dark or light, over the whole repeat; 4 at most. 0 is one colour, 1 plain stripes; above 3.8 it is noise. A
 * cell is dark where its value is below one half.
 */
export function patchBits(face: Face, values: ArrayLike<number>): number {
  const { row, column, rowKinds, columnKinds, colour, ends, picks } = face;
  const rows = neighbours(row, rowKinds);
  const columns = neighbours(column, columnKinds);
  const light = (r: number, c: number): 0 | 1 => (values[colour[r * columnKinds + c]!]! < 0.5 ? 0 : 1);
  const count = new Float64Array(16);
  for (const upper of rows) {
    for (const left of columns) {
      const patch =
        light(upper.before, left.before) +
        2 * light(upper.before, left.after) +
        4 * light(upper.after, left.before) +
        8 * light(upper.after, left.after);
      count[patch] = count[patch]! + upper.count * left.count;
    }
  }
  const cells = ends * picks;
  let bits = 0;
  for (const n of count) if (n > 0) bits -= (n / cells) * Math.log2(n / cells);
  return Math.min(4, Math.max(0, bits));
}

/** Pairs of neighbouring threads by their kinds, with how often each occurs round the repeat. */
function neighbours(kind: Uint16Array, kinds: number): { before: number; after: number; count: number }[] {
  const pairs = new Map<number, { before: number; after: number; count: number }>();
  for (let s = 0, before = kind[kind.length - 1]!; s < kind.length; s++) {
    const after = kind[s]!;
    const known = pairs.get(before * kinds + after);
    if (known) known.count++;
    else pairs.set(before * kinds + after, { before, after, count: 1 });
    before = after;
  }
  return [...pairs.values()];
}
