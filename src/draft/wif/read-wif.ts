import { LONGEST_NAME } from '../../input/given.js';
import { brief, didYouMean, Problem } from '../../problem.js';
import { seen } from '../../words/seen.js';
import { type Draft, perCentimetre, type Sett } from '../draft.js';
import { type Repetition, toOneRepeat } from '../shortest-repeat.js';
import { type KeptSections, keptSections } from './kept-sections.js';
import { type Own, plainAscii, readOwn } from './own-section.js';
import { readColours } from './palette.js';
import { readSett } from './thread-sett.js';
import { readWeave } from './threads.js';
import { Fields } from './values.js';
import { decodeWif, sectionsOf, type WifSections } from './wif-sections.js';

export { LARGEST_WIF, LONGEST_DRAFT, refuseLarge } from '../limits.js';
export type { KeptSections } from './kept-sections.js';
export { keptMisfits, writeWif } from './write-wif.js';

/** A file that was read. */
interface WifReading {
  readonly draft: Draft;
  readonly kept: KeptSections;
  /** Name of the program that wrote the file; empty if the file names none. */
  readonly source: string;
  /** Sentences for the person about what was missing, turned over, left out or kept. */
  readonly notes: readonly string[];
}

interface WifReadOptions {
  /** Keep every thread of the file, as for writing it again; otherwise one repeat is taken. */
  readonly whole?: boolean;
}

const NEEDED = [
  'WEAVING',
  'WARP',
  'WEFT',
  'THREADING',
  'TIEUP',
  'TREADLING',
  'LIFTPLAN',
  'COLOR TABLE',
  'COLOR PALETTE',
];

/**
 * Reads a draft from a WIF file, version 1.1 (the format's published text, from general knowledge of it). Without
 * `whole` the draft is reduced to one repeat; threads that balance the edges are dropped with a note. If the file is
 * not ours, every thread is a unit.
 *
 * @param bytes the file; UTF-8, UTF-16 or Windows-1252
 * @throws Problem with line and section, what was found and what was expected
 */
export function readWif(bytes: Uint8Array, options: WifReadOptions = {}): WifReading {
  const sections = sectionsOf(decodeWif(bytes));
  const notes: string[] = [];
  const source = readHead(sections, notes);
  checkContents(sections, notes);
  const { threading, tieUp, treadling } = readWeave(sections, notes);
  const ends = threading.length;
  const picks = treadling.length;
  const colours = readColours(sections, ends, picks, notes);
  const { sett, widths, units } = readSett(sections, notes);
  const own = readOwn(sections, ends, picks, notes);
  const name = titleOf(sections, own, notes);
  const { unused, ...coloured } = withOwnYarns(colours, own, notes);
  const whole: Draft = {
    ...(name !== undefined && { name }),
    threading,
    tieUp,
    treadling,
    pickKinds: own.pickKinds ?? treadling.map(() => 'ground' as const),
    endUnits: own.endUnits ?? threading.map(() => 1),
    pickUnits: own.pickUnits ?? treadling.map(() => 1),
    ...(own.companions !== undefined && { companions: own.companions }),
    widths: own.widths ?? widths,
    ...coloured,
    sett: own.sett !== undefined && near(own.sett, sett) ? own.sett : sett,
  };
  const kept: KeptSections = { sections: keptSections(sections, notes), colours: unused, units, ends, picks };
  if (options.whole === true) return { draft: whole, kept, source, notes };
  const one = toOneRepeat(whole);
  sayRepeat(ends, one.ends, 'ends', notes);
  sayRepeat(picks, one.picks, 'picks', notes);
  return { draft: one.draft, kept, source, notes };
}

/** Checks that this is a WIF file of a known version; returns the name of the program that wrote it. */
function readHead(sections: WifSections, notes: string[]): string {
  const head = sections.get('WIF');
  if (head === undefined) {
    const [first] = sections.values();
    throw new Problem(`line ${first!.line}: found [${brief(first!.name)}] and no [WIF]; expected a WIF file`);
  }
  const fields = new Fields('WIF', head);
  const version = fields.get('VERSION');
  if (version === undefined) notes.push('[WIF] says no version; it was read as 1.1');
  else if (!/^1\.[01]\d*\b/.test(version.value)) {
    throw fields.wrong(version, `found Version=${brief(version.value)}`, '1.1');
  } else if (!version.value.startsWith('1.1')) {
    notes.push(`the file is WIF version ${brief(version.value)}; it was read as 1.1`);
  }
  return brief(fields.get('SOURCE PROGRAM')?.value ?? '');
}

/** Compares the list of contents with the sections in the file, and notes the differences. */
function checkContents(sections: WifSections, notes: string[]): void {
  const contents = Fields.of(sections, 'CONTENTS');
  if (contents.line === undefined) notes.push('there is no [CONTENTS]; every section that is there was read');
  const missing: string[] = [];
  for (const entry of contents.entries.values()) {
    const there = contents.truthOf(entry);
    if (there && !sections.has(entry.key)) {
      if (NEEDED.includes(entry.key)) {
        const near = didYouMean(entry.key, [...sections.keys()]);
        throw contents.wrong(
          entry,
          `found ${entry.written}=${brief(entry.value)} and no [${entry.key}]`,
          `that section${near}`,
        );
      }
      missing.push(entry.key);
    }
    if (!there && sections.has(entry.key) && NEEDED.includes(entry.key)) {
      notes.push(`line ${entry.line}: [CONTENTS] says that there is no [${entry.key}]; it is there and was read`);
    }
  }
  if (missing.length > 0)
    notes.push(`[CONTENTS] lists what is not there: ${missing.slice(0, 8).map(brief).join(', ')}`);
}

/** The title. Our own section holds it with the letters that ASCII lacks, and is used if it is still the same title. */
function titleOf(sections: WifSections, own: Own, notes: string[]): string | undefined {
  const given = Fields.of(loose(sections, 'TEXT'), 'TEXT').get('TITLE')?.value ?? '';
  const title = own.name !== undefined && plainAscii(own.name) === given ? own.name : given;
  const letters = [...seen(title)];
  if (letters.length > LONGEST_NAME) {
    notes.push(`the title has ${letters.length} letters; the first ${LONGEST_NAME} were kept`);
  }
  return letters.length === 0 ? undefined : letters.slice(0, LONGEST_NAME).join('');
}

/** The sections, with the one of this name cut down to its `title=` line: the rest of it may be free text. */
function loose(sections: WifSections, name: string): WifSections {
  const section = sections.get(name);
  if (section === undefined) return sections;
  const title = section.lines.filter(({ text }) => /^\s*title\s*=/i.test(text)).slice(0, 1);
  return new Map([[name, { ...section, lines: title }]]);
}

function withOwnYarns(
  colours: ReturnType<typeof readColours>,
  own: Own,
  notes: string[],
): Pick<Draft, 'yarns' | 'warp' | 'weft'> & { unused: readonly string[] } {
  const { yarns, warp, weft, unused, table, numbers } = colours;
  if (own.yarns === undefined) return { yarns, warp, weft, unused };
  const count = own.yarns.length;
  const known = own.yarns.every((_, index) => table.has(index + 1));
  if (!known || [...numbers.warp, ...numbers.weft].some((number) => number > count)) {
    notes.push('the colours were changed since the file was written; the yarns have new letters');
    return { yarns, warp, weft, unused };
  }
  return {
    yarns: own.yarns.map((yarn, index) => ({ ...yarn, hex: table.get(index + 1)! })),
    warp: numbers.warp.map((number) => number - 1),
    weft: numbers.weft.map((number) => number - 1),
    unused: [...table].flatMap(([number, hex]) => (number > count ? [hex] : [])),
  };
}

/** Whether two setts are equal but for rounding, whichever measure they are counted in. */
function near(a: Sett, b: Sett): boolean {
  const [one, other] = [perCentimetre(a), perCentimetre(b)];
  return Math.abs(one.ends / other.ends - 1) < 1e-6 && Math.abs(one.picks / other.picks - 1) < 1e-6;
}

function sayRepeat(count: number, { length, balance }: Repetition, what: string, notes: string[]): void {
  if (length === count) return;
  const times = (count - balance) / length;
  const edge = balance === 0 ? '' : ` and ${balance} more to balance, which were left out`;
  notes.push(`the ${count} ${what} are ${times} repeats of ${length}${edge}; one repeat is the draft`);
}
