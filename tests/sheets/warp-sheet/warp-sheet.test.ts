import { describe, expect, test } from 'vitest';
import { pdfPage } from '../../golden/raster.js';
import { kept } from '../../plan/cloths.js';
import { complaints } from '../../plan/legible.js';
import { type PdfPage, readPdf } from '../../plan/pdf-text.js';
import { FROM_THE_RIGHT, gampSheets, HARD, hardSheet, wandering } from './hard-cloths.js';

const words = (page: PdfPage): string => page.lines.map((line) => line.text).join(' ');
const sheet = async (name: keyof typeof HARD): Promise<string[]> => readPdf(await hardSheet(HARD[name]!)).map(words);

/** Share of black on a page, white paper being none. */
async function ink(pdf: Buffer, page: number): Promise<number> {
  const { rgb } = await pdfPage(pdf, page);
  let black = 0;
  for (let at = 0; at < rgb.length; at += 3)
    black += 1 - (0.299 * rgb[at]! + 0.587 * rgb[at + 1]! + 0.114 * rgb[at + 2]!) / 255;
  return black / (rgb.length / 3);
}

describe.each(['a4', 'letter'])('sheets of every kind, on %s', (paper) => {
  test.each(Object.entries(HARD))('%s: few sides, all legible, page 1 light on ink', async (_, hard) => {
    const pdf = await hardSheet(hard, paper);
    const pages = readPdf(pdf);
    expect(pages.length).toBeLessThanOrEqual(hard.pages ?? 2);
    expect(pages.map(complaints)).toEqual(pages.map(() => []));
    for (const page of pages) expect(Math.min(...page.lines.map(({ size }) => size))).toBeGreaterThanOrEqual(9);
    expect(words(pages[0]!)).not.toContain('?');
    expect(await ink(pdf, 1)).toBeLessThan(0.12);
  });

  test('a gamp', async () => {
    const pages = readPdf(await gampSheets(paper));
    // Its key, and two sides.
    expect(pages).toHaveLength(3);
    expect(words(pages[1]!)).toContain('324 in 5 sections, with separators');
    expect(words(pages[1]!)).not.toContain('to fill');
    expect(pages.map(complaints)).toEqual(pages.map(() => []));
  });
});

test('the tie-up and the letters are there at every size, in cells with room for 9 pt', async () => {
  for (const name of ['fifty-eight-ends', 'three-yarns', 'four-hundred-ends'] as const) {
    const pages = readPdf(await hardSheet(HARD[name]!));
    expect(words(pages[0]!)).toMatch(/tie-up 1 (?:8|4|2)/);
    const ends = HARD[name]!.cloth().draft.warp.length;
    const letters = pages.flatMap(({ lines }) => lines.filter(({ text }) => /^[DLR]$/.test(text)));
    expect(letters.length).toBeGreaterThanOrEqual(ends);
  }
});

test('a draft too long for one line is split, each end once, and its end is marked', async () => {
  const pages = readPdf(await hardSheet(HARD['four-hundred-ends']!));
  const split = pages.filter((page) => words(page).includes('threading: one repeat, 400 ends, in 7 lines'));
  expect(split).toHaveLength(1);
  const small = split[0]!.lines.filter(({ bold, size }) => bold && size === 9).map(({ text }) => text);
  expect(small.filter((text) => /^[DL]$/.test(text))).toHaveLength(400);
  expect(small.filter((text) => /^[1-4]$/.test(text))).toHaveLength(400);
});

test('threading in the order of threading: borders in their place, repeats with running totals, then the balance', async () => {
  const [, lists] = await sheet('mirrored-bordered');
  const order = [
    'left border: 8 ends in D, 8 in all so far 1–8 1D 4D 2D 4D 1D 3D 2D 3D',
    '5 repeats of 78 ends, numbered from 1 in each:',
    'all ends so far: 86 164 242 320 398',
    '1 end to balance, 399 in all so far 1 1D',
    'right border: 8 ends in D, 407 in all 1–8 3D 2D 3D 1D 4D 2D 4D 1D',
    'in all 407: D 252, L 155',
  ].map((said) => lists!.indexOf(said));
  expect(order).not.toContain(-1);
  expect(order).toEqual(order.toSorted((a, b) => a - b));
});

test('the winding is told to its end, with running totals at every tie', async () => {
  const [, lists] = await sheet('mirrored-bordered');
  expect(lists).toContain('D: 252 ends, 126 rounds; counting ties at 8 102 196 244 252');
  expect(lists).toMatch(/in order: border 8D; then 5 times .*; then once D; then border 8D; end at 407/);
  expect(lists).toContain('counting ties in order, at 8 86 164 242 320 398 399 407 ends');
  expect(lists).not.toContain('…');
});

test('picks of the whole piece are counted in repeats, with a box for each', async () => {
  const [, lists] = await sheet('eight-ends');
  expect(lists).toContain('picks: 112 picks = 14 repeats of 8');
  expect(lists).toContain('repeats done, and the picks so far: 8 16 24 32 40 48 56 64 72 80 88 96 104 112');
});

test.each(['a4', 'letter'])(
  'one end, two picks, a narrow warp, borders wider than repeats, a hundred metres, on %s',
  async (paper) => {
    const twill = (warp: string) => kept('2/2 twill', { warp });
    const sheets = [
      { cloth: () => wandering({ ends: 1, picks: 2, shafts: 2 }), flags: { width: '1 in' } },
      { cloth: () => wandering({ ends: 2, picks: 1, shafts: 2 }), flags: { width: '0.1 in', piece: '0.2 in' } },
      { cloth: () => twill('DL'), flags: { border: '90 D', width: '11 in', mirror: 'single' } },
      { cloth: () => twill('DDLDL'), flags: { piece: '100 m', pieces: '3', width: '58.7 in' } },
    ];
    for (const each of sheets) {
      const pages = readPdf(await hardSheet(each, paper));
      expect(pages.length).toBe(2);
      expect(pages.map(complaints)).toEqual([[], []]);
    }
    const [, lists] = readPdf(await hardSheet(sheets[3]!, paper)).map(words);
    // 87,490 picks of 20 to a repeat: 4375 repeats, in no more than 80 boxes.
    expect(lists).toMatch(/a box for every 100 repeats, and the picks so far: 10000 20000 .*0 \d+ After/);
  },
);

test('names: Greek and Cyrillic are written, a long one leaves room for the date, what the type lacks is said', async () => {
  const [first] = readPdf(await hardSheet(HARD['twenty-ends-greek']!));
  const said = words(first!);
  expect(said.replaceAll(' ', '')).toContain('weaver1,ΚαλλιόπηΠαπαδοπούλου-Αναγνωστοπούλου,ИринаПреображенская');
  expect(said).toContain('Each box in a name is a letter that this type does not have: write it in by hand.');
  const date = first!.lines.find(({ text }) => text === 'date')!;
  const name = first!.lines.find(({ text }) => text.startsWith('Καλλιόπη'))!;
  expect(date.y - name.y).toBeGreaterThan(9);
  expect(words(readPdf(await hardSheet(HARD['eight-ends']!))[0]!)).not.toContain('Each box');
});

test('names in Hebrew: the words stand from right to left, a number from left to right', async () => {
  const [first] = readPdf(await hardSheet(FROM_THE_RIGHT));
  // A letter of each word that no other has.
  const [spring, number, kitchen, towels] = ['א', '12', 'ט', 'ג'].map(
    (part) => first!.lines.find(({ text }) => text.includes(part))!.x,
  );
  expect([spring, number, kitchen, towels]).toEqual([spring, number, kitchen, towels].toSorted((a, b) => a! - b!));
});

test('picks that go on to the next page are read down each page before the next', async () => {
  const pages = readPdf(await hardSheet(HARD['four-hundred-ends']!));
  // The number of a pick is followed by its shuttle.
  const listed = pages
    .map(({ lines }) => lines.filter(({ text }, at) => /^\d+$/.test(text) && /^[DL]$/.test(lines[at + 1]?.text ?? '')))
    .map((numbers) => numbers.map(({ text }) => Number(text)))
    .slice(1, -1);
  expect(new Set(listed.flat()).size).toBeGreaterThan(350);
  expect(listed.length).toBeGreaterThan(1);
  for (let page = 1; page < listed.length; page++) {
    expect(Math.min(...listed[page]!)).toBeGreaterThan(Math.max(...listed[page - 1]!));
  }
});
