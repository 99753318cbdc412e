import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { figuresFor, LOOK_FIGURES, ofEachLook } from '../../../src/score/parts/look-figures.js';
import { DEFAULT_RANK, PART, PARTS, partsOf, UNWEIGHED } from '../../../src/score/parts/parts.js';
import { andList } from '../../../src/words/counts.js';
import { runs } from '../../long.js';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const measured = fc.record({
  contrast: share,
  tone: share,
  line: share,
  figure: share,
  darkShare: share,
  ...ofEachLook(() => share),
  bits: fc.double({ min: 0, max: 4, noNaN: true }),
  shapes: fc.nat(30).map(Number),
  symmetry: share,
  novelty: share,
  floats: fc.record({ longest: fc.option(fc.integer({ min: 1, max: 40 })), longestMm: fc.constant(3) }),
  ease: fc.record({ warpChanges: fc.nat(40), weftChanges: fc.nat(40), shuttles: fc.integer({ min: 1, max: 4 }) }),
  ends: fc.integer({ min: 1, max: 400 }),
  picks: fc.integer({ min: 1, max: 400 }),
  floatLimit: fc.oneof(fc.record({ threads: fc.integer({ min: 1, max: 20 }) }), fc.record({ mm: fc.constant(9) })),
  sett: fc.constant({ ends: 20, picks: 18, per: 'inch' as const }),
});

test('every part is from 0 to 1, whatever was measured, and reads only the costly figures that it needs', () => {
  fc.assert(
    fc.property(measured, (figures) => {
      const parts = partsOf(figures);
      for (const part of PARTS) {
        expect(parts[part]).toBeGreaterThanOrEqual(0);
        expect(parts[part]).toBeLessThanOrEqual(1);
        const needs = figuresFor({ ...UNWEIGHED, [part]: 1 });
        const costly = [...LOOK_FIGURES.map(({ key }) => key), 'figure' as const, 'novelty' as const];
        const unread = costly.filter((figure) => !needs.has(figure));
        const without = { ...figures, ...Object.fromEntries(unread.map((figure) => [figure, Number.NaN])) };
        expect(PART[part].of(without)).toBe(parts[part]);
      }
    }),
    { numRuns: runs(100, 5000) },
  );
});

test('where nothing is asked, contrast, symmetry and short floats are weighed three, two and one', () => {
  expect(DEFAULT_RANK).toEqual({ ...UNWEIGHED, contrast: 3, symmetry: 2, float: 1 });
});

const page = (path: string): string =>
  readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8').replaceAll(/\s+/g, ' ');

test('the README says of each part what its record says, and the page of figures names it', () => {
  const rows = PARTS.map((part) => `| ${part} | ${PART[part].means} |`).join(' ');
  expect(page('README.md')).toContain(`| ranked by | what it says | | --- | --- | ${rows} A ranking`);
  const asked = PARTS.filter((part) => DEFAULT_RANK[part] === 0);
  expect(page('src/score/FIGURES.md')).toContain(`and on request ${andList(asked)};`);
});
