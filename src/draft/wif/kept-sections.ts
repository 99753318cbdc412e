import { brief, didYouMean, quote } from '../../problem.js';
import { OWN_SECTION } from './own-section.js';
import type { WifUnit } from './thread-sett.js';
import { plainKey, type WifSection, type WifSections } from './wif-sections.js';

/** The content of a file that a draft has no place for; written back unchanged if it still fits the draft. */
export interface KeptSections {
  /** Lines with such content, by section name. */
  readonly sections: ReadonlyMap<string, readonly string[]>;
  /** Colours of the table that no thread uses. */
  readonly colours: readonly string[];
  /** Units in which the file measures. */
  readonly units: { readonly warp?: WifUnit; readonly weft?: WifUnit };
  /** Number of ends and of picks in the file; lists of single threads fit only a draft with the same numbers. */
  readonly ends: number;
  readonly picks: number;
}

/** Keys that are read, by section; all other keys of the section are kept. `*`: every key is read. */
const READ: ReadonlyMap<string, readonly string[] | '*'> = new Map(
  Object.entries({
    WIF: '*',
    CONTENTS: '*',
    WEAVING: ['SHAFTS', 'TREADLES', 'RISING SHED', 'PROFILE'],
    WARP: ['THREADS', 'COLOR', 'UNITS', 'SPACING'],
    WEFT: ['THREADS', 'COLOR', 'UNITS', 'SPACING'],
    THREADING: '*',
    TIEUP: '*',
    TREADLING: '*',
    LIFTPLAN: '*',
    'COLOR PALETTE': ['FORM', 'RANGE', 'ENTRIES'],
    'COLOR TABLE': '*',
    'WARP COLORS': '*',
    'WEFT COLORS': '*',
    TEXT: ['TITLE'],
    [OWN_SECTION]: '*',
  } as const),
);

/** Other sections of the format, and keys of the sections above, that a draft has no place for. */
const KEPT_SECTIONS = [
  'NOTES',
  'TRANSLATIONS',
  'BITMAP IMAGE',
  'BITMAP FILE',
  ...['WARP', 'WEFT'].flatMap((system) =>
    ['SYMBOL TABLE', 'SYMBOLS', 'SPACING', 'SPACING ZOOM', 'THICKNESS', 'THICKNESS ZOOM'].map((n) => `${system} ${n}`),
  ),
];
const KEPT_KEYS = ['SYMBOL', 'SYMBOL NUMBER', 'THICKNESS', 'SPACING ZOOM', 'THICKNESS ZOOM'];
/** Collects the lines that a draft has no place for, by section name. */
export function keptSections(sections: WifSections, notes: string[]): Map<string, string[]> {
  const kept = new Map<string, string[]>();
  const unknown: string[] = [];
  for (const section of sections.values()) {
    const read = READ.get(section.name);
    if (read === '*') continue;
    const lines = read === undefined ? section.lines : section.lines.filter(({ text }) => !read.includes(keyOf(text)));
    if (read === undefined && !KEPT_SECTIONS.includes(section.name) && !section.name.startsWith('PRIVATE ')) {
      unknown.push(sayUnknown(section));
    }
    for (const { text, line } of read === undefined ? [] : lines) {
      if (section.name !== 'TEXT' && !KEPT_KEYS.includes(keyOf(text))) {
        notes.push(`line ${line}: [${section.name}] ${quote(text)} is not of WIF 1.1; it was kept`);
      }
    }
    if (lines.length > 0 || read === undefined)
      kept.set(
        section.name,
        lines.map(({ text }) => text),
      );
  }
  // Notes in a file of our own say where its draft comes from.
  const said = sections.has(OWN_SECTION) ? ['NOTES'] : [];
  const listed = [...kept.keys()].filter((name) => KEPT_SECTIONS.includes(name) && !said.includes(name));
  if (listed.length > 0) notes.push(`kept as they are, as a draft has no place for them: ${listed.join(', ')}`);
  notes.push(...unknown.slice(0, 8));
  const privates = [...kept.keys()].filter((name) => name.startsWith('PRIVATE '));
  if (privates.length > 0)
    notes.push(`kept as they are, private to other programs: ${privates.slice(0, 8).map(brief).join(', ')}`);
  return kept;
}

function sayUnknown(section: WifSection): string {
  const near = didYouMean(section.name.slice(0, 60), [...READ.keys(), ...KEPT_SECTIONS]);
  return `line ${section.line}: [${brief(section.name)}] is not a section of WIF 1.1${near}; it was kept as it is`;
}

/** The key of a line in the form in which keys are compared; the whole line if it has no key. */
export function keyOf(text: string): string {
  return plainKey(text.split('=', 1)[0]!);
}
