/** Blur in which a motif is judged, and the small one in which its figure is, in ends. */
export const SIGMA = 1.5;
export const SMALL_SIGMA = 0.5;

/**
 * The eye's blur on a repeat that has no edge: a Gaussian whose weights are integrated over each cell,
 * Φ((d+½)/σ) − Φ((d−½)/σ) for |d| ≤ ceil(4σ − 1e-9) + 1, normalised to sum 1, then wrapped round `length` cells.
 * σ in cells. `weights[d]` belongs to the cells d places apart.
 */
export function blurWeights(length: number, sigma: number): Float64Array {
  const weights = new Float64Array(length);
  if (!(sigma > 0)) {
    weights[0] = 1;
    return weights;
  }
  const reach = Math.ceil(4 * sigma - 1e-9) + 1;
  const reached = Array.from({ length: 2 * reach + 1 }, (_, k) => {
    const d = k - reach;
    return gaussianShare((d + 0.5) / sigma) - gaussianShare((d - 0.5) / sigma);
  });
  const sum = reached.reduce((total, weight) => total + weight, 0);
  reached.forEach((weight, k) => {
    const place = (((k - reach) % length) + length) % length;
    weights[place] = weights[place]! + weight / sum;
  });
  return weights;
}

/**
 * The weights with which two cells of a blurred field go into its sum of squares, by their distance: the blur's
 * weights correlated with themselves. Σ(Bg)² = Σ overlap[x − x']·g(x)·g(x').
 */
export function overlapWeights(weights: Float64Array): Float64Array {
  const n = weights.length;
  const overlap = new Float64Array(n);
  for (let d = 0; d < n; d++) {
    let sum = 0;
    for (let x = 0; x < n; x++) sum += weights[x]! * weights[(x + d) % n]!;
    overlap[d] = sum;
  }
  return overlap;
}

/** Φ: the share of a normal distribution below z, to double precision (through the complementary error function). */
function gaussianShare(z: number): number {
  return z < 0 ? erfc(-z / Math.SQRT2) / 2 : 1 - erfc(z / Math.SQRT2) / 2;
}

/**
 * erfc for x ≥ 0: the power series of erf where it converges fast, else Lentz's continued fraction (Abramowitz and
 * Stegun 7.1.5 and 7.1.14).
 */
function erfc(x: number): number {
  if (x < 2.5) {
    let term = x;
    let sum = x;
    for (let n = 1; Math.abs(term) > 1e-18 * Math.abs(sum) && n < 200; n++) {
      term *= (-x * x) / n;
      sum += term / (2 * n + 1);
    }
    return 1 - (2 / Math.sqrt(Math.PI)) * sum;
  }
  let fraction = 0;
  for (let n = 80; n > 0; n--) fraction = n / 2 / (x + fraction);
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / (x + fraction);
}
