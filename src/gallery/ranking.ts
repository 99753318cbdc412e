import { drawdown } from '../cloth/drawdown.js';
import { colourFace, type Face } from '../cloth/face.js';
import { values } from '../colour/yarn.js';
import { comparable, type FloatLimit, type Part, rankScore, type Weights } from '../score/rank.js';
import { partsOf } from '../score/score.js';
import { UNWEIGHED } from '../score/views.js';
import type { Found } from '../search/found.js';

/** A cloth with the score by which it is ranked. */
export interface Ranked {
  readonly found: Found;
  readonly score: number;
}

/** Ranks cloths again, as the command would rank them: same parts, same score, same order of equals. */
export interface Ranker {
  /** The parts of a cloth, each from 0 to 1; those that have no weight and cost much to measure are 0. */
  partsOf(found: Found, weights: Weights, floatLimit: FloatLimit): Readonly<Record<Part, number>>;
  /** The cloths, best first. */
  rank(found: readonly Found[], weights: Weights, floatLimit: FloatLimit): Ranked[];
}

/** Areas are measured only where they have weight, and then once for each cloth. */
const AREAS: Weights = { ...UNWEIGHED, solid: 1, calm: 1, lively: 1 };

/** A ranker that remembers what it has measured. */
export function ranker(): Ranker {
  const faces = new Map<Found, Face>();
  const lights = new Map<Found['draft']['yarns'], Float64Array>();
  const areas = new Map<Found, Readonly<Record<Part, number>>>();
  const measured = (found: Found, weights: Weights, floatLimit: FloatLimit): Readonly<Record<Part, number>> => {
    const { draft, scores, ease } = found;
    let face = faces.get(found);
    if (face === undefined) {
      face = colourFace(drawdown(draft), draft.warp, draft.weft);
      faces.set(found, face);
    }
    const light = lights.get(draft.yarns) ?? values(draft.yarns);
    lights.set(draft.yarns, light);
    return partsOf(
      { face, contrast: scores, symmetry: scores, floats: scores.floats, ease },
      { weights, floatLimit, classics: [], values: light, sett: draft.sett },
    );
  };
  const parts: Ranker['partsOf'] = (found, weights, floatLimit) => {
    const cheap = measured(found, UNWEIGHED, floatLimit);
    const novelty = found.scores.novelty ?? 0;
    if (weights.solid === 0 && weights.calm === 0 && weights.lively === 0) return { ...cheap, novelty };
    let area = areas.get(found);
    if (area === undefined) {
      area = measured(found, AREAS, floatLimit);
      areas.set(found, area);
    }
    return { ...cheap, novelty, solid: area.solid, calm: area.calm, lively: area.lively };
  };
  return {
    partsOf: parts,
    rank: (found, weights, floatLimit) =>
      found
        .map((each) => ({ found: each, score: rankScore(parts(each, weights, floatLimit), weights) }))
        .sort(
          (a, b) =>
            comparable(b.score) - comparable(a.score) || area(a) - area(b) || (a.found.code < b.found.code ? -1 : 1),
        ),
  };
}

function area({ found: { draft } }: Ranked): number {
  return draft.warp.length * draft.weft.length;
}
