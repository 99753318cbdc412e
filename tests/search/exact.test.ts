import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../src/cloth/drawdown.js';
import { colourFace } from '../../src/cloth/face.js';
import { values } from '../../src/colour/yarn.js';
import { codeOf } from '../../src/score/code.js';
import { contrastMeter } from '../../src/score/contrast.js';
import { symmetryOf } from '../../src/score/symmetry.js';
import { Archive } from '../../src/search/archive.js';
import { blocksOf, candidateIn } from '../../src/search/block.js';
import { draftOf } from '../../src/search/candidate.js';
import { crewOf } from '../../src/search/crew.js';
import { toneForm, toneSquared } from '../../src/search/exact/form.js';
import { groundAt } from '../../src/search/exact/ground.js';
import { lineBounds } from '../../src/search/exact/line.js';
import { lineDeviation, lineForms } from '../../src/search/exact/lines.js';
import { BlockScan } from '../../src/search/exact/scan.js';
import { familiesOf } from '../../src/search/families.js';
import { type Searched, searchBounded, searchListed } from '../../src/search/methods.js';
import type { Question } from '../../src/search/question.js';
import { spaceOf } from '../../src/search/space.js';
import { QUESTION } from './question.js';

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
    for (const block of blocksOf(question, familiesOf(question))) {
      const scan = new BlockScan(question, block);
      block.starts.forEach((start, s) => {
        const ground = groundAt(block, start);
        const form = toneForm(ground, squareness);
        const lines = lineBounds(ground, squareness);
        const spin = (order: readonly number[]): number[] => [...order.map((c) => (c === 1 ? 1 : -1)), 1];
        fc.assert(
          fc.property(fc.nat(block.warps.length - 1), fc.nat(block.wefts.length - 1), (w, f) => {
            const offset = (w * block.wefts.length + f) * block.starts.length + s;
            const draft = draftOf(candidateIn(question, block, offset), question);
            const face = colourFace(drawdown(draft), draft.warp, draft.weft);
            const motif = meter.motif(face, values(question.yarns));
            const [a, b] = [spin(block.warps[w]!), spin(block.wefts[f]!)];
            expect(toneSquared(form, a.slice(0, form.n), b)).toBeCloseTo(motif.tone ** 2, 9);
            const exact = lineForms(ground, squareness);
            const upright = lineDeviation(exact.upright(a), Float64Array.from(b));
            const level = lineDeviation(exact.level(b), Float64Array.from(a));
            expect(upright + level).toBeGreaterThanOrEqual(motif.line - 1e-9);
            expect(lines.warp.of(a)).toBeGreaterThanOrEqual(upright - 1e-9);
            expect(lines.weft.of(b)).toBeGreaterThanOrEqual(level - 1e-9);
            const symmetry = symmetryOf(face, square).symmetry;
            expect(scan.symmetryAtMost(w, f, s)).toBeGreaterThanOrEqual(symmetry);
          }),
          { numRuns: 30 },
        );
      });
    }
  });
});

const RANKINGS: [string, Partial<Question>][] = [
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

describe('the bounded search ranks exactly as scoring every candidate does', () => {
  test.each(RANKINGS)('%s', async (_, change) => {
    const question: Question = { ...QUESTION, show: 15, ...change };
    const space = spaceOf(question);
    const crew = crewOf(question, 1);
    const newArchive = (): Archive => new Archive((a, b) => a - b);
    const search = { question, space, crew, newArchive, progress: undefined };
    const listed = await searchListed(search);
    const bounded = await searchBounded(search);
    const best = (archive: Archive): unknown =>
      archive
        .best(15, (index) => codeOf(draftOf(space.at(index), question)))
        .map(({ index, score }) => ({ index, score }));
    expect(best(bounded.archive)).toEqual(best(listed.archive));
    const total = ({ archive, setAside, passed }: Searched): number =>
      archive.cloths +
      archive.duplicates +
      setAside.float +
      setAside.unsound +
      setAside.flat +
      setAside.limits +
      passed;
    // The count by Burnside's lemma before the run is the count by enumeration after it.
    expect(total(listed)).toBe(space.count);
    expect(total(bounded)).toBe(space.count);
  });
});
