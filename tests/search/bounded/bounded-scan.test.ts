import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { colourFace } from '../../../src/cloth/face.js';
import { values } from '../../../src/colour/yarn.js';
import { contrastMeter } from '../../../src/score/contrast/contrast.js';
import { codeOf } from '../../../src/score/symmetry/cloth-code.js';
import { symmetryOf } from '../../../src/score/symmetry/symmetry.js';
import { groundAt } from '../../../src/search/bounded/bound-ground.js';
import { BoundedScan, isTabled } from '../../../src/search/bounded/bounded-scan.js';
import { ExactLines } from '../../../src/search/bounded/line-forms.js';
import { toneForm } from '../../../src/search/bounded/pair-form.js';
import { warpsOn, weftsOn } from '../../../src/search/bounded/side-orders.js';
import { workerPool } from '../../../src/search/pool/worker-pool.js';
import type { Question } from '../../../src/search/question/question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { candidateIn, strataOf } from '../../../src/search/space/stratum.js';
import { Archive } from '../../../src/search/strategy/archive.js';
import { type Searched, searchBounded, searchListed } from '../../../src/search/strategy/strategies.js';
import { runs } from '../../long.js';
import { toneSquared } from '../../plain/tone-squared.js';
import { QUESTION } from '../question.js';

const QUESTIONS: [string, Partial<Question>][] = [
  ['2/2 twill by thread', { lengths: [3, 4, 5, 6] }],
  ['plain weave stretched', { structures: ['plain weave'], lengths: [2, 3, 4], times: [2] }],
  [
    '2/2 point twill by unit alternate',
    { structures: ['2/2 point twill'], lengths: [2, 3], by: ['unit'], fill: ['alternate'] },
  ],
  ['summer and winter with tabby', { structures: ['summer and winter'], lengths: [2, 3], by: ['thread', 'unit'] }],
  ['turned taqueté', { structures: ['turned taqueté'], lengths: [3, 4], by: ['unit'] }],
  ['2/2 twill beaten harder', { lengths: [4, 5], sett: { ends: 20, picks: 28, per: 'inch' } }],
];

describe('bounds hold for every candidate, and tone by the form is tone by the face', () => {
  test.each(QUESTIONS)('%s', (_, change) => {
    const question: Question = { ...QUESTION, ...change };
    const squareness = question.sett.picks / question.sett.ends;
    const meter = contrastMeter(squareness);
    const square = squareness === 1;
    for (const stratum of strataOf(question, familiesOf(question))) {
      const scan = new BoundedScan(question, stratum);
      stratum.starts.forEach((start, s) => {
        const ground = groundAt(stratum.family, stratum.warps[0]!.length, stratum.wefts[0]!.length, start);
        const form = toneForm(ground, squareness);
        const warps = warpsOn(ground, stratum.warps, question, stratum.family);
        const wefts = weftsOn(ground, stratum.wefts, question, stratum.family);
        const exact = new ExactLines(ground, warps, wefts, squareness, values(question.yarns));
        const spin = (order: readonly number[]): number[] => [...order.map((c) => (c === 1 ? 1 : -1)), 1];
        fc.assert(
          fc.property(fc.nat(stratum.warps.length - 1), fc.nat(stratum.wefts.length - 1), (w, f) => {
            const offset = (w * stratum.wefts.length + f) * stratum.starts.length + s;
            const draft = draftOf(candidateIn(question, stratum, offset), question);
            const face = colourFace(drawdown(draft), draft.warp, draft.weft);
            const motif = meter.motif(face, values(question.yarns));
            const [a, b] = [spin(stratum.warps[w]!), spin(stratum.wefts[f]!)];
            expect(toneSquared(form, a.slice(0, form.n), b)).toBeCloseTo(motif.tone ** 2, 9);
            const upright = exact.ofUpright(w, f);
            const level = exact.ofLevel(w, f);
            expect(upright + level).toBeGreaterThanOrEqual(motif.line - 1e-9);
            expect(warps.lines[w]).toBeGreaterThanOrEqual(upright - 1e-9);
            expect(wefts.lines[f]).toBeGreaterThanOrEqual(level - 1e-9);
            const symmetry = symmetryOf(face, square).symmetry;
            expect(scan.symmetryAtMost(w, f, s)).toBeGreaterThanOrEqual(symmetry);
          }),
          { numRuns: runs(30) },
        );
      });
    }
  });
});

test.each(QUESTIONS)('the tables give the tone of every cloth: %s', (_, change) => {
  const rank = { ...QUESTION.rank, contrast: 1, symmetry: 0, float: 0 };
  const question: Question = { ...QUESTION, ...change, rank };
  const meter = contrastMeter(question.sett.picks / question.sett.ends);
  for (const stratum of strataOf(question, familiesOf(question))) {
    const scan = new BoundedScan(question, stratum);
    const tones: [offset: number, tone: number][] = [];
    const anyScore = (): number => Number.NEGATIVE_INFINITY;
    // Where contrast alone counts, a guess is the tone.
    scan.guess(0, stratum.warps.length, anyScore, (w, f, s, _, guess) =>
      tones.push([(w * stratum.wefts.length + f) * stratum.starts.length + s, guess]),
    );
    expect(tones.length).toBeGreaterThan(0);
    for (const [offset, tone] of tones.filter((__, k) => k % Math.ceil(tones.length / runs(40)) === 0)) {
      const draft = draftOf(candidateIn(question, stratum, offset), question);
      const face = colourFace(drawdown(draft), draft.warp, draft.weft);
      expect(tone ** 2).toBeCloseTo(meter.motif(face, values(question.yarns)).tone ** 2, 9);
    }
  }
});

test.each(['plain weave', '2/2 twill', '2/2 basket', '1/3 twill', '2/2 point twill'])(
  'no cloth has more symmetry than its bound, and few have less: %s, every pair',
  (structure) => {
    const question: Question = { ...QUESTION, structures: [structure], lengths: [2, 4] };
    let [highest, exact, all] = [0, 0, 0];
    for (const stratum of strataOf(question, familiesOf(question))) {
      const scan = new BoundedScan(question, stratum);
      for (let offset = 0; offset < stratum.count; offset++) {
        const s = offset % stratum.starts.length;
        const pair = (offset - s) / stratum.starts.length;
        const [w, f] = [Math.floor(pair / stratum.wefts.length), pair % stratum.wefts.length];
        const draft = draftOf(candidateIn(question, stratum, offset), question);
        const { symmetry } = symmetryOf(colourFace(drawdown(draft), draft.warp, draft.weft), true);
        const most = scan.symmetryAtMost(w, f, s);
        expect(most).toBeGreaterThanOrEqual(symmetry);
        highest = Math.max(highest, symmetry);
        exact += Number(most === symmetry);
        all++;
      }
    }
    expect(highest).toBeGreaterThanOrEqual(0.5);
    // A bound of 1 for all would hold too, and prune nothing.
    expect(exact / all).toBeGreaterThan(0.5);
  },
);

const RANKINGS: [string, Partial<Question>][] = [
  ['2/2 twill, orders of eleven, by tables', { lengths: [11] }],
  [
    'plain weave and basket, orders of ten and eleven, by tables, with limits',
    {
      structures: ['plain weave', 'basket'],
      lengths: [10, 11],
      rank: { ...QUESTION.rank, float: 3 },
      limits: { ...QUESTION.limits, warpChanges: 12, weftChanges: 6, shuttles: 2 },
    },
  ],
  [
    '2/2 twill beaten harder, orders of eleven, by tables, the same on its side',
    {
      lengths: [11],
      rank: { ...QUESTION.rank, symmetry: 0 },
      sett: { ends: 20, picks: 32, per: 'inch' },
      same: [...QUESTION.same, 'quarter-turn'],
    },
  ],
  ['2/2 twill, orders of eleven, by tables, one of each kind', { lengths: [11], oneOfEachKind: true }],
  [
    'plain weave beaten harder, orders of 8 to 11, by tables, one of each kind, the same on its side',
    {
      structures: ['plain weave'],
      lengths: [8, 11],
      sett: { ends: 20, picks: 32, per: 'inch' },
      same: [...QUESTION.same, 'quarter-turn'],
      oneOfEachKind: true,
    },
  ],
  ['2/2 twill, 2 to 7', { lengths: [2, 3, 4, 5, 6, 7] }],
  ['plain weave, 2 to 6', { structures: ['plain weave'], lengths: [2, 3, 4, 5, 6] }],
  ['1/3 twill, 3 to 6, ×1 and ×2', { structures: ['1/3 twill'], lengths: [3, 4, 5, 6], times: [1, 2] }],
  [
    '2/2 point twill by thread and unit, alternate',
    { structures: ['2/2 point twill'], lengths: [2, 3, 4, 5], by: ['thread', 'unit'], fill: ['solid', 'alternate'] },
  ],
  ['basket, float heavy', { structures: ['basket'], lengths: [2, 3, 4, 5, 6], rank: { ...QUESTION.rank, float: 5 } }],
  ['summer and winter, tabby', { structures: ['summer and winter'], lengths: [2, 3, 4, 5], by: ['unit'] }],
  ['2/2 twill, no symmetry', { lengths: [3, 4, 5, 6], rank: { ...QUESTION.rank, symmetry: 0 } }],
  [
    '2/2 twill, with figure, ease and novelty',
    { lengths: [3, 4, 5], rank: { ...QUESTION.rank, figure: 2, ease: 1, novelty: 1 } },
  ],
  ['2/2 twill, only shifts the same', { lengths: [3, 4, 5, 6], same: [] }],
  ['2/2 twill beaten harder', { lengths: [3, 4, 5, 6], sett: { ends: 20, picks: 28, per: 'inch' } }],
];

test('blocks of many pairs are scanned by tables', () => {
  const question: Question = { ...QUESTION, lengths: [11] };
  expect(strataOf(question, familiesOf(question)).some((stratum) => isTabled(question, stratum))).toBe(true);
});

describe('the bounded search ranks exactly as scoring every candidate does', () => {
  test.each(RANKINGS)('%s', async (_, change) => {
    const question: Question = { ...QUESTION, show: 15, ...change };
    const space = spaceOf(question);
    const pool = workerPool(question, 1);
    const newArchive = (): Archive => new Archive((a, b) => a - b);
    const search = { question, space, pool, newArchive, progress: undefined };
    const listed = await searchListed(search);
    const bounded = await searchBounded(search);
    const code = (index: number): string => codeOf(draftOf(space.at(index), question));
    const best = (archive: Archive): unknown =>
      (question.oneOfEachKind ? archive.bestAndOfNiches(15, code) : archive.best(15, code)).map(
        ({ index, score, equals }) => ({ index, score, equals }),
      );
    expect(best(bounded.archive)).toEqual(best(listed.archive));
    expect(bounded.setAside.limits).toBe(listed.setAside.limits);
    const total = ({ archive, setAside, pruned }: Searched): number =>
      archive.cloths +
      archive.duplicates +
      setAside.float +
      setAside.unsound +
      setAside.flat +
      setAside.limits +
      pruned;
    // The count by Burnside's lemma before the run is the count by enumeration after it.
    expect(total(listed)).toBe(space.count);
    expect(total(bounded)).toBe(space.count);
  });
});
