import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { caption, floatWords } from '../../../src/gallery/sheet/sheet-caption.js';
import { SMALL } from '../../../src/gallery/sheet/sheet-text.js';
import { textWidth } from '../../../src/render/text.js';
import { readsTo } from '../../../src/score/contrast/viewing-distance.js';
import { runs } from '../../long.js';
import { canDraw } from '../../render/boxes.js';
import { found, HOUNDS_TOOTH } from './hounds-tooth.js';

describe('caption', () => {
  it('reads to the farthest distance at which lightness still spreads by 12', () => {
    expect(readsTo({ '0.6': 37.07, '2': 24.5, '6': 10.28 })).toBe('2');
    expect(readsTo({ '0.6': 37, '2': 24, '6': 12 })).toBe('6');
    expect(readsTo({ '0.6': 11.9, '2': 4, '6': 1 })).toBeNull();
  });

  it('gives the longest float with its length in the unit of the sett', () => {
    const floats = { warpFace: 3, warpBack: 1, weftFace: 1, weftBack: 3, longest: 3, longestMm: 3.81 };
    expect(floatWords(floats, 'inch')).toBe('3 threads, 0.15 in');
    expect(floatWords(floats, 'cm')).toBe('3 threads, 3.8 mm');
    expect(floatWords({ ...floats, longest: null, longestMm: null }, 'cm')).toBe('never interlaces');
  });

  it('says recipe, threads in letters by runs, float and distance', () => {
    expect(caption(found(1), '2/2 twill, unit by unit', 44.5, 4)).toEqual({
      reads: 'clear at 2 m',
      lines: ['2/2 twill, unit by unit', 'warp and weft D4 L4', 'longest float 2 threads, 0.10 in'],
    });
  });

  it('names the classic that a cloth is or is like, on a free line', () => {
    const { scores } = found(1);
    const lines = (changed: object, most = 4) => caption(found(1, changed), 'thread by thread', 44.5, most).lines;
    const near = { scores: { ...scores, novelty: 0.04, nearest: 'hound’s tooth' } };
    expect(lines(near)[2]).toBe('like hound’s tooth');
    expect(lines(near, 3)).toHaveLength(3);
    expect(lines({ scores: { ...scores, novelty: 0.12, nearest: 'hound’s tooth' } })).toHaveLength(3);
    const cabin = [0, 1, 0, 1, 0, 1, 0, 1, 1, 0, 1, 0, 1, 0, 1, 0];
    expect(lines({ draft: { ...HOUNDS_TOOTH, warp: cabin, weft: cabin } })[2]).toBe('log cabin order');
  });

  it('calls an order one, and says where it begins, if the threads are too many to write', () => {
    const { order } = found(1);
    const warp = Array.from({ length: 60 }, (_, at) => Number((at * at) % 7 < 3));
    const weft = warp.toReversed();
    const laid = { ...order, warp: 'DDLDL', weft: 'DDLDL', by: 'thread', start: [0, 2] } as const;
    const cloth = found(1, { draft: { ...HOUNDS_TOOTH, warp, weft }, order: laid });
    expect(caption(cloth, '4 threads each', 44.5, 4).lines.slice(1, 3)).toEqual([
      'warp and weft order DDLDL',
      'warp from end 1, weft from pick 3',
    ]);
  });

  it('never runs out of its column nor beyond its lines', () => {
    const word = fc.string({ unit: fc.constantFrom(...'abcDL0×,'), minLength: 1, maxLength: 40 });
    const recipe = fc.array(word, { minLength: 1, maxLength: 20 }).map((words) => words.join(' '));
    const strands = fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 8, maxLength: 300 });
    fc.assert(
      fc.property(recipe, strands, strands, fc.constantFrom(34.8, 44.5), (said, warp, weft, width) => {
        const { lines } = caption(found(1, { draft: { ...HOUNDS_TOOTH, warp, weft } }), said, width, 4);
        expect(lines.length).toBeLessThanOrEqual(4);
        for (const line of lines) expect(textWidth(line, SMALL)).toBeLessThanOrEqual(width);
        expect(lines.every((line) => canDraw(line))).toBe(true);
      }),
      { numRuns: runs(50) },
    );
  });
});
