import { Misread } from '../../input/given.js';
import { listOf, needed, optional, table, withDefault } from '../../input/key.js';
import { name } from '../../input/kinds.js';
import { parseSource, placed, readSource } from '../../input/source.js';
import { brief } from '../../problem.js';
import { FORMER_LOOM_KEYS, LOOM_KIND } from '../../structure/loom/loom-table.js';
import { WIDTH } from '../options/plan-options.js';
import type { Weaver } from './deal.js';

/** Most weavers in a group. */
export const MOST_WEAVERS = 200;

const weaverTable = table(
  {
    name: needed(name('a name or a letter'), { about: 'name of the weaver, or a letter', example: 'A' }),
    width: optional(WIDTH, { about: 'width in the reed', usual: 'that of the plan', example: '13 in' }),
    loom: withDefault(
      LOOM_KIND,
      {},
      {
        about: 'the weaver’s loom',
        usual: 'rising',
        example: '4 shafts, 6 treadles, 32 in',
      },
    ),
  },
  FORMER_LOOM_KEYS,
);

/** The keys of a file of weavers. */
export const WEAVERS_TABLE = table({
  weavers: needed(
    listOf(
      weaverTable,
      'weavers, each with a name',
      MOST_WEAVERS,
      ({ name, width, loom }): Weaver => ({
        name,
        ...(width !== undefined && { width }),
        loom,
      }),
    ),
    { about: 'the weavers of the group', example: '[{ name: A, loom: "4 shafts, 6 treadles" }]' },
  ),
});

/**
 * Reads the weavers of a group with their looms.
 *
 * @throws Problem with file, line and column
 */
export function readWeavers(text: string, file: string): Weaver[] {
  const source = parseSource(text, file);
  const { weavers } = readSource(WEAVERS_TABLE, source);
  const names = weavers.map((weaver) => weaver.name);
  const twice = names.findIndex((each, at) => names.indexOf(each) < at);
  if (twice < 0) return weavers;
  return placed(source, () => {
    throw new Misread(`found ${brief(names[twice]!)} twice; expected each name once`, { within: ['weavers', twice] });
  });
}
