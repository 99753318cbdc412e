// Worked examples of planning; their sources are named in worked-plans.ts.
import { describe, expect, test } from 'vitest';
import { threadsWithin } from '../../src/plan/warp/purpose.js';
import { paintCloth } from '../../src/render/cloth.js';
import { contactLayout } from '../../src/sheets/contact-pages.js';
import { MARGIN, SIZES } from '../../src/sheets/paper/paper.js';
import { INCH } from '../../src/words/measure.js';
import { twill } from './worked-plans.js';

describe('print', () => {
  const across = INCH / 20;

  test('20 ends to the inch: 1.27 mm an end, 4.8 points of a screen at 96 to the inch', () => {
    expect(across).toBeCloseTo(1.27, 12);
    const millimetres = { width: 7.5 * INCH, height: across };
    const { width } = paintCloth(twill([0], [0]), { millimetres, perMillimetre: 96 / INCH });
    expect(width / threadsWithin(7.5 * INCH, across)).toBeCloseTo(4.8, 12);
  });

  test('at actual size 149 ends lie across the 190 mm of A4 between its margins, 150 across 7.5 in', () => {
    expect(SIZES.a4.width - 2 * MARGIN).toBe(190);
    expect(threadsWithin(190, across)).toBe(149);
    expect(threadsWithin(7.5 * INCH, across)).toBe(150);
  });

  test.each([
    ['a4', 4, '44.5', 16],
    ['a4', 5, '34.8', 25],
    ['letter', 4, '46.0', 16],
    ['letter', 5, '36.0', 20],
  ] as const)('contact sheets on %s in %i columns: pictures %s mm wide, %i a page', (paper, columns, width, each) => {
    const layout = contactLayout(paper, columns);
    expect(layout.width.toFixed(1)).toBe(width);
    expect(layout.columns * layout.rows).toBe(each);
    // Columns and rows stay on the paper.
    expect(layout.rows * layout.room).toBeLessThanOrEqual(SIZES[paper].height - 2 * MARGIN);
    expect(layout.height).toBeLessThanOrEqual(layout.width);
  });

  test('half size shows 70 ends across 44.5 mm', () => {
    expect(threadsWithin(2 * contactLayout('a4', 4).width, across)).toBe(70);
  });
});
