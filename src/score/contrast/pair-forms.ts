import type { Drawdown } from '../../cloth/drawdown.js';
import type { Threads } from '../../cloth/face.js';
import { scratch } from '../../cloth/scratch.js';
import type { Gather } from './gathered.js';

const NONE: Float64Array = new Float64Array(0);

/**
 * What one system of threads, the warp or the weft, brings to the contrast of a cloth, whatever the other is. Kinds are
 * pairs of a kind of thread in the weave and a colour: own ones, of these threads, and crossing ones, all that there can
 * be, by weave first. Values are about one half. Matrices lie row by row; of those that are equal when turned over their
 * diagonal only each row up to the diagonal, all but the diagonal of `near` and `smallNear` counted twice.
 */
export class Forms {
  threads = 0;
  /** How many threads there are of each own kind. */
  counts = NONE;
  /** Mean value along a crossing thread of each kind, and mean difference from neighbour to neighbour along it. */
  means = NONE;
  lineMeans = NONE;
  /** Weights of the blur between own kinds. */
  near = NONE;
  /** For each two crossing kinds, the sum of products of blurred values along the one and the other; of differences. */
  areas = NONE;
  lines = NONE;
  /** Differences along a crossing thread, near own threads: by kinds of picks, then of ends. */
  crossed = NONE;
  /** Weights and sums of products under the small blur, and products of two means. */
  smallNear = NONE;
  smallAreas = NONE;
  stripes = NONE;
  private hasSmall = false;
  private cloth: Drawdown | undefined;
  private laid: Threads | undefined;
  /** Kind of each kind of thread that there is among all own kinds. */
  private own = new Uint16Array(0);
  private ownKinds = 0;
  private crossingKinds = 0;
  private system: 'ends' | 'picks' = 'ends';
  private palette = NONE;

  /** Turns to the threads of one system of a cloth. */
  turnTo(cloth: Drawdown, laid: Threads, system: 'ends' | 'picks', palette: Float64Array, gather: Gather): void {
    // Of the crossing threads only the kinds count.
    if (this.cloth?.up === cloth.up && this.laid === laid) return;
    const arePicks = system === 'picks';
    this.cloth = cloth;
    this.laid = laid;
    this.system = system;
    this.palette = palette;
    this.hasSmall = false;
    this.threads = laid.kind.length;
    this.ownKinds = (arePicks ? cloth.pickKinds : cloth.endKinds) * palette.length;
    this.crossingKinds = (arePicks ? cloth.endKinds : cloth.pickKinds) * palette.length;
    this.own = Uint16Array.from(laid.weave, (weave, k) => weave * palette.length + laid.colour[k]!);
    const [kinds, own, crossing] = [laid.weave.length, this.ownKinds, this.crossingKinds];
    const { counts, tone, boundaries } = gather(laid.kind, kinds, undefined);
    const { before, after, edges, cross } = boundaries;
    const values = this.along();
    const steps = roomForSteps(crossing * boundaries.kinds);
    for (let r = 0, at = 0; r < crossing; r++) {
      for (let e = 0; e < boundaries.kinds; e++, at++) {
        steps[at] = Math.abs(values[r * kinds + before[e]!]! - values[r * kinds + after[e]!]!);
      }
    }
    this.counts = sized(this.counts, own).fill(0);
    for (let k = 0; k < kinds; k++) this.counts[this.own[k]!] = counts[k]!;
    this.near = this.spread(tone, this.near);
    this.means = meansOf(values, counts, crossing, kinds, this.threads, this.means);
    this.lineMeans = meansOf(steps, boundaries.counts, crossing, boundaries.kinds, this.threads, this.lineMeans);
    this.areas = sandwich(values, tone, crossing, kinds, this.areas);
    this.lines = sandwich(steps, edges, crossing, boundaries.kinds, this.lines);
    this.crossed = sized(this.crossed, own * crossing).fill(0);
    const [rowStep, columnStep] = arePicks ? [1, crossing] : [own, 1];
    for (let r = 0; r < crossing; r++) {
      for (let k = 0; k < kinds; k++) {
        let sum = 0;
        for (let e = 0; e < boundaries.kinds; e++) sum += steps[r * boundaries.kinds + e]! * cross[e * kinds + k]!;
        this.crossed[r * rowStep + this.own[k]! * columnStep] = sum;
      }
    }
  }

  /** Computes what belongs to the small blur, where it is not there yet. */
  blurLittle(gather: Gather): void {
    if (this.hasSmall) return;
    this.hasSmall = true;
    const { kind, weave } = this.laid!;
    const { small } = gather(kind, weave.length, undefined);
    this.smallNear = this.spread(small, this.smallNear);
    this.smallAreas = sandwich(this.along(), small, this.crossingKinds, weave.length, this.smallAreas);
    this.stripes = sized(this.stripes, triangle(this.crossingKinds));
    for (let a = 0, at = 0; a < this.crossingKinds; a++) {
      for (let b = 0; b <= a; b++) this.stripes[at++] = this.means[a]! * this.means[b]!;
    }
  }

  /** The values along a crossing thread of each kind, by the kinds of threads that there are. */
  private along(): Float64Array {
    const { cloth, laid, palette } = this;
    const { weave, colour } = laid!;
    const { up, endKinds } = cloth!;
    const arePicks = this.system === 'picks';
    const values = roomForValues(this.crossingKinds * weave.length);
    let at = 0;
    for (let crossing = 0; crossing < this.crossingKinds / palette.length; crossing++) {
      for (let c = 0; c < palette.length; c++) {
        for (let k = 0; k < weave.length; k++) {
          const own = arePicks ? up[weave[k]! * endKinds + crossing] === 0 : up[crossing * endKinds + weave[k]!] === 1;
          values[at++] = palette[own ? colour[k]! : c]! - 0.5;
        }
      }
    }
    return values;
  }

  /** Weights between the kinds that there are, spread over all own kinds. */
  private spread(weights: Float64Array, room: Float64Array): Float64Array {
    const { own, ownKinds } = this;
    const all = sized(room, triangle(ownKinds)).fill(0);
    for (let a = 0, at = 0; a < own.length; a++) {
      const row = triangle(own[a]!);
      for (let b = 0; b < own.length; b++, at++) {
        if (own[b]! <= own[a]!) all[row + own[b]!] = own[b]! < own[a]! ? 2 * weights[at]! : weights[at]!;
      }
    }
    return all;
  }
}

const roomForValues = scratch(Float64Array);
const roomForSteps = scratch(Float64Array);
const roomForRow = scratch(Float64Array);

/** How many entries a matrix of so many rows has up to its diagonal, which is also where its next row begins. */
const triangle = (rows: number): number => (rows * (rows + 1)) / 2;

/** An array of this very length: the one given, if it has it. */
function sized(array: Float64Array, length: number): Float64Array {
  return array.length === length ? array : new Float64Array(length);
}

/** The mean of each of `rows` rows of a field stored by kinds, of each of which there are so many. */
function meansOf(
  field: Float64Array,
  counts: Float64Array,
  rows: number,
  kinds: number,
  threads: number,
  room: Float64Array,
): Float64Array {
  const means = sized(room, rows);
  for (let r = 0, at = 0; r < rows; r++) {
    let sum = 0;
    for (let k = 0; k < kinds; k++, at++) sum += field[at]! * counts[k]!;
    means[r] = sum / threads;
  }
  return means;
}

/** G·V·Gᵀ up to its diagonal: `g` is rows × kinds, `v` kinds × kinds and equal when turned over its diagonal. */
function sandwich(g: Float64Array, v: Float64Array, rows: number, kinds: number, room: Float64Array): Float64Array {
  const products = sized(room, triangle(rows));
  const row = roomForRow(kinds);
  for (let a = 0, to = 0; a < rows; a++) {
    row.fill(0);
    for (let j = 0; j < kinds; j++) {
      const weight = g[a * kinds + j]!;
      if (weight === 0) continue;
      for (let k = 0, at = j * kinds; k < kinds; k++, at++) row[k] = row[k]! + weight * v[at]!;
    }
    for (let b = 0; b <= a; b++) {
      let sum = 0;
      for (let k = 0, at = b * kinds; k < kinds; k++, at++) sum += row[k]! * g[at]!;
      products[to++] = sum;
    }
  }
  return products;
}
