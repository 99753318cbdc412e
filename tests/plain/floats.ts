// Floats and layers cell by cell, straight from their definitions: a reader can check them by eye.

/** Rows of 1 (warp on the face) and 0, first pick first. */
export type Lifts = readonly (readonly number[])[];

/** Longest cyclic run of a value along a strand; null where the strand holds nothing else. */
export function longestRun(strand: readonly number[], value: number): number | null {
  if (strand.every((cell) => cell === value)) return null;
  let longest = 0;
  for (let from = 0; from < strand.length; from++) {
    let length = 0;
    while (strand[(from + length) % strand.length] === value) length++;
    longest = Math.max(longest, length);
  }
  return longest;
}

/** The longest of all strands; null where one never interlaces. */
export const longest = (strands: Lifts, value: number): number | null =>
  most(strands.map((strand) => longestRun(strand, value)));

export const most = (lengths: readonly (number | null)[]): number | null =>
  lengths.includes(null) ? null : Math.max(...(lengths as number[]));

export const columns = (lifts: Lifts): Lifts => lifts[0]!.map((_, i) => lifts.map((row) => row[i]!));

/** Strands (ends first) that each lie under every strand they can be reached from: the strong components. */
export function layers(lifts: Lifts): number {
  const ends = lifts[0]!.length;
  const strands = ends + lifts.length;
  const over = (a: number, b: number): boolean =>
    a < ends && b >= ends ? lifts[b - ends]![a] === 1 : a >= ends && b < ends ? lifts[a - ends]![b] === 0 : a === b;
  const reach = Array.from({ length: strands }, (_, a) => Array.from({ length: strands }, (__, b) => over(a, b)));
  for (let via = 0; via < strands; via++) {
    for (let a = 0; a < strands; a++) {
      for (let b = 0; b < strands; b++) if (reach[a]![via] && reach[via]![b]) reach[a]![b] = true;
    }
  }
  const together = reach.map((row, a) => row.map((to, b) => (to && reach[b]![a] ? '1' : '0')).join(''));
  return new Set(together).size;
}
