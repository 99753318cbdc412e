import { descriptorOf } from '../../score/likeness/descriptor.js';
import { mostUnlike } from '../../score/likeness/unlike-ones.js';
import type { Found } from '../../search/strategy/outcome.js';

/**
 * Cloths in the order of the contact sheets: on the first sheet the best that look unlike each other, as far apart as
 * fills it; on the others the rest. Each part is in the order of the ranking.
 */
export function sheetOrder(found: readonly Found[], perPage: number): Found[] {
  if (found.length <= perPage) return [...found];
  const first = new Set(
    mostUnlike(
      found.map(({ draft }) => descriptorOf(draft)),
      perPage,
    ),
  );
  return [...found.filter((_, at) => first.has(at)), ...found.filter((_, at) => !first.has(at))];
}
