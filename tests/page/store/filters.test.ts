import { describe, expect, test } from 'vitest';
import { holds, searchedText } from '../../../src/page/store/filters.js';
import { foundOf, HOUNDS_TOOTH } from '../../gallery/trial.js';

describe('find', () => {
  const text = searchedText(foundOf(HOUNDS_TOOTH, 1));

  test.each(['hound’s tooth', 'HALF dark', 'night blue', 'DDDD', 'swap shifted', 'longest float 2'])(
    'meets what is said of a cloth: %s',
    (words) => expect(holds(text, words)).toBe(true),
  );

  test.each(['log cabin', 'half dark crimson', '9 picks'])('passes over what is not: %s', (words) =>
    expect(holds(text, words)).toBe(false),
  );
});
