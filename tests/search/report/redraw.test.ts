import { describe, expect, test } from 'vitest';
import { explore } from '../../../src/search/explore.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { structures } from '../../../src/structure/catalogue/catalogue.js';
import { run } from '../../cli/run.js';

/** The code of the draft that the command draws from the flags of a cloth. */
async function drawnAgain(flags: readonly (readonly [string, string])[]): Promise<string> {
  const { out, err } = await run('draw', ...flags.flatMap(([flag, value]) => [`--${flag}`, value]), '--json');
  return err === '' ? JSON.parse(out).code : err;
}

async function codes(flags: Record<string, string>): Promise<[found: string, again: string][]> {
  const question = readQuestion({ flags: { lengths: '3,4', show: '6', limits: 'float 50', ...flags } }, () => {
    throw new Error('no draft is asked for');
  });
  const { found } = await explore(question, { workers: 0 });
  expect(found.length).toBeGreaterThan(0);
  return Promise.all(found.map(async ({ code, redraw }) => [code, await drawnAgain(redraw)] as [string, string]));
}

describe('what draws a cloth again', () => {
  test.each(structures.map(({ name }) => name))('gives the same code: %s', async (structure) => {
    for (const [found, again] of await codes({ structure, by: 'thread,unit', fill: 'solid,alternate' })) {
      expect(again).toBe(found);
    }
  });

  test.each([
    { structure: 'turned twill', by: 'block', weft: 'own', fill: 'solid,alternate,nest', lengths: '3' },
    { structure: 'turned twill', by: 'block', weft: 'exchange', times: '2' },
    { structure: 'turned taqueté', by: 'block', weft: 'own' },
    { structure: 'summer and winter', by: 'block', weft: 'D', tabby: 'L' },
    { structure: 'summer and winter', profile: 'A A B', treadled: 'B A', weft: 'own', by: 'unit', lengths: '3' },
    { structure: '2/2 twill', weft: 'own', fill: 'nest', lengths: '3', times: '1,3' },
    { structure: '2/2 twill', weft: 'exchange', yarns: 'A white, B red, C black', sett: '8/7 per cm' },
  ])('gives the same code: %j', async (flags) => {
    for (const [found, again] of await codes(flags as unknown as Record<string, string>)) expect(again).toBe(found);
  });
});

describe('where the orders begin', () => {
  test.each([
    [['--start', '0/1', '--warp', 'DL', '--structure', 'plain'], '--start: found “0/1”; expected an end and a pick'],
    [['--start', '3', '--warp', 'DL', '--structure', 'plain'], '--start: found “3”; expected an end and a pick'],
  ])('refuses %j', async (flags, message) => {
    const { code, err } = await run('draw', ...flags);
    expect([code, err]).toEqual([2, expect.stringContaining(message)]);
  });

  test('moves the order along the threads', async () => {
    const { out } = await run('draw', '--structure', '2/2 twill', '--warp', 'DDLL', '--start', '2/3', '--json');
    expect(JSON.parse(out).draft).toMatchObject({ warp: 'LDDL', weft: 'LLDD' });
  });
});
