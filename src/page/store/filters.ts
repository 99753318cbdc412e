import type { By, Fill } from '../../order/laid-order.js';
import type { FloatLimit } from '../../score/model/float-limit.js';
import { exceedsFloat } from '../../score/rank/rank.js';
import { inWords } from '../../score/words/figure-words.js';
import type { Found } from '../../search/strategy/outcome.js';

/** Limits and required values for the listed cloths; an absent filter lets all pass. */
export interface Filters {
  readonly float?: FloatLimit;
  /** Ends or picks in one repeat, whichever is more. */
  readonly repeat?: number;
  /** Most colour changes in the warp: knots, if it is wound in order. */
  readonly knots?: number;
  readonly shuttles?: number;
  /** Least and greatest dark share of the face, in per cent. */
  readonly darkFrom?: number;
  readonly darkTo?: number;
  readonly structure?: string;
  readonly by?: By;
  readonly fill?: Fill;
  readonly times?: number;
}

/** Whether a cloth passes all filters. */
export function passes({ draft, scores, ease, order, structure }: Found, filters: Filters): boolean {
  const most = (limit: number | undefined, value: number): boolean => limit === undefined || value <= limit;
  const is = <T>(wanted: T | undefined, value: T): boolean => wanted === undefined || wanted === value;
  const dark = scores.darkShare * 100;
  return (
    (filters.float === undefined || !exceedsFloat(scores.floats, filters.float)) &&
    most(filters.repeat, Math.max(draft.warp.length, draft.weft.length)) &&
    most(filters.knots, ease.warpChanges) &&
    most(filters.shuttles, ease.shuttles) &&
    most(filters.darkTo, dark - 1e-9) &&
    (filters.darkFrom === undefined || dark >= filters.darkFrom - 1e-9) &&
    is(filters.structure, structure) &&
    is(filters.by, order.by) &&
    is(filters.fill, order.fill) &&
    is(filters.times, order.times)
  );
}

/** All that page and details say of a cloth in words, in small letters. */
export function searchedText(found: Found): string {
  const { code, recipe, structure, order, why, draft, scores } = found;
  const yarns = draft.yarns.map(({ letter, name }) => `${letter} ${name}`);
  const facts = [inWords(scores, draft), scores.nearest ?? '', ...yarns];
  return [code, recipe, structure, order.warp, order.weft, why, ...facts].join(' ').toLowerCase();
}

/** Whether every word of the search is in a text. */
export function holds(text: string, find: string): boolean {
  const within = text.toLowerCase();
  return find
    .toLowerCase()
    .split(/\s+/)
    .every((word) => within.includes(word));
}
