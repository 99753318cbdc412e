import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distinctOrdersOf, leastRotation } from '../../../src/order/necklace.js';
import { smallestPeriod } from '../../../src/order/order.js';
import { codeOf } from '../../../src/score/symmetry/cloth-code.js';
import { KEY_WORDS } from '../../../src/search/evaluate/columns.js';
import { evaluator } from '../../../src/search/evaluate/evaluate.js';
import { NICHES, nicheAt, nicheOf } from '../../../src/search/evaluate/niche.js';
import { Canonicalizer } from '../../../src/search/evolve/canonical-genome.js';
import { Elites } from '../../../src/search/evolve/elites.js';
import { searchEvolved } from '../../../src/search/evolve/evolve-search.js';
import { MutationSpace } from '../../../src/search/evolve/mutation-space.js';
import { fitted, MUTATIONS, type MutationName } from '../../../src/search/evolve/mutations.js';
import { Rounds, type Told } from '../../../src/search/evolve/rounds.js';
import { TopK } from '../../../src/search/evolve/top-k.js';
import { explore } from '../../../src/search/explore.js';
import type { Question } from '../../../src/search/question/question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { candidateOf, genomeOf } from '../../../src/search/space/genome.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { startsOf } from '../../../src/search/space/starts.js';
import { Archive } from '../../../src/search/strategy/archive.js';
import { searchListed } from '../../../src/search/strategy/strategies.js';
import { workerPool } from '../../../src/search/work/worker-pool.js';
import { QUESTION } from '../question.js';

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, k) => from + k);
const THREE = [...QUESTION.yarns, { letter: 'R', name: 'madder', hex: '#a0522d' }];

const BEYOND: [string, Partial<Question>][] = [
  ['two yarns, orders up to 40', { lengths: range(2, 40) }],
  ['three yarns', { yarns: THREE, lengths: range(2, 20), tabby: 2 }],
  [
    'blocks and colours together',
    { structures: ['summer and winter'], by: ['block'], lengths: range(4, 14), times: [1, 2] },
  ],
  [
    'every way of laying, weft as warp',
    {
      structures: ['turned twill', '2/2 point twill'],
      by: ['thread', 'unit'],
      fill: ['solid', 'alternate', 'nest'],
      times: [1, 2],
      lengths: range(22, 24),
      weft: { rule: 'same' },
    },
  ],
  ['the warp given', { warp: [0, 0, 1], lengths: range(20, 30) }],
];

describe.each(BEYOND)('a space beyond listing: %s', (_, change) => {
  const question: Question = { ...QUESTION, ...change };
  const space = spaceOf(question);

  test('is known as such', () => {
    expect(space.way).toBe('evolved');
    expect(() => space.at(0)).toThrow(RangeError);
  });

  test('is searched to the same cloths by any number of workers', async () => {
    const found = async (workers: number): Promise<unknown> => {
      const pool = workerPool(question, workers);
      const newArchive = (): Archive => new Archive((a, b) => a - b);
      const search = { question, space: { ...space, numbers: 400 }, pool, newArchive, progress: undefined };
      const { archive, at, setAside, evolved, whole } = await searchEvolved(search);
      pool.close();
      const kept = archive.bestOfEachKind(1000, (index) => codeOf(draftOf(at(index), question)));
      expect(kept.length).toBe(evolved!.niches);
      const lines = kept.map(({ index, ...rest }) => ({ ...rest, line: genomeOf(at(index), space.families) }));
      return { lines, setAside, evolved, whole, cloths: archive.cloths, equals: archive.duplicates };
    };
    const alone = await found(1);
    expect(alone).toMatchObject({ whole: true, evolved: { settled: false } });
    expect(await found(3)).toEqual(alone);
  });

  test('holds nothing that was not asked for', () => {
    const families = familiesOf(question);
    const mutations = new MutationSpace(question, families);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), { minLength: 300 }),
        (draws) => {
          let at = 0;
          const chance = (): number => draws[at++ % draws.length]!;
          let candidate = mutations.draw(chance);
          for (let k = 0; k < 5; k++) {
            const { family, warp, weft, start } = candidate;
            for (const order of question.warp ? [weft] : [warp, weft]) {
              expect(question.lengths.some((length) => length % order.length === 0)).toBe(true);
              expect(order.every((colour) => colour >= 0 && colour < question.yarns.length)).toBe(true);
              expect(smallestPeriod(order)).toBe(order.length);
              if (family.fill !== 'nest') expect(leastRotation(order)).toEqual(order);
            }
            if (question.weft.rule === 'same') expect(weft).toEqual(warp);
            if (question.warp) expect(warp).toBe(question.warp);
            expect(startsOf('all', family, warp.length, weft.length)).toContainEqual(start);
            expect(candidateOf(genomeOf(candidate, families), families)).toEqual(candidate);
            const step = mutations.steps[Math.floor(chance() * mutations.steps.length)]!;
            candidate = mutations.take(step, candidate, mutations.draw(chance), chance);
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('a search by changes', () => {
  test('says that it was not exhaustive, and that it ended because nothing better came', async () => {
    const orders = distinctOrdersOf([13, 14], 2);
    const question: Question = {
      ...QUESTION,
      lengths: [],
      orders,
      structures: ['plain weave'],
      starts: 'first',
      show: 3,
    };
    const notes: string[] = [];
    const { counts, found } = await explore(question, { progress: ({ note }) => note && notes.push(note) });
    expect(counts).toMatchObject({ exhaustive: false, evolved: { settled: true } });
    const { float, unsound, flat, limits } = counts.setAside;
    expect(counts.examined).toBe(counts.cloths + counts.equals + float + unsound + flat + limits);
    expect(notes.at(-1)).toBe(`${counts.evolved!.niches} kinds, best ${found[0]!.scores.score.toFixed(3)}`);
  }, 120_000);

  test('goes through all of a small space and ends, with the cloths that listing finds', async () => {
    const question: Question = { ...QUESTION, lengths: [2, 3, 4] };
    const space = spaceOf(question);
    const pool = workerPool(question, 1);
    const newArchive = (): Archive => new Archive((a, b) => a - b);
    const search = { question, space, pool, newArchive, progress: undefined };
    const evolved = await searchEvolved({ ...search, space: { ...space, numbers: 1e6 } });
    const listed = await searchListed(search);
    expect(evolved.evolved!.settled).toBe(true);
    expect(evolved.archive.cloths).toBe(listed.archive.cloths);
    const code = (index: number): string => codeOf(draftOf(space.at(index), question));
    const all = listed.archive.best(1000, code);
    const firsts = all.filter(({ niche }, place) => all.findIndex((kept) => kept.niche === niche) === place);
    expect(listed.archive.bestOfEachKind(1000, code)).toEqual(firsts);
    expect(listed.archive.bestOfEachKind(2, code)).toEqual(firsts.slice(0, 2));
  });
});

describe('rounds', () => {
  const question: Question = { ...QUESTION, lengths: range(2, 12) };
  const families = familiesOf(question);
  const begun = (): Rounds =>
    new Rounds(new MutationSpace(question, families), new Canonicalizer(question, families), families, 'a seed');
  const told = (lines: readonly string[]): Told[] =>
    lines.map((line, k) => ({ niche: k % NICHES, score: line.length / 100, key: line }));

  test('are asked for and told of in turn', () => {
    const rounds = begun();
    expect(() => rounds.tell([])).toThrow('told of 0 candidates while none are out');
    const lines = rounds.ask();
    expect(() => rounds.ask()).toThrow(`asked for a round while ${lines.length} candidates are out`);
    expect(() => rounds.tell(told(lines.slice(1)))).toThrow(
      `told of ${lines.length - 1} candidates while ${lines.length} are out`,
    );
    rounds.tell(told(lines));
    expect(() => rounds.ask()).not.toThrow();
  });

  test('hand out no candidate twice, and lose nothing that was found', () => {
    const rounds = begun();
    const seen = new Set<string>();
    let before = rounds.stats();
    for (let round = 0; round < 12; round++) {
      const lines = rounds.ask();
      for (const line of lines) {
        expect(seen.has(line)).toBe(false);
        seen.add(line);
      }
      rounds.tell(told(lines));
      const now = rounds.stats();
      for (const figure of ['filled', 'coverage', 'total', 'best'] as const) {
        expect(now[figure]).toBeGreaterThanOrEqual(before[figure]);
      }
      before = now;
    }
  });
});

describe('candidates by one name', () => {
  const NAMED: [string, Partial<Question>][] = [
    ['2/2 twill', { lengths: range(2, 7) }],
    ['plain weave, weft as warp', { structures: ['plain weave'], lengths: range(2, 8), weft: { rule: 'same' } }],
    ['three yarns', { yarns: THREE, lengths: range(2, 4), tabby: 2 }],
    [
      'point twill by unit and thread',
      { structures: ['2/2 point twill'], by: ['thread', 'unit'], lengths: range(2, 5) },
    ],
    ['overshot, with tabby', { structures: ['overshot'], lengths: range(2, 4) }],
    ['no mirrors', { lengths: range(2, 6), same: ['exchange'] }],
  ];

  test.each(NAMED)('%s: weave one cloth, and are as many as those that stand for themselves', (_, change) => {
    const question: Question = { ...QUESTION, ...change };
    const space = spaceOf(question);
    const alike = new Canonicalizer(question, space.families);
    const { evaluate } = evaluator(question);
    const numbers = range(0, space.numbers - 1);
    const names = new Map<string, number[]>();
    for (const index of numbers) {
      const name = alike.canonicalGenome(space.at(index));
      names.set(name, [...(names.get(name) ?? []), index]);
    }
    expect(names.size).toBe(space.count);
    // Every candidate that is named after another weaves its cloth; a few hundred of them show it.
    for (const same of [...names.values()].filter(({ length }) => length > 1).slice(0, 150)) {
      const { key, length } = evaluate(same.map((index) => [index, space.at(index)] as const));
      const keys = new Set(Array.from({ length }, (__, k) => key.subarray(k * KEY_WORDS, (k + 1) * KEY_WORDS).join()));
      expect(keys.size).toBeLessThanOrEqual(1);
    }
  });
});

describe('a grid', () => {
  const offers = fc.array(fc.tuple(fc.nat(9), fc.double({ min: 0, max: 1, noNaN: true })), { minLength: 1 });

  test('keeps the best of every cell, and neither coverage nor sum ever falls', () => {
    fc.assert(
      fc.property(offers, (offered) => {
        const elites = new Elites<number>(10);
        offered.forEach(([cell, score], thing) => {
          const before = elites.stats();
          const first = !offered.slice(0, thing).some(([other]) => other === cell);
          const better = offered.slice(0, thing).every(([other, known]) => other !== cell || known < score);
          expect(elites.offer(cell, score, thing)).toBe(first ? 'new' : better ? 'improved' : 'rejected');
          const now = elites.stats();
          expect(now.coverage).toBeGreaterThanOrEqual(before.coverage);
          expect(now.total).toBeGreaterThanOrEqual(before.total - 1e-12);
        });
        const best = new Map<number, number>();
        for (const [cell, score] of offered) best.set(cell, Math.max(best.get(cell) ?? 0, score));
        expect(elites.stats().filled).toBe(best.size);
        expect(elites.stats().total).toBeCloseTo(
          [...best.values()].reduce((a, b) => a + b),
          9,
        );
        expect(elites.stats().best).toBe(Math.max(...best.values()));
      }),
    );
  });

  test('refuses a cell that it has not, and a score below 0', () => {
    const elites = new Elites<string>(4);
    expect(() => elites.offer(4, 1, 'x')).toThrow('cell 4 of a grid of 4');
    expect(() => elites.offer(1, Number.NaN, 'x')).toThrow('a score of NaN');
  });
});

test('the best are the best of those offered, none of one name twice', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(30), { minLength: 1 }), (offered) => {
      const best = new TopK<number>(5);
      // A thing of one name always has one score.
      for (const name of offered) best.offer(String(name), name, name);
      const names = [...new Set(offered)].sort((a, b) => b - a).slice(0, 5);
      expect(best.things()).toEqual(names);
    }),
  );
});

describe('changes of orders', () => {
  const orders = fc.array(fc.nat(2), { minLength: 1, maxLength: 12 });

  test('leave an order of the same palette', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(MUTATIONS) as MutationName[])),
        orders,
        orders,
        fc.array(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (name, order, other, draws) => {
          let at = 0;
          const chance = (): number => draws[at++ % draws.length]!;
          const changed = MUTATIONS[name](order, chance, { colours: 3, other });
          expect(changed.length).toBeGreaterThan(0);
          expect(changed.length).toBeLessThanOrEqual(2 * (order.length + other.length));
          expect(changed.every((colour) => Number.isInteger(colour) && colour >= 0 && colour < 3)).toBe(true);
        },
      ),
    );
  });

  test.each([
    ['mirror', [0, 1, 2], [0, 0, 0], [0, 1, 2, 2, 1, 0]],
    ['mirror', [0, 1, 2], [0, 0.9, 0], [0, 1, 2, 1]],
    ['one element and its mirror', [0, 1, 0, 2], [0, 0.25, 0], [0, 2, 0, 2]],
    ['one element and its mirror', [0, 0, 1, 1], [0, 0, 0.5], [2, 2, 1, 1]],
    ['two colours change places', [0, 1, 2, 1], [0.4, 0], [0, 2, 1, 2]],
    ['double', [0, 1], [], [0, 0, 1, 1]],
    ['halve', [0, 1, 2], [], [0, 2]],
    ['one element', [0, 1, 2], [0.4, 0], [0, 2, 2]],
    ['exchange', [0, 1, 2], [0.4, 0.9], [0, 2, 0]],
    ['turn a part', [0, 1, 2], [0, 0.99], [2, 1, 0]],
    ['repeat a part', [0, 1, 2], [0.4, 0], [0, 1, 1, 2]],
    ['leave a part out', [0, 1, 2], [0.4, 0], [0, 2]],
  ] as [MutationName, number[], number[], number[]][])('%s of %j', (name, order, draws, expected) => {
    let at = 0;
    expect(MUTATIONS[name](order, () => draws[at++]!, { colours: 3, other: order })).toEqual(expected);
  });

  test('are brought to a length that is asked for', () => {
    expect(fitted([0, 1, 2], [2, 5])).toEqual([0, 1]);
    expect(fitted([0, 1, 2], [4, 5])).toEqual([0, 1, 2, 0]);
    expect(fitted([0, 1, 2], [2, 4])).toEqual([0, 1, 2, 0]);
  });
});

describe('a kind of cloth', () => {
  test.each([
    [
      { ends: 1, picks: 1, darkShare: 0, symmetry: 0 },
      { size: 0, dark: 0, symmetry: 0 },
    ],
    [
      { ends: 4, picks: 3, darkShare: 0.3, symmetry: 0.25 },
      { size: 2, dark: 3, symmetry: 1 },
    ],
    [
      { ends: 5, picks: 8, darkShare: 0.1 + 0.2, symmetry: 0.5 },
      { size: 3, dark: 3, symmetry: 2 },
    ],
    [
      { ends: 400, picks: 80, darkShare: 1, symmetry: 1 },
      { size: 9, dark: 9, symmetry: 4 },
    ],
  ])('%j', (traits, kind) => {
    expect(nicheAt(nicheOf(traits, false))).toEqual(kind);
    expect(nicheOf(traits, false)).toBeLessThan(NICHES);
  });

  test('is the same whichever colour is dark, where they may change places', () => {
    const traits = { ends: 8, picks: 8, symmetry: 0.25 };
    expect(nicheOf({ ...traits, darkShare: 0.3 }, true)).toBe(nicheOf({ ...traits, darkShare: 0.7 }, true));
    expect(nicheOf({ ...traits, darkShare: 0.3 }, false)).not.toBe(nicheOf({ ...traits, darkShare: 0.7 }, false));
  });
});
