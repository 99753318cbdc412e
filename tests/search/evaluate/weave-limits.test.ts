import { expect, test } from 'vitest';
import { explore } from '../../../src/search/explore.js';
import { readQuestion } from '../../../src/search/question/read-question.js';

test('a search sets aside what the loom cannot weave, and counts it', async () => {
  const ask = (loom: string) =>
    readQuestion({ text: `structure: [turned twill, 2/2 twill]\nlengths: 2\nloom: ${loom}\n`, flags: {} }, () => {
      throw new Error('no draft');
    });
  const free = await explore(ask('{ kind: rising }'));
  const four = await explore(ask('{ shafts: 4, treadles: 6 }'));
  expect(free.found.some(({ structure }) => structure === 'turned twill')).toBe(true);
  expect(four.found.every(({ structure }) => structure === '2/2 twill')).toBe(true);
  expect(four.counts.setAside.limits).toBeGreaterThan(0);
  expect(four.counts.examined).toBe(free.counts.examined);
  const oneShuttle = await explore(ask('{ shuttles: 1 }'));
  expect(oneShuttle.found.every(({ ease }) => ease.shuttles === 1)).toBe(true);
});
