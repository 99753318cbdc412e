// Yarn counts against published constants: J. T. Taylor, Cotton Weaving and Designing (6th ed. 1909), chapter XII;
// C. P. Brooks, Cotton Manufacturing (1892); ASTM D2260 (factors as printed); denier and tex: ISO 1144. The table in
// data/planning.json was recomputed from 1 lb = 453.59237 g and 1 yd = 0.9144 m by a separate script.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  lengthPerWeight,
  metresPerKilo,
  parseYarnSize,
  silkReadings,
  texOfCount,
} from '../../src/plan/yarn/yarn-size.js';

const data = JSON.parse(readFileSync(new URL('./data/planning.json', import.meta.url), 'utf8')) as {
  systems: Record<string, [number, number, number]>;
  yarns: [name: string, yardsPerPound: number, metresPerKilo: number, tex: number][];
};

describe('systems', () => {
  const named = {
    'cotton (840 yd hank)': 'cotton',
    'spun silk (840 yd hank)': 'spun silk',
    'worsted (560 yd hank)': 'worsted',
    'linen lea / hemp (300 yd lea)': 'linen',
    'woollen run (1600 yd)': 'run',
    'Yorkshire woollen skein (256 yd)': 'skein',
    'woollen cut (300 yd)': 'cut',
  } as const;
  test.each(Object.entries(named))('%s: tex = constant / count, Nm = factor × count', (printed, system) => {
    const [yards, constant, factor] = data.systems[printed]!;
    expect(texOfCount(system, 1)).toBeCloseTo(constant, 9);
    expect(metresPerKilo(system) / 1000).toBeCloseTo(factor, 9);
    expect(lengthPerWeight(texOfCount(system, 1)).yardsPerPound).toBeCloseTo(yards, 9);
    expect(texOfCount(system, 17) * 17).toBeCloseTo(constant, 9);
  });

  test('factors that ASTM D2260 prints', () => {
    expect(texOfCount('cotton', 1)).toBeCloseTo(590.541, 3);
    expect(texOfCount('worsted', 1)).toBeCloseTo(885.812, 3);
    expect(texOfCount('run', 1)).toBeCloseTo(310.034, 3);
    expect(texOfCount('linen', 1)).toBeCloseTo(1653.52, 2);
    expect(9 * texOfCount('cotton', 1)).toBeCloseTo(5314.87, 2);
    expect(lengthPerWeight(texOfCount('metric', 1)).yardsPerPound).toBeCloseTo(496.055, 3);
    expect(texOfCount('worsted', 15)).toBeCloseTo(texOfCount('cotton', 10), 9);
    expect(texOfCount('linen', 2.8)).toBeCloseTo(texOfCount('cotton', 1), 9);
    expect(texOfCount('run', 0.525)).toBeCloseTo(texOfCount('cotton', 1), 9);
    expect(texOfCount('cotton', 19.7)).toBeCloseTo(30, 1);
  });

  test('Brooks: 20s cotton is 30s worsted, 56s linen, 16.93 French', () => {
    const tex = texOfCount('cotton', 20);
    expect(texOfCount('worsted', 30)).toBeCloseTo(tex, 9);
    expect(texOfCount('linen', 56)).toBeCloseTo(tex, 9);
    // The French count is metres in half a gram.
    expect(lengthPerWeight(tex).metresPerKilo / 2000).toBeCloseTo(16.93, 2);
  });
});

describe('labels', () => {
  test.each(data.yarns.filter(([name]) => !name.includes('silk')))('%s', (name, yards, metres, tex) => {
    const size = parseYarnSize(name);
    const length = lengthPerWeight(size.tex);
    expect(size.tex).toBeCloseTo(tex, 9);
    expect(length.yardsPerPound).toBeCloseTo(yards, 6);
    expect(length.metresPerKilo).toBeCloseTo(metres, 6);
  });

  test.each([
    ['8/2 cotton', '2/8 cotton'],
    ['8/2 cotton', 'cotton 8/2'],
    ['2/18 worsted', '18/2 worsted'],
    ['16/2 linen', '2/16 lea'],
    ['Nm 28/2', 'nm 2/28'],
    ['30 cotton', 'Ne 30'],
  ])('%s is %s', (a, b) => {
    expect(parseYarnSize(a).tex).toBe(parseYarnSize(b).tex);
  });

  test('weight for length, and length for weight', () => {
    expect(parseYarnSize('30 tex').tex).toBe(30);
    expect(parseYarnSize('tex 30 x 2').tex).toBe(60);
    expect(parseYarnSize('90 denier').tex).toBe(10);
    expect(parseYarnSize('3360 yd/lb').tex).toBeCloseTo(147.635312, 6);
    expect(parseYarnSize('5000 m/kg').tex).toBe(200);
    expect(parseYarnSize('500 m/100g').tex).toBe(200);
  });

  test('English spun silk carries the finished count; a bare plied silk is asked about (Taylor; three readings)', () => {
    expect(lengthPerWeight(parseYarnSize('60/2 spun silk').tex).yardsPerPound).toBeCloseTo(50400, 6);
    const readings = silkReadings(60, 2);
    expect(readings[0]).toBe(50400);
    expect(readings[1]).toBe(25200);
    expect(readings[2]).toBeCloseTo(14881.6, 1);
    expect(() => parseYarnSize('60/2 silk')).toThrow(/50400, 25200 or 14882 yards to the pound/);
  });

  test.each(['', '8/2', 'cotton', '8/2 cottn', '0 tex', '8/0 cotton', '8/2.5 cotton', '1e9 tex', '-3 tex'])(
    '“%s” is refused in one sentence',
    (text) => {
      expect(() => parseYarnSize(text)).toThrow(/expected a yarn size/);
    },
  );
});
