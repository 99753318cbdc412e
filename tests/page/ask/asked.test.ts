import { describe, expect, test } from 'vitest';
import { type Asked, addressOfAsked, askedOfAddress, fieldText, questionText } from '../../../src/page/ask/asked.js';
import type { Question } from '../../../src/search/question/question.js';
import { readQuestion, resolvedQuestion } from '../../../src/search/question/read-question.js';

const read = (asked: Asked): Question =>
  readQuestion({ text: questionText(asked), file: 'q.yaml', flags: {} }, () => {
    throw new Error('no draft is asked for');
  });

describe('a question asked in the page', () => {
  const typed = { structure: ['2/2 twill'], lengths: '2-5', 'name draft': '', limits: 'float 3/8 in, repeat 200' };

  test('is read as the command reads a file', () => {
    expect(questionText(typed)).toBe('structure: ["2/2 twill"]\nlengths: "2-5"\nlimits: "float 3/8 in, repeat 200"\n');
    const { lengths, limits } = read(typed);
    expect([lengths, limits.repeat]).toEqual([[2, 3, 4, 5], 200]);
    expect((limits.float as { mm: number }).mm).toBeCloseTo(9.525, 9);
  });

  test.each([
    typed,
    { structure: ['halvdräll, float of five'], loom: 'rising, 4 shafts, 6 treadles', sett: '20/18 per cm' },
    {
      structure: ['overshot'],
      'name draft': 'INDIGO, draft 3, mirrored',
      loom: 'sinking, heddles 120 90 80 70, 32 in',
    },
    { structure: ['crackle'], profile: 'A A B', orders: 'DL, D3 L', same: 'shift', rank: 'contrast 3, symmetry 2' },
  ])('a gallery’s question is one: as it is stored, and as its fields say it: %j', (asked) => {
    const question = read(asked);
    const stored = resolvedQuestion(question) as Asked;
    expect(read(stored)).toEqual(question);
    const { structure, yarns, ...others } = stored;
    const said = Object.entries(others).map(([key, value]) => [key, fieldText(key, value)]);
    expect(read({ structure, yarns, ...Object.fromEntries(said) })).toEqual(question);
  });

  test('is held by the address', () => {
    expect(askedOfAddress(`${addressOfAsked({ asked: typed })}&size=actual`)).toEqual({ asked: typed });
    const own = { name: 'mine.wif', bytes: Uint8Array.of(0, 65, 200, 255) };
    const of = { asked: { draft: 'mine.wif', weft: 'own' }, own };
    expect(askedOfAddress(addressOfAsked(of))).toEqual(of);
    const onTheLoom = { ...of, asked: { 'on the loom': 'mine.wif' } };
    expect(askedOfAddress(addressOfAsked(onTheLoom))).toEqual(onTheLoom);
    const large = addressOfAsked({ ...of, own: { ...own, bytes: new Uint8Array(30_000) } });
    expect(askedOfAddress(large)).toEqual({ asked: of.asked });
    for (const hash of [
      '',
      'size=actual',
      'ask=%5B1%5D',
      'ask=torn%7B',
      'ask=7',
      'ask=%7B%22draft%22%3A%22a%22%7D&draft=%21',
    ]) {
      expect(askedOfAddress(hash)).toBeUndefined();
    }
  });
});
