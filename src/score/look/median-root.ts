import { scratch } from '../../cloth/scratch.js';

/** Classes of size into which numbers are counted. */
const CLASSES = 512;
const counts = new Int32Array(CLASSES);
const roomForClass = scratch(Float64Array);

/**
 * The median of the square roots of `count` numbers from 0, each occurring so many `times`, an even count in all: the
 * mean of the middle two. They are counted by size first, so that only those of the middle class need be put in order.
 */
export function medianRoot(numbers: Float64Array, times: Uint8Array, count: number): number {
  let most = 0;
  for (let at = 0; at < count; at++) if (numbers[at]! > most) most = numbers[at]!;
  if (most === 0) return 0;
  const scale = (CLASSES - 1) / most;
  counts.fill(0);
  let total = 0;
  for (let at = 0; at < count; at++) {
    const size = Math.trunc(numbers[at]! * scale);
    counts[size] = counts[size]! + times[at]!;
    total += times[at]!;
  }
  const half = total / 2;
  let middle = 0;
  let smaller = 0;
  while (smaller + counts[middle]! <= half) smaller += counts[middle++]!;
  const inClass = roomForClass(numbers.length * 4);
  let found = 0;
  let lower = 0;
  for (let at = 0; at < count; at++) {
    const number = numbers[at]!;
    const size = Math.trunc(number * scale);
    if (size === middle) for (let time = 0; time < times[at]!; time++) inClass[found++] = number;
    else if (size < middle && number > lower) lower = number;
  }
  const upper = partition(inClass, found, half - smaller);
  for (let at = 0; at < half - smaller; at++) if (inClass[at]! > lower) lower = inClass[at]!;
  return (Math.sqrt(lower) + Math.sqrt(upper)) / 2;
}

/**
 * Moves the number that is at place `k` when they are sorted to this place, with none larger before it, and returns it
 * (C. A. R. Hoare, Algorithm 65, Comm. ACM 4, 1961).
 */
function partition(numbers: Float64Array, count: number, k: number): number {
  let from = 0;
  let to = count - 1;
  while (from < to) {
    const pivot = numbers[(from + to) >> 1]!;
    let i = from;
    let j = to;
    while (i <= j) {
      while (numbers[i]! < pivot) i++;
      while (numbers[j]! > pivot) j--;
      if (i > j) break;
      const moved = numbers[i]!;
      numbers[i++] = numbers[j]!;
      numbers[j--] = moved;
    }
    if (k <= j) to = j;
    else if (k >= i) from = i;
    else break;
  }
  return numbers[k]!;
}
