import type { Drawdown } from '../../cloth/drawdown.js';
import type { Face, Threads, Woven } from '../../cloth/face.js';
import { type Sett, spacing } from '../../draft/draft.js';
import { ARC_MINUTE } from '../contrast/viewing-distance.js';
import type { FaceAnalysis } from '../symmetry/analysis.js';
import { type LocalLight, lightGatherer } from './local-light.js';
import { type StructureAlone, structureAlone, structureLikeness } from './structure-likeness.js';

/** σ in ends of the blur in which solid areas and outlines are measured. */
export const AREA_SIGMA = 2;
/** The viewing distance for shapes, in metres. */
const SHAPES_FROM = 2;

/**
 * Sees cloths of one sett in the colours of one palette, one after the other: what the figures of the look are measured
 * on. What takes time is gathered when it is first asked for; what is gathered of a cloth is overwritten by the next.
 */
export class Eye {
  /** The cloth that is seen, its face, and what the face repeats. */
  cloth!: Drawdown;
  ends!: Threads;
  picks!: Threads;
  face!: Face;
  analysis!: FaceAnalysis;
  /** 0 (dark) to 1 (light) of each palette index. */
  readonly values: Float64Array;
  /** Picks per centimetre over ends per centimetre. */
  readonly squareness: number;
  private readonly gatherAreas: (woven: Woven) => LocalLight;
  private readonly gatherFromAfar: (woven: Woven) => LocalLight;
  private readonly varianceOf: (woven: Woven, face: Face) => number;
  private readonly likeness: ReturnType<typeof structureLikeness>;
  private readonly structures = new WeakMap<Drawdown, StructureAlone>();
  private gathered: LocalLight | undefined;

  /** @param varianceOf measures the variance of the face, a little blurred */
  constructor(sett: Sett, values: Float64Array, varianceOf: (woven: Woven, face: Face) => number) {
    const { across, along } = spacing(sett);
    this.values = values;
    this.squareness = across / along;
    this.varianceOf = varianceOf;
    this.likeness = structureLikeness(values);
    this.gatherAreas = lightGatherer(values, AREA_SIGMA, AREA_SIGMA * this.squareness);
    const sigma = ARC_MINUTE * SHAPES_FROM * 1000;
    this.gatherFromAfar = lightGatherer(values, sigma / across, sigma / along, false);
  }

  /** Turns to another cloth. */
  turnTo({ cloth, ends, picks }: Woven, face: Face, analysis: FaceAnalysis): this {
    this.cloth = cloth;
    this.ends = ends;
    this.picks = picks;
    this.face = face;
    this.analysis = analysis;
    this.gathered = undefined;
    return this;
  }

  /** Values gathered over two ends, cell by cell. */
  areas(): LocalLight {
    this.gathered ??= this.gatherAreas(this);
    return this.gathered;
  }

  /** Values as they are gathered from two metres, cell by cell. */
  fromAfar(): LocalLight {
    return this.gatherFromAfar(this);
  }

  /** How far the pattern of the colours differs from that of the structure alone. */
  unlikeStructure(): number {
    let alone = this.structures.get(this.cloth);
    if (alone === undefined) {
      alone = structureAlone(this.cloth, this.squareness);
      this.structures.set(this.cloth, alone);
    }
    return this.likeness(this, this.varianceOf(this, this.face), alone);
  }
}
