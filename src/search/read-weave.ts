import type { Draft } from '../draft/draft.js';
import { eachOf, type Given, Misread, textOf, under, wordOf } from '../draft/yaml-given.js';
import { Problem } from '../problem.js';
import {
  findManner,
  findStructure,
  nameDraft,
  parseProfile,
  type Structure,
  structureNames,
} from '../structure/index.js';
import { mannersOn } from '../structure/manners-on.js';
import { letters } from '../structure/structure.js';
import { ITS_OWN } from './family.js';
import type { NameAsked, Question } from './question.js';
import type { Written } from './read-question-keys.js';

/** All drafts of a name are tried where they are no more than 2 to this. */
const MOST_GAPS = 10;

/** The structures asked for; a text is one name, or several with commas between them. */
export function structuresOf({ structure, draft, 'on the loom': onTheLoom }: Written): Structure[] {
  if (structure === undefined) {
    if (draft !== undefined || onTheLoom !== undefined) return [];
    throw new Misread(
      `found neither structure nor draft; expected a structure (${structureNames().join(', ')}) or a draft`,
    );
  }
  if (draft !== undefined) {
    throw new Misread('found a structure and a draft; expected one or the other', { within: ['draft'], key: true });
  }
  const one = (item: Given): Structure => findStructure(textOf(item, 'the name of a structure'));
  return under('structure', () => {
    const isOne = typeof structure === 'string' && (!structure.includes(',') || isStructure(structure));
    if (isOne) return [one(structure)];
    return [...new Set(eachOf(structure, 'names of structures', one))];
  });
}

/** Some names hold a comma, so that a text with commas may be one name. */
function isStructure(name: string): boolean {
  try {
    return findStructure(name) !== undefined;
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

/** Refuses what a draft has of its own, or has not. */
export function refuseWithDraft(written: Written, draft: Draft | undefined): void {
  if (draft === undefined) return;
  for (const key of ['profile', 'treadled', 'name'] as const) {
    if (written[key] === undefined) continue;
    throw new Misread(`found a ${key} beside a draft, which has its own; expected it with a structure`, {
      within: [key],
      key: true,
    });
  }
  if (written.by.includes('block')) {
    throw new Misread('found “block” with a draft, whose blocks have no names; expected thread or unit', {
      within: ['by'],
    });
  }
  if (written.by.includes('unit') && [...draft.endUnits, ...draft.pickUnits].every((unit) => unit === 1)) {
    throw new Misread('found “unit” with a draft that has no units; expected “units: 4” or the like in the draft', {
      within: ['by'],
    });
  }
}

/** The manners of treadling, which every one of the structures must have, each once. */
export function treadlingsOf(names: readonly string[], structures: readonly Structure[]): string[] {
  const known = under('treadling', () =>
    names.map((name) => structures.map((structure) => findManner(structure, name).name)[0]!),
  );
  return [...new Set(known)];
}

/** The block order; none where it is not given, `order` where the colour order chooses. */
/** Manners of treadling on a draft's threading; on the loom all that there are, unless some are asked for. */
export function treadlingsOn({ treadling, 'on the loom': onTheLoom }: Written, draft: Draft): string[] {
  if (treadling === undefined && onTheLoom === undefined) return [];
  const known = [ITS_OWN, ...mannersOn(draft).map(({ name }) => name)];
  return under('treadling', () => [...new Set((treadling ?? known).map((name) => wordOf(name, known)))]);
}

export function profileOf(text: string | undefined, structures: readonly Structure[]): Question['profile'] {
  if (text === undefined) return [];
  if (text.toLowerCase() === 'order') return 'order';
  return under('profile', () => blocksIn(text, structures));
}

/** The treadling's own block order; none where it is as drawn in. */
export function treadledOf(text: string | undefined, structures: readonly Structure[]): string[] {
  if (text === undefined || text.toLowerCase() === 'as drawn in') return [];
  return under('treadled', () => blocksIn(text, structures));
}

/** A block order that every one of the structures has the blocks for. */
function blocksIn(text: string, structures: readonly Structure[]): string[] {
  const read = structures.map((structure) => parseProfile(text, structure.withBlocks ? letters(26) : structure.blocks));
  return read[0]!;
}

/** A name is drafted as overshot, in blocks of its own; the table's letters and the draft's number must be there. */
export function spelled(name: NameAsked, written: Written, structures: readonly Structure[]): NameAsked {
  const other = structures.find((structure) => structure.name !== 'overshot');
  if (other !== undefined) throw new Misread(`found a name with ${other.name}; expected it with overshot`);
  if (written.profile !== undefined) throw new Misread('found a name beside a profile; expected one or the other');
  if (written.by.includes('block')) throw new Misread('found a name beside “by: block”; expected by thread or unit');
  const { text, drafts, mirrored, letters } = name;
  const chosen = drafts === 'usual' ? {} : { alternative: drafts === 'all' ? 0 : drafts - 1 };
  const { gaps } = nameDraft(text, { mirrored, letters, ...chosen });
  if (drafts === 'all' && gaps > MOST_GAPS) {
    throw new Misread(`found a name with 2^${gaps} drafts; expected a shorter one, or one draft by its number`);
  }
  return name;
}
