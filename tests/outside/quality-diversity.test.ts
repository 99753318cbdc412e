// The figures by which searches for the best of every kind are graded: definitions of Mouret and Clune 2015 and of
// Pugh, Soros and Stanley 2016 (from memory); the worked case was computed by a separate plain program.
import { expect, test } from 'vitest';
import { Elites } from '../../src/search/evolve/elites.js';
import { graded } from '../bench/grade.js';

test('coverage 0.6, sum 2.0, reliability 0.48, precision 0.8', () => {
  const possible = new Map([1.0, 0.5, 0.8, 0.7, 0.6].map((score, cell) => [cell, score]));
  const found = new Map([
    [0, 0.9],
    [2, 0.4],
    [3, 0.7],
  ]);
  const elites = new Elites<string>(possible.size);
  for (const [cell, score] of found) elites.offer(cell, score, `cell ${cell}`);
  expect(elites.stats()).toMatchObject({ filled: 3, coverage: 0.6, best: 0.9 });
  expect(elites.stats().total).toBeCloseTo(2, 12);
  const grades = graded(possible, found);
  expect(grades.coverage).toBeCloseTo(0.6, 12);
  expect(grades.total).toBeCloseTo(2, 12);
  expect(grades.reliability).toBeCloseTo(0.48, 2);
  expect(grades.precision).toBeCloseTo(0.8, 12);
});
