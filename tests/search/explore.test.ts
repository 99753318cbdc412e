import { describe, expect, test } from 'vitest';
import { drawdown, isUp } from '../../src/cloth/drawdown.js';
import { colourAt, colourFace } from '../../src/cloth/face.js';
import { FLAT } from '../../src/score/contrast/contrast.js';
import { clothDistance, descriptorOf } from '../../src/score/likeness/descriptor.js';
import { PRESET_NAMES, PRESETS } from '../../src/score/rank/presets.js';
import { answer } from '../../src/search/answer.js';
import { explore } from '../../src/search/explore.js';
import { workerPool } from '../../src/search/pool/worker-pool.js';
import type { Question } from '../../src/search/question/question.js';
import { spaceOf } from '../../src/search/space/space.js';
import { findStructure, weaveOf } from '../../src/structure/catalogue/catalogue.js';
import { sameCloth, search } from '../plain/search.js';
import { QUESTION } from './question.js';

describe('orders of five on 2/2 twill (figures computed once by a separate plain program)', async () => {
  const { counts, found } = await explore(QUESTION);
  test('1024 written, 32 cloths of which 8 flat', () => {
    expect(counts).toMatchObject({ written: 1024, cloths: 24, setAside: { flat: 8 }, exhaustive: true });
    expect(counts.examined).toBe(counts.cloths + counts.equals + counts.setAside.flat);
  });
  test('the first two', () => {
    const [first, second] = found;
    expect(first!.scores.score).toBeCloseTo(0.393850582, 9);
    expect(first!.scores.contrast).toBeCloseTo(0.17659, 6);
    expect(first!.scores.tone).toBeCloseTo(0.105042, 6);
    expect(first!.scores.line).toBeCloseTo(0.141952, 6);
    expect(first!.scores).toMatchObject({ symmetry: 0.5, colourGroup: 'pgg/p2' });
    expect(first!.draft.warp).toHaveLength(20);
    expect(second!.scores.score).toBeCloseTo(0.393716939, 9);
    expect(second!.scores.planeGroup).toBe('pgg');
  });
});

const PLAIN_QUESTIONS: [string, Partial<Question>][] = [
  ['plain weave, 2 to 4 ends, weft own', { structures: ['plain weave'], lengths: [2, 3, 4] }],
  ['2/2 twill, 2 and 3 ends, weft own', { lengths: [2, 3] }],
  ['2/2 twill, 4 ends, weft own', { lengths: [4] }],
  ['1/3 twill, 2 to 4 ends, weft as warp', { structures: ['1/3 twill'], lengths: [2, 3, 4], weft: { rule: 'same' } }],
  ['2/2 twill, by unit, weft as warp', { lengths: [2, 3], by: ['unit'], weft: { rule: 'same' } }],
  ['3/1 twill, 2 to 4 ends, weft as warp', { structures: ['3/1 twill'], lengths: [2, 3, 4], weft: { rule: 'same' } }],
  ['2/1 twill, 2 ends, weft own', { structures: ['2/1 twill'], lengths: [2] }],
  ['2/1 twill, 3 ends, weft as warp', { structures: ['2/1 twill'], lengths: [3], weft: { rule: 'same' } }],
  ['1/2 twill, 2 to 4 ends, weft as warp', { structures: ['1/2 twill'], lengths: [2, 3, 4], weft: { rule: 'same' } }],
  ['basket, 2 and 4 ends, weft as warp', { structures: ['basket'], lengths: [2, 4], weft: { rule: 'same' } }],
  ['basket, 3 ends, weft as warp', { structures: ['basket'], lengths: [3], weft: { rule: 'same' } }],
  ['2/2 point twill, 2 and 3 ends', { structures: ['2/2 point twill'], lengths: [2, 3], weft: { rule: 'same' } }],
  ['2/2 broken twill, 2 ends', { structures: ['2/2 broken twill'], lengths: [2], weft: { rule: 'same' } }],
  ['2/2 rosepath, 2 ends', { structures: ['2/2 rosepath'], lengths: [2], weft: { rule: 'same' } }],
  ['1/3 twill, 2 ends, weft own', { structures: ['1/3 twill'], lengths: [2] }],
  ['1/3 twill, 3 ends ×2', { structures: ['1/3 twill'], lengths: [3], times: [2], weft: { rule: 'same' } }],
  ['plain weave, 5 ends, weft as warp', { structures: ['plain weave'], lengths: [5], weft: { rule: 'same' } }],
  ['plain weave, 6 ends, weft as warp', { structures: ['plain weave'], lengths: [6], weft: { rule: 'same' } }],
  ['2/2 twill, 3 ends ×2', { lengths: [3], times: [2], weft: { rule: 'same' } }],
  ['plain weave, stretched ×2', { structures: ['plain weave'], lengths: [2, 3], times: [2] }],
];

describe('the search finds, ranks and counts what trying every cell of every word finds', () => {
  test.each(PLAIN_QUESTIONS)('%s', async (_, change) => {
    const question = { ...QUESTION, ...change, show: 10_000 };
    const structure = findStructure(question.structures[0]!);
    const weave = weaveOf(structure, structure.profile);
    const cloth = drawdown(weave);
    const rows = weave.treadling.map((__, j) => weave.threading.map((___, i) => (isUp(cloth, j, i) ? 1 : 0)));
    const plain = search({
      weave: rows,
      lengths: question.lengths,
      weft: question.weft.rule === 'same' ? 'same' : 'own',
      times: question.times[0]!,
      unit: question.by[0] === 'unit' ? weave.endUnits[0]! : 1,
      weights: question.rank,
      floatLimit: 7,
    });
    const { counts, found } = await explore(question);
    expect(counts.cloths).toBe(plain.cloths.length);
    expect(found).toHaveLength(plain.cloths.length);
    for (const [place, cloth] of found.entries()) {
      expect(cloth.scores.score).toBeCloseTo(plain.cloths[place]!.score, 7);
    }
    for (const known of plain.cloths) {
      const same = found.filter(({ draft }) => {
        const face = colourFace(drawdown(draft), draft.warp, draft.weft);
        const cells = draft.weft.map((__, j) => draft.warp.map((___, i) => colourAt(face, j, i)));
        return sameCloth(cells, known.cells);
      });
      expect(same).toHaveLength(1);
    }
  });
});

describe('the same question has the same answer with 1, 2 or 7 threads', () => {
  const question: Question = { ...QUESTION, lengths: [2, 3, 4, 5, 6, 7], show: 40 };
  test.each([
    ['scored', question],
    ['bounded', question],
    ['bounded', { ...question, rank: PRESETS.unexpected }],
    ['bounded', { ...question, oneOfEachKind: true }],
  ] as const)('%s', async (way, asked) => {
    const space = { ...spaceOf(asked), way };
    const by = async (threads: number): Promise<string> =>
      JSON.stringify(await answer(asked, space, { pool: () => workerPool(asked, threads, undefined, space) }));
    const one = await by(1);
    expect(await by(2)).toBe(one);
    expect(await by(7)).toBe(one);
  });
});

const FIVES: Question = { ...QUESTION, lengths: [2, 3, 4, 5], show: 1000 };

describe('a way of looking', async () => {
  const plain = await explore(FIVES);
  const codes = new Set(plain.found.map(({ code }) => code));

  test.each(PRESET_NAMES)('%s ranks the same cloths with the same codes, and says why', async (view) => {
    const { found } = await explore({ ...FIVES, rank: PRESETS[view] });
    // Where no contrast is asked for, fine textures come in.
    const shown = new Set(found.filter(({ scores }) => scores.contrast >= FLAT).map(({ code }) => code));
    expect(shown).toEqual(codes);
    expect(found.length > codes.size).toBe(view === 'fine');
    expect(found.map(({ code }) => code)).not.toEqual(plain.found.map(({ code }) => code));
    for (const [place, { why, scores }] of found.entries()) {
      expect(why).toMatch(new RegExp(`^ranked here among the ${view} for: .* [01]\\.\\d\\d; `));
      expect(why).toContain(scores.nearest);
      if (place > 0) expect(scores.score).toBeLessThanOrEqual(found[place - 1]!.scores.score + 1e-9);
    }
  });

  test.each(PRESET_NAMES)(
    '%s never shows a cloth of one yarn alone, which is no texture, however fine',
    async (view) => {
      const orders = [[0], [0, 1]];
      const { found, counts } = await explore({ ...QUESTION, lengths: [], orders, rank: PRESETS[view] });
      const shares = found.map(({ scores }) => scores.darkShare);
      expect([shares.length > 0, Math.min(...shares) > 0, Math.max(...shares) < 1]).toEqual([true, true, true]);
      expect(counts.setAside.flat).toBe(1);
    },
  );

  test('names hound’s tooth whatever is ranked by', async () => {
    const orders = [[0, 0, 0, 0, 1, 1, 1, 1]];
    const { found } = await explore({ ...QUESTION, lengths: [], orders });
    expect(found.map(({ scores }) => scores.nearest)).toEqual(found.map(() => 'hound’s tooth'));
    expect(found[0]!.scores.novelty).toBeCloseTo(0, 9);
    expect(found[0]!.why).toMatch(/; measures the same as hound’s tooth$/);
  });
});

test('one of each kind is the best cloth and then each that looks unlike all shown before it', async () => {
  const all = (await explore(FIVES)).found;
  const { found } = await explore({ ...FIVES, oneOfEachKind: true });
  const looks = new Map(all.map(({ code, draft }) => [code, descriptorOf(draft, FIVES.same)]));
  const shown: string[] = [];
  for (const { code } of all) {
    if (shown.every((before) => clothDistance(looks.get(before)!, looks.get(code)!) >= 0.2)) shown.push(code);
  }
  expect(shown.length).toBeGreaterThan(3);
  expect(found.map(({ code }) => code)).toEqual(shown);
});
