import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

test('the score of every cloth of the demo is the weighted mean of the figures that stand beside it', () => {
  const file = new URL('../../../gallery/turned-twill/gallery.json', import.meta.url);
  const { question, candidates } = JSON.parse(readFileSync(file, 'utf8'));
  expect(question.rank).toEqual({ contrast: 3, symmetry: 2, float: 1, figure: 3 });
  expect(question.limits.float).toBe(7);
  for (const { scores } of candidates) {
    const float = (7 - scores.floats.longest) / 6;
    const score = (3 * scores.contrast + 2 * scores.symmetry + float + 3 * scores.figure) / 9;
    expect(scores.score).toBeCloseTo(score, 12);
  }
});
