import seedrandom from 'seedrandom';
import { expect, test } from 'vitest';
import type { OfferOutcome } from '../../../src/search/evolve/elites.js';
import { mutationEmitter, neighbourEmitter } from '../../../src/search/evolve/emitters.js';
import { MutationSpace } from '../../../src/search/evolve/mutation-space.js';
import type { Candidate } from '../../../src/search/space/candidate.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { QUESTION } from '../question.js';

const question = { ...QUESTION, lengths: [6, 8] };
const mutations = new MutationSpace(question, familiesOf(question));

test('a step is taken as often as it has gained for each try: a new kind is worth twice a better cloth', () => {
  const verdicts: (OfferOutcome | undefined)[] = ['new', 'improved', 'rejected', undefined];
  const emitter = mutationEmitter(mutations, 'best');
  const rng = seedrandom.alea('steps');
  const candidate = mutations.draw(rng);
  expect(mutations.steps.length).toBeGreaterThanOrEqual(verdicts.length);
  // Steps that are never told of keep one gain for one try.
  for (let time = 0; time < 200; time++) {
    verdicts.forEach((verdict, step) => {
      emitter.tell({ candidate, steps: [step] }, verdict);
    });
  }
  const taken = mutations.steps.map(() => 0);
  const best = { kinds: [candidate], best: [candidate] };
  const rounds = 6000;
  for (let time = 0; time < rounds; time++) for (const step of emitter.ask(best, rng).steps) taken[step]!++;
  const [found, better, rejected, none] = taken as [number, number, number, number];
  expect(found / better).toBeGreaterThan(1.8);
  expect(found / better).toBeLessThan(2.2);
  const untold = taken.slice(verdicts.length);
  const usual = untold.reduce((sum, times) => sum + times, 0) / untold.length;
  expect(usual / better).toBeGreaterThan(0.85);
  expect(usual / better).toBeLessThan(1.15);
  for (const idle of [rejected, none]) {
    expect(idle).toBeGreaterThan(0);
    expect(idle / better).toBeLessThan(0.1);
  }
  // One more step follows with a chance of 0.4: 1 / (1 - 0.4) steps a candidate.
  const steps = taken.reduce((sum, times) => sum + times, 0) / rounds;
  expect(steps).toBeGreaterThan(1.6);
  expect(steps).toBeLessThan(1.75);
});

test('without a parent, candidates are drawn', () => {
  const { candidate, steps } = mutationEmitter(mutations, 'kinds').ask({ kinds: [], best: [] }, seedrandom.alea('one'));
  expect(steps).toEqual([]);
  expect(candidate).toEqual(mutations.draw(seedrandom.alea('one')));
});

test('the neighbours of the best come first, one after the other, and of a new best before those of the old', () => {
  const emitter = neighbourEmitter(mutations, 'best');
  const rng = seedrandom.alea('near');
  const [family] = familiesOf(question);
  const cloth = (warp: number[], weft: number[]): Candidate => ({ family: family!, warp, weft, start: [0, 0] });
  const [first, second] = [
    cloth([0, 0, 0, 1, 1, 1], [0, 0, 1, 0, 1, 1]),
    cloth([0, 1, 1, 0, 1, 1], [0, 0, 0, 0, 1, 1]),
  ];
  const best = { kinds: [], best: [first] };
  const ask = (of: typeof best): string => {
    const { warp, weft } = emitter.ask(of, rng).candidate;
    return `${warp.join('')} ${weft.join('')}`;
  };
  expect(ask(best)).toBe('001011 000111');
  expect(ask(best)).toBe('000111 000111');
  const better = { kinds: [], best: [second, first] };
  expect(ask(better)).toBe('000011 011');
  const all = new Set(Array.from({ length: 60 }, () => ask(better)));
  // With the orders of the other, and with mirrored elements changed in one order.
  expect(all).toContain('011 001011');
  expect(all).toContain('000111 000011');
  expect(all).toContain('011 000001');
});
