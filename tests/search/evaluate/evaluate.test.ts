import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { colourFace } from '../../../src/cloth/face.js';
import { DEFAULT_RANK, PARTS, type Weights } from '../../../src/score/parts/parts.js';
import { PRESETS } from '../../../src/score/rank/presets.js';
import { comparable } from '../../../src/score/rank/rank.js';
import { measuredClassics, scoreDraft } from '../../../src/score/score.js';
import { clothKey } from '../../../src/score/symmetry/canonical-cloth.js';
import { evaluator } from '../../../src/search/evaluate/evaluate.js';
import type { Question } from '../../../src/search/question/question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import type { Family } from '../../../src/search/space/family.js';
import { memoized } from '../../../src/search/space/memoize.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { runs } from '../../long.js';
import { QUESTION } from '../question.js';

const RED = { letter: 'R', name: 'madder', hex: '#a0522d' };
const EVERY_PART = Object.fromEntries(PARTS.map((part, k) => [part, k + 1])) as Weights;
const LIMITS = { float: { threads: 30 }, repeat: 400 };

const QUESTIONS: readonly [string, Partial<Question>][] = [
  ['2/2 twill, by thread, several lengths', { lengths: [2, 3, 4, 8] }],
  ['plain weave, where kinds merge most', { structures: ['plain weave'], lengths: [2, 3, 4, 6], rank: EVERY_PART }],
  ['two structures and two sizes', { structures: ['2/2 twill', 'overshot'], lengths: [2, 3, 5], times: [1, 2] }],
  [
    'by unit and alternating',
    { structures: ['turned twill'], by: ['unit'], fill: ['solid', 'alternate'], lengths: [4] },
  ],
  ['orders that choose the blocks', { structures: ['summer and winter'], by: ['block'], lengths: [3, 4] }],
  ['three yarns', { yarns: [...QUESTION.yarns, RED], lengths: [5, 6], rank: PRESETS.lively }],
  ['nested, weft exchanged', { fill: ['nest'], lengths: [3, 4], weft: { rule: 'exchange' } }],
  ['another sett, quarter turns', { sett: { ends: 20, picks: 15, per: 'inch' }, same: ['quarter-turn', 'mirror'] }],
];

/** A random-looking walk over whole numbers below `n` that meets each again after others. */
const walk = (n: number, steps: number): number[] =>
  Array.from({ length: steps }, (_, k) => ((k % 2 === 0 ? k : 3 * k + 1) * 7919) % n);

describe('a candidate is scored the same after any others as alone and from its draft', () => {
  test.each(QUESTIONS)('%s', (_, change) => {
    const question: Question = { ...QUESTION, limits: LIMITS, rank: DEFAULT_RANK, ...change };
    const space = spaceOf(question);
    const numbers = walk(space.numbers, runs(60));
    const batch = evaluator(question).evaluate(numbers.map((index) => [index, space.at(index)]));
    expect(batch.length).toBeGreaterThan(numbers.length / 4);
    const classicsOf = memoized(1, (family: Family) => measuredClassics(family.weave([0], [0]), question.sett));
    for (let at = 0; at < batch.length; at++) {
      const candidate = space.at(batch.index[at]!);
      const draft = draftOf(candidate, question);
      const face = colourFace(drawdown(draft), draft.warp, draft.weft);
      const classics = question.rank.novelty > 0 ? classicsOf(candidate.family) : [];
      const { scores, ease } = scoreDraft(draft, { weights: question.rank, floatLimit: LIMITS.float, classics });
      expect(batch.score[at]).toBe(comparable(scores.score));
      expect(batch.area[at]).toBe(draft.warp.length * draft.weft.length);
      expect([...batch.preference.subarray(4 * at, 4 * at + 4)]).toEqual([
        scores.floats.longest,
        ease.warpChanges,
        ease.shuttles,
        ease.weftChanges,
      ]);
      expect(batch.key.subarray(4 * at, 4 * at + 4)).toEqual(clothKey(face, question.same, question.yarns.length));
      expect(batch.niche[at]! % 5).toBe(Math.round(4 * scores.symmetry));
    }
  });
});
