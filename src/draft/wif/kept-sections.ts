import { brief, didYouMean, quote } from '../../problem.js';
import { OWN_SECTION } from './own-section.js';
import type { Unit } from './thread-sett.js';
import { plainKey, type Section, type Sections } from './wif-sections.js';

/** What a file holds beside the draft: written back as it was, where it still fits. */
export interface Kept {
  /** Lines of sections and keys that a draft has no place for, by the section's name. */
  readonly sections: ReadonlyMap<string, readonly string[]>;
  /** Colours of the table that no thread uses. */
  readonly colours: readonly string[];
  /** Units in which the file measures. */
  readonly units: { readonly warp?: Unit; readonly weft?: Unit };
  /** Ends and picks that lists of single threads belong to. */
  readonly ends: number;
  readonly picks: number;
}

/** Keys that are read, by section; what else stands there is kept. `*`: every key. */
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

/** Other sections of the format, and keys of its sections that say nothing of the cloth. */
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
/** Lines that the draft has no place for, section by section. */
export function keptOf(sections: Sections, notes: string[]): Map<string, string[]> {
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
  const listed = [...kept.keys()].filter((name) => !READ.has(name) && KEPT_SECTIONS.includes(name));
  if (listed.length > 0) notes.push(`kept as they are, as a draft has no place for them: ${listed.join(', ')}`);
  notes.push(...unknown.slice(0, 8));
  const privates = [...kept.keys()].filter((name) => name.startsWith('PRIVATE '));
  if (privates.length > 0)
    notes.push(`kept as they are, private to other programs: ${privates.slice(0, 8).map(brief).join(', ')}`);
  return kept;
}

function sayUnknown(section: Section): string {
  const near = didYouMean(section.name.slice(0, 60), [...READ.keys(), ...KEPT_SECTIONS]);
  return `line ${section.line}: [${brief(section.name)}] is not a section of WIF 1.1${near}; it was kept as it is`;
}

/** The key of a line as keys are compared; all of the line where it has none. */
export function keyOf(text: string): string {
  return plainKey(text.split('=', 1)[0]!);
}
