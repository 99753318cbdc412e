import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import * as fontkit from 'fontkit';
import { expect, test } from 'vitest';
import { fontOf } from '../../src/render/type.js';

const resolve = createRequire(import.meta.url).resolve;
const FILES = {
  latin: '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin',
  greek: '@fontsource/noto-sans/files/noto-sans-greek',
  hebrew: '@fontsource/noto-sans-hebrew/files/noto-sans-hebrew-hebrew',
  arabic: '@fontsource/noto-sans-arabic/files/noto-sans-arabic-arabic',
} as const;
const WORDS = { latin: 'fix 0.15 in', greek: 'Καλλιόπη', hebrew: 'מגבות', arabic: 'فاطِمة' } as const;

// fontkit's own way of unpacking is the second way to the same letters.
test.each(Object.keys(FILES) as (keyof typeof FILES)[])('the letters of %s are those of the packed file', (face) => {
  for (const bold of [false, true]) {
    const packed = fontkit.create(readFileSync(resolve(`${FILES[face]}-${bold ? 700 : 400}-normal.woff`)));
    const own = fontOf(face, bold);
    const drawn = (font: fontkit.Font) => {
      const { glyphs, positions } = font.layout(WORDS[face]);
      return glyphs.map((glyph, at) => [glyph.id, glyph.path.toSVG(), positions[at]!.xAdvance]);
    };
    expect(drawn(own)).toEqual(drawn(packed as fontkit.Font));
    expect([own.numGlyphs, own.postscriptName]).toEqual([
      (packed as fontkit.Font).numGlyphs,
      (packed as fontkit.Font).postscriptName,
    ]);
  }
});
