import type { Unit } from '../model/unit.js';

/** A block that differs from an earlier block only in its own strand. */
export interface Alike<S> {
  readonly own: S;
  /** The own strand of the earlier block. */
  readonly before: S;
}

/** Whether using this block would only repeat a reading under another letter: the earlier block is not yet bound. */
export function isRepetition<S>(
  block: string,
  bound: ReadonlyMap<S, number>,
  alike: ReadonlyMap<string, Alike<S>>,
): boolean {
  const other = alike.get(block);
  return other !== undefined && !bound.has(other.own) && !bound.has(other.before);
}

/**
 * Finds blocks that differ only in one strand which no other block has (as in summer and winter): any may come first.
 */
export function alikeBlocks<S extends number | string>(
  blocks: readonly (readonly [string, Unit<S>])[],
): Map<string, Alike<S>> {
  const alike = new Map<string, Alike<S>>();
  const before = new Map<string, S>();
  for (const [block, unit] of blocks) {
    const others = new Set(blocks.flatMap(([name, other]) => (name === block ? [] : [...other.lay])));
    const own = [...new Set(unit.lay)].filter((name) => !others.has(name));
    if (own.length !== 1 || unit.after !== undefined) continue;
    const pattern = unit.lay.map((name) => (name === own[0] ? '*' : name)).join();
    const known = before.get(pattern);
    if (known !== undefined) alike.set(block, { own: own[0]!, before: known });
    before.set(pattern, own[0]!);
  }
  return alike;
}
