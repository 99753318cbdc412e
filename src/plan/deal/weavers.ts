import * as v from 'valibot';
import { type Given, keys, Misread, nameOf, readAs, reading, under } from '../../input/given.js';
import { check, parseSource } from '../../input/source.js';
import { brief } from '../../problem.js';
import { loomEntries, loomOf, widthSchema } from '../options/plan-options.js';
import type { Weaver } from './deal.js';

/** Most weavers in a group. */
const MOST_WEAVERS = 200;

const weaverKeys = keys({
  name: reading((given) => nameOf(given, 'a name or a letter')),
  width: v.optional(widthSchema),
  ...loomEntries,
});

/**
 * Reads the weavers of a group with their looms (YAML: `weavers:` with a list; each has a name, and may have a width of
 * its own for the warp).
 *
 * @throws Problem with file, line and column
 */
export function readWeavers(text: string, file: string): Weaver[] {
  const weavers = reading((given): Weaver[] => {
    if (!Array.isArray(given) || given.length === 0 || given.length > MOST_WEAVERS) {
      throw new Misread(`found no list of 1 to ${MOST_WEAVERS}; expected weavers, each with a name`);
    }
    const read = given.map((item: Given, at) => under(at, () => weaverOf(item)));
    const twice = read.findIndex(({ name }, at) => read.findIndex((other) => other.name === name) < at);
    if (twice >= 0)
      throw new Misread(`found ${brief(read[twice]!.name)} twice; expected each name once`, { within: [twice] });
    return read;
  });
  return check(keys({ weavers }), parseSource(text, file)).weavers;
}

function weaverOf(given: Given): Weaver {
  const { name, width, ...loom } = readAs(weaverKeys, given);
  return { name, ...(width !== undefined && { width }), loom: loomOf(loom) };
}
