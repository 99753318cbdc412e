import { drawdown } from '../../cloth/drawdown.js';
import { colourAt, colourFace, type Face } from '../../cloth/face.js';
import { values } from '../../colour/yarn.js';
import { type Draft, isSquareSett, spacing } from '../../draft/draft.js';
import { contrastMeter } from '../contrast/contrast.js';
import { type Sameness, standingFace } from '../symmetry/canonical-cloth.js';
import { symmetryOf } from '../symmetry/symmetry.js';
import { featuresOf } from './novelty.js';

/** The descriptor of a cloth, by which it is compared with others. */
export interface Descriptor {
  /** Tone, line, figure, symmetry, share of the rarer of dark and light, length of runs across and down. */
  readonly traits: readonly number[];
  /** Light and dark of a square piece, from 0 to 1, row by row, gathered over squares of threads as the eye does. */
  readonly picture: Float64Array;
  /** The corner of the picture as it is, mirrored left to right, upside down, and both. */
  readonly corners: readonly Float64Array[];
  /** Mean of each part of the picture that another's may be laid on, and the deviation; by its first row and column. */
  readonly means: Float64Array;
  readonly deviations: Float64Array;
}

/** Threads that are gathered into one square, squares on a side of the piece, and of the part that is laid on it. */
const GATHERED = 3;
const PIECE = 32;
const PART = 16;
/** Places of the part on the piece, in one direction. */
const PLACES = PIECE - PART + 1;
const DARK_SHARE = 4;
/** A deviation below this is that of an even part: what is left is rounding. */
const EVEN = 1e-5;

/**
 * The descriptor of a draft. It is computed from the canonical form of the cloth, so all drafts of one cloth have the
 * same descriptor, except that light and dark may be exchanged; `unlikeness` ignores this.
 *
 * @param same what makes two cloths the same beside mirrors, half turns and light and dark changing places
 */
export function descriptorOf(draft: Draft, same: readonly Sameness[] = []): Descriptor {
  const { across, along } = spacing(draft.sett);
  const face = standingFace(colourFace(drawdown(draft), draft.warp, draft.weft), [
    'mirror',
    'half-turn',
    'exchange',
    ...same,
  ]);
  const light = values(draft.yarns);
  const contrast = contrastMeter(across / along).measure(face, light);
  const { symmetry } = symmetryOf(face, isSquareSett(draft.sett));
  const traits = featuresOf(face, contrast, symmetry);
  traits[DARK_SHARE] = Math.min(contrast.darkShare, 1 - contrast.darkShare);
  const picture = gathered(face, light);
  return { traits, picture, corners: cornersOf(picture), ...spreads(picture) };
}

/**
 * How unlike two cloths are, from 0 to 1: the mean of the difference of their traits and of how little their pictures
 * agree: 1 less the largest correlation, of either sign, of a part of one laid anywhere on the other, mirrored or not.
 * The same both ways.
 */
export function clothDistance(a: Descriptor, b: Descriptor): number {
  const agreement = (bestAgreement(a, b, 1) + bestAgreement(b, a, 1)) / 2;
  return (featureDistance(a, b) + 1 - agreement) / 2;
}

/** Whether the unlikeness of two cloths is below `least`; stops as soon as this is decided. */
export function isNearer(a: Descriptor, b: Descriptor, least: number): boolean {
  // Both agreements together must be more than this.
  const needed = 2 * (1 + featureDistance(a, b) - 2 * least);
  if (needed >= 2) return false;
  const one = bestAgreement(a, b, 1);
  if (one + 1 <= needed) return false;
  return one + bestAgreement(b, a, needed - one) > needed;
}

/** How far the traits of two cloths lie apart, 0 to 1: a first guess of how unlike they are. */
export function featureDistance(a: Descriptor, b: Descriptor): number {
  let sum = 0;
  for (let t = 0; t < a.traits.length; t++) sum += Math.abs(a.traits[t]! - b.traits[t]!);
  return sum / a.traits.length;
}

function gathered(face: Face, light: Float64Array): Float64Array {
  const picture = new Float64Array(PIECE * PIECE);
  for (let j = 0; j < PIECE * GATHERED; j++) {
    for (let i = 0; i < PIECE * GATHERED; i++) {
      const at = Math.floor(j / GATHERED) * PIECE + Math.floor(i / GATHERED);
      picture[at] = picture[at]! + light[colourAt(face, j % face.picks, i % face.ends)]! / GATHERED ** 2;
    }
  }
  return picture;
}

function spreads(picture: Float64Array): Pick<Descriptor, 'means' | 'deviations'> {
  const means = new Float64Array(PLACES * PLACES);
  const deviations = new Float64Array(PLACES * PLACES);
  for (let top = 0, at = 0; top < PLACES; top++) {
    for (let left = 0; left < PLACES; left++, at++) {
      let [sum, squares] = [0, 0];
      for (let y = top; y < top + PART; y++) {
        for (let x = y * PIECE + left; x < y * PIECE + left + PART; x++) {
          sum += picture[x]!;
          squares += picture[x]! ** 2;
        }
      }
      const mean = sum / PART ** 2;
      means[at] = mean;
      deviations[at] = Math.sqrt(Math.max(0, squares / PART ** 2 - mean ** 2));
    }
  }
  return { means, deviations };
}

/**
 * The largest correlation, of either sign, of the corner of one picture with any part of the other, the corner mirrored
 * or not; the first that is more than `enough`, where there is one.
 */
function bestAgreement(corner: Descriptor, whole: Descriptor, enough: number): number {
  const deviation = corner.deviations[0]!;
  let best = 0;
  for (const part of corner.corners) {
    for (let top = 0, at = 0; top < PLACES; top++) {
      for (let left = 0; left < PLACES; left++, at++) {
        const there = whole.deviations[at]!;
        let agreement = 0;
        if (deviation < EVEN || there < EVEN) agreement = deviation < EVEN && there < EVEN ? 1 : 0;
        else {
          const product = products(part, whole.picture, top * PIECE + left) / PART ** 2;
          agreement = Math.abs(product - corner.means[0]! * whole.means[at]!) / (deviation * there);
        }
        if (agreement > best) best = agreement;
        if (best > enough) return Math.min(1, best);
      }
    }
  }
  return Math.min(1, best);
}

function cornersOf(picture: Float64Array): Float64Array[] {
  return [0, 1, 2, 3].map((flip) =>
    Float64Array.from({ length: PART * PART }, (_, at) => {
      const [y, x] = [Math.floor(at / PART), at % PART];
      return picture[(flip & 2 ? PART - 1 - y : y) * PIECE + (flip & 1 ? PART - 1 - x : x)]!;
    }),
  );
}

/** Sum of the products of a part's squares with those of a picture on which it lies, from the place `from` on. */
function products(part: Float64Array, picture: Float64Array, from: number): number {
  // Four sums side by side: one alone would wait for itself at every step.
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  for (let y = 0, p = 0, w = from; y < PART; y++, w += PIECE - PART) {
    for (let x = 0; x < PART; x += 4, p += 4, w += 4) {
      a += part[p]! * picture[w]!;
      b += part[p + 1]! * picture[w + 1]!;
      c += part[p + 2]! * picture[w + 2]!;
      d += part[p + 3]! * picture[w + 3]!;
    }
  }
  return a + b + c + d;
}
