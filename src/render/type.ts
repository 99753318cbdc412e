import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import * as fontkit from 'fontkit';

/** The files of the type, by their names: one for each set of letters. */
const FILES = {
  latin: '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin',
  'latin more': '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-ext',
  vietnamese: '@fontsource/noto-sans/files/noto-sans-vietnamese',
  greek: '@fontsource/noto-sans/files/noto-sans-greek',
  'greek more': '@fontsource/noto-sans/files/noto-sans-greek-ext',
  cyrillic: '@fontsource/noto-sans/files/noto-sans-cyrillic',
  'cyrillic more': '@fontsource/noto-sans/files/noto-sans-cyrillic-ext',
} as const;
export type Typeface = keyof typeof FILES;

/** Where the letters of each script are looked for; all other characters are looked for in the first two files. */
const SCRIPTS: readonly (readonly [RegExp, readonly Typeface[]])[] = [
  [/\p{Script=Greek}/u, ['greek', 'greek more']],
  [/\p{Script=Cyrillic}/u, ['cyrillic', 'cyrillic more']],
  [/\p{Script=Latin}/u, ['latin', 'latin more', 'vietnamese']],
];

const fonts = new Map<string, fontkit.Font>();
const faces = new Map<string, Typeface | undefined>();

/** The bytes of one file of the type, wherever its package is installed. */
export function typeFile(face: Typeface, bold: boolean): Buffer {
  return readFileSync(createRequire(import.meta.url).resolve(`${FILES[face]}-${bold ? 700 : 400}-normal.woff`));
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
