import { expect, test } from 'vitest';
import { usualWaste } from '../../../src/plan/warp/warp-length.js';

test('the usual waste, as help and reference say it: 27 in or 70 cm, on a table loom 17 in or 45 cm', () => {
  expect([usualWaste('rising', 'inch') / 25.4, usualWaste('table', 'inch') / 25.4]).toEqual([27, 17]);
  expect([usualWaste('countermarch', 'cm'), usualWaste('table', 'cm')]).toEqual([700, 450]);
});
