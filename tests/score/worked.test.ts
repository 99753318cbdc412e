// Figures computed once by a separate plain program: yarns D #1f2a44 and L #efe6d2, 20 ends and 20 picks per inch.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fromCells } from '../../src/cloth/drawdown.js';
import { colourFace } from '../../src/cloth/face.js';
import { contrastMeter } from '../../src/score/contrast/contrast.js';

const VALUES = Float64Array.of(0, 1);
const twill = fromCells(4, 4, (j, i) => (i - j + 4) % 4 < 2);
const plain = fromCells(2, 2, (j, i) => (i + j) % 2 === 0);
const order = (word: string): number[] => [...word].map((letter) => (letter === 'D' ? 0 : 1));
const { measure } = contrastMeter(1);

describe('worked figures', () => {
  test('hound’s tooth: 2/2 twill, 4 and 4 both ways', () => {
    const figures = measure(colourFace(twill, order('DDDDLLLL'), order('DDDDLLLL')), VALUES);
    expect(figures.contrast).toBeCloseTo(0.3207, 4);
    expect(figures.tone).toBeCloseTo(0.3183, 4);
    expect(figures.line).toBeCloseTo(0.0385, 4);
    expect(figures.figure).toBeCloseTo(0.2461, 4);
  });

  test('log cabin: plain weave, (DL)4 (LD)4 both ways', () => {
    const figures = measure(colourFace(plain, order('DLDLDLDLLDLDLDLD'), order('DLDLDLDLLDLDLDLD')), VALUES);
    expect(figures.contrast).toBeCloseTo(0.5649, 4);
    expect(figures.tone).toBeCloseTo(0.1106, 4);
    expect(figures.line).toBeCloseTo(0.5539, 4);
    expect(figures.figure).toBeCloseTo(0.3518, 4);
  });
});

test('the score of every cloth of the demo is the weighted mean of the figures that stand beside it', () => {
  const file = new URL('../../gallery/turned-twill/gallery.json', import.meta.url);
  const { question, candidates } = JSON.parse(readFileSync(file, 'utf8'));
  expect(question.rank).toEqual({ contrast: 3, symmetry: 2, float: 1, figure: 3 });
  expect(question.limits.float).toBe(7);
  for (const { scores } of candidates) {
    const float = (7 - scores.floats.longest) / 6;
    const score = (3 * scores.contrast + 2 * scores.symmetry + float + 3 * scores.figure) / 9;
    expect(scores.score).toBeCloseTo(score, 12);
  }
});
