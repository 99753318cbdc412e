import type { Face } from '../../cloth/face.js';
import { type Sett, spacing } from '../../draft/draft.js';
import { contrastMeter } from '../contrast/contrast.js';
import { ARC_MINUTE } from '../contrast/viewing-distance.js';
import type { Look } from '../model/figures.js';
import type { Weights } from '../rank/rank.js';
import { localLight } from './local-light.js';
import { patchBits } from './patches.js';
import { shapesOf } from './shapes.js';
import { outlineOf } from './sharp.js';
import { AREA_SIGMA, solidPart } from './solid.js';
import { type StructureAlone, unlikeStructure } from './structure-likeness.js';

/** The viewing distance for shapes in metres, and the σ of the eye's blur from there in millimetres. */
const SHAPES_FROM = 2;
const SHAPES_SIGMA = ARC_MINUTE * SHAPES_FROM * 1000;
/** Shannon's bits of sixteen equally frequent patches. */
const MOST_BITS = 4;
/** The number of shapes above which a cloth is busy. */
const MANY_SHAPES = 8;

/** Which figures to measure; the others are left 0, to save time. */
export type Wanted = Readonly<Record<keyof Look, boolean>>;

export const ALL_WANTED: Wanted = { solid: true, sharp: true, bits: true, shapes: true, unlike: true };

/** The figures that have weight in a ranking. */
export function wantedBy(weights: Weights): Wanted {
  const lively = weights.calm > 0 || weights.lively > 0;
  return {
    solid: weights.solid > 0,
    sharp: weights.sharp > 0,
    bits: lively,
    shapes: lively,
    unlike: weights.unlike > 0,
  };
}

/** Measures what the eye meets on faces of one sett. `alone` is asked for only where it is needed. */
export type LookMeter = (face: Face, values: Float64Array, alone: () => StructureAlone, wanted: Wanted) => Look;

/** A meter for one sett. */
export function lookMeter(sett: Sett): LookMeter {
  const { across, along } = spacing(sett);
  const squareness = across / along;
  const { variance } = contrastMeter(squareness);
  return (face, values, alone, wanted) => {
    const { ends } = face;
    const areas =
      wanted.solid || wanted.sharp ? localLight(face, values, AREA_SIGMA, AREA_SIGMA * squareness) : NOTHING;
    const far = wanted.shapes ? localLight(face, values, SHAPES_SIGMA / across, SHAPES_SIGMA / along) : NOTHING;
    return {
      solid: wanted.solid ? solidPart(areas) : 0,
      sharp: wanted.sharp ? outlineOf(areas, ends, squareness).slope : 0,
      bits: wanted.bits ? patchBits(face, values) : 0,
      shapes: wanted.shapes ? shapesOf(far, ends).closed : 0,
      unlike: wanted.unlike ? unlikeStructure(face, values, variance(face, values), alone()) : 0,
    };
  };
}

const NOTHING = new Float64Array(0);

/**
 * How lively a cloth is, from 0 to 1: the mean of the variety of its patches, as a share of the most there can be, and
 * of its closed shapes, as a share of the eight above which it is busy (a choice of ours). Calm is 1 less that.
 */
export function liveliness({ bits, shapes }: Pick<Look, 'bits' | 'shapes'>): number {
  return (bits / MOST_BITS + Math.min(1, shapes / MANY_SHAPES)) / 2;
}
