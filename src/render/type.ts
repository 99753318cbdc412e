import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { inflateSync } from 'node:zlib';
import * as fontkit from 'fontkit';

/** The files of the type, by their names: one for each set of letters. */
const FILES = {
  latin: '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin',
  'latin more': '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-ext',
  'latin last': '@fontsource/noto-sans/files/noto-sans-latin-ext',
  vietnamese: '@fontsource/noto-sans/files/noto-sans-vietnamese',
  greek: '@fontsource/noto-sans/files/noto-sans-greek',
  'greek more': '@fontsource/noto-sans/files/noto-sans-greek-ext',
  cyrillic: '@fontsource/noto-sans/files/noto-sans-cyrillic',
  'cyrillic more': '@fontsource/noto-sans/files/noto-sans-cyrillic-ext',
  hebrew: '@fontsource/noto-sans-hebrew/files/noto-sans-hebrew-hebrew',
  arabic: '@fontsource/noto-sans-arabic/files/noto-sans-arabic-arabic',
} as const;
export type Typeface = keyof typeof FILES;

/** Where the letters of each script are looked for; all other characters are looked for in the first two files. */
const SCRIPTS: readonly (readonly [RegExp, readonly Typeface[]])[] = [
  [/\p{Script=Greek}/u, ['greek', 'greek more']],
  [/\p{Script=Cyrillic}/u, ['cyrillic', 'cyrillic more']],
  [/[\u0590-\u05ff\ufb1d-\ufb4f]/u, ['hebrew']],
  [/[\u0600-\u06ff\u0750-\u077f\ufb50-\ufdff\ufe70-\ufefc]|\u200c|\u200d/u, ['arabic']],
  [/\p{Script=Latin}/u, ['latin', 'latin more', 'latin last', 'vietnamese']],
];

const files = new Map<string, Buffer>();
const fonts = new Map<string, fontkit.Font>();
const faces = new Map<string, Typeface | undefined>();

/** The bytes of one font, read once, wherever its package is installed. */
export function typeFile(face: Typeface, bold: boolean): Buffer {
  const path = `${FILES[face]}-${bold ? 700 : 400}-normal.woff`;
  const file = files.get(path) ?? unpacked(readFileSync(createRequire(import.meta.url).resolve(path)));
  files.set(path, file);
  return file;
}

/** A WOFF file (1.0, W3C 2012) as a font file: every document would unpack its tables again. */
function unpacked(woff: Buffer): Buffer {
  const count = woff.readUInt16BE(12);
  const head = Buffer.alloc(12 + 16 * count);
  woff.copy(head, 0, 4, 8);
  head.writeUInt16BE(count, 4);
  const tables: Buffer[] = [];
  let offset = head.length;
  for (let at = 0; at < count; at++) {
    const entry = 44 + 20 * at;
    const [from, packed, length] = [4, 8, 12].map((field) => woff.readUInt32BE(entry + field)) as [
      number,
      number,
      number,
    ];
    const table = woff.subarray(from, from + packed);
    woff.copy(head, 12 + 16 * at, entry, entry + 4);
    woff.copy(head, 16 + 16 * at, entry + 16, entry + 20);
    head.writeUInt32BE(offset, 20 + 16 * at);
    head.writeUInt32BE(length, 24 + 16 * at);
    // Tables begin at multiples of four bytes.
    tables.push(packed < length ? inflateSync(table) : table, Buffer.alloc(-length & 3));
    offset += length + (-length & 3);
  }
  return Buffer.concat([head, ...tables]);
}

/** One font, read once, and only when a text needs it. */
export function fontOf(face: Typeface, bold: boolean): fontkit.Font {
  const key = `${face} ${bold}`;
  const font = fonts.get(key) ?? (fontkit.create(typeFile(face, bold)) as fontkit.Font);
  fonts.set(key, font);
  return font;
}

/** The file that has a character; undefined if none has. Regular and bold type have the same characters. */
export function typefaceOf(character: string): Typeface | undefined {
  if (!faces.has(character)) {
    const where = SCRIPTS.find(([script]) => script.test(character))?.[1] ?? (['latin', 'latin more'] as const);
    const point = character.codePointAt(0)!;
    faces.set(
      character,
      where.find((face) => fontOf(face, false).hasGlyphForCodePoint(point)),
    );
  }
  return faces.get(character);
}

/** The letters of a text that no file has, each once. */
export function lettersLacking(text: string): string[] {
  return [...new Set(text.normalize('NFC'))].filter((sign) => !/\s/.test(sign) && typefaceOf(sign) === undefined);
}

/** Letters and marks that are written from right to left. */
const LEFTWARD = '\\u0590-\\u08ff\\u200c\\u200d\\ufb1d-\\ufdff\\ufe70-\\ufefc';
/** From the first such letter to the last of a row that no other letter breaks; and its words, numbers and signs. */
const STRETCH = new RegExp(`[${LEFTWARD}](?:(?:[${LEFTWARD}]|\\P{L})*[${LEFTWARD}])?`, 'gu');
const WORDS = new RegExp(`\\p{Nd}+(?:[.,:/]\\p{Nd}+)*|(?:(?!\\p{Nd})[${LEFTWARD}])+|.`, 'gu');
const PAIRS = '()[]{}<>«»';

/**
 * A line as it stands from left to right: the words of Hebrew and Arabic in reverse, each of them as it is read, since
 * the type itself turns its letters. Numbers keep their order, brackets change sides (after UAX 9, for a line that is
 * otherwise read from the left).
 */
export function fromTheLeft(text: string): string {
  return text.replaceAll(STRETCH, (stretch) => {
    const words = stretch.match(WORDS)!.reverse();
    return words.map((word) => (PAIRS.includes(word) ? PAIRS[PAIRS.indexOf(word) ^ 1]! : word)).join('');
  });
}
