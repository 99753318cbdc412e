import { liftAt, type PickKind, type Weave } from '../../draft/draft.js';
import { tabbySheds } from '../loom/lifts.js';
import type { Fit } from './best-fit.js';

/**
 * How picks are bound: pattern picks and plain weave by turns; pattern picks only, the same shed several times running,
 * since weavers often leave plain weave out in writing; or neither.
 */
export type Binding = 'tabby' | 'left out' | 'none';

/** Mean number of equal sheds running from which plain weave is taken to be left out. */
const RUNNING = 2;

export function bindingOf(weave: Weave): Binding {
  const { sheds, plain } = shedsOf(weave);
  if (plain.some(Boolean)) return plain.every((is, pick) => is !== plain.at(pick - 1)) ? 'tabby' : 'none';
  const changes = sheds.filter((shed, pick) => shed !== sheds.at(pick - 1)).length;
  return tabbySheds(weave.threading) !== undefined && sheds.length >= RUNNING * changes ? 'left out' : 'none';
}

/** The shed of each pick as a word, and whether it is plain weave. */
function shedsOf(weave: Weave): { sheds: string[]; plain: boolean[] } {
  const threaded = new Set(weave.threading.flat());
  const tabby = tabbySheds(weave.threading)?.map((lift) => lift.join());
  const sheds = weave.treadling.map((_, pick) => shedWord(liftAt(weave, pick), threaded));
  return { sheds, plain: sheds.map((shed) => tabby?.includes(shed) ?? false) };
}

/** A word for a shed: the raised shafts that carry an end. */
export function shedWord(raised: readonly number[], threaded: ReadonlySet<number>): string {
  return raised
    .filter((shaft) => threaded.has(shaft))
    .sort((a, b) => a - b)
    .join();
}

/** The kinds of the picks: as in the manner; without a manner, pattern and tabby if they are bound as the structure is. */
export function kindsOf({ structure, treadling, known, bound }: Fit, weave: Weave): PickKind[] | undefined {
  if (treadling !== undefined) return kindsFrom(treadling, weave.treadling.length);
  if (known < 1 || !bound || !structure.manners[0]!.kinds?.includes('tabby')) return undefined;
  return shedsOf(weave).plain.map((is) => (is ? 'tabby' : 'pattern'));
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
