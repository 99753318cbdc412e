import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beginInWords, startInWords } from '../../src/order/laid-order.js';
import type { Question } from '../../src/search/question/question.js';
import { recipesOf } from '../../src/search/space/candidate.js';
import { spaceOf } from '../../src/search/space/space.js';
import { QUESTION } from '../search/question.js';

const GROUND = { pickKinds: ['ground', 'ground'] } as const;
const TABBY = { pickKinds: ['pattern', 'tabby'] } as const;

describe('where orders begin', () => {
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

  test('is said in short in a recipe', () => {
    expect(beginInWords({ by: 'thread', start: [0, 0] })).toBeUndefined();
    expect(beginInWords({ by: 'thread', start: [4, 0] })).toBe('warp from end 5, weft from pick 1');
    expect(beginInWords({ by: 'block', start: [0, 1] })).toBe('warp from unit 1, weft from unit 2');
  });
});

test('the short recipe is the recipe without its orders and where they begin, whatever is asked', () => {
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
      const { recipe, shortRecipe } = recipesOf(candidate, asked);
      const letters = candidate.warp.map((colour) => asked.yarns[colour]!.letter).join('');
      const begins = beginInWords({ by: candidate.family.by, start: candidate.start });
      const parts = recipe.split(', ');
      const orders = [letters, parts.find((part) => part.startsWith('weft '))!, ...(begins?.split(', ') ?? [])];
      for (const part of orders) expect(parts).toContain(part);
      expect(shortRecipe).toBe(parts.filter((part) => !orders.includes(part)).join(', '));
    }),
  );
});
