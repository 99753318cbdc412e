import { brief, Problem, quote } from '../../problem.js';
import { LARGEST_WIF } from '../limits.js';

const CR = 13;
const LF = 10;
/** Most sections in a file, and most entries in a section; a file of the largest draft has fewer. */
const MOST_SECTIONS = 1000;
const MOST_ENTRIES = 25_000;
/** Characters of a key or section name that are compared. */
const LONGEST_KEY = 200;
/** White space, and signs that a terminal acts on instead of showing them. */
const UNSEEN = /[\s\p{Cc}\p{Cf}]+/gu;

/** One line of a section as it was written, without the white space round it. */
interface WifLine {
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
export interface WifSection {
  /** The name in capitals with single spaces. */
  readonly name: string;
  readonly line: number;
  readonly lines: WifLine[];
}

/** The sections of a file by name, in the order in which they stand. */
export type WifSections = ReadonlyMap<string, WifSection>;

/** The place named in a message: `line 12, [THREADING]`. */
export function placeOf(section: string, line: number): string {
  return `line ${line}, [${section}]`;
}

/**
 * Decodes the bytes of a file: UTF-8 or UTF-16 if a byte order mark says so, else UTF-8 if the bytes are valid, else
 * Windows-1252 (a superset of the letters of Latin-1).
 *
 * @throws Problem if the file is too large or is no text
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
 * semicolon is a comment. A section that occurs twice counts as one section (the format is silent on this).
 *
 * @throws Problem on a line before the first section, an unclosed heading, or a text without sections
 */
export function sectionsOf(text: string): WifSections {
  const sections = new Map<string, WifSection>();
  let current: WifSection | undefined;
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

/** The non-blank lines, without white space round them; lines end in CR, LF or both. */
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
 * The entries of a section by key. A key that occurs twice with the same value counts once.
 *
 * @throws Problem on a line that is no `key=value`, and on a key that occurs with two values
 */
export function entriesOf(section: WifSection): Map<string, Entry> {
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

/** A key or name in the form in which it is compared: capitals, single spaces, numbers without leading zeros. */
export function plainKey(written: string): string {
  if (/^\d{1,9}$/.test(written)) return String(Number(written));
  const key = written.slice(0, LONGEST_KEY).replace(UNSEEN, ' ').trim().toUpperCase();
  return /^0*\d{1,9}$/.test(key) ? String(Number(key)) : key;
}
