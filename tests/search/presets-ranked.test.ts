import { describe, expect, test } from 'vitest';
import { PRESET_NAMES, PRESETS } from '../../src/score/rank/presets.js';
import { PARTS } from '../../src/score/rank/rank.js';
import { nicheAt, nicheInWords, nicheOf } from '../../src/search/evaluate/niche.js';
import { explore } from '../../src/search/explore.js';
import type { Question } from '../../src/search/question/question.js';
import { spaceOf } from '../../src/search/space/space.js';
import { QUESTION } from './question.js';

const FIVES: Question = { ...QUESTION, lengths: [2, 3, 4, 5], show: 1000 };

describe('a way of looking', async () => {
  const plain = await explore(FIVES);
  const codes = new Set(plain.found.map(({ code }) => code));

  test.each(PRESET_NAMES)('%s ranks the same cloths with the same codes, and says why', async (view) => {
    const { found } = await explore({ ...FIVES, rank: PRESETS[view] });
    expect(new Set(found.map(({ code }) => code))).toEqual(codes);
    expect(found.map(({ code }) => code)).not.toEqual(plain.found.map(({ code }) => code));
    for (const [place, { why, scores }] of found.entries()) {
      expect(why).toMatch(new RegExp(`^ranked here among the ${view} for: .* [01]\\.\\d\\d; `));
      expect(why).toContain(scores.nearest);
      if (place > 0) expect(scores.score).toBeLessThanOrEqual(found[place - 1]!.scores.score + 1e-9);
    }
  });

  test('names hound’s tooth whatever is ranked by', async () => {
    const orders = [[0, 0, 0, 0, 1, 1, 1, 1]];
    const { found } = await explore({ ...QUESTION, lengths: [], orders });
    expect(found.map(({ scores }) => scores.nearest)).toEqual(found.map(() => 'hound’s tooth'));
    expect(found[0]!.scores.novelty).toBeCloseTo(0, 9);
    expect(found[0]!.why).toMatch(/; measures the same as hound’s tooth$/);
  });

  test('that no bound is known for is never searched by bounds', () => {
    const lengths = [2, 3, 4, 5, 6, 7, 8, 9, 10];
    expect(spaceOf({ ...QUESTION, lengths }).way).toBe('bounded');
    for (const view of PRESET_NAMES) {
      const loose = PARTS.some((part) => !['contrast', 'symmetry', 'float'].includes(part) && PRESETS[view][part] > 0);
      expect(spaceOf({ ...QUESTION, lengths, rank: PRESETS[view] }).way).toBe(loose ? 'scored' : 'bounded');
    }
    expect(spaceOf({ ...QUESTION, lengths, oneOfEachKind: true }).way).toBe('scored');
  });
});

test('one of each kind is the first of every kind in the ranking, and says which', async () => {
  const all = (await explore(FIVES)).found;
  const kindOf = ({ draft, scores }: (typeof all)[number]): number => {
    const smallest = (words: string[]): number => {
      let period = 1;
      while (words.some((word, s) => word !== words[(s + period) % words.length])) period++;
      return period;
    };
    const up = draft.treadling.map((treadles, j) => {
      const lifted = new Set(treadles.flatMap((treadle) => draft.tieUp[treadle - 1]!));
      return draft.threading.map((shafts, i) => (shafts.some((s) => lifted.has(s)) ? draft.warp[i]! : draft.weft[j]!));
    });
    const picks = smallest(up.map(String));
    const ends = smallest(draft.warp.map((_, i) => String(up.map((row) => row[i]!))));
    return nicheOf({ ends, picks, darkShare: scores.darkShare, symmetry: scores.symmetry }, true);
  };
  const kinds = all.map(kindOf);
  const firsts = all.filter((_, place) => kinds.indexOf(kinds[place]!) === place);
  const { found } = await explore({ ...FIVES, oneOfEachKind: true });
  expect(found.map(({ code }) => code)).toEqual(firsts.map(({ code }) => code));
  for (const [place, { why }] of found.entries()) {
    expect(why).toContain(`the best of its kind (${nicheInWords(kindOf(firsts[place]!), true)}); ranked here for: `);
  }
});

test('a kind in words', () => {
  const number = nicheOf({ ends: 20, picks: 12, darkShare: 0.35, symmetry: 0.5 }, false);
  expect(nicheAt(number)).toEqual({ size: 5, dark: 3, symmetry: 2 });
  expect(nicheInWords(number, false)).toBe('motif of 17 to 32 threads, 30 to 40 % dark, symmetry 0.5');
  expect(nicheInWords(number, true)).toBe('motif of 17 to 32 threads, 30 to 40 % dark (or light), symmetry 0.5');
  const half = nicheOf({ ends: 1, picks: 1, darkShare: 0.5, symmetry: 0 }, true);
  expect(nicheInWords(half, true)).toBe('motif of 1 thread, half dark, symmetry 0');
});
