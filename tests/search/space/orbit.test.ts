import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { colourFace } from '../../../src/cloth/face.js';
import { clothKey } from '../../../src/score/symmetry/canonical-cloth.js';
import { explore } from '../../../src/search/explore.js';
import type { Question } from '../../../src/search/question/question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { runs } from '../../long.js';
import { QUESTION } from '../question.js';

/** The keys of the cloths that candidates weave: of all numbers of a space, and of those that stand for them. */
function cloths(question: Question): { every: Set<string>; met: Set<string>; count: number } {
  const space = spaceOf(question);
  const [every, met] = [new Set<string>(), new Set<string>()];
  let count = 0;
  for (let number = 0; number < space.numbers; number++) {
    const draft = draftOf(space.at(number), question);
    const key = clothKey(colourFace(drawdown(draft), draft.warp, draft.weft), question.same, 2).join();
    every.add(key);
    if (!space.isRepresentative(number)) continue;
    met.add(key);
    count++;
  }
  expect(space.count).toBe(count);
  return { every, met, count };
}

test('every cloth of a space has a candidate that stands for it, wherever orders may begin', () => {
  const asked = fc.record({
    structures: fc.constantFrom(
      ['2/2 point twill'],
      ['2/2 twill'],
      ['plain weave'],
      ['1/3 twill'],
      ['2/2 herringbone'],
    ),
    lengths: fc.constantFrom([2], [3], [4], [2, 3]),
    starts: fc.constantFrom('all' as const, 'first' as const, 'weft' as const),
    weft: fc.constantFrom({ rule: 'own' } as const, { rule: 'same' } as const, { rule: 'exchange' } as const),
    same: fc.constantFrom<Question['same']>(['mirror', 'half-turn', 'exchange'], ['half-turn'], ['exchange'], []),
  });
  fc.assert(
    fc.property(asked, (change) => {
      const { every, met } = cloths({ ...QUESTION, ...change });
      expect(met).toEqual(every);
    }),
    { numRuns: runs(40) },
  );
});

test('a search by changes runs where only the weft’s start is free', async () => {
  const { found } = await explore({
    ...QUESTION,
    structures: ['2/2 point twill'],
    lengths: [24],
    starts: 'weft',
    show: 3,
  });
  expect(found).toHaveLength(3);
});
