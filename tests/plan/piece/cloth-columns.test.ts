import { describe, expect, test } from 'vitest';
import { CLOTH_COLUMNS, csvText } from '../../../src/plan/piece/cloth-columns.js';
import { measured } from '../../../src/plan/piece/highlights.js';
import { kept } from '../cloths.js';

const UNITS = ['ends in a repeat', 'picks in a repeat', 'repeat across', 'repeat along', 'lengths in', 'longest float'];

function cells(sett: { ends: number; picks: number; per: 'inch' | 'cm' }) {
  const { draft } = kept('2/2 twill', { warp: 'DDLDL', sett });
  const { scores } = measured(draft);
  const row = Object.fromEntries(CLOTH_COLUMNS.map(([head, say]) => [head, say({ draft, scores })]));
  return { row, scores };
}

describe('a cloth in a row of a table', () => {
  test('has its orders, its lengths as the sett is counted, and its figures to three places', () => {
    const { row, scores } = cells({ ends: 20, picks: 10, per: 'inch' });
    expect(UNITS.map((head) => row[head])).toEqual([20, 20, '1', '2', 'in', '0.2']);
    expect([row['warp order'], row['weft order'], row['longest float, threads']]).toEqual(['D2 L D L', 'D2 L D L', 2]);
    for (const [head, figure] of [
      ['dark share', scores.darkShare],
      ['contrast', scores.contrast],
      ['figure', scores.figure],
      ['symmetry', scores.symmetry],
    ] as const) {
      expect(Number(row[head])).toBeCloseTo(figure, 3);
      expect(String(row[head])).toMatch(/^[01](\.\d{1,3})?$/);
    }
    expect(String(row['repeat easy to see to, m'])).toBe(String(Number(scores.easyTo.toFixed(1))));
    const metric = cells({ ends: 8, picks: 8, per: 'cm' }).row;
    expect(UNITS.map((head) => metric[head])).toEqual([20, 20, '2.5', '2.5', 'cm', '0.25']);
  });

  test('that reads at no distance reads to 0 m', () => {
    const { row } = cells({ ends: 20, picks: 20, per: 'inch' });
    const say = CLOTH_COLUMNS.find(([head]) => head === 'clear to, m')![1];
    const { draft } = kept('2/2 twill', { warp: 'D' });
    expect(say({ draft, scores: measured(draft).scores })).toBe(0);
    expect(Number(row['clear to, m'])).toBeGreaterThan(0);
  });
});

// RFC 4180; signs that a spreadsheet takes for a formula: OWASP, CSV injection.
test.each([
  ['=1+1', "'=1+1"],
  ['+1', "'+1"],
  ['@a', "'@a"],
  ['-a', "'-a"],
  ['-3', '-3'],
  ['-3.25', '-3.25'],
  ['-3.', "'-3."],
  ['＝1', "'＝1"],
  ['a,b', '"a,b"'],
  ['say "so"', '"say ""so"""'],
  ['=a,b', '"\'=a,b"'],
  ['two\nlines', '"two\nlines"'],
  ['\ttab', ' tab'],
  ['\t=1', "' =1"],
  ['a\u001b[2J\u202eb', 'a [2J b'],
])('the field %j is written %j', (text, field) => {
  expect(csvText([['head', (each: string) => each]], [text])).toBe(`head\r\n${field}\r\n`);
});
