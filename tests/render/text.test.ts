import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { mostThat, textPath, textWidth } from '../../src/render/text.js';
import { fromTheLeft, lettersLacking } from '../../src/render/type.js';
import { canDraw } from './boxes.js';

/** Every place that a path of relative moves comes to. */
function corners(data: string): { x: number; y: number }[] {
  const places: { x: number; y: number }[] = [];
  let at = { x: 0, y: 0 };
  let start = at;
  for (const [, letter, numbers] of data.matchAll(/([Mmlqcz])([^Mmlqcz]*)/g)) {
    const n = numbers!.trim().split(/\s+/).filter(Boolean).map(Number);
    if (letter === 'z') at = start;
    else {
      const [x, y] = n.slice(-2) as [number, number];
      at = letter === 'M' ? { x, y } : { x: at.x + x, y: at.y + y };
      if (letter !== 'M') places.push(at);
      if (letter === 'M' || letter === 'm') start = at;
    }
  }
  return places;
}

/** The type as its library lays it out. */
const type = (bold: boolean): fontkit.Font => {
  const name = `atkinson-hyperlegible-latin-${bold ? 700 : 400}-normal.woff`;
  const file = createRequire(import.meta.url).resolve(`@fontsource/atkinson-hyperlegible/files/${name}`);
  return fontkit.create(readFileSync(file)) as fontkit.Font;
};

const span = (values: number[]) => [Math.min(...values), Math.max(...values)];

describe('text as outlines', () => {
  const printed =
    'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 .,;:!?()[]/+-=%#&*"\'×–—·½¼¾″′’‘“”éèäöåüÄÖÅß°…';

  it('covers every character that is printed', () => {
    for (const character of printed) expect([character, canDraw(character)]).toEqual([character, true]);
  });

  it('stands on its base line, as high as the type’s capitals (668 of 1000, by its own table)', () => {
    const [top, bottom] = span(corners(textPath('H', { x: 0, y: 500, size: 1000 })).map((p) => p.y));
    expect([top, bottom]).toEqual([500 - 668, 500]);
  });

  it('aligns left, in the middle and right', () => {
    const width = textWidth('Hill', 20);
    const left = corners(textPath('Hill', { x: 0, y: 0, size: 20 }));
    for (const [align, shift] of [
      ['middle', width / 2],
      ['right', width],
    ] as const) {
      const moved = corners(textPath('Hill', { x: 0, y: 0, size: 20, align }));
      moved.forEach((place, k) => {
        expect(place.x).toBeCloseTo(left[k]!.x - shift, 1);
      });
    }
  });

  it('kerns pairs, grows with the size, and is wider in bold', () => {
    expect(textWidth('AV', 100)).toBeLessThan(textWidth('A', 100) + textWidth('V', 100));
    expect(textWidth('shed', 30)).toBeCloseTo(3 * textWidth('shed', 10), 9);
    expect(textWidth('shed', 30, true)).toBeGreaterThan(textWidth('shed', 30));
  });

  it('has no kerning with a space, so that a line is as wide as its words and spaces', () => {
    for (const bold of [false, true]) {
      const laidOut = type(bold);
      const width = (text: string) => laidOut.layout(text).positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0);
      for (const sign of printed.replace(/[′″]/g, '')) {
        expect([sign, width(`${sign} `)]).toEqual([sign, width(sign) + width(' ')]);
        expect([sign, width(` ${sign}`)]).toEqual([sign, width(sign) + width(' ')]);
        expect(textWidth(`Warp ${sign} To`, 1000, bold)).toBe(width(`Warp ${sign} To`));
      }
    }
  });

  it.each(['Καλλιόπη Ἀθηνᾶ', 'Їжак Ѳеодоръ Преображенская', 'Łukasz Dvořák Şirin', 'Nguyễn Thị Ánh'])(
    'has the letters of %s',
    (name) => {
      expect(canDraw(name)).toBe(true);
      expect(textWidth(name, 10)).toBeGreaterThan(3 * name.length);
      expect(textPath(name, { x: 0, y: 0, size: 10, bold: true })).not.toBe(textPath(name, { x: 0, y: 0, size: 10 }));
    },
  );

  it('draws a box for a character that the type lacks', () => {
    expect(canDraw('織')).toBe(false);
    const box = corners(textPath('織', { x: 0, y: 0, size: 1000 }));
    expect([span(box.map((p) => p.x)), span(box.map((p) => p.y))]).toEqual([
      [60, 540],
      [-669, 0],
    ]);
    expect(textWidth('a織b', 10)).toBeCloseTo(textWidth('a', 10) + 6 + textWidth('b', 10), 9);
  });
});

describe('what fits', () => {
  it('is found in few tries, and none of them far beyond it', () => {
    for (const [limit, most] of [
      [0, 10],
      [1, 1],
      [7, 7],
      [7, 100_000],
      [63, 64],
      [99_999, 100_000],
    ] as const) {
      const tried: number[] = [];
      const fits = (count: number) => tried.push(count) > 0 && count <= limit;
      expect(mostThat(fits, most)).toBe(limit);
      expect(tried.length).toBeLessThanOrEqual(2 * Math.ceil(Math.log2(limit + 2)) + 2);
      expect(Math.max(...tried)).toBeLessThanOrEqual(Math.max(1, 2 * limit));
    }
  });
});

// The order is that of UAX 9 for a line whose main direction is from the left, from general knowledge of its rules.
describe('words that are read from the right', () => {
  it.each([
    ['weaver Ida, 3 of 4', 'weaver Ida, 3 of 4'],
    ['weaver אבג דהו, warp 3', 'weaver דהו אבג, warp 3'],
    ['אבג-דהו', 'דהו-אבג'],
    ['אבג (12.5) דהו', 'דהו (12.5) אבג'],
    ['אבג 12 Ida דהו', 'אבג 12 Ida דהו'],
    ['سلمى ١٢ نور', 'نور ١٢ سلمى'],
  ])('%s', (read, stands) => {
    expect(fromTheLeft(read)).toBe(stands);
    expect(fromTheLeft(stands)).toBe(read);
  });

  it('keep their marks, and join', () => {
    const joined = textWidth('سلمى', 100);
    const apart = [...'سلمى'].reduce((sum, letter) => sum + textWidth(letter, 100), 0);
    expect(joined).toBeLessThan(apart - 20);
    expect(textWidth('סֶלָה', 100)).toBeCloseTo(textWidth('סלה', 100));
    const marks = corners(textPath('לָ', { x: 0, y: 0, size: 100 })).filter(({ y }) => y > 3);
    const letter = span(corners(textPath('ל', { x: 0, y: 0, size: 100 })).map(({ x }) => x));
    expect(marks.length).toBeGreaterThan(0);
    for (const { x } of marks) {
      expect(x).toBeGreaterThanOrEqual(letter[0]!);
      expect(x).toBeLessThanOrEqual(letter[1]!);
    }
  });

  it('the letters that no type has are told, each once', () => {
    expect(lettersLacking('織子織, Ида Ίδα عيدة עדה İda Ōhara Ŵyn Huệ')).toEqual(['織', '子']);
  });
});
