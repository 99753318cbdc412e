import { expect, test } from 'vitest';
import { warpFor } from '../../../src/plan/deal/deal.js';
import { remedies } from '../../../src/plan/deal/remedies.js';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { kept } from '../cloths.js';

const SEARCH = 'explore with the same --loom shows only what it weaves';
const LIFTED = 'a table loom would weave it, lifted shaft by shaft';

test.each([
  ['heddles 120 120 120 70', ['it fits on 340 ends: a width of 17 in', SEARCH]],
  ['rising, 3 treadles', [LIFTED, SEARCH]],
  ['rising, 3 treadles, heddles 120 120 120 70', [SEARCH]],
  ['rising, 3 treadles, heddles 120', [LIFTED, SEARCH]],
  ['table, heddles 120 120 120 70', ['it fits on 340 ends: a width of 17 in', SEARCH]],
  ['table, 3 shafts', [SEARCH]],
])('summer and winter of 400 ends on a loom: %s', (loom, words) => {
  const options = readPlanOptions('', 'needs', { floating: 'no', loom });
  const warp = warpFor(
    kept('summer and winter', { warp: 'D', weft: 'L', profile: 'A A B A B' }),
    options,
    options.loom,
  );
  expect(warp.ends).toHaveLength(400);
  expect(warp.faults).not.toEqual([]);
  expect(remedies(warp, options)).toEqual(words);
});
