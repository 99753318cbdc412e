import { lightness, luminance, type Yarn } from '../../colour/yarn.js';
import { brief, Problem } from '../../problem.js';
import { MOST_COLOURS, MOST_THREADS } from '../limits.js';
import { DEFAULT_YARNS } from '../yaml/yarns-given.js';
import { Fields } from './values.js';
import { placeOf, type WifSections } from './wif-sections.js';

/** The yarns of a file: those that a thread uses, each colour once, and the colours of the table that none uses. */
interface WifColours {
  readonly yarns: readonly Yarn[];
  /** Index into `yarns` of each end. */
  readonly warp: readonly number[];
  readonly weft: readonly number[];
  /** `#rrggbb` */
  readonly unused: readonly string[];
  /** The file's own colour table (`#rrggbb` by number) and each thread's number in it; empty if it has no colours. */
  readonly table: ReadonlyMap<number, string>;
  readonly numbers: { readonly warp: readonly number[]; readonly weft: readonly number[] };
}

/** A yarn is one capital letter, so there can be no more. */
const MOST_YARNS = 26;
const USUAL_RANGE: readonly [number, number] = [0, 255];

/**
 * Reads palette, colour table and the colours of the threads. A thread without a colour of its own takes the colour of
 * its system (warp or weft). If the file has no colours at all, the warp is dark and the weft light.
 *
 * @throws Problem on a colour out of range, a number that is not in the table, or more than 26 colours in use
 */
export function readColours(sections: WifSections, ends: number, picks: number, notes: string[]): WifColours {
  const table = colourTable(sections, notes);
  if (table.size === 0) {
    const uses = ['WARP COLORS', 'WEFT COLORS'].some((name) => (sections.get(name)?.lines.length ?? 0) > 0);
    if (uses)
      throw new Problem('found colours of threads and no [COLOR TABLE]; expected the table that they point into');
    notes.push('the file has no colours; the warp was made dark and the weft light');
    const numbers = { warp: same(ends, 0), weft: same(picks, 1) };
    return { yarns: DEFAULT_YARNS, ...numbers, unused: [], table, numbers };
  }
  const first = Math.min(...table.keys());
  const warp = threadColours(sections, 'WARP', ends, table, first, notes);
  const weft = threadColours(sections, 'WEFT', picks, table, first, notes);
  const used = [...new Set([...warp, ...weft].map((number) => table.get(number)!))];
  if (used.length > MOST_YARNS) {
    throw new Problem(`found ${used.length} colours in use; expected ${MOST_YARNS} at most, one letter a yarn`);
  }
  const yarns = lettered(used, table);
  const place = new Map(yarns.map((yarn, index) => [yarn.hex, index]));
  const index = (number: number): number => place.get(table.get(number)!)!;
  const unused = [...new Set(table.values())].filter((hex) => !place.has(hex));
  return { yarns, warp: warp.map(index), weft: weft.map(index), unused, table, numbers: { warp, weft } };
}

/** Gives the colours letters: D and L by lightness if there are two, else in the order of the table. */
function lettered(used: readonly string[], table: ReadonlyMap<number, string>): Yarn[] {
  const rank = new Map([...new Set(table.values())].map((hex, at) => [hex, at]));
  const light = (hex: string): number => lightness(luminance(hex));
  if (used.length === 2) {
    const [dark, pale] = [...used].sort((a, b) => light(a) - light(b) || rank.get(a)! - rank.get(b)!);
    return [
      { letter: 'D', name: 'dark', hex: dark! },
      { letter: 'L', name: 'light', hex: pale! },
    ];
  }
  const inOrder = [...used].sort((a, b) => rank.get(a)! - rank.get(b)!);
  return inOrder.map((hex, at) => {
    const letter = String.fromCharCode(65 + at);
    return { letter, name: letter, hex };
  });
}

/** Reads the colour table: colours by number, ascending. */
function colourTable(sections: WifSections, notes: string[]): Map<number, string> {
  const palette = Fields.of(sections, 'COLOR PALETTE');
  const form = palette.get('FORM');
  if (form !== undefined && form.value !== '' && !/^rgb\b/i.test(form.value)) {
    throw palette.wrong(form, `found Form=${brief(form.value)}`, 'RGB');
  }
  const [low, high] = rangeOf(palette, sections.has('COLOR TABLE'), notes);
  const entries = palette.whole('ENTRIES', 0, MOST_COLOURS);
  const fields = Fields.of(sections, 'COLOR TABLE');
  const table = new Map<number, string>();
  for (const { number, entry } of fields.numbered('a colour', MOST_COLOURS, '')) {
    const parts = fields.list(entry);
    if (parts.length !== 3) {
      throw fields.wrong(entry, `found ${parts.length} numbers at colour ${number}`, 'red, green and blue');
    }
    const beyond = parts.find((part) => part < low || part > high);
    if (beyond !== undefined) {
      throw fields.wrong(
        entry,
        `found ${beyond} at colour ${number}`,
        `${low} to ${high}, as [COLOR PALETTE] Range says`,
      );
    }
    table.set(number, `#${parts.map((part) => byte((part - low) / (high - low))).join('')}`);
  }
  if (entries !== undefined && entries !== table.size) {
    notes.push(`[COLOR PALETTE] counts ${entries} colours; [COLOR TABLE] has ${table.size}`);
  }
  return new Map([...table].sort(([a], [b]) => a - b));
}

function rangeOf(palette: Fields, needed: boolean, notes: string[]): readonly [number, number] {
  const entry = palette.get('RANGE');
  if (entry === undefined || entry.value === '') {
    if (needed) notes.push('[COLOR PALETTE] says no range of its numbers; they were read as 0 to 255');
    return USUAL_RANGE;
  }
  const [low, high, ...more] = palette.list(entry);
  if (low === undefined || high === undefined || more.length > 0 || low >= high) {
    throw palette.wrong(entry, `found Range=${brief(entry.value)}`, 'the least and the greatest number, as 0,255');
  }
  return [low, high];
}

function byte(part: number): string {
  return Math.round(part * 255)
    .toString(16)
    .padStart(2, '0');
}

/** Reads the number in the colour table for each thread. */
function threadColours(
  sections: WifSections,
  system: 'WARP' | 'WEFT',
  count: number,
  table: ReadonlyMap<number, string>,
  first: number,
  notes: string[],
): number[] {
  const colours = new Array<number>(count).fill(0);
  const name = `${system} COLORS`;
  const fields = Fields.of(sections, name);
  for (const { number, entry } of fields.numbered(system === 'WARP' ? 'an end' : 'a pick', MOST_THREADS, '')) {
    if (number > count)
      throw fields.wrong(entry, `found thread ${number}`, `1 to ${count}, as [${system}] has threads`);
    colours[number - 1] = colourNumber(fields, number, table, fields.list(entry), entry.line);
  }
  if (!colours.includes(0)) return colours;
  const usual = usualColour(Fields.of(sections, system), table);
  if (usual === undefined) {
    const gaps = colours.filter((colour) => colour === 0).length;
    notes.push(`${gaps} threads of the ${system.toLowerCase()} have no colour; they were given colour ${first}`);
  }
  return colours.map((colour) => (colour === 0 ? (usual ?? first) : colour));
}

function usualColour(fields: Fields, table: ReadonlyMap<number, string>): number | undefined {
  const entry = fields.get('COLOR');
  if (entry === undefined) return undefined;
  const numbers = fields.list(entry);
  return numbers.length === 0 || numbers[0] === 0 ? undefined : colourNumber(fields, 0, table, numbers, entry.line);
}

/** Reads a number of the colour table, which red, green and blue may follow; 0 if there is none. */
function colourNumber(
  fields: Fields,
  thread: number,
  table: ReadonlyMap<number, string>,
  numbers: readonly number[],
  line: number,
): number {
  const [number = 0, ...rest] = numbers;
  const of = thread === 0 ? '' : ` at thread ${thread}`;
  if (rest.length !== 0 && rest.length !== 3) {
    throw new Problem(`${placeOf(fields.name, line)}: found ${numbers.length} numbers${of}; expected one colour`);
  }
  if (number !== 0 && !table.has(number)) {
    throw new Problem(
      `${placeOf(fields.name, line)}: found colour ${number}${of}; expected one of the ${table.size} of [COLOR TABLE]`,
    );
  }
  return number;
}

function same(count: number, value: number): number[] {
  return new Array<number>(count).fill(value);
}
