// What the search by changes loses where the exact answer is known, over many seeds; kept in trials.json.

import { writeFileSync } from 'node:fs';
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
    'herringbone, 2 to 10, thread and unit, the clear',
    { structures: ['herringbone'], lengths: range(2, 10), by: ['thread', 'unit'], rank: PRESETS.clear },
  ],
];

/** Questions by which nothing in the search was chosen: chosen before it was last changed, and asked after. */
const HELD_OUT: typeof QUESTIONS = [
  ['crackle by block, 2 to 10', { structures: ['crackle'], by: ['block'], lengths: range(2, 10) }],
  ['halvdräll by block, 2 to 9', { structures: ['halvdräll'], by: ['block'], lengths: range(2, 9) }],
  [
    '1/3 twill, three yarns, 2 to 7, the clear',
    { structures: ['1/3 twill'], yarns: THREE, tabby: 2, lengths: range(2, 7), rank: PRESETS.clear },
  ],
  [
    '2/2 twill, 12 to 20, weft exchanged, the balanced',
    { weft: { rule: 'exchange' }, lengths: range(12, 20), rank: PRESETS.balanced },
  ],
  ['2/2 twill, warp given, weft 2 to 18', { warp: [0, 0, 0, 1, 0, 1, 1], lengths: range(2, 18) }],
];

/** One question's trial: shares of what there is, each as the least and the mean over all seeds. */
export interface Trial {
  readonly question: string;
  readonly heldOut: boolean;
  readonly candidates: number;
  readonly scored: number;
  readonly seeds: number;
  /** Seeds that found the very best. */
  readonly foundBest: number;
  readonly best: readonly [least: number, mean: number];
  readonly top: readonly [least: number, mean: number];
  readonly niches: readonly [least: number, mean: number];
  /** Means of the same three for as many candidates drawn by chance. */
  readonly chance: readonly [best: number, top: number, niches: number];
}

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

/** The trials, one after another. */
async function* trials(): AsyncGenerator<Trial> {
  for (const [name, change] of [...QUESTIONS, ...HELD_OUT]) {
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
    const of = (table: readonly number[][], at: number): [number, number] => leastAndMean(table.map((row) => row[at]!));
    yield {
      question: name,
      heldOut: HELD_OUT.some(([held]) => held === name),
      candidates: space.count,
      scored: numbers,
      seeds: SEEDS,
      foundBest: found.filter(([best]) => best === 1).length,
      best: of(found, 0),
      top: of(found, 1),
      niches: of(found, 2),
      chance: [of(chance, 0)[1], of(chance, 1)[1], of(chance, 2)[1]],
    };
  }
}

/** The table, in plain text, line by line; the trials are kept in trials.json once all are done. */
export async function* evolveTable(): AsyncGenerator<string> {
  const heads = ['best: least', 'mean', 'top 20: least', 'mean', 'niches: least', 'mean'];
  const head = ['weft own', 'candidates', 'scored', ...heads, 'by chance: best', 'top 20', 'niches'];
  const line = (row: readonly string[]): string =>
    row.map((cell, k) => (k === 0 ? cell.padEnd(50) : cell.padStart(Math.max(8, head[k]!.length)))).join('  ');
  const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
  yield `\n${line(head)}`;
  const done: Trial[] = [];
  for await (const trial of trials()) {
    done.push(trial);
    const { question, candidates, scored, best, top, niches, chance } = trial;
    const shares = [...best, ...top, ...niches, ...chance].map(percent);
    yield line([question, String(candidates), String(scored), ...shares]);
  }
  writeFileSync('tests/bench/trials.json', `[\n${done.map((trial) => `  ${JSON.stringify(trial)}`).join(',\n')}\n]\n`);
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

/** To a hundredth of a per cent; the least is rounded down, so that it never claims more. */
function leastAndMean(shares: readonly number[]): [least: number, mean: number] {
  const mean = shares.reduce((a, b) => a + b, 0) / shares.length;
  return [Math.floor(Math.min(...shares) * 1e4) / 1e4, Math.round(mean * 1e4) / 1e4];
}
