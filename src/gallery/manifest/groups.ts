import type { Found } from '../../search/strategy/outcome.js';

/** A cloth and its near twins. */
export interface Group<F extends Twin = Found> {
  readonly found: F;
  readonly twins: readonly F[];
}

/** The fields that group a cloth. */
type Twin = Pick<Found, 'code' | 'nearTwin'>;

/** Groups cloths, in order: near twins follow the first cloth of their group, directly or through other twins. */
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

/** For each code, the code of the first cloth of its group: the end of the chain of near twins. */
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
