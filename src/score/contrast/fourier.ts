/** Complex numbers, the real and the imaginary parts apart. */
export interface Complex {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Real numbers as complex ones. */
export function real(re: Float64Array): Complex {
  return { re, im: new Float64Array(re.length) };
}

/**
 * The discrete Fourier transform of a field of `rows` × `columns` cells that lie row by row: of any size, fast where
 * the prime factors of both sides are small. Entry (l, k), row by row, is Σ field(j, i)·exp(−2πi(jl/rows + ik/columns)).
 * Transformed twice, a field comes back turned by a half and multiplied by its number of cells.
 */
export function transform(field: Complex, rows: number, columns: number): Complex {
  const next = buffers(field.re.length);
  const down = transformColumns(field, rows, columns, next);
  const turned = transposed(down, rows, columns, next(down));
  const across = transformColumns(turned, columns, rows, next);
  return transposed(across, columns, rows, next(across));
}

/** The transform of every column alone. */
export function transformDown(field: Complex, rows: number, columns: number): Complex {
  return transformColumns(field, rows, columns, buffers(field.re.length));
}

/** Two buffers for all steps of a transform: such fields are made by the thousand. */
function buffers(length: number): (from: Complex) => Complex {
  const [one, other] = [empty(length), empty(length)];
  return (from) => (from === one ? other : one);
}

/**
 * Transforms every column. Stockham's form of the fast transform (W. T. Cochran and others, “What is the fast Fourier
 * transform?”, Proc. IEEE 55, 1967), one prime factor after another: the columns lie beside one another, so that the
 * inner loop runs over neighbouring cells. `next` gives a buffer to write to that is not the one read from.
 */
function transformColumns(field: Complex, length: number, columns: number, next: (from: Complex) => Complex): Complex {
  const { cos, sin, primes } = turnsOf(length);
  let from = field;
  let left = length;
  let block = columns;
  for (const prime of primes) {
    const to = next(from);
    const part = left / prime;
    const step = length / left;
    for (let q = 0; q < part; q++) {
      const target = q * prime * block;
      if (prime === 2) {
        addAndTurn(from, q * block, (q + part) * block, to, target, block, cos[q * step]!, sin[q * step]!);
        continue;
      }
      to.re.fill(0, target, target + prime * block);
      to.im.fill(0, target, target + prime * block);
      for (let k = 0; k < prime; k++) {
        for (let j = 0; j < prime; j++) {
          const turn = (((q + j * part) * k) % left) * step;
          addTurned(from, (q + j * part) * block, to, target + k * block, block, cos[turn]!, sin[turn]!);
        }
      }
    }
    from = to;
    left = part;
    block *= prime;
  }
  return from;
}

/** Two blocks added, and the difference of both turned: the step for the factor 2, by far the commonest. */
function addAndTurn(
  from: Complex,
  one: number,
  other: number,
  to: Complex,
  target: number,
  count: number,
  cos: number,
  sin: number,
): void {
  const { re, im } = from;
  const { re: toRe, im: toIm } = to;
  for (let t = 0; t < count; t++) {
    const aRe = re[one + t]!;
    const aIm = im[one + t]!;
    const bRe = re[other + t]!;
    const bIm = im[other + t]!;
    toRe[target + t] = aRe + bRe;
    toIm[target + t] = aIm + bIm;
    toRe[target + count + t] = (aRe - bRe) * cos - (aIm - bIm) * sin;
    toIm[target + count + t] = (aRe - bRe) * sin + (aIm - bIm) * cos;
  }
}

/** Adds a block, turned, to another. */
function addTurned(
  from: Complex,
  at: number,
  to: Complex,
  target: number,
  count: number,
  cos: number,
  sin: number,
): void {
  const { re, im } = from;
  const { re: toRe, im: toIm } = to;
  for (let t = 0; t < count; t++) {
    const aRe = re[at + t]!;
    const aIm = im[at + t]!;
    toRe[target + t] = toRe[target + t]! + aRe * cos - aIm * sin;
    toIm[target + t] = toIm[target + t]! + aRe * sin + aIm * cos;
  }
}

/** Rows and columns exchanged, written to a buffer. */
function transposed({ re, im }: Complex, rows: number, columns: number, turned: Complex): Complex {
  for (let j = 0, at = 0; j < rows; j++) {
    for (let i = 0, to = j; i < columns; i++, at++, to += rows) {
      turned.re[to] = re[at]!;
      turned.im[to] = im[at]!;
    }
  }
  return turned;
}

function empty(length: number): Complex {
  return { re: new Float64Array(length), im: new Float64Array(length) };
}

/** The turns by whole parts of a circle cut into `length`, clockwise, and the prime factors of the length. */
interface Turns {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
  readonly primes: readonly number[];
}

const known = new Map<number, Turns>();

function turnsOf(length: number): Turns {
  let turns = known.get(length);
  if (turns === undefined) {
    turns = {
      cos: Float64Array.from({ length }, (_, k) => Math.cos((2 * Math.PI * k) / length)),
      sin: Float64Array.from({ length }, (_, k) => -Math.sin((2 * Math.PI * k) / length)),
      primes: primeFactors(length),
    };
    known.set(length, turns);
  }
  return turns;
}

function primeFactors(n: number): number[] {
  const factors: number[] = [];
  for (let prime = 2, left = n; left > 1; prime++) {
    for (; left % prime === 0; left /= prime) factors.push(prime);
  }
  return factors;
}
