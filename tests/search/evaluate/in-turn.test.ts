import fc from 'fast-check';
import seedrandom from 'seedrandom';
import { expect, test } from 'vitest';
import { PARTS, type Part, type Weights } from '../../../src/score/parts/parts.js';
import { comparable } from '../../../src/score/rank/rank.js';
import { evaluator } from '../../../src/search/evaluate/evaluate.js';
import { NEAR_CLASSICS } from '../../../src/search/evaluate/measurer.js';
import { Aims } from '../../../src/search/evaluate/reach.js';
import type { Question } from '../../../src/search/question/question.js';
import { type Candidate, weftOf } from '../../../src/search/space/candidate.js';
import { familiesOf } from '../../../src/search/space/families.js';
import type { Family } from '../../../src/search/space/family.js';
import { startsOf } from '../../../src/search/space/starts.js';
import { structures } from '../../../src/structure/catalogue/catalogue.js';
import { runs } from '../../long.js';
import { QUESTION } from '../question.js';

const YARNS = [
  ...QUESTION.yarns,
  { letter: 'R', name: 'madder', hex: '#a0522d' },
  { letter: 'G', name: 'grey', hex: '#888888' },
];

/** The classics of a weave take long to measure; what only some parts need is left out where these are not asked for. */
const OTHERS = PARTS.filter((part) => !NEAR_CLASSICS.some((near) => near === part));

function weighing(parts: readonly Part[]): Weights {
  return Object.fromEntries(PARTS.map((part, at) => [part, parts.includes(part) ? at + 1 : 0])) as Weights;
}

const ranks: fc.Arbitrary<Weights> = fc
  .oneof(
    { weight: 1, arbitrary: fc.constant(PARTS) },
    { weight: 2, arbitrary: fc.constant(OTHERS) },
    { weight: 2, arbitrary: fc.subarray(OTHERS, { minLength: 1 }) },
  )
  .map(weighing);

const questions: fc.Arbitrary<Question> = fc
  .record({
    yarns: fc.integer({ min: 2, max: 4 }).map((count) => YARNS.slice(0, count)),
    tabby: fc.nat(1),
    weft: fc.constantFrom<Question['weft']>({ rule: 'own' }, { rule: 'own' }, { rule: 'exchange' }),
    by: fc.oneof(
      { weight: 3, arbitrary: fc.subarray(['thread', 'unit'] as const, { minLength: 1 }) },
      { weight: 2, arbitrary: fc.constant(['block'] as const) },
    ),
    fill: fc.subarray(['solid', 'alternate', 'nest'] as const, { minLength: 1, maxLength: 2 }),
    times: fc.subarray([1, 2, 5], { minLength: 1, maxLength: 2 }),
    sett: fc.record({
      ends: fc.constantFrom(12, 20, 24),
      picks: fc.constantFrom(12, 20, 31),
      per: fc.constant('inch' as const),
    }),
    same: fc.subarray(['mirror', 'half-turn', 'quarter-turn', 'exchange'] as const),
    rank: ranks,
    limits: fc.constantFrom({ float: { threads: 30 }, repeat: 400 }, { float: { threads: 9 }, repeat: 60 }),
  })
  .chain((change) => {
    // By block there are no more colours than blocks.
    const able = structures.filter(({ blocks }) => change.by[0] !== 'block' || blocks.length >= change.yarns.length);
    return fc
      .uniqueArray(fc.constantFrom(...able.map(({ name }) => name)), { minLength: 1, maxLength: 3 })
      .map((names) => ({ ...QUESTION, ...change, structures: names }));
  });

/** Few orders of all lengths, so that each comes again, beside others. */
const order = fc
  .constantFrom(1, 2, 3, 4, 5, 6, 8, 12)
  .chain((length) => fc.array(fc.nat(3), { minLength: length, maxLength: length }));
const orders = fc.array(order, { minLength: 3, maxLength: 3 });

/** Which of the families, warps, wefts and starts come together, and perhaps a score to reach before that. */
const steps = fc.array(
  fc.record({
    family: fc.nat(),
    warp: fc.nat(2),
    weft: fc.nat(2),
    start: fc.nat(),
    aim: fc.option(fc.double({ min: 0.2, max: 0.8, noNaN: true })),
  }),
  { minLength: 24, maxLength: 24 },
);

test('after any others, whole or cut off, a candidate is scored as by an evaluator of its own', () => {
  let [scored, cut] = [0, 0];
  fc.assert(
    fc.property(questions, orders, orders, steps, (question, warps, wefts, taken) => {
      const families = familiesOf(question);
      const inTurn = evaluator(question);
      taken.forEach((step, index) => {
        const at = step.family % Math.min(3, families.length);
        const family = families[at]!;
        const asked = (order: readonly number[]): number[] =>
          order.slice(0, family.fill === 'nest' ? 3 : 12).map((colour) => colour % question.yarns.length);
        const warp = asked(warps[step.warp]!);
        const weft = question.weft.rule === 'own' ? asked(wefts[step.weft]!) : weftOf(question, warp);
        const starts = startsOf('all', family, warp.length, weft.length);
        const start = starts[step.start % starts.length]!;
        const of = (its: Family): [number, Candidate] => [index, { family: its, warp, weft, start }];
        const alone = evaluator(question).evaluate([of(familiesOf(question)[at]!)]);
        if (step.aim !== null) {
          const scoring = inTurn.scoring(new Aims({ score: step.aim }, question));
          scoring.take(of(family));
          const reached = scoring.done();
          if (reached.cutOff === 0) expect(reached).toEqual(alone);
          else expect(alone.score[0] ?? 0).toBeLessThan(comparable(step.aim));
          cut += reached.cutOff;
        }
        expect(inTurn.evaluate([of(family)])).toEqual(alone);
        scored += alone.length;
      });
    }),
    { numRuns: runs(20) },
  );
  expect(scored).toBeGreaterThan(runs(80));
  expect(cut).toBeGreaterThan(runs(10));
});

test.each([
  ['of several lengths, on several weaves', ['plain weave', '2/2 twill', 'summer and winter'], 3, [2, 4, 6, 8], [1, 4]],
  ['of one length, on a weave whose kinds of threads often look alike', ['plain weave'], 2, [12], [1]],
] as const)(
  'a place of an order that is taken again holds nothing of the first: %s',
  (_, names, yarns, lengths, times) => {
    const question: Question = {
      ...QUESTION,
      structures: names,
      yarns: YARNS.slice(0, yarns),
      times,
      rank: weighing(OTHERS),
      limits: { float: { threads: 30 }, repeat: 400 },
    };
    const families = familiesOf(question);
    const inTurn = evaluator(question);
    const random = seedrandom('places');
    const oneOf = <T>(all: readonly T[]): T => all[Math.floor(random() * all.length)]!;
    const colours = [...question.yarns.keys()];
    const anOrder = (): number[] => Array.from({ length: oneOf(lengths) }, () => oneOf(colours));
    const few = [[0], [0, 1], [0, 0, 1, 1], [1, 1, 1, 0, 1, 0, 0, 1, 0, 0, 1]];
    // More than there are places, so that most are taken several times.
    let scored = 0;
    for (let index = 0; index < runs(4000); index++) {
      const pair = [anOrder(), oneOf(few)] as const;
      const [warp, weft] = index % 4 === 0 ? [pair[1], pair[0]] : pair;
      const candidate: Candidate = { family: oneOf(families), warp, weft, start: [0, 0] };
      const batch = inTurn.evaluate([[index, candidate]]);
      if (index % 20 > 1) continue;
      expect(batch).toEqual(evaluator(question).evaluate([[index, candidate]]));
      scored += batch.length;
    }
    expect(scored).toBeGreaterThan(runs(100));
  },
);
