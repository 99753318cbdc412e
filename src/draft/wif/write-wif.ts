import { Problem } from '../../problem.js';
import { type Draft, EVEN_WIDTHS, liftAt, shaftCount } from '../draft.js';
import { LARGEST_WIF, MOST_TREADLES } from '../limits.js';
import { type Kept, keyOf } from './kept-sections.js';
import { OWN_SECTION, plainAscii, writeOwn } from './own-section.js';
import { UNITS, type Unit } from './thread-sett.js';

export interface WifWriteOptions {
  /** Our own version, for the file's head. */
  readonly version: string;
  /** What a file that was read held beside its draft. */
  readonly kept?: Kept;
  /** Write a lift plan and no treadles, for a table or dobby loom. */
  readonly liftPlan?: boolean;
}

/** Date of the text of WIF 1.1, which every file names; the file's own date is not recorded. */
const TEXT_DATE = 'April 20, 1997';

/** Sections whose entries count ends or picks. */
const PER_THREAD = /^(WARP|WEFT) (SYMBOLS|SPACING|SPACING ZOOM|THICKNESS|THICKNESS ZOOM)$/;

/**
 * Writes a draft as WIF 1.1, CRLF line ends. The same draft gives the same bytes; without kept text they are ASCII.
 * What the format has no place for (units, kinds of picks, yarns) goes into our private section. A lift plan is
 * written where it is asked for, or where there are more treadles than a file may have.
 *
 * @throws Problem where the file would be larger than one that is read
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
  const body = new Map([...ownSections(draft, planOnly, kept), [OWN_SECTION, writeOwn(draft)] as const]);
  for (const [name, lines] of kept?.sections ?? []) {
    if (PER_THREAD.test(name) && !fits(name, draft, kept!)) continue;
    body.set(name, [...(body.get(name) ?? []), ...lines]);
  }
  sections.set(
    'CONTENTS',
    // A name of another program that would not read as a key stands in the file alone.
    [...body.keys()].filter((name) => !/^;|[=[]/.test(name)).map((name) => `${name}=true`),
  );
  for (const [name, lines] of body) sections.set(name, lines);
  const text = [...sections].map(([name, lines]) => [`[${name}]`, ...lines, ''].join('\r\n')).join('\r\n');
  if (text.length > LARGEST_WIF) {
    throw new Problem(`found a draft of ${text.length} bytes as WIF; expected ${LARGEST_WIF} at most`);
  }
  return text;
}

/** Sentences for what a file held that cannot be written with this draft: lists of threads that are no longer there. */
export function keptMisfits(draft: Draft, kept: Kept): string[] {
  return [...kept.sections.keys()]
    .filter((name) => PER_THREAD.test(name) && !fits(name, draft, kept))
    .map((name) => `[${name}] was left out: it counts the threads of the whole file, and the draft is one repeat`);
}

function fits(name: string, draft: Draft, kept: Kept): boolean {
  return name.startsWith('WARP') ? draft.warp.length === kept.ends : draft.weft.length === kept.picks;
}

function* ownSections(draft: Draft, planOnly: boolean, kept: Kept | undefined): Generator<[string, string[]]> {
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

/** Units, spacing and, where threads are not all alike, thickness: a thread of width 1 fills the space of an end. */
function measures(draft: Draft, kept: Kept | undefined): { warp: string[]; weft: string[] } {
  const own: Unit = draft.sett.per === 'cm' ? 'centimeters' : 'inches';
  const keeps = (system: string): boolean =>
    (kept?.sections.get(system) ?? []).some((line) => keyOf(line) === 'THICKNESS');
  const said = keeps('WARP') || keeps('WEFT');
  const even = Object.values(draft.widths).every((width) => width === EVEN_WIDTHS.warp);
  const system = (unit: Unit, perUnit: number, width: number): string[] => {
    const spacing = UNITS[own] / UNITS[unit] / perUnit;
    const thick = (UNITS[own] / UNITS[unit] / draft.sett.ends) * width;
    return [`Units=${unit}`, `Spacing=${decimal(spacing)}`, ...(even || said ? [] : [`Thickness=${decimal(thick)}`])];
  };
  return {
    warp: system(kept?.units.warp ?? own, draft.sett.ends, draft.widths.warp),
    weft: system(kept?.units.weft ?? own, draft.sett.picks, draft.widths.ground),
  };
}

/** Twelve digits, never with an exponent. */
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
