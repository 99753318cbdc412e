/**
 * Sums the weights of all pairs of threads by their kinds: result[a·kindsB + b] = Σ weight[position a − position b]. It
 * is written into `sum`, which may be longer.
 */
export function gather(
  weight: Float64Array,
  a: Uint16Array,
  kindsA: number,
  b: Uint16Array,
  kindsB: number,
  sum: Float64Array = new Float64Array(kindsA * kindsB),
): Float64Array {
  const n = a.length;
  sum.fill(0, 0, kindsA * kindsB);
  for (let d = 0; d < n; d++) {
    const w = weight[d]!;
    if (w === 0) continue;
    for (let s = 0, t = d; s < n; s++) {
      const at = a[t]! * kindsB + b[s]!;
      sum[at] = sum[at]! + w;
      if (++t === n) t = 0;
    }
  }
  return sum;
}

/**
 * The same for one word with itself and weights that are equal in both directions: only half of the pairs are visited.
 */
export function gatherEven(
  weight: Float64Array,
  kind: Uint16Array,
  kinds: number,
  half: Float64Array = new Float64Array(kinds * kinds),
): Float64Array {
  const n = kind.length;
  half.fill(0, 0, kinds * kinds);
  for (let d = 0; d <= n >> 1; d++) {
    // Pairs at distance 0 and at half the repeat would be counted twice.
    const w = d === 0 || d * 2 === n ? weight[d]! / 2 : weight[d]!;
    if (w === 0) continue;
    for (let s = 0, t = d; s < n; s++) {
      const at = kind[t]! * kinds + kind[s]!;
      half[at] = half[at]! + w;
      if (++t === n) t = 0;
    }
  }
  for (let a = 0; a < kinds; a++) {
    for (let b = 0; b <= a; b++) {
      const sum = half[a * kinds + b]! + half[b * kinds + a]!;
      half[a * kinds + b] = sum;
      half[b * kinds + a] = sum;
    }
  }
  return half;
}
