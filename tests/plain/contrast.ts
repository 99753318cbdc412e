// The contrast figures cell by cell, straight from their definitions: a reader can check them by eye.

/** Rows of values, first pick first. */
export type Field = readonly (readonly number[])[];

const at = (field: Field, j: number, i: number): number => {
  const row = field[((j % field.length) + field.length) % field.length]!;
  return row[((i % row.length) + row.length) % row.length]!;
};

const map = (field: Field, say: (j: number, i: number) => number): Field =>
  field.map((row, j) => row.map((_, i) => say(j, i)));

export const mean = (field: Field): number => field.flat().reduce((sum, cell) => sum + cell, 0) / field.flat().length;

export const variance = (field: Field): number => {
  const m = mean(field);
  return mean(map(field, (j, i) => (field[j]![i]! - m) ** 2));
};

/** Φ by the midpoint rule on the density: slow, and plainly what it says. */
const gaussianBetween = (from: number, to: number): number => {
  const steps = 2000;
  let sum = 0;
  for (let s = 0; s < steps; s++) {
    const z = from + ((to - from) * (s + 0.5)) / steps;
    sum += Math.exp((-z * z) / 2);
  }
  return (sum * (to - from)) / steps / Math.sqrt(2 * Math.PI);
};

const known = new Map<number, number[]>();
const weights = (sigma: number): number[] => {
  let list = known.get(sigma);
  if (list === undefined) {
    const reach = Math.ceil(4 * sigma - 1e-9) + 1;
    const raw: number[] = [];
    for (let d = -reach; d <= reach; d++) raw.push(gaussianBetween((d - 0.5) / sigma, (d + 0.5) / sigma));
    const sum = raw.reduce((a, b) => a + b, 0);
    list = raw.map((w) => w / sum);
    known.set(sigma, list);
  }
  return list;
};

/** B_σ: σ in cells across and along. */
export function blurred(field: Field, across: number, along: number): Field {
  const wx = weights(across);
  const wy = weights(along);
  const rx = (wx.length - 1) / 2;
  const ry = (wy.length - 1) / 2;
  return map(field, (j, i) => {
    let sum = 0;
    for (let dy = -ry; dy <= ry; dy++) {
      for (let dx = -rx; dx <= rx; dx++) sum += wy[dy + ry]! * wx[dx + rx]! * at(field, j + dy, i + dx);
    }
    return sum;
  });
}

/** T = 2·std(B v). */
export const tone = (v: Field, squareness: number): number =>
  2 * Math.sqrt(variance(blurred(v, 1.5, 1.5 * squareness)));

/** N = std(B (u − h)). */
export function line(v: Field, squareness: number): number {
  const o = map(v, (j, i) => {
    const h = (Math.abs(at(v, j, i) - at(v, j, i - 1)) + Math.abs(at(v, j, i) - at(v, j, i + 1))) / 2;
    const u = (Math.abs(at(v, j, i) - at(v, j - 1, i)) + Math.abs(at(v, j, i) - at(v, j + 1, i))) / 2;
    return u - h;
  });
  return Math.sqrt(variance(blurred(o, 1.5, 1.5 * squareness)));
}

/** The share of var(b v) left when row means and column means are taken out. */
export function figure(v: Field, squareness: number): number {
  const b = blurred(v, 0.5, 0.5 * squareness);
  const all = variance(b);
  if (all < 1e-6) return 0;
  const rows = b.map((row) => row.reduce((sum, cell) => sum + cell, 0) / row.length);
  const columns = b[0]!.map((_, i) => b.reduce((sum, row) => sum + row[i]!, 0) / b.length);
  const grand = mean(b);
  return variance(map(b, (j, i) => b[j]![i]! - rows[j]! - columns[i]! + grand)) / all;
}
