import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { caption, floatWords } from '../../../src/gallery/sheet/sheet-caption.js';
import { SMALL } from '../../../src/gallery/sheet/sheet-text.js';
import { canDraw, textWidth } from '../../../src/render/text.js';
import { readsTo } from '../../../src/score/contrast/viewing-distance.js';
import { runs } from '../../long.js';
import { found, HOUNDS_TOOTH } from './hounds-tooth.js';

describe('caption', () => {
  it('reads to the farthest distance at which lightness still spreads by 12', () => {
    expect(readsTo({ '0.6': 37.07, '2': 24.5, '6': 10.28 })).toBe('2');
    expect(readsTo({ '0.6': 37, '2': 24, '6': 12 })).toBe('6');
    expect(readsTo({ '0.6': 11.9, '2': 4, '6': 1 })).toBeNull();
  });

  it('gives the longest float with its length in the unit of the sett', () => {
    const floats = { warpFace: 3, warpBack: 1, weftFace: 1, weftBack: 3, longest: 3, longestMm: 3.81 };
    expect(floatWords(floats, 'inch')).toBe('3 (0.15 in)');
    expect(floatWords(floats, 'cm')).toBe('3 (3.8 mm)');
    expect(floatWords({ ...floats, longest: null, longestMm: null }, 'cm')).toBe('never interlaces');
  });

  it('says recipe, orders in letters by runs, float and distance', () => {
    expect(caption(found(1), 44.5, 4)).toEqual({
      reads: 'clear at 2 m',
      lines: ['2/2 twill by unit', 'warp and weft D4 L4', 'longest float 2 (0.10 in)'],
    });
  });

  it('says each order once, and on a free line the nearest classic', () => {
    const { scores, order } = found(1);
    const cloth = found(1, {
      shortRecipe: '2/2 twill by thread ×2 alternate, from 1/3',
      order: { ...order, warp: 'DDLDL', weft: 'DL', by: 'thread', fill: 'alternate', times: 2, start: [0, 2] },
      scores: { ...scores, novelty: 0.12, nearest: 'hound’s tooth' },
    });
    expect(caption(cloth, 44.5, 4).lines).toEqual([
      '2/2 twill by thread ×2 alternate, from 1/3',
      'warp and weft D4 L4',
      'nearest classic: hound’s tooth, 0.12 away',
      'longest float 2 (0.10 in)',
    ]);
    expect(caption(cloth, 44.5, 3).lines).toHaveLength(3);
  });

  it('never runs out of its column nor beyond its lines', () => {
    const word = fc.string({ unit: fc.constantFrom(...'abcDL0×,'), minLength: 1, maxLength: 40 });
    const recipe = fc.array(word, { minLength: 1, maxLength: 20 }).map((words) => words.join(' '));
    const strands = fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 8, maxLength: 300 });
    fc.assert(
      fc.property(recipe, strands, strands, fc.constantFrom(34.8, 44.5), (said, warp, weft, width) => {
        const { lines } = caption(found(1, { shortRecipe: said, draft: { ...HOUNDS_TOOTH, warp, weft } }), width, 4);
        expect(lines.length).toBeLessThanOrEqual(4);
        for (const line of lines) expect(textWidth(line, SMALL)).toBeLessThanOrEqual(width);
        expect(lines.every((line) => canDraw(line))).toBe(true);
      }),
      { numRuns: runs(50) },
    );
  });
});
