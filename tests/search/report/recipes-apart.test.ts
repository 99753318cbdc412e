import { describe, expect, test } from 'vitest';
import { recipesApart } from '../../../src/search/report/recipes-apart.js';
import { foundOf, HOUNDS_TOOTH } from '../../gallery/trial.js';

describe('the recipe on a card', () => {
  const saying = (recipe: string) => foundOf(HOUNDS_TOOTH, 1, { recipe });

  test('leaves out what all recipes share', () => {
    const found = [
      saying('twill, DL, thread by thread, weft as warp'),
      saying('twill, DDL, 4 units each, weft as warp, warp from unit 1, weft from unit 2'),
    ];
    const { shared, apart } = recipesApart(found);
    expect(shared).toEqual(['twill', 'weft as warp']);
    expect([...apart.values()]).toEqual([
      'DL, thread by thread',
      'DDL, 4 units each, warp from unit 1, weft from unit 2',
    ]);
  });

  test('may be the one without the orders', () => {
    const found = ['4 units each', 'thread by thread'].map((laid) =>
      foundOf(HOUNDS_TOOTH, 1, { recipe: 'DL', shortRecipe: `twill, ${laid}` }),
    );
    expect([...recipesApart(found, ({ shortRecipe }) => shortRecipe).apart.values()]).toEqual([
      '4 units each',
      'thread by thread',
    ]);
  });

  test('is whole where there is one cloth, and nothing where all are made alike', () => {
    const one = saying('twill, DL, thread by thread');
    const alike = saying('twill, DL, thread by thread');
    expect(recipesApart([one])).toEqual({ shared: [], apart: new Map([[one, 'twill, DL, thread by thread']]) });
    expect(recipesApart([one, alike])).toEqual({
      shared: ['twill', 'DL', 'thread by thread'],
      apart: new Map([
        [one, ''],
        [alike, ''],
      ]),
    });
  });
});
