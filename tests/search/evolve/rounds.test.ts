import { describe, expect, test } from 'vitest';
import { NICHES } from '../../../src/search/evaluate/niche.js';
import { Canonicalizer } from '../../../src/search/evolve/canonical-genome.js';
import { MutationSpace } from '../../../src/search/evolve/mutation-space.js';
import { Rounds, type Told } from '../../../src/search/evolve/rounds.js';
import type { Question } from '../../../src/search/question/question.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { QUESTION } from '../question.js';

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, k) => from + k);

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
