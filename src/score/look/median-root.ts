import { scratch } from '../../cloth/scratch.js';

/** Classes of size into which numbers are counted: 32 for every doubling from 2^−32 up to 1. */
const CLASSES = 1024;
const counts = new Int32Array(CLASSES);
const roomForClass = scratch(Int32Array);
const roomForMiddle = scratch(Float64Array);
/** A number in single precision, whose bits sort as it does. */
const single = new Float32Array(1);
const bits = new Int32Array(single.buffer);
/** Bits of 2^−32. */
const LEAST = 0x2f800000;

/**
 * The median of the square roots of `count` numbers from 0, each occurring so many `times`, an even count in all: the
 * mean of the middle two. They are counted by size first, so that only those of the middle class need be put in order.
 */
export function medianRoot(numbers: Float64Array, times: Uint8Array, count: number): number {
  const sizes = roomForClass(numbers.length);
  counts.fill(0);
  let total = 0;
  for (let at = 0; at < count; at++) {
    single[0] = numbers[at]!;
    const size = Math.max(0, Math.min(CLASSES - 1, (bits[0]! - LEAST) >> 18));
    sizes[at] = size;
    counts[size] = counts[size]! + times[at]!;
    total += times[at]!;
  }
  const half = total / 2;
  let middle = 0;
  let smaller = 0;
  while (smaller + counts[middle]! <= half) smaller += counts[middle++]!;
  const inMiddle = roomForMiddle(numbers.length * 4);
  let found = 0;
  for (let at = 0; at < count; at++) {
    if (sizes[at] === middle) for (let time = 0; time < times[at]!; time++) inMiddle[found++] = numbers[at]!;
  }
  const upper = partition(inMiddle, found, half - smaller);
  let lower = 0;
  for (let at = 0; at < half - smaller; at++) if (inMiddle[at]! > lower) lower = inMiddle[at]!;
  // Where the two stand in two classes, the lower one is the largest of all that are smaller.
  if (smaller === half)
    for (let at = 0; at < count; at++) if (sizes[at]! < middle) lower = Math.max(lower, numbers[at]!);
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
