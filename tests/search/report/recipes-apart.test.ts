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
    expect([...recipesApart(found).values()]).toEqual([
      'DL, thread by thread',
      'DDL, 4 units each, warp from unit 1, weft from unit 2',
    ]);
  });

  test('may be the one without the orders', () => {
    const found = ['4 units each', 'thread by thread'].map((laid) =>
      foundOf(HOUNDS_TOOTH, 1, { recipe: 'DL', shortRecipe: `twill, ${laid}` }),
    );
    expect([...recipesApart(found, ({ shortRecipe }) => shortRecipe).values()]).toEqual([
      '4 units each',
      'thread by thread',
    ]);
  });

  test('is whole where there is nothing to set apart', () => {
    expect([...recipesApart([saying('twill, DL, thread by thread')]).values()]).toEqual([
      'twill, DL, thread by thread',
    ]);
  });
});
