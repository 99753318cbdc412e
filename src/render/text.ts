import type * as fontkit from 'fontkit';
import { fontOf, fromTheLeft, type Typeface, typefaceOf } from './type.js';

/** Where and how a line of text stands. Sizes and places in the units of the picture; `y` is the base line. */
interface TextPlace {
  readonly x: number;
  readonly y: number;
  /** Height of the type's em. */
  readonly size: number;
  readonly bold?: boolean;
  /** The part of the line that is at `x`. Default: left. */
  readonly align?: 'left' | 'middle' | 'right';
}

/** One glyph, in thousandths of the em, y upwards. */
interface Sign {
  readonly outline: readonly Pick<fontkit.PathCommand, 'command' | 'args'>[];
  /** Distance to the next glyph. */
  readonly advance: number;
}

const EM = 1000;
const LETTER = { moveTo: 'm', lineTo: 'l', quadraticCurveTo: 'q', bezierCurveTo: 'c', closePath: 'z' } as const;

/** Glyphs for the prime signs ′ and ″ (feet and inches), which the type lacks, drawn to match it. */
const DRAWN: Readonly<Record<string, Sign>> = {
  '′': { outline: prime(30), advance: 240 },
  '″': { outline: [...prime(30), ...prime(210)], advance: 420 },
};

/** The glyph for a character that cannot be drawn: an empty box. */
const BOX: Sign = {
  outline: [...polygon(60, 0, 540, 0, 540, 669, 60, 669), ...polygon(120, 60, 120, 609, 480, 609, 480, 60)],
  advance: 600,
};

/** Most characters of a word whose layout is cached. */
const LONGEST_WORD = 40;

const words = new Map<string, readonly Sign[]>();
const paths = new WeakMap<Sign['outline'], Map<number, string>>();

/**
 * Converts a line of text to the data of an SVG path, so that it looks the same on every machine, fonts or none. A
 * character that the type lacks becomes an empty box.
 */
export function textPath(text: string, { x, y, size, bold = false, align = 'left' }: TextPlace): string {
  const line = signs(text, bold);
  const scale = size / EM;
  const width = line.reduce((sum, sign) => sum + sign.advance, 0) * scale;
  let pen = x - (align === 'middle' ? width / 2 : align === 'right' ? width : 0);
  let data = '';
  for (const { outline, advance } of line) {
    data += `M${Math.round(pen * 100) / 100} ${Math.round(y * 100) / 100}${relativePath(outline, size)}`;
    pen += advance * scale;
  }
  return data;
}

/** An outline at one size in relative coordinates, which can be cached and used anywhere. */
function relativePath(outline: Sign['outline'], size: number): string {
  const sizes = paths.get(outline) ?? new Map<number, string>();
  paths.set(outline, sizes);
  const known = sizes.get(size);
  if (known !== undefined) return known;
  // Positions are rounded before differences are taken, so that rounding errors do not add up.
  const fine = 10 ** Math.max(0, Math.ceil(Math.log10(100 / size)));
  const rounded = (value: number) => Math.round((value * size * fine) / EM);
  let start = [0, 0];
  let at = [0, 0];
  let data = '';
  for (const { command, args } of outline) {
    const places = args.map((arg, k) => rounded(k % 2 === 0 ? arg : -arg));
    data += LETTER[command] + places.map((place, k) => (place - at[k % 2]!) / fine).join(' ');
    if (command === 'closePath') at = start;
    else at = places.slice(-2);
    if (command === 'moveTo') start = at;
  }
  sizes.set(size, data);
  return data;
}

/** Width of a line of text at an em of `size`. */
export function textWidth(text: string, size: number, bold = false): number {
  return signs(text, bold).reduce((sum, sign) => sum + sign.advance, 0) * (size / EM);
}

/** The greatest count up to `most` that fits, given that all smaller counts fit too; 0 if none fits. */
export function mostThat(fits: (count: number) => boolean, most: number): number {
  // Doubling from below never tries a count much larger than the answer.
  let [fitting, tooMany] = [0, 1];
  while (tooMany <= most && fits(tooMany)) [fitting, tooMany] = [tooMany, tooMany * 2];
  tooMany = Math.min(tooMany, most + 1);
  while (tooMany - fitting > 1) {
    const middle = Math.floor((fitting + tooMany) / 2);
    if (fits(middle)) fitting = middle;
    else tooMany = middle;
  }
  return fitting;
}

/** The glyphs of a line, word by word: words recur, so they are cached, and this type has no kerning with spaces. */
function signs(text: string, bold: boolean): Sign[] {
  return fromTheLeft(text)
    .split(/( )/)
    .flatMap((word) => {
      const key = `${bold} ${word}`;
      const known = words.get(key) ?? wordSigns(word, bold);
      // A longer text is no word, does not recur, and would only fill the memory.
      if (word.length <= LONGEST_WORD) words.set(key, known);
      return known;
    });
}

/** The glyphs of a word. Characters of one font are laid out together, for the sake of kerning. */
function wordSigns(text: string, bold: boolean): Sign[] {
  const line: Sign[] = [];
  let stretch = '';
  let face: Typeface | undefined;
  const layOut = () => {
    if (stretch === '' || face === undefined) return;
    const run = fontOf(face, bold).layout(stretch);
    run.glyphs.forEach((glyph, g) => {
      const { xAdvance, xOffset, yOffset } = run.positions[g]!;
      line.push({ outline: moved(glyph.path.commands, xOffset, yOffset), advance: xAdvance });
    });
    stretch = '';
  };
  for (const character of text) {
    const own = character in DRAWN ? undefined : typefaceOf(character);
    if (own !== face) layOut();
    face = own;
    if (own !== undefined) stretch += character;
    else line.push(DRAWN[character] ?? BOX);
  }
  layOut();
  return line;
}

/** An outline at its place: marks stand over and under their letters. */
function moved(outline: Sign['outline'], right: number, up: number): Sign['outline'] {
  if (right === 0 && up === 0) return outline;
  return outline.map(({ command, args }) => ({
    command,
    args: args.map((arg, k) => arg + (k % 2 === 0 ? right : up)),
  }));
}

function prime(x: number): Sign['outline'] {
  return polygon(x, 440, x + 80, 669, x + 180, 669, x + 60, 440);
}

function polygon(...places: number[]): Sign['outline'] {
  const corners = Array.from({ length: places.length / 2 }, (_, c) => places.slice(c * 2, c * 2 + 2));
  const lines = corners.map((args, c) => ({ command: c === 0 ? ('moveTo' as const) : ('lineTo' as const), args }));
  return [...lines, { command: 'closePath', args: [] }];
}
