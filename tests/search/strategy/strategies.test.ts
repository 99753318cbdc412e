import { describe, expect, test } from 'vitest';
import { explore, type Stage } from '../../../src/search/explore.js';
import type { Question } from '../../../src/search/question/question.js';
import { spaceOf } from '../../../src/search/space/space.js';
import type { Archive } from '../../../src/search/strategy/archive.js';
import { settle } from '../../../src/search/strategy/strategies.js';
import { QUESTION } from '../question.js';

async function stages(question: Question): Promise<{ told: Stage[]; found: number }> {
  const told: Stage[] = [];
  const { found } = await explore(question, { workers: 1, progress: (stage) => told.push(stage) });
  return { told, found: found.length };
}

describe('what a search tells while it runs', () => {
  test.each([
    ['scored', QUESTION, ['search', 'describe the best']],
    ['bounded', { ...QUESTION, lengths: [11, 12, 13], show: 5 }, ['find the promising', 'search', 'describe the best']],
  ] as const)(
    '%s: each stage in turn, more and more of the same whole, up to the whole',
    async (way, question, names) => {
      const space = spaceOf(question);
      expect(space.way).toBe(way);
      const { told, found } = await stages(question);
      expect([...new Set(told.map(({ name }) => name))]).toEqual(names);
      for (const name of names) {
        const stage = told.filter((each) => each.name === name);
        expect(new Set(stage.map(({ of }) => of)).size).toBe(1);
        expect(stage.map(({ done }) => done)).toEqual(stage.map(({ done }) => done).sort((a, b) => a - b));
        expect(stage[0]!.done).toBeGreaterThan(0);
        expect(stage.at(-1)!.done).toBe(stage.at(-1)!.of);
      }
      const described = told.filter(({ name }) => name === 'describe the best').map(({ done }) => done);
      expect(described).toEqual(Array.from({ length: found }, (_, at) => at + 1));
      if (way === 'scored') expect(told[0]!.of).toBe(space.numbers);
    },
  );
});

describe('settling what is left out', () => {
  const slow = (times: number): Archive => {
    let left = times;
    return { settle: () => left-- <= 0, out: { cloths: 2 }, cloths: 5 } as unknown as Archive;
  };

  test('goes on until it is done, and tells how far it is', async () => {
    const told: Stage[] = [];
    await settle(slow(3), QUESTION, { progress: (stage) => told.push(stage) });
    expect(told).toEqual(new Array(3).fill({ name: 'hold against what was done', done: 2, of: 5 }));
  });

  test('stops where the search is aborted', async () => {
    const signal = AbortSignal.abort(new Error('enough of it'));
    await expect(settle(slow(3), QUESTION, { progress: undefined, signal })).rejects.toThrow('enough of it');
  });
});
