/**
 * Light and lightness against what is published.
 * - IEC 61966-2-1 (sRGB) and CIE L*: the library culori, and a table of greys worked out from the standard's formulas
 *   by a separate plain program.
 * - Optical mixing in linear light: a table worked out the same way.
 * - L* of yarns: common practice, no source; the numbers worked out by a separate plain program.
 */
import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { lightness, linearLight, luminance, values } from '../../src/colour/yarn.js';
import { encodeLight } from '../../src/render/light.js';

const grey = (v: number) => `#${v.toString(16).padStart(2, '0').repeat(3)}`;

/** 8-bit value, Y, L*. */
const GREYS: readonly [number, number, number][] = [
  [1, 0.000304, 0.2742],
  [10, 0.003035, 2.7417],
  [11, 0.003347, 3.0229],
  [50, 0.031896, 20.7878],
  [64, 0.051269, 27.0934],
  [118, 0.181164, 49.637],
  [119, 0.184475, 50.0344],
  [127, 0.212231, 53.1928],
  [128, 0.215861, 53.585],
  [187, 0.496933, 75.8806],
  [188, 0.502886, 76.2461],
  [200, 0.57758, 80.6041],
  [254, 0.991102, 99.6549],
];

describe('sRGB (IEC 61966-2-1) and CIE L*', () => {
  it.each(GREYS)('grey %i has Y %d and L* %d', (v, y, l) => {
    expect(luminance(grey(v))).toBeCloseTo(y, 6);
    expect(lightness(luminance(grey(v)))).toBeCloseTo(l, 3);
  });

  it('turns 8-bit values to light and back without loss', () => {
    for (let v = 0; v < 256; v++) expect(encodeLight(linearLight(grey(v))[0])).toBe(v);
  });

  it('decodes light as culori does, but for the last bit, in which engines differ', () => {
    const toLight = converter('lrgb');
    for (let v = 0; v < 256; v++) {
      const hex = `#${[v, 255 - v, (v * 7) % 256].map((each) => each.toString(16).padStart(2, '0')).join('')}`;
      const { r, g, b } = toLight(hex)!;
      const exact = [r, g, b];
      linearLight(hex).forEach((light, at) => {
        expect(Math.abs(light - exact[at]!)).toBeLessThanOrEqual(2 ** -52);
      });
    }
  });

  it('encodes light as culori does', () => {
    const toRgb = converter('rgb');
    for (let step = 0; step <= 1000; step++) {
      const light = step / 1000;
      const exact = 255 * toRgb({ mode: 'lrgb', r: light, g: light, b: light }).r;
      expect(Math.abs(encodeLight(light) - exact)).toBeLessThan(0.51);
    }
  });

  it('gives L* as culori does for D65 greys', () => {
    const toLab = converter('lab65');
    for (let v = 0; v < 256; v++) expect(lightness(luminance(grey(v)))).toBeCloseTo(toLab(grey(v))!.l, 4);
  });

  it('meets its two branches at the knee 216/24389', () => {
    expect(lightness(216 / 24389)).toBeCloseTo(8, 10);
    expect(lightness(216 / 24389 + 1e-12)).toBeCloseTo(8, 8);
    expect(lightness(1)).toBe(100);
  });
});

describe('optical mixing: averaged in linear light, then encoded', () => {
  it.each([
    ['#000000', '#ffffff', 0.5, '#bcbcbc'],
    ['#000000', '#ffffff', 0.25, '#e1e1e1'],
    ['#000000', '#ffffff', 0.75, '#898989'],
    ['#ff0000', '#0000ff', 0.5, '#bc00bc'],
    ['#ffff00', '#0000ff', 0.5, '#bcbcbc'],
    ['#ff0000', '#00ff00', 0.5, '#bcbc00'],
    ['#1f3a5f', '#f4f1e8', 0.5, '#b4b5b5'],
    ['#1f3a5f', '#f4f1e8', 0.25, '#d7d6d0'],
  ])('%s and %s, a share of %d of the first, make %s', (first, second, share, mixed) => {
    const a = linearLight(first);
    const b = linearLight(second);
    const bytes = a.map((light, c) => encodeLight(share * light + (1 - share) * b[c]!));
    expect(`#${bytes.map((byte) => byte.toString(16).padStart(2, '0')).join('')}`).toBe(mixed);
  });
});

describe('the value of yarns', () => {
  it.each([
    ['navy and natural', '#1f2a44', '#efe6d2', 17.3, 91.5],
    ['red and green', '#c0392b', '#2e8b57', 44.7, 51.5],
    ['orange and mid-blue', '#d2691e', '#3b74b0', 56.0, 47.7],
  ])('%s', (_, first, second, l1, l2) => {
    expect(lightness(luminance(first))).toBeCloseTo(l1, 1);
    expect(lightness(luminance(second))).toBeCloseTo(l2, 1);
  });

  it('is 0 for the darkest and 1 for the lightest of the palette, and 0 where all are alike', () => {
    const yarn = (hex: string) => ({ letter: 'A', name: '', hex });
    expect([...values([yarn('#efe6d2'), yarn('#1f2a44')])]).toEqual([1, 0]);
    expect([...values([yarn('#777777'), yarn('#777777')])]).toEqual([0, 0]);
  });
});
