import { describe, expect, test } from 'vitest';
import { differencesOf } from '../../../src/page/boxes/differences.js';
import { foundOf, HOUNDS_TOOTH, LOG_CABIN } from '../../gallery/trial.js';

describe('what a weaver reads', () => {
  test('what tells cloths apart, and what does not', () => {
    const { apart, same } = differencesOf([foundOf(HOUNDS_TOOTH, 1), foundOf(LOG_CABIN, 2)]);
    expect(apart.map(({ name }) => name)).toContain('Turns and mirrors');
    expect(same).toContain('shuttles 2');
  });
});
