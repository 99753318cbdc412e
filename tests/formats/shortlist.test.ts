import { describe, expect, it, test } from 'vitest';
import { parseShortlist, readBack, shortlistText } from '../../src/formats/shortlist.js';
import { kept, towel, twelve } from '../plan/cloths.js';

describe('a shortlist', () => {
  test('reads back as it was written', () => {
    const cloths = twelve().map((cloth, at) => ({ ...cloth, stars: at % 6, note: `“${at}” <b>` }));
    expect(parseShortlist(shortlistText(cloths), 'kept.json')).toEqual(cloths);
  });

  test.each([
    [(text: string) => text.slice(0, -9), 'kept.json: found text that is not whole JSON'],
    [(text: string) => text.replace('shedlight-shortlist', 'another'), 'kept.json: found another kind of file'],
    [(text: string) => text.replace('"version": 1', '"version": 2'), 'kept.json: found version 2 of a shortlist'],
    [(text: string) => text.replace('"stars":0', '"stars":9'), 'kept.json: candidates.0.stars: found'],
    [(text: string) => text.replace('"hex":"#1f2a44"', '"hex":"#1f2a45"'), 'kept.json: candidates.0.code: found'],
    [(text: string) => text.replace(/("draft":.*?"warp":")D/, '$1X'), 'kept.json: candidates.0.draft.warp: found “X”'],
    [
      (text: string) => text.replace(/("draft":.*?"weft":")D/, '$1'),
      'kept.json: candidates.0.draft.weft: found 19 threads',
    ],
  ])('damage %# is told in one sentence', (damage, said) => {
    expect(() => parseShortlist(damage(shortlistText([towel()])), 'kept.json')).toThrow(said);
  });

  test('a cloth twice is refused', () => {
    expect(() => parseShortlist(shortlistText([towel(), towel()]), 'kept.json')).toThrow(/found \w+ twice/);
  });
});

describe('a cloth', () => {
  it('reads back as it was kept', () => {
    const each = { ...kept('2/2 twill', { warp: 'DDLDL' }), stars: 3, note: 'for the runner' };
    expect(readBack(each, '')).toEqual(each);
  });
});
