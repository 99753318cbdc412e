import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { type Floats, floatsOf } from '../../../src/cloth/floats.js';
import type { FloatLimit } from '../../../src/score/model/float-limit.js';
import { exceedsFloat, nearerFloats } from '../../../src/score/rank/rank.js';
import { explore } from '../../../src/search/explore.js';
import type { Question } from '../../../src/search/question/question.js';
import { floatRemedy } from '../../../src/search/report/float-remedy.js';
import { floatRemedyInWords } from '../../../src/search/report/remedy-words.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { findStructure } from '../../../src/structure/catalogue/catalogue.js';
import { runs } from '../../long.js';
import { QUESTION } from '../question.js';

/** Monk's belt, the colour order being the block order, within half an inch. */
const BELT: Question = {
  ...QUESTION,
  structures: ['monk’s belt'],
  lengths: [],
  orders: [[0, 1, 0, 0, 1]],
  weft: { rule: 'same' },
  by: ['block'],
  times: [4, 8],
  sett: { ends: 20, picks: 40, per: 'inch' },
  limits: { ...QUESTION.limits, float: { mm: 12.7 } },
};

/** The longest floats of every candidate, one draft after the other. */
function everyFloats(question: Question): Floats[] {
  const space = spaceOf(question);
  return Array.from({ length: space.numbers }, (_, index) => {
    const draft = draftOf(space.at(index), question);
    return floatsOf(drawdown(draft), draft.sett);
  });
}

describe('what would bring floats under the limit', () => {
  // 4k ends for k pairs an element, 0.05 in an end at 20 ends to the inch (common practice, no source).
  test('monk’s belt of 40 and 80 ends: how long, and three ways out', async () => {
    const outcome = await explore(BELT);
    expect(outcome.found).toEqual([]);
    expect(outcome.nearestFloats).toMatchObject({ longest: 16, weftFace: 16 });
    expect(floatRemedyInWords(BELT, outcome)).toBe(
      'The cloth nearest to the limit has a float of 16 ends = 0.80 in, over the limit of 0.5 in; within the limit would be ' +
        'a smaller size (×2), a closer sett in finer yarn (32 ends and 64 picks per inch), or a structure whose floats ' +
        'do not grow with the block, halvdräll (3 threads) or summer and winter (3 threads).',
    );
  });

  // Each case is decided by one thing alone, named beside it, as the catalogue's own figures show.
  test.each([
    ['overshot', 5, ['crackle', 'halvdräll'], 'four blocks as in overshot come before two'],
    ['huck', 5, ['2/2 herringbone', '2/2 broken twill'], 'where floats grow, floats of two come before longer ones'],
    ['M’s and O’s', 5, ['huck with M’s and O’s', 'Bronson lace'], 'where they do not, the nearest of as many shafts'],
    [
      'turned twill',
      3,
      ['turned taqueté by shafts', 'turned twill of three'],
      'one shaft count, the next in the catalogue',
    ],
    ['2/1 twill', 2, ['1/2 twill', '2/2 twill'], 'three shafts come before four'],
    ['plain weave', 5, ['2/1 twill', '1/2 twill'], 'three shafts are nearer to two than four are'],
    ['crackle', 5, ['halvdräll', 'summer and winter'], 'pattern and tabby picks come before ground alone'],
  ])('the likest structure first: %s within %i threads', (structure, threads, names, why) => {
    const question: Question = {
      ...BELT,
      structures: [structure],
      by: [findStructure(structure).blocks.length === 1 ? 'thread' : 'block'],
      times: [3],
      limits: { ...BELT.limits, float: { threads } },
    };
    const nearest: Floats = { longest: 99, longestMm: null } as Floats;
    expect(
      floatRemedy(question, nearest).structures.map(({ name }) => name),
      why,
    ).toEqual(names);
  });

  test('nothing is said where most are within it', async () => {
    const two = { ...BELT, times: [1, 2, 4] };
    const outcome = await explore(two);
    expect(outcome.nearestFloats).toMatchObject({ longest: 16 });
    expect(floatRemedyInWords(two, outcome)).toBeUndefined();
  });

  test('every way that is named does bring the floats under it, and the next larger one does not', async () => {
    const property = fc.asyncProperty(
      fc.constantFrom('monk’s belt', 'overshot', 'spot Bronson', '1/3 broken twill', 'turned twill'),
      fc.constantFrom<FloatLimit>({ threads: 2 }, { threads: 5 }, { mm: 6 }, { mm: 11 }),
      fc.integer({ min: 2, max: 7 }),
      fc.boolean(),
      async (structure, float, wide, isByBlock) => {
        const question: Question = {
          ...BELT,
          structures: [structure],
          limits: { ...QUESTION.limits, float },
          ...(isByBlock
            ? { times: [wide] }
            : {
                by: ['unit'],
                times: [1],
                profile: ['A', 'B'].flatMap((block) => new Array<string>(wide).fill(block)),
              }),
        };
        const { nearestFloats, counts } = await explore(question, { workers: 1 });
        fc.pre(nearestFloats !== undefined && counts.cloths === 0);
        const { times, run, sett, structures } = floatRemedy(question, nearestFloats!);
        const within = async (changed: Partial<Question>): Promise<boolean> => {
          const { setAside, examined } = (await explore({ ...question, ...changed }, { workers: 1 })).counts;
          return setAside.float + setAside.unsound < examined;
        };
        const profile = (most: number): string[] => ['A', 'B'].flatMap((block) => new Array<string>(most).fill(block));
        if (times !== undefined) {
          expect(times).toBeLessThan(wide);
          expect([await within({ times: [times] }), await within({ times: [times + 1] })]).toEqual([true, false]);
        }
        if (run !== undefined) {
          expect(run).toBeLessThan(wide);
          expect([await within({ profile: profile(run) }), await within({ profile: profile(run + 1) })]).toEqual([
            true,
            false,
          ]);
        }
        if (sett !== undefined) expect(await within({ sett })).toBe(true);
        for (const { name, floats } of structures) {
          expect(exceedsFloat(floats, float)).toBe(false);
          expect(await within({ structures: [name] })).toBe(true);
        }
      },
    );
    await fc.assert(property, { numRuns: runs(10) });
  });

  test('a block order that the colour order chooses has no shorter run', () => {
    const question: Question = { ...BELT, profile: 'order', times: [1] };
    expect(floatRemedy(question, everyFloats(BELT)[0]!).run).toBeUndefined();
    // Two ends a unit, twenty to the inch: five units are half an inch.
    const given: Question = { ...BELT, profile: ['A', 'A', 'A', 'A', 'A', 'A', 'B'], by: ['unit'], times: [1] };
    expect(floatRemedy(given, everyFloats(given)[0]!).run).toBe(5);
  });

  test('the floats that come nearest are the shortest of all that are too long', async () => {
    const question = { ...BELT, orders: [], lengths: [2, 3, 4], weft: { rule: 'own' } as const, times: [2, 3] };
    const float = question.limits.float as { mm: number };
    const tooLong = everyFloats(question).filter((floats) => exceedsFloat(floats, float));
    const shortest = Math.min(...tooLong.flatMap(({ longestMm }) => longestMm ?? []));
    const one = await explore(question, { workers: 1 });
    expect(one.nearestFloats!.longestMm).toBe(shortest);
    expect((await explore(question, { workers: 3 })).nearestFloats).toEqual(one.nearestFloats);
    expect(tooLong.reduce<Floats | undefined>((a, b) => nearerFloats(a, b, float), undefined)!.longestMm).toBe(
      shortest,
    );
    expect(tooLong.reduceRight<Floats | undefined>((a, b) => nearerFloats(a, b, float), undefined)).toEqual(
      tooLong.reduce<Floats | undefined>((a, b) => nearerFloats(a, b, float), undefined),
    );
  });
});
