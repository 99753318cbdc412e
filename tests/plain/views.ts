// Patches and solid areas cell by cell, straight from their definitions: a reader can check them by eye.
import { blurred, type Field } from './contrast.js';

/** Shannon's bits of the 2 × 2 patches of dark (value below one half) and light cells, of 4 at most. */
export function bits(v: Field): number {
  const dark = (j: number, i: number): number => (v[j % v.length]![i % v[0]!.length]! < 0.5 ? 1 : 0);
  const patches = v.flatMap((row, j) =>
    row.map((_, i) => [dark(j, i), dark(j, i + 1), dark(j + 1, i), dark(j + 1, i + 1)].join('')),
  );
  return [...new Set(patches)].reduce((sum, patch) => {
    const share = patches.filter((each) => each === patch).length / patches.length;
    return sum - share * Math.log2(share);
  }, 0);
}

/** Share of cells that a blur of two ends leaves darker than 0.15 or lighter than 0.85. */
export function solid(v: Field, squareness: number): number {
  const cells = blurred(v, 2, 2 * squareness).flat();
  return cells.filter((cell) => cell < 0.15 || cell > 0.85).length / cells.length;
}
