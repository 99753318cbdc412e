import { drawdown } from '../../cloth/drawdown.js';
import { floatsOf } from '../../cloth/floats.js';
import { Problem } from '../../problem.js';
import type { Structure } from './structure.js';
import { weaveOf } from './weave.js';

/** The longest float of a structure woven with these blocks, in threads; undefined if they cannot be neighbours. */
export function longestFloat(structure: Structure, profile: readonly string[]): number | undefined {
  try {
    const { longest } = floatsOf(drawdown(weaveOf(structure, profile)), { ends: 1, picks: 1, per: 'cm' });
    return longest ?? Number.POSITIVE_INFINITY;
  } catch (problem) {
    if (problem instanceof Problem) return undefined;
    throw problem;
  }
}
