import { eachOf, type Given, Misread, type Spot, textOf, under } from '../../input/given.js';
import { brief, Problem } from '../../problem.js';
import {
  findManner,
  findStructure,
  nameDraft,
  parseProfile,
  type Structure,
  spelledStructure,
} from '../../structure/catalogue/catalogue.js';
import { blocksIn } from '../../structure/model/profile.js';
import { MOST_BLOCKS, tooMany } from '../../structure/model/sized.js';
import { letters } from '../../structure/model/structure.js';
import { recognitionOf } from '../../structure/recognise/recognition-of.js';
import { structureOn } from '../../structure/rethread/on-draft.js';
import { orList } from '../../words/counts.js';
import type { NameAsked, Question } from './question.js';

import type { Written } from './question-table.js';
import { structureOf } from './read-classic.js';
import { isSearched } from './read-profiles.js';
import { ALL, wayNames } from './treadlings-tried.js';

/** Most gaps of a name of which all 2^gaps drafts may be tried. */
const MOST_GAPS = 10;

/** Finds the structures; a text is one name, or several with commas between them. */
export function structuresOf({
  structure,
  draft,
  'on the loom': onTheLoom,
}: Pick<Written, 'structure' | 'draft' | 'on the loom'>): Structure[] {
  if (structure === undefined) {
    if (draft !== undefined || onTheLoom !== undefined) return [];
    throw new Misread(
      'found neither structure nor draft; expected a structure, such as plain weave, 2/2 twill or overshot ' +
        '(“shedlight structures” lists all), or a draft',
    );
  }
  if (draft !== undefined) {
    throw new Misread('found a structure and a draft; expected one or the other', { within: ['draft'], key: true });
  }
  const one = (item: Given): Structure => structureOf(textOf(item, 'the name of a structure'));
  return under('structure', () => {
    const given = typeof structure === 'string' ? namesIn(structure) : structure;
    return [...new Set(eachOf(given, 'names of structures', one))];
  });
}

/** Splits a text into names at commas. Some names contain a comma, so the longest known name is taken each time. */
function namesIn(text: string): string[] {
  const parts = text.split(',').map((part) => part.trim());
  const names: string[] = [];
  for (let at = 0; at < parts.length; ) {
    let upTo = parts.length;
    while (upTo > at + 1 && !isStructure(parts.slice(at, upTo).join(', '))) upTo--;
    names.push(parts.slice(at, upTo).join(', '));
    at = upTo;
  }
  return names;
}

function isStructure(name: string): boolean {
  try {
    return findStructure(name) !== undefined;
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

/** Throws on keys that do not go with a draft: those that a draft has itself, and those that it lacks the means for. */
export function refuseWithDraft(written: Written, draft: Question['draft']): void {
  if (draft === undefined) return;
  if (written['name draft'] !== undefined) {
    throw new Misread('found a name draft beside a draft, which has its own threading; expected it with a structure', {
      within: ['name draft'],
      key: true,
    });
  }
  for (const key of ['blocks', 'profile', 'treadled'] as const) {
    if (written[key] !== undefined) refuseUnknown(draft, `a ${key}`, { within: [key], key: true });
  }
  if (written.by.includes('block')) refuseUnknown(draft, '“block”', { within: ['by'] });
  const { endUnits, pickUnits } = draft.draft;
  if (
    written.by.includes('unit') &&
    written.profile === undefined &&
    [...endUnits, ...pickUnits].every((unit) => unit === 1)
  ) {
    throw new Misread(
      'found “unit” with a draft that has no units; expected “units: 4” or the like in the draft (convert --units finds some)',
      {
        within: ['by'],
      },
    );
  }
}

/** Throws on keys about blocks if the structure of the draft was not recognised. */
function refuseUnknown({ file, draft }: NonNullable<Question['draft']>, found: string, spot: Spot): void {
  if (structureOn(draft) !== undefined) return;
  const { structure, confidence, others } = recognitionOf(draft);
  const like = [...new Set([structure?.name, ...others])].slice(0, 3).join(' or ');
  const [is, help] =
    structure === undefined
      ? ['is no structure known here', 'a draft of one (see: structures), or a structure by its name']
      : [
          `might be threaded as ${like} (${confidence}), but is treadled otherwise`,
          `its tie-up and treadling (see: structures), or structure: ${structure.name}`,
        ];
  throw new Misread(`found ${found} with ${brief(file)}, which ${is} and so has no blocks; expected ${help}`, spot);
}

/** Checks names of manners of treadling: every structure must have each of them. Or all manners that each has. */
export function treadlingsOf(names: readonly string[], structures: readonly Structure[]): string[] {
  if (names.some((name) => name.toLowerCase() === ALL)) return [ALL];
  const known = under('treadling', () =>
    names.map((name) => structures.map((structure) => findManner(structure, name).name)[0]!),
  );
  return [...new Set(known)];
}

/** The ways of treadling on a draft's threading; on the loom the default is all well-known ways. */
export function treadlingsOn(written: Written, draft: NonNullable<Question['draft']>): string[] {
  const { treadling, treadled, 'on the loom': onTheLoom } = written;
  if (treadling === undefined) return onTheLoom === undefined || treadled !== undefined ? [] : [ALL];
  const blocks =
    [written.profile, treadled].some((asked) => asked !== undefined) || written.by.every((by) => by === 'block');
  return under('treadling', () => wayNames(treadling, draft, blocks));
}

/** The structures whose blocks are laid: those of the question, or the structure of the draft. */
export function blocksFrom(structures: readonly Structure[], draft: Question['draft']): readonly Structure[] {
  const on = draft && structureOn(draft.draft);
  return on ? [on.structure] : structures;
}

/** Reads the block order; empty if it is not given, `order` if the colour order chooses the blocks. */
export function profileOf(text: string | undefined, structures: readonly Structure[]): Question['profile'] {
  if (text === undefined || isSearched(text)) return [];
  if (text.toLowerCase() === 'order') return 'order';
  return under('profile', () => readBlocks(text, structures));
}

/** Reads the treadling's own block order; empty if the treadling is as drawn in. */
export function treadledOf(text: string | undefined, structures: readonly Structure[]): string[] {
  if (text === undefined || isSearched(text) || text.toLowerCase() === 'as drawn in') return [];
  return under('treadled', () => readBlocks(text, structures));
}

/**
 * Throws if no structure can have as many blocks as are asked for, or one that is asked for by a number cannot on any
 * loom.
 */
export function refuseTooManyBlocks(
  { blocks = 0, loom, limits }: Written,
  structures: readonly Structure[],
  { profile, treadled }: { readonly profile: readonly string[]; readonly treadled: readonly string[] },
): void {
  const of = { blocks, profile: blocksIn(profile), treadled: blocksIn(treadled) };
  const most = Math.max(...Object.values(of));
  const shafts = Math.min(loom?.shafts ?? Number.POSITIVE_INFINITY, limits.shafts ?? Number.POSITIVE_INFINITY);
  const there = Number.isFinite(shafts) ? shafts : undefined;
  // Where letters name no numbers (X and Y), a profile was held against the letters that there are.
  const needed = ({ withBlocks }: Structure): number => (withBlocks === undefined ? blocks : most);
  const faults = structures.map((structure) => tooMany(structure, needed(structure), there));
  const never = structures.flatMap((structure) => tooMany(structure, needed(structure)) ?? []);
  const fault = faults.every((each) => each !== undefined) ? faults[0] : never[0];
  const key = Object.entries(of).find(([, count]) => count === most)![0];
  if (most > 0 && fault !== undefined) throw new Misread(fault, { within: [key] });
  if (blocks === 0) under(key, () => refuseLeftOut([...profile, ...treadled], structures));
}

/**
 * Refuses letters left out before the last block, where that is beyond the blocks that a structure usually has and
 * their number is not asked for: `A B Z` is a slip of the pen, not twenty-six blocks.
 */
function refuseLeftOut(shown: readonly string[], structures: readonly Structure[]): void {
  const most = blocksIn(shown);
  if (!structures.some(({ blocks, withBlocks }) => withBlocks !== undefined && most > blocks.length)) return;
  const used = new Set(shown.join(''));
  const left = letters(most).filter((block) => !used.has(block));
  if (left.length === 0) return;
  throw new Misread(
    `found block ${letters(most).at(-1)} without ${orList(left.slice(0, 3))}; expected no letter left out, or “blocks: ${most}” beside it`,
  );
}

/** Reads a block order; every structure must have its blocks. */
function readBlocks(text: string, structures: readonly Structure[]): string[] {
  const read = structures.map((structure) =>
    parseProfile(text, structure.withBlocks ? letters(MOST_BLOCKS) : structure.blocks),
  );
  return read[0]!;
}

/** Checks a name to be drafted: structures that take one, no other block order, known letters, a draft that exists. */
export function spelled(name: NameAsked, written: Written, structures: readonly Structure[]): NameAsked {
  const { blocks } = written;
  const spelling = structures.map((structure) => {
    const { withBlocks = () => structure } = structure;
    return { of: structure.name, by: spelledStructure(blocks === undefined ? structure : withBlocks(blocks))?.by };
  });
  const other = spelling.find(({ by }) => by === undefined);
  if (other !== undefined) {
    throw new Misread(
      `found a name draft with ${other.of}; expected it with overshot, a straight twill on four shafts, or a structure of several blocks`,
    );
  }
  const block = spelling.find(({ by }) => by === 'blocks');
  if (block !== undefined && (name.drafts !== 'usual' || Object.keys(name.letters).length > 0)) {
    throw new Misread(
      `found ${name.drafts === 'usual' ? 'letters with shafts' : 'a choice of drafts'} with ${block.of}, where each letter names a block; expected it with overshot on four shafts or a twill`,
    );
  }
  if (written.profile !== undefined)
    throw new Misread('found a name draft beside a profile; expected one or the other');
  if (written.by.includes('block'))
    throw new Misread('found a name draft beside “by: block”; expected by thread or unit');
  const { text, drafts, mirrored, letters } = name;
  const chosen = drafts === 'usual' ? {} : { alternative: drafts === 'all' ? 0 : drafts - 1 };
  const { gaps } = nameDraft(text, { mirrored, letters, ...chosen });
  if (drafts === 'all' && gaps > MOST_GAPS) {
    throw new Misread(`found a name draft with 2^${gaps} drafts; expected a shorter one, or one draft by its number`);
  }
  return name;
}
