import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { colourFace } from '../../../src/cloth/face.js';
import { values } from '../../../src/colour/yarn.js';
import { codeOf } from '../../../src/score/symmetry/cloth-code.js';
import { evaluator } from '../../../src/search/evaluate/evaluate.js';
import { NICHES, nicheOf } from '../../../src/search/evaluate/niche.js';
import type { Question } from '../../../src/search/question/question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { Archive } from '../../../src/search/strategy/archive.js';
import { cellsOf } from '../../faces.js';
import { runs } from '../../long.js';
import { firstOfEachNiche, nicheOfCells } from '../../plain/niche.js';
import { QUESTION } from '../question.js';

describe('a niche', () => {
  test.each([
    [
      { ends: 1, picks: 1, darkShare: 0, symmetry: 0 },
      { size: 0, dark: 0, symmetry: 0 },
    ],
    [
      { ends: 4, picks: 3, darkShare: 0.3, symmetry: 0.25 },
      { size: 2, dark: 3, symmetry: 1 },
    ],
    [
      { ends: 5, picks: 8, darkShare: 0.1 + 0.2, symmetry: 0.5 },
      { size: 3, dark: 3, symmetry: 2 },
    ],
    [
      { ends: 400, picks: 80, darkShare: 1, symmetry: 1 },
      { size: 9, dark: 9, symmetry: 4 },
    ],
  ])('%j', (traits, niche) => {
    const { size, dark, symmetry } = niche;
    expect(nicheOf(traits, false)).toBe((10 * size + dark) * 5 + symmetry);
    expect(nicheOf(traits, false)).toBeLessThan(NICHES);
  });

  test('is the same whichever colour is dark, where they may change places', () => {
    const traits = { ends: 8, picks: 8, symmetry: 0.25 };
    expect(nicheOf({ ...traits, darkShare: 0.3 }, true)).toBe(nicheOf({ ...traits, darkShare: 0.7 }, true));
    expect(nicheOf({ ...traits, darkShare: 0.3 }, false)).not.toBe(nicheOf({ ...traits, darkShare: 0.7 }, false));
  });
});

const RED = { letter: 'R', name: 'madder', hex: '#a0522d' };

/** Small questions in which sizes, shares of dark and symmetries of all kinds come up. */
const QUESTIONS: readonly (readonly [string, Partial<Question>])[] = [
  ['2/2 twill', { lengths: [2, 3, 4] }],
  ['without exchange', { structures: ['plain weave'], lengths: [2, 3, 4], same: ['mirror', 'half-turn'] }],
  ['yarns of other lightness, three of them', { yarns: [...QUESTION.yarns, RED], lengths: [2, 3, 4] }],
  ['by unit', { structures: ['turned twill'], by: ['unit'], lengths: [2, 3] }],
  ['another sett', { structures: ['basket'], lengths: [2, 3, 4], sett: { ends: 20, picks: 15, per: 'inch' } }],
];

describe('niches are those found cell by cell, and so is the best of each', () => {
  test.each(QUESTIONS)('%s', (_, change) => {
    const question: Question = { ...QUESTION, limits: { float: { threads: 30 }, repeat: 400 }, ...change };
    const space = spaceOf(question);
    const asked = {
      values: values(question.yarns),
      exchange: question.same.includes('exchange'),
      square: question.sett.ends === question.sett.picks,
    };
    const { evaluate } = evaluator(question);
    const code = (index: number): string => codeOf(draftOf(space.at(index), question));
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(space.numbers - 1), { minLength: 1, maxLength: 20 }), (numbers) => {
        const batch = evaluate(numbers.map((index) => [index, space.at(index)]));
        const archive = new Archive((a, b) => a - b);
        archive.absorb(batch);
        for (let at = 0; at < batch.length; at++) {
          const draft = draftOf(space.at(batch.index[at]!), question);
          // Cell by cell, symmetry takes too long on large cloths.
          if (Math.max(draft.warp.length, draft.weft.length) > 12) continue;
          const cells = cellsOf(colourFace(drawdown(draft), draft.warp, draft.weft));
          expect(batch.niche[at]).toBe(nicheOfCells(cells, asked));
        }
        const ranking = archive.best(batch.length + 1, code);
        expect(archive.bestOfEachNiche(NICHES, code)).toEqual(firstOfEachNiche(ranking));
      }),
      { numRuns: runs(5) },
    );
  });
});
