import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findStructure, nameDraft, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { runs } from '../../long.js';

const names = fc.string({ unit: fc.constantFrom(...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'), minLength: 1, maxLength: 8 });

describe('name drafts', () => {
  test('every one is a closed walk from shaft to shaft, the letters in their order', () => {
    fc.assert(
      fc.property(names, fc.boolean(), (name, mirrored) => {
        const { gaps } = nameDraft(name);
        for (let alternative = 0; alternative < 2 ** gaps; alternative++) {
          const draft = nameDraft(name, { alternative, mirrored });
          const { threading } = draft;
          expect(threading.every((shaft, i) => Math.abs(shaft - threading.at(i - 1)!) % 2 === 1)).toBe(true);
          const own = threading.filter((_, i) => !draft.incidental[i]);
          expect(own.slice(0, name.length)).toEqual(draft.letterShafts);
          expect(threading.length).toBe(mirrored ? 2 * (name.length + gaps) - 2 : name.length + gaps);
        }
      }),
      { numRuns: runs(40) },
    );
  });

  test('its profile, woven as overshot, is its threading', () => {
    fc.assert(
      fc.property(names, (name) => {
        const { threading, profile } = nameDraft(name);
        // A walk to and fro on one pair of shafts may begin on either.
        fc.pre(new Set(profile).size > 1);
        expect(weaveOf(findStructure('overshot'), profile).threading.flat()).toEqual(threading);
      }),
    );
  });

  test('the usual choice has no float over seven ends where it can be helped', () => {
    // A and C alone: every gap can take 2 or 4, and 2 throughout would join all ends into one float.
    const { profile } = nameDraft('AAAAAA');
    expect(new Set(profile).size).toBeGreaterThan(1);
    expect(nameDraft('AAAAAA', { alternative: 0 }).threading).toEqual([1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2]);
  });

  test('accents, spaces and signs are left out; a text without letters is refused', () => {
    expect(nameDraft('Ö-l å 7').letters).toBe('OLA');
    expect(() => nameDraft('1234')).toThrow('name draft “1234”: found no letter from A to Z');
  });
});
