import type { Drawdown } from '../../cloth/drawdown.js';
import { colourFace, type Threads, type Woven } from '../../cloth/face.js';
import { roomIn, roomy } from '../../cloth/scratch.js';
import { blurWeights, overlapWeights, SMALL_SIGMA } from '../contrast/blur.js';
import { type Complex, real, transform } from '../contrast/fourier.js';
import { analyse, findTranslation } from '../symmetry/analysis.js';
import { ISOMETRIES } from '../symmetry/isometry.js';
import { withHalf } from '../symmetry/lattice.js';

/** A variance below this is that of an even field. */
const EVEN = 1e-6;
/**
 * Most numbers that are kept with one warp or weft; of larger weaves only the last is. All structures of the catalogue have
 * fewer, as large as they are by themselves; what is kept for all orders of a question then takes 80 MB at the most.
 */
const MOST_KEPT = 5000;

/** A structure as its drawdown alone shows it, a little blurred: what cloths are compared with. */
export interface StructureAlone {
  /** Ends and picks of its smallest repeat. */
  readonly ends: number;
  readonly picks: number;
  /** Place by place in this repeat, row by row: 1 where the end lies on the face. */
  readonly up: Uint8Array;
  /** Spectrum of the drawdown about its mean, blurred for both of the two that are compared. */
  readonly spectrum: Complex;
  /** Variance of the blurred drawdown. */
  readonly variance: number;
  /** Shifts by fewer ends and picks than these differ; all others only repeat them or change the sign. */
  readonly shifts: { readonly across: number; readonly along: number };
  /** Whether a half turn, and a mirror, make anything of it that no shift makes. */
  readonly turns: boolean;
  readonly mirrors: boolean;
}

/** What a structure shows alone, all warp dark and all weft light. `squareness`: picks per cm over ends per cm. */
export function structureAlone(cloth: Drawdown, squareness: number): StructureAlone {
  const face = colourFace(
    cloth,
    cloth.endKind.map(() => 1),
    cloth.pickKind.map(() => 0),
  );
  const analysis = analyse(face);
  const ends = analysis.columns.length;
  const picks = analysis.rows.length;
  const cells = ends * picks;
  const up = Uint8Array.from(
    { length: cells },
    (_, at) => face.colour[face.row[Math.floor(at / ends)]! * face.columnKinds + face.column[at % ends]!]!,
  );
  const { re, im } = transform(real(Float64Array.from(up)), picks, ends);
  const across = response(ends, SMALL_SIGMA);
  const along = response(picks, SMALL_SIGMA * squareness);
  re[0] = 0;
  let variance = 0;
  for (let at = 1; at < cells; at++) {
    const kept = along[Math.floor(at / ends)]! * across[at % ends]!;
    variance += ((re[at]! ** 2 + im[at]! ** 2) * kept) / cells ** 2;
    re[at] = re[at]! * kept;
    im[at] = im[at]! * kept;
  }
  const { lattice, exchange } = analysis;
  const { width, height } = exchange === undefined ? lattice : withHalf(lattice, exchange);
  const lacks = (operation: keyof typeof ISOMETRIES): boolean =>
    findTranslation(analysis, ISOMETRIES[operation]) === undefined;
  return {
    ends,
    picks,
    up,
    variance,
    spectrum: { re, im },
    shifts: { across: width, along: height },
    turns: lacks('half-turn'),
    mirrors: lacks('mirror-left-right') && lacks('mirror-up-down'),
  };
}

/**
 * Measures how far the pattern of the colours differs from that of the structure alone: 1 minus the largest correlation,
 * of either sign and over all shifts, mirrors and half turns, of the face and the drawdown, both blurred by 0.5 ends. A
 * dark warp on a light weft gives 0, and so does an even face, since it has no pattern. If the drawdown is even and the
 * face is not, it is 1. `variance` is that of the little-blurred face.
 *
 * A cell shows either its end or its pick, so a correlation is a sum of what the ends bring to it and what the picks do.
 * Each follows from one order alone and stays in its rooms; an addition is left for each shift.
 *
 * @param values 0 (dark) to 1 (light) of each palette index
 */
export function structureLikeness(values: ArrayLike<number>) {
  const ofEnds = roomIn(() => new Correlations());
  const ofPicks = roomIn(() => new Correlations());
  return ({ ends, picks }: Woven, variance: number, alone: StructureAlone): number => {
    if (variance < EVEN) return 0;
    if (alone.variance < EVEN) return 1;
    const { shifts, turns, mirrors } = alone;
    const count = shifts.across * shifts.along * (turns ? 2 : 1) * (mirrors ? 2 : 1);
    const byEnds = ofEnds(count > MOST_KEPT ? undefined : ends.rooms);
    const byPicks = ofPicks(count > MOST_KEPT ? undefined : picks.rooms);
    byEnds.turnTo(alone, ends, 'ends', values);
    byPicks.turnTo(alone, picks, 'picks', values);
    let most = 0;
    for (let at = 0; at < count; at++) most = Math.max(most, Math.abs(byEnds.each[at]! + byPicks.each[at]!));
    return Math.max(0, 1 - most / Math.sqrt(variance * alone.variance));
  };
}

/** What the threads of one system bring to the correlation of a cloth with its structure. */
class Correlations {
  /** Of each shift, half turn and mirror that differs. It may be longer than what it holds. */
  each = new Float64Array(0);
  private alone: StructureAlone | undefined;
  private threads: Threads | undefined;

  /** Turns to other threads of a system. */
  turnTo(alone: StructureAlone, threads: Threads, system: 'ends' | 'picks', values: ArrayLike<number>): void {
    if (alone === this.alone && threads === this.threads) return;
    this.alone = alone;
    this.threads = threads;
    const { ends, picks, up, shifts, turns, mirrors } = alone;
    const means = meansOf(threads, system === 'ends' ? ends : picks, values);
    const shown = Float64Array.from(up, (isUp, at) =>
      system === 'ends' ? isUp * means[at % ends]! : (1 - isUp) * means[Math.floor(at / ends)]!,
    );
    const seen = transform(real(shown), picks, ends);
    this.each = roomy(this.each, shifts.across * shifts.along * 4);
    let to = 0;
    for (const mirrored of mirrors ? [false, true] : [false]) {
      const { re, im } = correlations(seen, alone, mirrored);
      for (const part of turns ? [re, im] : [re]) {
        for (let y = 0; y < shifts.along; y++) {
          for (let x = 0; x < shifts.across; x++) this.each[to++] = part[y * ends + x]!;
        }
      }
    }
  }
}

/** The mean value of the threads that fall on each place of a weave. */
function meansOf({ kind, colour }: Threads, period: number, values: ArrayLike<number>): Float64Array {
  const means = new Float64Array(period);
  const share = period / kind.length;
  for (let s = 0, place = 0; s < kind.length; s++) {
    means[place] = means[place]! + share * values[colour[kind[s]!]!]!;
    if (++place === period) place = 0;
  }
  return means;
}

/**
 * The mean of a(x)·b(g·x + t) for each shift t, `a` being a spectrum and `b` the structure; with g nothing in the real
 * part and a half turn in the imaginary one, or `mirrored` the two mirrors. Mirrored and turned, a spectrum is the same
 * with signs of frequencies changed.
 */
function correlations(a: Complex, { ends, picks, spectrum: b }: StructureAlone, mirrored: boolean): Complex {
  const cells = ends * picks;
  const product = { re: new Float64Array(cells), im: new Float64Array(cells) };
  for (let l = 0, at = 0; l < picks; l++) {
    for (let k = 0; k < ends; k++, at++) {
      const there = mirrored && k > 0 ? l * ends + ends - k : at;
      const [re, im, otherRe, otherIm] = [a.re[at]!, a.im[at]!, b.re[there]!, b.im[there]!];
      // a·b̄ + i·a·b, once for the transform and once for the mean over the cells.
      product.re[at] = (re * otherRe + im * otherIm - (re * otherIm + im * otherRe)) / cells ** 2;
      product.im[at] = (im * otherRe - re * otherIm + (re * otherRe - im * otherIm)) / cells ** 2;
    }
  }
  return transform(product, picks, ends);
}

/** What two blurs one after the other leave of each frequency of a repeat. */
function response(length: number, sigma: number): Float64Array {
  return transform(real(overlapWeights(blurWeights(length, sigma))), 1, length).re;
}
