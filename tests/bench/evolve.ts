// What the search by changes loses where the exact answer is known, over many seeds.

import { PRESETS } from '../../src/score/rank/presets.js';
import { codeOf } from '../../src/score/symmetry/cloth-code.js';
import { searchEvolved } from '../../src/search/evolve/evolve-search.js';
import { workerPool } from '../../src/search/pool/worker-pool.js';
import type { Question } from '../../src/search/question/question.js';
import { draftOf } from '../../src/search/space/candidate.js';
import { type Space, spaceOf } from '../../src/search/space/space.js';
import { Archive } from '../../src/search/strategy/archive.js';
import { type Search, type Searched, searchBounded, searchListed } from '../../src/search/strategy/strategies.js';
import { QUESTION } from '../search/question.js';

const SEEDS = 20;
const TOP = 20;
/** Share of the candidates that may be scored. */
const SHARE = 0.01;

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, k) => from + k);
const THREE = [...QUESTION.yarns, { letter: 'R', name: 'madder', hex: '#a0522d' }];

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

/**
 * The table, in plain text. For each question: candidates, how many were scored at the most, the best score found as
 * a share of the best there is, and how many of the kinds among the best twenty were met, each as the least and the
 * mean over all seeds.
 */
export async function evolveTable(): Promise<string> {
  const rows = [['weft own', 'candidates', 'scored', 'best: least', 'mean', 'kinds of the top 20: least', 'mean']];
  for (const [name, change] of QUESTIONS) {
    const question: Question = { ...QUESTION, show: TOP, ...change };
    const space = spaceOf(question);
    const exact = await searched(question, space, space.way === 'bounded' ? searchBounded : searchListed);
    const top = exact.archive.best(TOP, (index) => codeOf(draftOf(exact.at(index), question)));
    const kinds = new Set(top.map(({ niche }) => niche));
    const numbers = Math.floor(SHARE * space.count);
    const best: number[] = [];
    const met: number[] = [];
    for (let seed = 1; seed <= SEEDS; seed++) {
      const asked = { ...question, seed: `bench ${seed}` };
      const { archive, at } = await searched(asked, { ...space, way: 'evolved', numbers }, searchEvolved);
      const each = archive.bestOfEachNiche(Number.POSITIVE_INFINITY, (index) => codeOf(draftOf(at(index), asked)));
      best.push(each[0]!.score / top[0]!.score);
      met.push(each.filter(({ niche }) => kinds.has(niche)).length / kinds.size);
    }
    rows.push([name, String(space.count), String(numbers), ...leastAndMean(best), ...leastAndMean(met)]);
  }
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows
    .map((row) => row.map((cell, k) => (k === 0 ? cell.padEnd(widths[k]!) : cell.padStart(widths[k]!))).join('  '))
    .join('\n');
}

function leastAndMean(shares: readonly number[]): [string, string] {
  const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
  return [percent(Math.min(...shares)), percent(shares.reduce((a, b) => a + b, 0) / shares.length)];
}
