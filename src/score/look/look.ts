import type { Face } from '../../cloth/face.js';
import { type Sett, spacing } from '../../draft/draft.js';
import { contrastMeter } from '../contrast/contrast.js';
import { ARC_MINUTE } from '../contrast/viewing-distance.js';
import { LOOK, type Look } from '../model/figures.js';
import { figuresFor, type Weights } from '../parts/parts.js';
import { localLight } from './local-light.js';
import { patchBits } from './patches.js';
import { shapesOf } from './shapes.js';
import { outlineOf } from './sharp.js';
import { AREA_SIGMA, solidPart } from './solid.js';
import { type StructureAlone, unlikeStructure } from './structure-likeness.js';

/** The viewing distance for shapes in metres, and the σ of the eye's blur from there in millimetres. */
const SHAPES_FROM = 2;
const SHAPES_SIGMA = ARC_MINUTE * SHAPES_FROM * 1000;
/** Which figures to measure; the others are left 0, to save time. */
export type Wanted = Readonly<Record<keyof Look, boolean>>;

export const ALL_WANTED: Wanted = mapped(() => true);

/** The figures that a ranking needs. */
export function wantedBy(weights: Weights): Wanted {
  const needed = figuresFor(weights);
  return mapped((name) => needed.has(name));
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

function mapped<T>(value: (name: keyof Look) => T): Readonly<Record<keyof Look, T>> {
  const names = Object.keys(LOOK) as (keyof Look)[];
  return Object.fromEntries(names.map((name) => [name, value(name)])) as Record<keyof Look, T>;
}
