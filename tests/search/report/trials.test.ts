// What is said of the search by changes is what the bench measured, in the sentence and in the table of DEVELOPERS.md.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { countsOf } from '../../../src/gallery/html/page-counts.js';
import { sureness, TRIALS } from '../../../src/search/report/trials.js';
import type { Trial } from '../../bench/evolve.js';
import { QUESTION } from '../question.js';

const trials = JSON.parse(readFileSync('tests/bench/trials.json', 'utf8')) as Trial[];
const sum = (of: (trial: Trial) => number): number => trials.reduce((total, trial) => total + of(trial), 0);

describe('the trials of the search by changes', () => {
  test('are as the bench found them, with one candidate in a hundred', () => {
    expect(TRIALS).toEqual({
      questions: trials.length,
      searches: sum(({ seeds }) => seeds),
      foundBest: sum(({ foundBest }) => foundBest),
      leastShare: Math.min(...trials.map(({ best }) => best[0])),
    });
    for (const { scored, candidates } of trials) expect(scored).toBe(Math.floor(candidates / 100));
  });

  test('are told of a search by changes that ran to its end, and of no other', () => {
    const evolved = { rounds: 5, niches: 4, settled: true };
    const said = sureness({ evolved })!;
    expect(said).toContain(`the best cloth ${TRIALS.foundBest} times of ${TRIALS.searches}`);
    const [, least] = /at least ([\d.]+) % of its score/.exec(said)!;
    expect(Number(least)).toBeLessThanOrEqual(100 * TRIALS.leastShare);
    expect(Number(least)).toBeGreaterThan(100 * TRIALS.leastShare - 0.1);
    const setAside = { float: 0, unsound: 0, flat: 0, limits: 0 };
    const counts = { written: 9, examined: 9, cloths: 9, equals: 0, setAside, cutOff: 0, exhaustive: false, evolved };
    expect(countsOf(QUESTION, counts, 9)).toContain(said);
    expect(sureness({})).toBeUndefined();
    expect(sureness({ evolved, stopped: true })).toBeUndefined();
  });

  test('are those of the table', () => {
    const table = readFileSync('DEVELOPERS.md', 'utf8').split('| Own orders |')[1]!;
    const percent = (share: number): string => String(Math.round(100 * share));
    // Short of the best is never called 100 %.
    const ofBest = (share: number): string => String(Math.floor(1000 * share) / 10);
    for (const { question, heldOut, best, top, niches, chance } of trials) {
      const cells = [
        best.map(ofBest),
        ...[top, niches, chance].map((shares: readonly number[]) => shares.map(percent)),
      ].map((shares) => `${shares.join(', ')} %`);
      expect(table).toContain(`| ${[question + (heldOut ? ' *' : ''), ...cells].join(' | ')} |`);
    }
  });
});
