import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Draft, EVEN_WIDTHS } from '../../../src/draft/draft.js';
import { caption, floatWords } from '../../../src/gallery/sheet/sheet-caption.js';
import { SMALL } from '../../../src/gallery/sheet/sheet-text.js';
import { canDraw, textWidth } from '../../../src/render/text.js';
import { readsTo } from '../../../src/score/contrast/viewing-distance.js';
import type { Found } from '../../../src/search/strategy/outcome.js';
import { runs } from '../../long.js';

const four = [0, 0, 0, 0, 1, 1, 1, 1];
const eight = [[1], [2], [3], [4], [1], [2], [3], [4]];

const HOUNDS_TOOTH: Draft = {
  threading: eight,
  tieUp: [
    [1, 2],
    [2, 3],
    [3, 4],
    [4, 1],
  ],
  treadling: eight,
  pickKinds: four.map(() => 'ground'),
  endUnits: [4, 4],
  pickUnits: [4, 4],
  widths: EVEN_WIDTHS,
  yarns: [
    { letter: 'D', name: 'navy', hex: '#1f2a44' },
    { letter: 'L', name: 'natural', hex: '#efe6d2' },
  ],
  warp: four,
  weft: four,
  sett: { ends: 20, picks: 20, per: 'inch' },
};

function found(rank: number, more: Partial<Found> = {}): Found {
  return {
    rank,
    code: `code${rank}`,
    recipe: '2/2 twill, DL by unit, weft as warp',
    shortRecipe: '2/2 twill by unit',
    why: 'ranked here for: contrast 0.32',
    structure: '2/2 twill',
    redraw: [],
    draft: HOUNDS_TOOTH,
    order: { warp: 'DL', weft: 'DL', by: 'unit', fill: 'solid', times: 1, start: [0, 0] },
    scores: {
      score: 0.4,
      contrast: 0.3207,
      tone: 0.3183,
      line: 0.0385,
      figure: 0.2461,
      darkShare: 0.5,
      solid: 0,
      sharp: 0.33,
      bits: 3.44,
      shapes: 0,
      unlike: 1,
      symmetry: 0.25,
      operations: [],
      shiftExchange: true,
      planeGroup: 'p1',
      colourGroup: 'p1/p1',
      floats: { warpFace: 2, warpBack: 2, weftFace: 2, weftBack: 2, longest: 2, longestMm: 2.54 },
      reads: { '0.6': 37.07, '2': 24.5, '6': 10.28 },
      easyTo: 2.3285,
      goneBy: 17.46,
    },
    ease: {
      warpChanges: 2,
      ends: { D: 4, L: 4 },
      winding: [],
      shuttles: 2,
      weftChanges: 2,
      longestCarry: 4,
      sameSide: true,
    },
    equals: 3,
    nearTwin: null,
    ...more,
  };
}

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
