// What the search by changes loses where the exact answer is known, over many seeds.

import seedrandom from 'seedrandom';
import { PRESETS } from '../../src/score/rank/presets.js';
import { codeOf } from '../../src/score/symmetry/cloth-code.js';
import { searchEvolved } from '../../src/search/evolve/evolve-search.js';
import { inThisThread } from '../../src/search/pool/pool.js';
import { workerPool } from '../../src/search/pool/worker-pool.js';
import type { Question } from '../../src/search/question/question.js';
import { draftOf } from '../../src/search/space/candidate.js';
import { type Space, spaceOf } from '../../src/search/space/space.js';
import { Archive } from '../../src/search/strategy/archive.js';
import { gathering, type Search, type Searched, searchListed } from '../../src/search/strategy/strategies.js';
import { QUESTION } from '../search/question.js';
import { range, THREE } from './questions.js';

const SEEDS = 20;
const TOP = 20;
/** Share of the candidates that may be scored. */
const SHARE = 0.01;

/** Spaces large enough that a hundredth of them is a search at all, and small enough that their best is known. */
const QUESTIONS: readonly (readonly [name: string, change: Partial<Question>])[] = [
  ['2/2 twill, 2 to 12', { lengths: range(2, 12) }],
  ['plain weave, 2 to 12', { structures: ['plain weave'], lengths: range(2, 12) }],
  ['1/3 twill, 2 to 12', { structures: ['1/3 twill'], lengths: range(2, 12) }],
  ['2/2 twill, 2 to 14', { lengths: range(2, 14) }],
  ['2/2 twill, three yarns, 2 to 7', { yarns: THREE, tabby: 2, lengths: range(2, 7) }],
  ['2/2 twill, 2 to 12, the unexpected', { lengths: range(2, 12), rank: PRESETS.unexpected }],
  [
    '2/2 point twill, 2 to 11, the unexpected',
    { structures: ['2/2 point twill'], lengths: range(2, 11), rank: PRESETS.unexpected },
  ],
  ['basket, 2 to 12, the lively', { structures: ['basket'], lengths: range(2, 12), rank: PRESETS.lively }],
  ['2/2 twill, 2 to 12, the easy', { lengths: range(2, 12), rank: PRESETS.easy }],
  [
    'herringbone, 2 to 10, clear, by unit too',
    { structures: ['herringbone'], lengths: range(2, 10), by: ['thread', 'unit'], rank: PRESETS.clear },
  ],
];

async function searched(
  question: Question,
  space: Space,
  how: (search: Search) => Promise<Searched>,
): Promise<Searched> {
  // Threads would take longer to start than most of these searches take.
  const pool = workerPool(question, space.way === 'evolved' ? 1 : 2);
  try {
    const newArchive = (): Archive => new Archive((a, b) => a - b);
    return await how({ question, space, pool, newArchive, progress: undefined });
  } finally {
    pool.close();
  }
}

/** As many candidates as a search may score, drawn by chance from all of them. */
async function drawn(question: Question, space: Space, count: number, seed: string): Promise<Searched> {
  const random = seedrandom.alea(seed);
  const indices = new Set<number>();
  while (indices.size < count) {
    const index = Math.floor(random() * space.numbers);
    if (space.isRepresentative(index)) indices.add(index);
  }
  const archive = new Archive((a, b) => a - b);
  const jobs = { count: 1, at: () => ({ kind: 'score', indices: [...indices] }) as const };
  await inThisThread(question).run(jobs, ({ batch }) => archive.absorb(batch));
  return { ...gathering(archive, question), at: space.at, pruned: 0, whole: true };
}

/**
 * The table, in plain text, line by line. For each question: candidates, how many were scored at the most; the best score found as a
 * share of the best there is, how many of the best twenty were found, and how many of all niches were filled, each as
 * the least and the mean over all seeds; and the means of the same for as many candidates drawn by chance.
 */
export async function* evolveTable(): AsyncGenerator<string> {
  const heads = ['best: least', 'mean', 'top 20: least', 'mean', 'niches: least', 'mean'];
  const head = ['weft own', 'candidates', 'scored', ...heads, 'by chance: best', 'top 20', 'niches'];
  const line = (row: readonly string[]): string =>
    row.map((cell, k) => (k === 0 ? cell.padEnd(46) : cell.padStart(Math.max(8, head[k]!.length)))).join('  ');
  yield `\n${line(head)}`;
  for (const [name, change] of QUESTIONS) {
    const question: Question = { ...QUESTION, show: TOP, ...change };
    const space = spaceOf(question);
    const numbers = Math.floor(SHARE * space.count);
    const all = reached(await searched(question, space, searchListed), question);
    const last = all.scores[TOP - 1]!;
    const graded = ({ scores, niches }: Reached): number[] => [
      scores[0]! / all.scores[0]!,
      scores.filter((score) => score >= last).length / TOP,
      niches / all.niches,
    ];
    const [found, chance]: [number[][], number[][]] = [[], []];
    for (let seed = 1; seed <= SEEDS; seed++) {
      const asked = { ...question, seed: `bench ${seed}` };
      const evolved = await searched(asked, { ...space, way: 'evolved', numbers }, searchEvolved);
      found.push(graded(reached(evolved, asked)));
      chance.push(graded(reached(await drawn(question, space, numbers, asked.seed), asked)));
    }
    const column = (table: readonly number[][], at: number): number[] => table.map((row) => row[at]!);
    yield line([
      name,
      String(space.count),
      String(numbers),
      ...[0, 1, 2].flatMap((at) => leastAndMean(column(found, at))),
      ...[0, 1, 2].map((at) => leastAndMean(column(chance, at))[1]),
    ]);
  }
}

interface Reached {
  /** The scores of the best twenty, the best first. */
  readonly scores: readonly number[];
  /** Niches that are filled. */
  readonly niches: number;
}

function reached({ archive, at }: Searched, question: Question): Reached {
  const code = (index: number): string => codeOf(draftOf(at(index), question));
  return {
    scores: archive.best(TOP, code).map(({ score }) => score),
    niches: archive.bestOfEachNiche(Number.POSITIVE_INFINITY, code).length,
  };
}

function leastAndMean(shares: readonly number[]): [string, string] {
  const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
  return [percent(Math.min(...shares)), percent(shares.reduce((a, b) => a + b, 0) / shares.length)];
}
