let border = new Int32Array(64);

/** The length of the smallest cyclic repeat of a word; it divides the word's length. */
export function smallestPeriod(word: ArrayLike<number | string>): number {
  const n = word.length;
  // Border array of Knuth, Morris and Pratt: n − longest border is the period where it divides n.
  // The same array is used for every word: a search asks this of millions.
  if (border.length < n) border = new Int32Array(2 * n);
  border[0] = 0;
  for (let i = 1, k = 0; i < n; i++) {
    while (k > 0 && word[i] !== word[k]) k = border[k - 1]!;
    if (word[i] === word[k]) k++;
    border[i] = k;
  }
  const period = n - (n === 0 ? 0 : border[n - 1]!);
  return n % period === 0 ? period : n;
}

/** What tells one list of shafts or treadles from another: its number where it has but one, which is soonest. */
export function listSign(list: readonly number[]): number | string {
  return list.length === 1 ? list[0]! : list.join(' ');
}

/** Greatest common divisor of two whole numbers from 0. */
export function gcd(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

/** Least common multiple of two whole numbers from 1. */
export function lcm(a: number, b: number): number {
  return (a / gcd(a, b)) * b;
}

/** The remainder that is never negative: from 0 to below `n`. */
export function modulo(value: number, n: number): number {
  return ((value % n) + n) % n;
}

/** The first `length` threads of a cyclic list. */
export function cycle<T>(list: readonly T[], length: number): T[] {
  return Array.from({ length }, (_, at) => list[at % list.length]!);
}
