import type { Yarn } from '../../colour/yarn.js';
import { LONGEST_NAME } from '../../input/given.js';
import { seen } from '../../words/seen.js';
import type { Draft, PickKind, Sett, Widths } from '../draft.js';
import { Fields } from './values.js';
import type { WifSections } from './wif-sections.js';

/** Name of our private section, which holds the content of a draft that the format has no place for. */
export const OWN_SECTION = 'PRIVATE SHEDLIGHT';

/** Numbers on one line of a list. */
const PER_LINE = 40;
/** Characters of a name as a JSON string; 500 letters beyond ASCII fit. */
const LONGEST_TEXT = 4000;
const LEAST_TEX = 0.1;
const KIND_LETTERS: Readonly<Record<PickKind, string>> = { ground: 'G', pattern: 'P', tabby: 'T' };
const WIDTH_KEYS = ['warp', 'ground', 'pattern', 'tabby'] as const;

/** The content of our private section. Entries that do not fit the rest of the file are absent. */
export interface Own {
  readonly name?: string;
  /** Letter, name and tex of the colours 1, 2, … of the table. */
  readonly yarns?: readonly Omit<Yarn, 'hex'>[];
  readonly pickKinds?: readonly PickKind[];
  readonly endUnits?: readonly number[];
  readonly pickUnits?: readonly number[];
  readonly companions?: NonNullable<Draft['companions']>;
  readonly widths?: Widths;
  readonly sett?: Sett;
}

/** Writes the lines of our section: plain ASCII, text as JSON strings, long lists over several lines. */
export function writeOwn(draft: Draft): string[] {
  const lines: string[] = [];
  if (draft.name !== undefined) lines.push(`Name=${ascii(draft.name)}`);
  draft.yarns.forEach(({ letter, name, tex }, index) => {
    lines.push(`Yarn ${index + 1}=${letter},${tex ?? '-'},${ascii(name)}`);
  });
  lines.push(`Sett=${draft.sett.ends},${draft.sett.picks},${draft.sett.per}`);
  lines.push(`Widths=${WIDTH_KEYS.map((key) => draft.widths[key]).join(',')}`);
  const list = (key: string, members: readonly (number | string)[]): void => {
    for (let from = 0, part = 1; from < members.length; from += PER_LINE, part++) {
      lines.push(`${key} ${part}=${members.slice(from, from + PER_LINE).join(',')}`);
    }
  };
  list(
    'Pick Kinds',
    draft.pickKinds.map((kind) => KIND_LETTERS[kind]),
  );
  if (draft.endUnits.some((size) => size !== 1)) list('End Units', draft.endUnits);
  if (draft.pickUnits.some((size) => size !== 1)) list('Pick Units', draft.pickUnits);
  if (draft.companions !== undefined) {
    list('End Companions', draft.companions.ends);
    list('Pick Companions', draft.companions.picks);
  }
  return lines;
}

/**
 * Reads our section. Another program may have changed the rest of the file, so an entry that no longer fits is dropped
 * with a note; it never throws a Problem.
 */
export function readOwn(sections: WifSections, ends: number, picks: number, notes: string[]): Own {
  const section = sections.get(OWN_SECTION);
  if (section === undefined) return {};
  const values = new Fields(OWN_SECTION, { ...section, lines: section.lines.filter((l) => l.text.indexOf('=') > 0) });
  const misfit = (what: string): undefined => {
    notes.push(
      `line ${section.line}: what [${OWN_SECTION}] says of the ${what} does not fit the rest of the file; it was left out`,
    );
    return undefined;
  };
  const list = (key: string): string[] | undefined => {
    const all: string[] = [];
    for (let part = 1; ; part++) {
      const entry = values.get(`${key} ${part}`);
      if (entry === undefined) return all.length === 0 ? undefined : all;
      for (const word of entry.value.slice(0, 8000).split(',')) all.push(word.trim());
    }
  };
  const wholes = (key: string, what: string, fits: (numbers: number[]) => boolean): number[] | undefined => {
    const numbers = list(key)?.map((word) => (/^\d{1,5}$/.test(word) ? Number(word) : Number.NaN));
    return numbers === undefined || (!numbers.some(Number.isNaN) && fits(numbers)) ? numbers : misfit(what);
  };
  const units = (key: string, what: string, total: number): number[] | undefined =>
    wholes(key, what, (numbers) => numbers.every((n) => n > 0) && numbers.reduce((a, b) => a + b, 0) === total);
  const flags = (key: string, what: string, total: number): number[] | undefined =>
    wholes(key, what, (numbers) => numbers.length === total && numbers.every((n) => n < 2));
  const letters = list('PICK KINDS');
  const kinds = letters?.map((letter) =>
    (Object.keys(KIND_LETTERS) as PickKind[]).find((k) => KIND_LETTERS[k] === letter),
  );
  const pickKinds =
    kinds === undefined || (kinds.length === picks && !kinds.includes(undefined)) ? kinds : misfit('picks');
  const endUnits = units('END UNITS', 'units of ends', ends);
  const pickUnits = units('PICK UNITS', 'units of picks', picks);
  const endCompanions = flags('END COMPANIONS', 'companions', ends);
  const pickCompanions = flags('PICK COMPANIONS', 'companions', picks);
  const name = plainText(values.get('NAME')?.value);
  const yarns = yarnsOf(values);
  const widths = decimals(values.get('WIDTHS')?.value, 4);
  const sett = settOf(values.get('SETT')?.value ?? '');
  return {
    ...(name !== undefined && { name }),
    ...(yarns.length > 0 && { yarns }),
    ...(pickKinds !== undefined && { pickKinds: pickKinds as PickKind[] }),
    ...(endUnits !== undefined && { endUnits }),
    ...(pickUnits !== undefined && { pickUnits }),
    ...(endCompanions && pickCompanions && { companions: { ends: endCompanions, picks: pickCompanions } }),
    ...(widths !== undefined && {
      widths: { warp: widths[0]!, ground: widths[1]!, pattern: widths[2]!, tabby: widths[3]! },
    }),
    ...(sett !== undefined && { sett }),
  };
}

function yarnsOf(fields: Fields): Omit<Yarn, 'hex'>[] {
  const yarns: Omit<Yarn, 'hex'>[] = [];
  for (;;) {
    const match = /^([A-Z]),(-|\d{1,6}(?:\.\d{1,12})?),(.*)$/.exec(fields.get(`YARN ${yarns.length + 1}`)?.value ?? '');
    const name = plainText(match?.[3]);
    if (match === null || name === undefined) break;
    const tex = match[2] === '-' ? Number.NaN : Number(match[2]);
    yarns.push({
      letter: match[1]!,
      name: [...name].slice(0, LONGEST_NAME).join(''),
      ...(tex >= LEAST_TEX && { tex }),
    });
  }
  return new Set(yarns.map((yarn) => yarn.letter)).size === yarns.length ? yarns : [];
}

function settOf(value: string): Sett | undefined {
  const [, numbers, per] = /^(.{1,60}),(inch|cm)$/.exec(value) ?? [];
  const [ends, picks] = decimals(numbers, 2) ?? [];
  return ends === undefined || picks === undefined ? undefined : { ends, picks, per: per as Sett['per'] };
}

function decimals(value: string | undefined, count: number): number[] | undefined {
  const numbers = (value ?? '').split(',', count + 1).map((word) => (word.trim() === '' ? Number.NaN : Number(word)));
  return numbers.length === count && numbers.every((n) => n > 0 && n <= 1000) ? numbers : undefined;
}

/** Text as a JSON string in pure ASCII, which every program keeps whatever encoding it assumes. */
function ascii(text: string): string {
  return JSON.stringify(text).replace(
    /[\x7f-\uffff]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

function plainText(value: string | undefined): string | undefined {
  if (value === undefined || value.length > LONGEST_TEXT) return undefined;
  try {
    const text: unknown = JSON.parse(value);
    return typeof text === 'string' ? seen(text) : undefined;
  } catch {
    return undefined;
  }
}

/** Text in pure ASCII, without accents and with plain quotes and dashes, for programs that know no encoding. */
export function plainAscii(text: string): string {
  return text
    .normalize('NFD')
    .replace(/[‘’]/g, "'")
    .replace(/[“”]/g, '"')
    .replace(/[–—]/g, '-')
    .replace(/\p{M}/gu, '')
    .replace(/[^\x20-\x7e]/gu, '?')
    .trim();
}
