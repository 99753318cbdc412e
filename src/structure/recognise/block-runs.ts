/**
 * Divides a cyclic list of shafts into straight runs, up or down one at a time (from the highest to the lowest counts
 * as up), for a threading of no known structure. Turning points end a run; a single thread between runs joins the run
 * before. A run that goes through the numbers several times is divided into a unit for each time. If no two numbers are
 * consecutive, every thread is a unit.
 *
 * @returns index of the thread on which the first run begins, and the lengths of the runs
 */
export function runLengths(ring: readonly number[]): [from: number, lengths: number[]] {
  const size = ring.length;
  const highest = Math.max(...ring);
  const steps = ring.map((number, i) => step(number, ring[(i + 1) % size]!, highest));
  // A run begins at a thread if the step to it and the step from it have different directions.
  const begins = ring.map((_, i) => {
    const into = steps[(i + size - 1) % size]!;
    return into === 0 || (into !== steps[i]! && steps[i] !== 0 && steps[(i + size - 2) % size] === into);
  });
  const from = begins.indexOf(true);
  if (from < 0) return [0, straight(size, highest)];
  const lengths: number[] = [];
  for (let i = 0; i < size; i++) {
    if (begins[(from + i) % size] || lengths.length === 0) lengths.push(1);
    else lengths[lengths.length - 1]!++;
  }
  if (lengths.every((length) => length === 1)) return [0, ring.map(() => 1)];
  return [from, lengths.flatMap((length) => rounds(length, highest))];
}

/** A run, cut after each time through the numbers. */
function rounds(length: number, highest: number): number[] {
  const left = length % highest;
  return [...new Array<number>(Math.floor(length / highest)).fill(highest), ...(left > 0 ? [left] : [])];
}

/** The runs of a straight draw: each passes once through the numbers. */
function straight(size: number, highest: number): number[] {
  return size % highest === 0 ? new Array<number>(size / highest).fill(highest) : [size];
}

function step(a: number, b: number, highest: number): -1 | 0 | 1 {
  if (highest > 2 && (b - a === 1 || (a === highest && b === 1))) return 1;
  if (highest > 2 && (a - b === 1 || (a === 1 && b === highest))) return -1;
  return 0;
}
