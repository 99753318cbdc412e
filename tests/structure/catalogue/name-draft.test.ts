import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { holdsTogether } from '../../../src/cloth/holds-together.js';
import {
  findStructure,
  letterBlocks,
  nameDraft,
  spelledStructure,
  weaveOf,
} from '../../../src/structure/catalogue/catalogue.js';
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
          // One letter, or two that take turns on neighbouring shafts, get two ends more.
          const few = name.length === 1 || (gaps === 0 && new Set(draft.letterShafts).size === 2);
          const ends = name.length + gaps + (few ? 2 : 0);
          expect(threading.length).toBe(mirrored ? 2 * ends - 2 : ends);
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

  test.each(['A', 'Z', 'EVA', 'ANNA', 'Räven', 'Øl', 'AB', 'OLOLOL', 'AAAAAAAAAAAAAAAA'])(
    'the usual draft of %s holds together',
    (name) => {
      const { profile } = nameDraft(name);
      expect(holdsTogether(drawdown(weaveOf(findStructure('overshot'), profile)))).toBe(true);
    },
  );

  test('the usual choice has the shortest floats over seven ends, then the fewest blocks of one step', () => {
    // Two ends that follow one another on the same two shafts are one step; a block of n steps floats over n + 1 ends.
    const costOf = ({ threading }: { threading: readonly number[] }): number => {
      const steps = threading.map((shaft, i) => [shaft, threading.at(i - 1)!].sort().join('-'));
      const start = Math.max(
        0,
        steps.findIndex((step, i) => step !== steps.at(i - 1)),
      );
      const blocks = [...steps.slice(start), ...steps.slice(0, start)]
        .join(' ')
        .match(/(\S+)(?: \1)*/g)!
        .map((block) => block.split(' ').length);
      const tooLong = new Set(steps).size === 1 ? 1e6 : Math.max(0, Math.max(...blocks) + 1 - 7);
      return 1000 * tooLong + blocks.filter((steps) => steps === 1).length;
    };
    let chosen = 0;
    fc.assert(
      fc.property(names, (name) => {
        const { gaps, alternative } = nameDraft(name);
        fc.pre(gaps > 0 && name.length > 1);
        const costs = Array.from({ length: 2 ** gaps }, (_, k) => costOf(nameDraft(name, { alternative: k })));
        expect(alternative).toBe(costs.indexOf(Math.min(...costs)));
        if (alternative > 0) chosen++;
      }),
    );
    expect(chosen).toBeGreaterThan(20);
  });

  test('letters name blocks in rotation, as many as there are', () => {
    expect(letterBlocks('Indigo', ['A', 'B']).join('')).toBe('ABBAAA');
    expect(letterBlocks('Indigo', ['A', 'B', 'C', 'D']).join('')).toBe('ABDACC');
  });

  test('a straight twill takes the steps of a name and keeps its treadling', () => {
    const twill = spelledStructure(findStructure('1/3 twill'))!;
    const { threading, profile } = nameDraft('OVERSHOT');
    const weave = weaveOf(twill.structure, profile, { treadled: ['A'] });
    expect(weave.threading.flat()).toEqual(threading);
    expect(weave.treadling.flat()).toEqual([1, 2, 3, 4]);
    expect(spelledStructure(findStructure('2/2 point twill'))).toBeUndefined();
    expect(spelledStructure(findStructure('plain'))).toBeUndefined();
  });

  test.each([
    ['Øl', 'OL'],
    ['Søren', 'SOREN'],
    ['Æbleskiver', 'AEBLESKIVER'],
    ['Łódź', 'LODZ'],
    ['straße', 'STRASSE'],
    ['Işıl', 'ISIL'],
    ['Þóra Œuvre Đặng', 'THORAOEUVREDANG'],
  ])('%s is drafted as %s', (name, letters) => {
    expect(nameDraft(name).letters).toBe(letters);
  });

  test('every letter of the Latin alphabets has base letters or is named, and none vanishes', () => {
    for (let code = 0xc0; code < 0x250; code++) {
      const letter = String.fromCodePoint(code);
      if (!/^\p{L}$/u.test(letter)) continue;
      try {
        expect(nameDraft(`A${letter}`).letters.length, letter).toBeGreaterThan(1);
      } catch (problem) {
        expect((problem as Error).message).toContain('expected letters of a Latin alphabet');
      }
    }
  });

  test('accents, spaces and signs are left out; a text without letters is refused', () => {
    expect(() => nameDraft('Иван')).toThrow('found “И”; expected letters of a Latin alphabet');
    expect(nameDraft('Ö-l å 7').letters).toBe('OLA');
    expect(() => nameDraft('1234')).toThrow('name draft “1234”: found no letter from A to Z');
  });
});
