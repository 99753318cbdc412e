import { describe, expect, test } from 'vitest';
import { values } from '../../../src/colour/yarn.js';
import { spacing } from '../../../src/draft/draft.js';
import { PARTS, UNWEIGHED } from '../../../src/score/parts/parts.js';
import { weightsOf } from '../../../src/score/rank/presets.js';
import { scoreDraft } from '../../../src/score/score.js';
import { groundAt } from '../../../src/search/bounded/bound-ground.js';
import { ExactLines } from '../../../src/search/bounded/line-forms.js';
import { PairBound, rankingOf } from '../../../src/search/bounded/pair-bound.js';
import { PairScan } from '../../../src/search/bounded/pair-scan.js';
import { warpsOn, weftsOn } from '../../../src/search/bounded/side-orders.js';
import { evaluator } from '../../../src/search/evaluate/evaluate.js';
import { PLACE } from '../../../src/search/evaluate/reach.js';
import type { Question } from '../../../src/search/question/question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { runs } from '../../long.js';
import { QUESTION } from '../question.js';

/** Every part, so that all bounds are made. */
const ALL = weightsOf(Object.fromEntries(PARTS.map((part) => [part, 1])));

/** Parts of which a bound is what they are. */
const EXACT = ['balance', 'ease'] as const;

const THREE = [...QUESTION.yarns, { letter: 'M', name: 'grey', hex: '#888888' }];

const QUESTIONS: [string, Partial<Question>][] = [
  ['2/2 twill', { lengths: [2, 3, 4, 5] }],
  ['plain weave, one yarn each way too, stretched', { structures: ['plain weave'], lengths: [1, 2, 3, 4], times: [2] }],
  ['huck by unit, log cabin', { structures: ['huck'], lengths: [2, 3], by: ['unit'], fill: ['solid', 'alternate'] }],
  [
    'overshot, beaten harder',
    { structures: ['overshot'], lengths: [2, 3], sett: { ends: 20, picks: 30, per: 'inch' } },
  ],
  ['2/2 twill in motifs of fifty threads', { lengths: [2, 3, 4], times: [25] }],
  ['three yarns', { lengths: [3, 4], yarns: THREE }],
  ['three yarns in alternation, by unit', { lengths: [3], by: ['unit'], fill: ['alternate'], yarns: THREE }],
  ['three yarns on plain weave', { structures: ['plain weave'], lengths: [2, 4, 5], yarns: THREE }],
];

test.each(QUESTIONS)('no part is above its bound, of any candidate: %s', (name, change) => {
  const question: Question = { ...QUESTION, rank: ALL, ...change };
  const space = spaceOf(question);
  const { verdict } = evaluator(question);
  let [below, low, compared, solid] = [0, 0, 0, 0];
  for (const stratum of space.strata) {
    const shared = verdict(stratum.family);
    if ('fault' in shared) continue;
    const { classics } = shared;
    const wefts = Math.max(1, stratum.wefts.length);
    let number = 0;
    new PairScan(question, stratum, shared).scan(0, stratum.warps.length, () => Number.NEGATIVE_INFINITY, {
      reached(warp, weft, start, foresee) {
        if (number++ % runs(3, 1) > 0) return;
        const index = stratum.first + (warp * wefts + weft) * stratum.starts.length + start;
        const { most } = foresee();
        const ranking = { weights: question.rank, floatLimit: question.limits.float, classics };
        const { parts } = scoreDraft(draftOf(space.at(index), question), ranking);
        for (const part of PARTS)
          expect(most[PLACE[part]], `${part} of ${index}`).toBeGreaterThanOrEqual(parts[part] - 1e-7);
        for (const part of EXACT) expect(most[PLACE[part]], `${part} of ${index}`).toBeCloseTo(parts[part], 7);
        solid = Math.max(solid, parts.solid);
        below += Number(most[PLACE.novelty]! < 0.5);
        low += Number(most[PLACE.symmetry]! < 1);
        compared++;
      },
    });
  }
  expect(compared).toBeGreaterThan(10);
  // A bound of 1 for all would hold too, and prune nothing.
  expect(below).toBeGreaterThan(0);
  expect(solid > 0.3).toBe(name.includes('motifs'));
  // Of few pairs on a large ground, and of three yarns in alternation, nothing is known.
  expect(low > 0).toBe(name.endsWith('yarns') || name.endsWith('plain weave'));
});

/**
 * Some of these cloths have little symmetry, and the classics nearest to them have much: with more symmetry they would be
 * nearer still.
 */
const STRIPED: (typeof QUESTIONS)[number] = [
  'one yarn, and orders of eight, on plain weave',
  { structures: ['plain weave'], lengths: [1, 8] },
];

/** How much the classics weigh beside symmetry. */
const RANKS = [
  { novelty: 8, symmetry: 0.5 },
  { newness: 8, symmetry: 3 },
  { newness: 8, symmetry: 0.5 },
].map((rank) => ({ ...UNWEIGHED, ...rank }));

describe.each([...QUESTIONS, STRIPED])(
  'no score is above its bound, nor with less symmetry where that is weighed later: %s',
  (_, change) => {
    test.each([false, true])('one of each kind: %s', (oneOfEachKind) => {
      const question: Question = { ...QUESTION, ...change };
      const space = spaceOf(question);
      const { verdict } = evaluator({ ...question, rank: RANKS[0]! });
      const { across, along } = spacing(question.sett);
      let compared = 0;
      for (const { family, warps, wefts, starts, first } of space.strata) {
        const shared = verdict(family);
        if ('fault' in shared || wefts.length === 0) continue;
        starts.forEach((start, s) => {
          const ground = groundAt(family, warps[0]!.length, wefts[0]!.length, start);
          const laid = {
            warps: warpsOn(ground, warps, question, family),
            wefts: weftsOn(ground, wefts, question, family),
          };
          const lines = new ExactLines(ground, laid.warps, laid.wefts, across / along, values(question.yarns));
          const bounds = RANKS.map((rank) => {
            const ranking = rankingOf(
              { ...question, rank, ...(oneOfEachKind && { oneOfEachKind }) },
              shared,
              across / along,
            );
            return { rank, bound: new PairBound(ranking, ground, { ...laid, lines }) };
          });
          for (let pair = s % runs(7, 1); pair < warps.length * wefts.length; pair += runs(7, 1)) {
            const [w, f] = [Math.floor(pair / wefts.length), pair % wefts.length];
            const draft = draftOf(space.at(first + pair * starts.length + s), question);
            const ranking = { weights: ALL, floatLimit: question.limits.float, classics: shared.classics };
            const { parts } = scoreDraft(draft, ranking);
            for (const { rank, bound } of bounds) {
              bound.take(w);
              const most = bound.with(w, f, Number.NEGATIVE_INFINITY);
              const symmetry = oneOfEachKind ? 1 : parts.symmetry;
              const sum = PARTS.reduce(
                (all, part) => all + rank[part] * (part === 'symmetry' ? symmetry : parts[part]),
                0,
              );
              expect(most).toBeGreaterThanOrEqual(sum - 1e-6);
              compared++;
            }
          }
        });
      }
      expect(compared).toBeGreaterThan(10);
    });
  },
);
