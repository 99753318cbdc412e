import { expect, test } from 'vitest';
import { fromCells } from '../../../src/cloth/drawdown.js';
import { colourAt, colourFace } from '../../../src/cloth/face.js';
import { lightness, luminance } from '../../../src/colour/yarn.js';
import { DISTANCES, readsOf, readsTo, viewingLimits } from '../../../src/score/contrast/viewing-distance.js';
import { blurred, variance } from '../../plain/contrast.js';

const LIGHT = ['#1f2a44', '#efe6d2'].map(luminance);
const order = (word: string): number[] => [...word].map((letter) => 'DL'.indexOf(letter));

test('hound’s tooth and log cabin at 20 threads an inch read as worked out once by a separate plain program', () => {
  const twill = fromCells(4, 4, (j, i) => (i - j + 4) % 4 < 2);
  const hound = readsOf(colourFace(twill, order('DDDDLLLL'), order('DDDDLLLL')), LIGHT, 1.27, 1.27);
  expect(DISTANCES.map((d) => hound[d].toFixed(2))).toEqual(['37.07', '24.50', '10.28']);
  const plain = fromCells(2, 2, (j, i) => (i + j) % 2 === 0);
  const word = order('DLDLDLDLLDLDLDLD');
  const cabin = readsOf(colourFace(plain, word, word), LIGHT, 1.27, 1.27);
  expect(DISTANCES.map((d) => cabin[d].toFixed(2))).toEqual(['37.05', '13.78', '3.16']);
  expect(viewingLimits(8, 1.27).easyTo).toBeCloseTo(2.3285, 4);
});

test('equals lightness of the blurred luminance cell by cell, on cells that are not square', () => {
  const cloth = fromCells(6, 4, (j, i) => (i * 3 + j * 5) % 7 < 3);
  const face = colourFace(cloth, order('DLLDDL'), order('LDDL'));
  const light = Array.from({ length: 4 }, (_, j) => Array.from({ length: 6 }, (_, i) => LIGHT[colourAt(face, j, i)]!));
  const seen = readsOf(face, LIGHT, 1.5, 1.1);
  for (const d of ['0.6', '2', '6'] as const) {
    const sigma = (Math.PI / 10800) * Number(d) * 1000;
    const l = blurred(light, sigma / 1.5, sigma / 1.1).map((row) => row.map(lightness));
    expect(seen[d]).toBeCloseTo(Math.sqrt(variance(l)), 5);
  }
});

test('a cloth reads from the farthest distance with a deviation of 12, if from any', () => {
  expect(readsTo({ '0.6': 30, '2': 12, '6': 11.99 })).toBe('2');
  expect(readsTo({ '0.6': 12, '2': 11.99, '6': 3 })).toBe('0.6');
  expect(readsTo({ '0.6': 30, '2': 20, '6': 12 })).toBe('6');
  expect(readsTo({ '0.6': 11.99, '2': 5, '6': 3 })).toBeNull();
});

test('a motif of ten millimetres is seen best to 2.29 m, at four cycles a degree, and is gone at 17.2 m, at thirty', () => {
  // One degree at a distance d is π·d/180: 40 mm for four motifs, 300 mm for thirty.
  const { easyTo, goneBy } = viewingLimits(8, 1.25);
  expect(easyTo).toBeCloseTo((0.04 * 180) / Math.PI, 9);
  expect(goneBy).toBeCloseTo((0.3 * 180) / Math.PI, 9);
});
