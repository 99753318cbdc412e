import { andList } from '../../words/counts.js';
import { PART_WORDS, PARTS, type Part, type Weights } from '../parts/parts.js';
import type { Scores } from '../parts/scores.js';
import { presetOf } from './presets.js';

/** A part that adds less to the score than this share of the strongest part is not named. */
const WORTH_NAMING = 0.3;
const NAMED_AT_MOST = 3;

/**
 * Why a cloth stands where it does, as half a sentence: what its score comes from, the strongest part first, each with
 * its figure from 0 to 1.
 */
export function whyInWords(parts: Readonly<Record<Part, number>>, weights: Weights): string {
  const brings = (part: Part): number => weights[part] * parts[part];
  const weighed = PARTS.filter((part) => brings(part) > 0).sort((a, b) => brings(b) - brings(a));
  const strongest = weighed[0];
  if (strongest === undefined) return 'ranked here for nothing: no part of the score has a weight';
  const named = weighed
    .filter((part) => brings(part) >= WORTH_NAMING * brings(strongest))
    .slice(0, NAMED_AT_MOST)
    .map((part) => `${PART_WORDS[part]} ${parts[part].toFixed(2)}`);
  const view = presetOf(weights);
  const among = view === undefined ? 'ranked here' : `ranked here among the ${view}`;
  return `${among} for: ${andList(named)}`;
}

/** Names the classic that a cloth is, or the nearest one with the difference; nothing if none was searched for. */
export function nearestInWords({ novelty, nearest }: Pick<Scores, 'novelty' | 'nearest'>): string | undefined {
  if (novelty === undefined || nearest === undefined) return undefined;
  return novelty < 5e-4 ? `measures the same as ${nearest}` : `nearest classic: ${nearest}, ${novelty.toFixed(2)} away`;
}

/** The weights of a ranking as a question has them: `contrast 3, symmetry 2, float 1`. */
export function weightsInWords(weights: Weights): string {
  return PARTS.filter((part) => weights[part] > 0)
    .map((part) => `${part} ${weights[part]}`)
    .join(', ');
}
