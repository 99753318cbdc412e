import type { Found } from '../../search/strategy/outcome.js';

/** A cloth and the near twins that stand behind it. */
export interface Group<F extends Twin = Found> {
  readonly found: F;
  readonly twins: readonly F[];
}

/** What says of a cloth which kind it is of. */
type Twin = Pick<Found, 'code' | 'nearTwin'>;

/** Every cloth in its place; near twins behind the first of their kind, however they name one another. */
export function groupsOf<F extends Twin>(found: readonly F[]): Group<F>[] {
  const kind = kindsOf(found);
  const groups = new Map<string, { found: F; twins: F[] }>();
  for (const each of found) {
    const known = groups.get(kind.get(each.code)!);
    if (known === undefined) groups.set(kind.get(each.code)!, { found: each, twins: [] });
    else known.twins.push(each);
  }
  return [...groups.values()];
}

/** The cloth that stands for the kind of each cloth, by code: the end of the chain of near twins. */
export function kindsOf(found: readonly Twin[]): ReadonlyMap<string, string> {
  const byCode = new Map(found.map((each) => [each.code, each]));
  return new Map(
    found.map((each) => {
      let best = each;
      const passed = new Set<Twin>();
      while (best.nearTwin !== null && !passed.has(best)) {
        passed.add(best);
        best = byCode.get(best.nearTwin) ?? best;
      }
      return [each.code, best.code];
    }),
  );
}
