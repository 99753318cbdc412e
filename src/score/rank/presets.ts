import { PARTS, type Part, UNWEIGHED, type Weights } from '../parts/parts.js';
import { sameWeights } from './rank.js';

/** A weight for every part that is weighed; the others do not count. */
const weigh = (weighed: Partial<Record<Part, number>>): Weights => ({ ...UNWEIGHED, ...weighed });

/**
 * The ways in which a weaver looks at cloths, each a ranking with a name. What is weighed is common practice; how much,
 * a choice of ours, made by looking. Odd but ordered is what the eye keeps, so the unexpected must also be
 * symmetrical, read, and be no mere speck of the other colour; and what a structure shows by itself is not unexpected.
 */
export const PRESETS = {
  clear: weigh({ contrast: 3, solid: 2, sharp: 2 }),
  balanced: weigh({ balance: 3, symmetry: 3, contrast: 3 }),
  calm: weigh({ calm: 4, contrast: 1, symmetry: 1 }),
  lively: weigh({ lively: 4, contrast: 1, symmetry: 1 }),
  unexpected: weigh({ newness: 4, figured: 4, unlike: 3, contrast: 3, balance: 3, symmetry: 2 }),
  fine: weigh({ fine: 3, symmetry: 2, unlike: 2, figure: 1 }),
  easy: weigh({ ease: 4, contrast: 2, float: 1 }),
} as const satisfies Readonly<Record<string, Weights>>;

export type Preset = keyof typeof PRESETS;

export const PRESET_NAMES = Object.keys(PRESETS) as readonly Preset[];

/** A ranking as it is written: a view by its name, or weights of which those not written do not count. */
export type RankWritten = Preset | Partial<Weights>;

/** The weights of a ranking as it is written. */
export function weightsOf(rank: RankWritten): Weights {
  return typeof rank === 'string' ? PRESETS[rank] : { ...UNWEIGHED, ...rank };
}

/** A ranking as it is written: by the name of its view, or by the weights that count. {@link weightsOf} undoes it. */
export function rankWritten(weights: Weights): RankWritten {
  return presetOf(weights) ?? Object.fromEntries(PARTS.filter((part) => weights[part] > 0).map((p) => [p, weights[p]]));
}

/** The view that has these weights, if one has. */
export function presetOf(weights: Weights): Preset | undefined {
  return PRESET_NAMES.find((view) => sameWeights(PRESETS[view], weights));
}
