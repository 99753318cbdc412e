import type { PickKind } from '../../draft/draft.js';
import type { Lift } from '../loom/lifts.js';
import type { Fit } from './best-fit.js';

/**
 * The kinds of the picks: as in the manner; without a manner, pattern and tabby if every other pick is plain weave and
 * the structure has pattern picks.
 */
export function kindsOf(
  { structure, treadling, known }: Fit,
  sheds: readonly string[],
  tabby: readonly [Lift, Lift] | undefined,
): PickKind[] | undefined {
  if (treadling !== undefined) return kindsFrom(treadling, sheds.length);
  if (known < 1 || tabby === undefined || !structure.manners[0]!.kinds?.includes('tabby')) return undefined;
  const plain = tabby.map((lift) => lift.join());
  const kinds = sheds.map((shed): PickKind => (plain.includes(shed) ? 'tabby' : 'pattern'));
  return kinds.every((kind, pick) => kind !== kinds.at(pick - 1)) ? kinds : undefined;
}

function kindsFrom(treadling: NonNullable<Fit['treadling']>, picks: number): PickKind[] {
  const kinds = kindsOfUnits(treadling);
  const { from } = treadling.found;
  return Array.from({ length: picks }, (_, j) => kinds[(((j - from) % kinds.length) + kinds.length) % kinds.length]!);
}

/** Kind of each pick from the first unit's own picks on. */
function kindsOfUnits({ manner, found }: NonNullable<Fit['treadling']>): PickKind[] {
  const kinds: readonly PickKind[] = manner.kinds ?? ['ground'];
  return found.units.flatMap(({ own }, u) => {
    const next = found.units[(u + 1) % found.units.length]!.first;
    return [...own, ...next].map((_, at) => kinds[(at < own.length ? at : at - own.length) % kinds.length]!);
  });
}
