import fc from 'fast-check';
import seedrandom from 'seedrandom';
import { describe, expect, test } from 'vitest';
import { distinctOrdersOf, leastRotation } from '../../../src/order/necklace.js';
import { smallestPeriod } from '../../../src/order/order.js';
import { UNWEIGHED } from '../../../src/score/parts/parts.js';
import { codeOf } from '../../../src/score/symmetry/cloth-code.js';
import { searchEvolved } from '../../../src/search/evolve/evolve-search.js';
import { MutationSpace } from '../../../src/search/evolve/mutation-space.js';
import { explore } from '../../../src/search/explore.js';
import { workerPool } from '../../../src/search/pool/worker-pool.js';
import type { Question } from '../../../src/search/question/question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { candidateOf, familyWritten, genomeOf } from '../../../src/search/space/genome.js';
import { listFamilies } from '../../../src/search/space/profile-search.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { startsOf } from '../../../src/search/space/starts.js';
import { Archive } from '../../../src/search/strategy/archive.js';
import { searchListed } from '../../../src/search/strategy/strategies.js';
import { runs } from '../../long.js';
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
  [
    'block orders of the threading and of the treadling',
    {
      structures: ['summer and winter'],
      blocks: 4,
      profiles: {
        lengths: range(8, 14),
        threaded: { mirrored: true },
        treadled: { mirrored: false, together: true },
      },
      lengths: [2, 3],
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
      const kept = archive.bestOfEachNiche(1000, (index) => codeOf(draftOf(at(index), question)));
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
      { numRuns: runs(40) },
    );
  });
});

test('draws and changes of block orders reach every one that is listed, and no other', () => {
  const profiles = { lengths: [2, 3], threaded: { mirrored: false }, treadled: { mirrored: true, together: true } };
  const question: Question = { ...QUESTION, structures: ['summer and winter'], profiles, lengths: [2] };
  const bases = familiesOf(question);
  const mutations = new MutationSpace(question, bases);
  const chance = seedrandom.alea('block orders');
  const found = new Set<string>();
  let candidate = mutations.draw(chance);
  for (let k = 0; k < 8000; k++) {
    found.add(familyWritten(candidate.family, bases));
    const step = mutations.steps[Math.floor(chance() * mutations.steps.length)]!;
    candidate = k % 5 === 0 ? mutations.draw(chance) : mutations.take(step, candidate, mutations.draw(chance), chance);
  }
  const listed = bases.flatMap((base) => listFamilies(base)!).map((family) => familyWritten(family, bases));
  expect(listed.length).toBeGreaterThan(20);
  expect([...found].sort()).toEqual(listed.sort());
});

describe('a search by changes', () => {
  test('says that it was not exhaustive, and that it ended because nothing better came', async () => {
    const orders = distinctOrdersOf([17], 2);
    const question: Question = {
      ...QUESTION,
      lengths: [],
      orders,
      structures: ['plain weave'],
      starts: 'first',
      // Nothing foretells it, so that few are searched whole.
      rank: { ...UNWEIGHED, contrast: 3, unlike: 1 },
      oneOfEachKind: true,
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
    expect(listed.archive.bestOfEachNiche(1000, code)).toEqual(firsts);
    expect(listed.archive.bestOfEachNiche(2, code)).toEqual(firsts.slice(0, 2));
  });
});
