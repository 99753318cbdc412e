import { brief, Problem, quote } from '../../problem.js';
import { LARGEST_WIF } from '../limits.js';

const CR = 13;
const LF = 10;
/** More sections, and more keys in one, than any file of the largest draft has. */
const MOST_SECTIONS = 1000;
const MOST_ENTRIES = 25_000;
/** Characters of a key or name that are looked at. */
const LONGEST_KEY = 200;
/** White space, and signs that a terminal acts on instead of showing them. */
const UNSEEN = /[\s\p{Cc}\p{Cf}]+/gu;

/** One line of a section as it was written, without the white space round it. */
export interface WifLine {
  readonly text: string;
  /** Number in the file, from 1. */
  readonly line: number;
}

/** One `key=value`. */
export interface Entry {
  /** The key in capitals with single spaces; a number without leading zeros. */
  readonly key: string;
  readonly value: string;
  readonly line: number;
  /** The key as it was written, for messages. */
  readonly written: string;
}

/** A section with its lines, comments and blank lines left out. */
export interface Section {
  /** The name in capitals with single spaces. */
  readonly name: string;
  readonly line: number;
  readonly lines: WifLine[];
}

/** The sections of a file by name, in the order in which they stand. */
export type Sections = ReadonlyMap<string, Section>;

/** Where a message is about: `line 12, [THREADING]`. */
export function placeOf(section: string, line: number): string {
  return `line ${line}, [${section}]`;
}

/**
 * The text in a file's bytes: UTF-8 or UTF-16 by its mark, UTF-8 where the bytes are that, else Windows-1252, which
 * holds all of Latin-1's letters.
 *
 * @throws Problem where the file is too large, or no text
 */
export function decodeWif(bytes: Uint8Array): string {
  if (bytes.length > LARGEST_WIF) {
    throw new Problem(`found a file of ${bytes.length} bytes; expected ${LARGEST_WIF} at most`);
  }
  const mark =
    bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : '';
  const text = mark === '' ? decodeBytes(bytes) : new TextDecoder(mark).decode(bytes);
  const zero = text.indexOf('\0');
  if (zero >= 0) {
    const line = text.slice(0, zero).split(/\r\n|\n|\r/).length;
    throw new Problem(`line ${line}: found a byte of value 0; expected a file of text`);
  }
  return text;
}

function decodeBytes(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/**
 * Splits a text into sections. Names are compared without case and with single spaces; a line that begins with a
 * semicolon is a comment. A section that is there twice is one section (the format says nothing of it).
 *
 * @throws Problem on a line before the first section, a heading that is not closed, or a text that has no section
 */
export function sectionsOf(text: string): Sections {
  const sections = new Map<string, Section>();
  let current: Section | undefined;
  for (const { text: written, line: number } of linesOf(text)) {
    if (written.startsWith(';')) continue;
    if (written.startsWith('[')) {
      const name = headingOf(written, number);
      current = sections.get(name) ?? { name, line: number, lines: [] };
      sections.set(name, current);
      if (sections.size > MOST_SECTIONS) {
        throw new Problem(`line ${number}: found more than ${MOST_SECTIONS} sections; expected a WIF file`);
      }
    } else if (current === undefined) {
      throw new Problem(`line ${number}: found ${quote(written)} before any section; expected [WIF]`);
    } else {
      current.lines.push({ text: written, line: number });
    }
  }
  if (sections.size === 0) throw new Problem('found no section; expected a WIF file, which begins with [WIF]');
  return sections;
}

/** The lines that are not blank, without white space round them; they end in CR, LF or both. */
function* linesOf(text: string): Generator<WifLine> {
  let line = 1;
  for (let from = 0, at = 0; at <= text.length; at++) {
    const sign = text.charCodeAt(at);
    if (at < text.length && sign !== LF && sign !== CR) continue;
    const written = at > from ? text.slice(from, at).trim() : '';
    if (written !== '') yield { text: written, line };
    if (sign === CR && text.charCodeAt(at + 1) === LF) at++;
    from = at + 1;
    line++;
  }
}

function headingOf(written: string, line: number): string {
  const heading = /^\[([^\]]*)\]\s*(;.*)?$/.exec(written);
  if (heading === null) {
    throw new Problem(`line ${line}: found the heading ${quote(written)}; expected a name in brackets, as [THREADING]`);
  }
  const name = plainKey(heading[1]!);
  if (name === '') throw new Problem(`line ${line}: found a heading without a name; expected one as [THREADING]`);
  return name;
}

/**
 * The entries of a section by key. A key that is there twice with one value counts once.
 *
 * @throws Problem on a line that is no `key=value`, and on a key that is there twice with two values
 */
export function entriesOf(section: Section): Map<string, Entry> {
  const entries = new Map<string, Entry>();
  for (const { text, line } of section.lines) {
    const equals = text.indexOf('=');
    if (equals < 1) {
      throw new Problem(`${placeOf(section.name, line)}: found ${quote(text)}; expected a key, “=” and a value`);
    }
    const written = text.slice(0, equals).trim();
    const key = plainKey(written);
    const value = text.slice(equals + 1).trim();
    const before = entries.get(key);
    if (before !== undefined && before.value !== value) {
      throw new Problem(
        `${placeOf(section.name, line)}: found ${quote(written)} again with another value; it stands on line ${before.line} already`,
      );
    }
    if (entries.size > MOST_ENTRIES) {
      throw new Problem(`${placeOf(section.name, line)}: found more than ${MOST_ENTRIES} keys; expected one a thread`);
    }
    if (before === undefined) entries.set(key, { key, value, line, written: brief(written) });
  }
  return entries;
}

/** A key or name as it is compared: capitals, single spaces, numbers without leading zeros. */
export function plainKey(written: string): string {
  if (/^\d{1,9}$/.test(written)) return String(Number(written));
  const key = written.slice(0, LONGEST_KEY).replace(UNSEEN, ' ').trim().toUpperCase();
  return /^0*\d{1,9}$/.test(key) ? String(Number(key)) : key;
}
