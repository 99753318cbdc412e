import { Problem } from '../../problem.js';
import { type Draft, EVEN_WIDTHS, liftAt, shaftCount } from '../draft.js';
import { LARGEST_WIF, MOST_TREADLES } from '../limits.js';
import { type KeptSections, keyOf } from './kept-sections.js';
import { OWN_SECTION, plainAscii, writeOwn } from './own-section.js';
import { UNITS, type WifUnit } from './thread-sett.js';

interface WifWriteOptions {
  /** Our own version, for the file's head. */
  readonly version: string;
  /** Where the draft comes from, for the file's notes. */
  readonly origin?: string;
  /** The content, kept at reading, that the draft has no place for. */
  readonly kept?: KeptSections;
  /** Write a lift plan and no treadles, for a table or dobby loom. */
  readonly liftPlan?: boolean;
}

/** Date of the text of WIF 1.1, which every file names; the file's own date is not recorded. */
const TEXT_DATE = 'April 20, 1997';

/** Most characters of a note, so that a line of the file is easy to read. */
const NOTE = 72;

/** Sections whose entries count ends or picks. */
const PER_THREAD = /^(WARP|WEFT) (SYMBOLS|SPACING|SPACING ZOOM|THICKNESS|THICKNESS ZOOM)$/;

/**
 * Writes a draft as WIF 1.1 with CRLF line ends. The same draft gives the same bytes, in ASCII unless there is kept
 * text. Units, kinds of picks and yarns, for which the format has no place, go into our private section. A lift plan is
 * written if `liftPlan` is set, or if there are more treadles than a file may have.
 *
 * @throws Problem if the file would be too large to be read again
 */
export function writeWif(draft: Draft, options: WifWriteOptions): string {
  const { kept } = options;
  const sections = new Map<string, string[]>();
  sections.set('WIF', [
    'Version=1.1',
    `Date=${TEXT_DATE}`,
    'Developers=shedlight',
    'Source Program=shedlight',
    `Source Version=${plainAscii(options.version)}`,
  ]);
  const planOnly = options.liftPlan === true || draft.tieUp.length > MOST_TREADLES;
  const notes = options.origin === undefined ? [] : [['NOTES', notesOf(options.origin)] as const];
  const body = new Map([...ownSections(draft, planOnly, kept), ...notes, [OWN_SECTION, writeOwn(draft)] as const]);
  for (const [name, lines] of kept?.sections ?? []) {
    if (PER_THREAD.test(name) && !fits(name, draft, kept!)) continue;
    body.set(name, [...(body.get(name) ?? []), ...lines]);
  }
  sections.set(
    'CONTENTS',
    // A section name of another program that cannot be read as a key is left out of the list of contents.
    [...body.keys()].filter((name) => !/^;|[=[]/.test(name)).map((name) => `${name}=true`),
  );
  for (const [name, lines] of body) sections.set(name, lines);
  const text = [...sections].map(([name, lines]) => [`[${name}]`, ...lines, ''].join('\r\n')).join('\r\n');
  if (text.length > LARGEST_WIF) {
    throw new Problem(`found a draft of ${text.length} bytes as WIF; expected ${LARGEST_WIF} at most`);
  }
  return text;
}

/** A text as numbered notes of at most {@link NOTE} characters each, unless a word is longer. */
function notesOf(text: string): string[] {
  const lines = [''];
  for (const word of plainAscii(text).split(' ')) {
    const longer = `${lines.at(-1)} ${word}`.trimStart();
    if (longer.length > NOTE) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return numbered(lines, (line) => line);
}

/** Sentences about kept content that no longer fits the draft, such as lists of threads that are gone. */
export function keptMisfits(draft: Draft, kept: KeptSections): string[] {
  return [...kept.sections.keys()]
    .filter((name) => PER_THREAD.test(name) && !fits(name, draft, kept))
    .map((name) => `[${name}] was left out: it counts the threads of the whole file, and the draft is one repeat`);
}

function fits(name: string, draft: Draft, kept: KeptSections): boolean {
  return name.startsWith('WARP') ? draft.warp.length === kept.ends : draft.weft.length === kept.picks;
}

function* ownSections(draft: Draft, planOnly: boolean, kept: KeptSections | undefined): Generator<[string, string[]]> {
  const colours = [...draft.yarns.map((yarn) => yarn.hex), ...(kept?.colours ?? [])];
  yield ['COLOR PALETTE', ['Form=RGB', 'Range=0,255', `Entries=${colours.length}`]];
  if (draft.name !== undefined) yield ['TEXT', [`Title=${plainAscii(draft.name)}`]];
  yield [
    'WEAVING',
    [
      `Shafts=${shaftCount(draft)}`,
      `Treadles=${planOnly ? 0 : draft.tieUp.length}`,
      'Rising Shed=true',
      'Profile=false',
    ],
  ];
  const { warp, weft } = measures(draft, kept);
  yield ['WARP', [`Threads=${draft.warp.length}`, `Color=${usual(draft.warp) + 1}`, ...warp]];
  yield ['WEFT', [`Threads=${draft.weft.length}`, `Color=${usual(draft.weft) + 1}`, ...weft]];
  yield ['COLOR TABLE', numbered(colours, bytesOf)];
  yield ['THREADING', numbered(draft.threading, (shafts) => shafts.join(',') || '0')];
  if (planOnly) {
    yield ['LIFTPLAN', numbered(draft.treadling, (_, j) => liftAt(draft, j).join(',') || '0')];
  } else {
    yield ['TIEUP', numbered(draft.tieUp, (shafts) => shafts.join(',') || '0')];
    yield ['TREADLING', numbered(draft.treadling, (treadles) => treadles.join(',') || '0')];
  }
  if (new Set(draft.warp).size > 1) yield ['WARP COLORS', numbered(draft.warp, (yarn) => String(yarn + 1))];
  if (new Set(draft.weft).size > 1) yield ['WEFT COLORS', numbered(draft.weft, (yarn) => String(yarn + 1))];
}

/**
 * Lines with units, spacing and, if threads differ, thickness: a thread of width 1 is as thick as the spacing of ends.
 */
function measures(draft: Draft, kept: KeptSections | undefined): { warp: string[]; weft: string[] } {
  const own: WifUnit = draft.sett.per === 'cm' ? 'centimeters' : 'inches';
  const keeps = (system: string): boolean =>
    (kept?.sections.get(system) ?? []).some((line) => keyOf(line) === 'THICKNESS');
  const said = keeps('WARP') || keeps('WEFT');
  const even = Object.values(draft.widths).every((width) => width === EVEN_WIDTHS.warp);
  const system = (unit: WifUnit, perUnit: number, width: number): string[] => {
    const spacing = UNITS[own] / UNITS[unit] / perUnit;
    const thick = (UNITS[own] / UNITS[unit] / draft.sett.ends) * width;
    return [`Units=${unit}`, `Spacing=${decimal(spacing)}`, ...(even || said ? [] : [`Thickness=${decimal(thick)}`])];
  };
  return {
    warp: system(kept?.units.warp ?? own, draft.sett.ends, draft.widths.warp),
    weft: system(kept?.units.weft ?? own, draft.sett.picks, draft.widths.ground),
  };
}

/** A number with up to twelve digits and without an exponent. */
function decimal(number: number): string {
  return number.toFixed(12).replace(/\.?0+$/, '');
}

function usual(colours: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const colour of colours) counts.set(colour, (counts.get(colour) ?? 0) + 1);
  return [...counts].reduce((most, each) => (each[1] > most[1] ? each : most), [0, 0])[0];
}

function numbered<T>(list: readonly T[], say: (value: T, index: number) => string): string[] {
  return list.map((value, index) => `${index + 1}=${say(value, index)}`);
}

function bytesOf(hex: string): string {
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)).join(',');
}
