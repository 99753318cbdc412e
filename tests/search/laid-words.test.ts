import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recipeOf } from '../../src/search/candidate.js';
import { laidOf, saysStart, startInWords } from '../../src/search/laid-words.js';
import type { Question } from '../../src/search/question.js';
import { spaceOf } from '../../src/search/space.js';
import { QUESTION } from './question.js';

const GROUND = { pickKinds: ['ground', 'ground'] } as const;
const TABBY = { pickKinds: ['pattern', 'tabby'] } as const;

describe('how orders are laid', () => {
  test('is read back from every recipe', () => {
    const question = fc.record({
      structures: fc.constantFrom(['2/2 twill'], ['summer and winter'], ['turned taqueté'], ['overshot']),
      by: fc.constantFrom<Question['by']>(['thread'], ['unit'], ['block']),
      fill: fc.constantFrom<Question['fill']>(['solid'], ['alternate'], ['nest']),
      times: fc.constantFrom([1], [3]),
      weft: fc.constantFrom<Question['weft']>({ rule: 'same' }, { rule: 'exchange' }, { rule: 'fixed', order: [0, 1] }),
      lengths: fc.constantFrom([2], [4]),
    });
    fc.assert(
      fc.property(question, fc.nat(), (made, pick) => {
        fc.pre(!(made.by[0] === 'block' && made.structures[0] === '2/2 twill'));
        const asked = { ...QUESTION, ...made };
        const space = spaceOf(asked);
        const candidate = space.at(pick % space.numbers);
        const recipe = recipeOf(candidate, asked);
        expect(laidOf(recipe)).toEqual({ by: candidate.family.by, start: candidate.start });
        expect(saysStart([recipe])).toBe(candidate.start.some((place) => place > 0));
      }),
    );
  });

  test('also of a warp on the loom; a gamp is no such line', () => {
    const loom = '2/2 twill treadled straight, warp and tie-up on the loom, weft DDL, from 1/3';
    expect(laidOf(loom)).toEqual({ by: 'thread', start: [0, 2] });
    expect(laidOf('gamp of 5 × 5 sections, 2/2 twill')).toBeUndefined();
  });

  test('is said in whole words: by thread, by unit, and where tabby is passed over', () => {
    expect(startInWords({ by: 'thread', start: [0, 0] }, GROUND)).toBeUndefined();
    expect(startInWords({ by: 'thread', start: [4, 2] }, GROUND)).toBe(
      'warp order begins on end 5, weft order on pick 3',
    );
    expect(startInWords({ by: 'thread', start: [4, 0] }, TABBY)).toBe(
      'warp order begins on end 5, weft order on pick 1, tabby not counted',
    );
    expect(startInWords({ by: 'unit', start: [4, 4] }, TABBY)).toBe(
      'warp order begins on unit 5, weft order on unit 5',
    );
  });
});
