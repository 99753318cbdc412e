import type { Face } from '../../cloth/face.js';
import { scratch } from '../../cloth/scratch.js';
import { type Sett, spacing } from '../../draft/draft.js';
import { contrastMeter } from '../contrast/contrast.js';
import { localLight } from './local-light.js';
import type { StructureAlone } from './structure-likeness.js';

/** σ in ends of the blur in which solid areas and outlines are measured. */
export const AREA_SIGMA = 2;

/** A face, with what is measured on it by more than one figure, or takes time: functions, for those that need it. */
export interface Seen {
  readonly face: Face;
  /** 0 (dark) to 1 (light) of each palette index. */
  readonly values: Float64Array;
  /** Millimetres from end to end, and from pick to pick. */
  readonly across: number;
  readonly along: number;
  /** Values gathered over two ends, cell by cell. */
  areas(): Float64Array;
  /** Variance of the face, a little blurred. */
  variance(): number;
  /** The look of the weave without colours. */
  alone(): StructureAlone;
}

/** Sees faces of one sett. What is gathered of each is overwritten by the next. */
export function eye(sett: Sett): (face: Face, values: Float64Array, alone: () => StructureAlone) => Seen {
  const { across, along } = spacing(sett);
  const squareness = across / along;
  const { variance } = contrastMeter(squareness);
  const room = scratch(Float64Array);
  return (face, values, alone) => {
    let areas: Float64Array | undefined;
    return {
      face,
      values,
      across,
      along,
      areas() {
        areas ??= localLight(face, values, AREA_SIGMA, AREA_SIGMA * squareness, room(face.ends * face.picks));
        return areas;
      },
      variance: () => variance(face, values),
      alone,
    };
  };
}
