import { descriptorOf } from '../../score/likeness/descriptor.js';
import { mostUnlike } from '../../score/likeness/unlike-ones.js';
import type { Found } from '../../search/strategy/outcome.js';

/**
 * Cloths in the order of the contact sheets: on the first sheet the best that look unlike each other, as far apart as
 * fills it, and none of them another enlarged where there are enough without; on the others the rest. Each part is in
 * the order of the ranking.
 */
export function sheetOrder(found: readonly Found[], perPage: number): Found[] {
  if (found.length <= perPage) return [...found];
  const motifs = bestSizes(found);
  const pool = motifs.length < perPage ? found : motifs;
  const unlike = mostUnlike(
    pool.map(({ draft }) => descriptorOf(draft)),
    perPage,
  );
  const first = new Set(unlike.map((at) => pool[at]!));
  return [...first, ...found.filter((each) => !first.has(each))];
}

/** Of cloths that are made alike but for their size, the best. */
function bestSizes(found: readonly Found[]): Found[] {
  const best = new Map<string, Found>();
  for (const each of found) {
    const made = JSON.stringify(each.redraw.filter(([flag]) => flag !== 'times'));
    if (!best.has(made)) best.set(made, each);
  }
  return [...best.values()];
}
