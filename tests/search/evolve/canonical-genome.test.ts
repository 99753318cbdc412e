import { describe, expect, test } from 'vitest';
import { KEY_WORDS } from '../../../src/search/evaluate/columns.js';
import { evaluator } from '../../../src/search/evaluate/evaluate.js';
import { Canonicalizer } from '../../../src/search/evolve/canonical-genome.js';
import type { Question } from '../../../src/search/question/question.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { QUESTION } from '../question.js';

const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, k) => from + k);
const THREE = [...QUESTION.yarns, { letter: 'R', name: 'madder', hex: '#a0522d' }];

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
