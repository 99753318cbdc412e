import { describe, expect, test } from 'vitest';
import type { PiecePlan } from '../../../src/plan/piece/piece-plan.js';
import type { WarpPlan } from '../../../src/plan/piece/warp-plan.js';
import { yarnNeeded } from '../../../src/plan/piece/yarn-needed.js';
import { WEFT_EXTRA } from '../../../src/plan/yarn/yarn-amounts.js';
import { INCH } from '../../../src/words/measure.js';
import { kept, YARNS } from '../cloths.js';

/** A warp of 100 D and 60 L, 4000 mm long, with one piece of 100 picks at 20 to the inch in each of two cloths. */
const WIDTH = 10 * INCH;
const WOUND = [
  { letter: 'D', ends: 100 },
  { letter: 'L', ends: 60 },
];
const LENGTH = { wind: 4000, offLoom: 20 * INCH } as WarpPlan['length'];
const piece = (weft: string, wefts: readonly number[]): PiecePlan => {
  const { draft } = kept('2/2 twill', { warp: 'DDLL', weft });
  const shuttles = wefts.map((mm, yarn) => ({ yarn, kind: 'ground', weft: mm }));
  return { draft, picks: 100, pieces: 1, shuttles } as unknown as PiecePlan;
};
const needed = (pieces: readonly PiecePlan[], length = LENGTH) =>
  yarnNeeded(pieces[0]!.draft, pieces, WOUND, length, WIDTH).map(({ letter, warp, weft }) => [letter, warp, weft]);

describe('the yarn of a warp', () => {
  test('what is woven between the pieces takes the weft that comes first', () => {
    // 400 picks in 20 in, 200 of them in pieces: 200 picks of 10 in, and what the weft takes up.
    const between = 200 * WIDTH * (1 + WEFT_EXTRA);
    const [dark, light] = [piece('DL', [1000, 2000]), piece('LD', [300, 400])];
    expect(needed([dark, light])).toEqual([
      ['D', 400_000, 1300 + between],
      ['L', 240_000, 2400],
    ]);
    expect(needed([light, dark])).toEqual([
      ['D', 400_000, 1300],
      ['L', 240_000, 2400 + between],
    ]);
  });

  test('pieces that fill the length leave nothing between, and each is counted as often as it is woven', () => {
    const twice = { ...piece('DL', [1000, 2000]), pieces: 4 };
    const filled = [
      ['D', 400_000, 4000],
      ['L', 240_000, 8000],
    ];
    expect(needed([twice])).toEqual(filled);
    expect(needed([twice], { ...LENGTH, offLoom: 5 * INCH })).toEqual(filled);
  });

  test('a yarn that is not wound and not woven is not needed', () => {
    const { draft, ...rest } = piece('DL', [1000, 2000]);
    const three = { ...draft, yarns: [...YARNS, { letter: 'C', name: 'clay', hex: '#aa5533' }] };
    expect(needed([{ ...rest, draft: three } as PiecePlan]).map(([letter]) => letter)).toEqual(['D', 'L']);
  });
});
