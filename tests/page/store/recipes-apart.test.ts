import { describe, expect, test } from 'vitest';
import { recipesApart } from '../../../src/page/store/recipes-apart.js';
import { foundOf, HOUNDS_TOOTH } from '../../gallery/trial.js';

describe('the recipe on a card', () => {
  const saying = (recipe: string) => foundOf(HOUNDS_TOOTH, 1, { recipe });

  test('leaves out what all recipes share', () => {
    const found = [
      saying('twill, DL by thread, weft as warp'),
      saying('twill, DDL by unit ×4, weft as warp, from 1/2'),
    ];
    expect([...recipesApart(found).values()]).toEqual(['DL by thread', 'DDL by unit ×4, from 1/2']);
  });

  test('is whole where there is nothing to set apart', () => {
    expect([...recipesApart([saying('twill, DL by thread')]).values()]).toEqual(['twill, DL by thread']);
  });
});
