import { dirname, isAbsolute, join } from 'node:path';
import type { Yarn } from '../colour/yarn.js';
import type { Draft } from '../draft/draft.js';
import { DEFAULT_SETT, DEFAULT_YARNS } from '../draft/yaml.js';
import { eachOf, type Given, isKeys, Misread, readAs, textOf, under } from '../draft/yaml-given.js';
import { parseSource, placed, type Source } from '../draft/yaml-source.js';
import { formatOrder, type Order, parseOrder } from '../order/order.js';
import { nearestWord, Problem } from '../problem.js';
import { viewOf } from '../score/views.js';
import {
  findManner,
  findStructure,
  nameDraft,
  parseProfile,
  type Structure,
  structureNames,
} from '../structure/index.js';
import { letters } from '../structure/structure.js';
import type { NameAsked, Question, WeftRule } from './question.js';
import { DEFAULT_RANK, questionKeys, type Written } from './read-question-keys.js';

/** Where a question comes from. Flags win over the text. */
export interface QuestionSource {
  /** A question in YAML. */
  readonly text?: string;
  /** Its file: named in messages, and the place from which a draft is looked for. */
  readonly file?: string;
  /** Values by key, as they were written; `limits.float` and the like for what stands under limits. */
  readonly flags: Readonly<Record<string, string>>;
  /** Flags that are not called as their key is, by key. */
  readonly flagNames?: Readonly<Record<string, string>>;
}

const WEFT_RULES = ['same', 'exchange', 'own'] as const;
/** Keys that a flag puts aside together with the one it stands for. */
const INSTEAD: Readonly<Record<string, readonly string[]>> = {
  structure: ['draft', 'on the loom'],
  draft: ['structure', 'treadling', 'profile', 'treadled', 'name', 'on the loom'],
  'on the loom': ['structure', 'treadling', 'profile', 'treadled', 'name', 'draft', 'warp', 'by', 'fill', 'times'],
  lengths: ['orders'],
  orders: ['lengths'],
};
/** All drafts of a name are tried where they are no more than 2 to this. */
const MOST_GAPS = 10;
/** Lengths that are tried where neither lengths nor orders are asked for. */
const USUAL_LENGTHS = [2, 3, 4, 5, 6];

/**
 * Reads what is asked, fills in what is not, and checks names and letters against structures and yarns.
 *
 * @param loadDraft reads a draft from a path, which is relative to the question's file
 * @throws Problem with file, line and column, or the flag, of the first thing that is wrong
 */
export function readQuestion(source: QuestionSource, loadDraft: (path: string) => Draft): Question {
  const merged = mergedSource(source);
  const pathOf = (written: string): string => {
    const fromFlag = (source.flags.draft ?? source.flags['on the loom']) !== undefined || source.file === undefined;
    return fromFlag || isAbsolute(written) ? written : join(dirname(source.file), written);
  };
  return placed(merged, () => understood(readAs(questionKeys, merged.value), (written) => loadDraft(pathOf(written))));
}

/** The question with its defaults filled in, as plain values under the keys of a question; it reads back the same. */
export function resolvedQuestion(question: Question) {
  const { structures, draft, treadlings, name, profile, treadled, yarns, lengths, orders, warp, weft } = question;
  const { limits, loom, rank, same } = question;
  const { float, repeat, warpChanges, weftChanges, ...others } = limits;
  return {
    ...(draft ? { [question.onTheLoom ? 'on the loom' : 'draft']: draft.file } : { structure: structures }),
    ...(treadlings.length > 0 && { treadling: treadlings }),
    ...(name && { name: { ...name, mirrored: name.mirrored ? 'yes' : 'no' } }),
    ...(profile.length > 0 && { profile }),
    ...(treadled.length > 0 && { treadled }),
    yarns: Object.fromEntries(
      yarns.map(({ letter, name, hex, tex }) => [letter, { colour: hex, name, ...(tex !== undefined && { tex }) }]),
    ),
    ...(orders.length > 0 ? { orders: orders.map((order) => formatOrder(order, yarns)) } : { lengths }),
    ...(warp && !question.onTheLoom && { warp: formatOrder(warp, yarns) }),
    weft: weft.rule === 'fixed' ? formatOrder(weft.order, yarns) : weft.rule,
    tabby: yarns[question.tabby]!.letter,
    by: question.by,
    fill: question.fill,
    times: question.times,
    starts: question.starts,
    sett: question.sett,
    limits: {
      float: 'mm' in float ? `${float.mm} mm` : float.threads,
      repeat,
      ...(warpChanges !== undefined && { 'warp changes': warpChanges }),
      ...(weftChanges !== undefined && { 'weft changes': weftChanges }),
      ...others,
    },
    ...(loom && { loom }),
    rank: viewOf(rank) ?? Object.fromEntries(Object.entries(rank).filter(([, weight]) => weight > 0)),
    same: same.length > 0 ? same : 'shift',
    show: question.show,
    seed: question.seed,
  };
}

/** The values of the file with those of the flags over them; each knows where it was written. */
function mergedSource({ text, file, flags, flagNames }: QuestionSource): Source {
  const written = text === undefined ? undefined : parseSource(text, file ?? 'question');
  const values: Record<string, Given> = { ...(written?.value as { readonly [key: string]: Given }) };
  for (const key of Object.keys(flags)) for (const other of INSTEAD[key] ?? []) delete values[other];
  for (const [key, value] of Object.entries(flags)) {
    const limit = /^limits\.(.+)$/.exec(key)?.[1];
    if (limit === undefined) values[key] = value;
    else if (values.limits === undefined || isKeys(values.limits)) values.limits = { ...values.limits, [limit]: value };
  }
  const flagOf = (key: string): string =>
    `--${flagNames?.[key] ?? key.replace('limits.', 'limit-').replaceAll(' ', '-')}`;
  return {
    value: values,
    place(path, spot) {
      const key = path[0] === 'limits' && path.length > 1 ? `limits.${path[1]}` : String(path[0]);
      if (Object.hasOwn(flags, key)) return flagOf(key);
      return written?.place(path, spot) ?? 'question';
    },
  };
}

function understood(written: Written, loadDraft: (path: string) => Draft): Question {
  const structures = structuresOf(written);
  const onTheLoom = written['on the loom'];
  if (onTheLoom !== undefined) refuseOnTheLoom(written);
  const file = written.draft ?? onTheLoom;
  const draft = file === undefined ? undefined : { file, draft: loadDraft(file) };
  refuseWithDraft(written, draft?.draft);
  const own = draft?.draft.yarns ?? [];
  const yarns = written.yarns ?? (own.length > 1 ? own : DEFAULT_YARNS);
  if (yarns.length < 2) throw new Misread('found one yarn; expected at least two', { within: ['yarns'] });
  if (written.lengths !== undefined && written.orders !== undefined) {
    throw new Misread('found lengths and orders; expected one or the other', { within: ['orders'], key: true });
  }
  const orders = ordersOf(written.orders ?? [], yarns);
  const wound = onTheLoom === undefined ? undefined : under('yarns', () => woundOrder(draft!.draft, yarns));
  const warp =
    wound ?? (written.warp === undefined ? undefined : under('warp', () => parseOrder(written.warp!, yarns)));
  const { name, by, fill, times, limits, loom, same, show, seed } = written;
  return {
    structures: structures.map((structure) => structure.name),
    ...(draft && { draft }),
    ...(wound && { onTheLoom: true as const }),
    treadlings: treadlingsOf(written.treadling ?? [], structures),
    ...(name && { name: under('name', () => spelled(name, written, structures)) }),
    profile: profileOf(written.profile, structures),
    treadled: treadledOf(written.treadled, structures),
    yarns,
    lengths: orders.length > 0 ? [] : (written.lengths ?? USUAL_LENGTHS),
    orders,
    ...(warp && { warp }),
    // A warp that is given leaves the listed orders to the weft.
    weft: under('weft', () => weftOf(written.weft ?? (warp ? 'own' : 'same'), yarns)),
    tabby: under('tabby', () => tabbyOf(written.tabby, yarns)),
    by,
    fill,
    times,
    starts: wound ? onLoomStarts(written) : (written.starts ?? 'all'),
    sett: written.sett ?? draft?.draft.sett ?? DEFAULT_SETT,
    limits,
    ...(loom && { loom }),
    rank: written.rank ?? DEFAULT_RANK,
    same,
    show,
    seed,
  };
}

/** The structures asked for; a text is one name, or several with commas between them. */
function structuresOf({ structure, draft, 'on the loom': onTheLoom }: Written): Structure[] {
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

function refuseWithDraft(written: Written, draft: Draft | undefined): void {
  if (draft === undefined) return;
  for (const key of ['treadling', 'profile', 'treadled', 'name'] as const) {
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

/** A warp that is wound and threaded is not laid otherwise. */
function refuseOnTheLoom(written: Written): void {
  for (const key of ['structure', 'draft', 'warp'] as const) {
    if (written[key] === undefined) continue;
    throw new Misread(`found a ${key} beside a warp on the loom, which has its own; expected one or the other`, {
      within: [key],
      key: true,
    });
  }
  const usual = { by: 'thread', fill: 'solid', times: '1' } as const;
  for (const [key, word] of Object.entries(usual) as [keyof typeof usual, string][]) {
    const found = written[key].join(' ');
    if (found === word) continue;
    throw new Misread(`found “${found}” with a warp on the loom, whose threads lie as they do; expected ${word}`, {
      within: [key],
    });
  }
}

/** The warp order of a draft in the letters of the yarns. */
function woundOrder(draft: Draft, yarns: readonly Yarn[]): Order {
  return draft.warp.map((at) => {
    const { letter } = draft.yarns[at]!;
    const index = yarns.findIndex((yarn) => yarn.letter === letter);
    if (index >= 0) return index;
    const found = yarns.map((yarn) => yarn.letter).join(', ');
    throw new Misread(`found ${found}; expected yarn ${letter} among them, which is wound on the loom`);
  });
}

/** The warp begins where it does; the weft may begin anywhere. */
function onLoomStarts({ starts }: Written): Question['starts'] {
  return starts === 'first' ? 'first' : 'weft';
}

function treadlingsOf(names: readonly string[], structures: readonly Structure[]): string[] {
  const known = under('treadling', () =>
    names.map((name) => structures.map((structure) => findManner(structure, name).name)[0]!),
  );
  return [...new Set(known)];
}

function profileOf(text: string | undefined, structures: readonly Structure[]): Question['profile'] {
  if (text === undefined) return [];
  if (text.toLowerCase() === 'order') return 'order';
  return under('profile', () => blocksIn(text, structures));
}

/** The treadling's own block order; none where it is as drawn in. */
function treadledOf(text: string | undefined, structures: readonly Structure[]): string[] {
  if (text === undefined || text.toLowerCase() === 'as drawn in') return [];
  return under('treadled', () => blocksIn(text, structures));
}

/** A block order that every one of the structures has the blocks for. */
function blocksIn(text: string, structures: readonly Structure[]): string[] {
  const read = structures.map((structure) => parseProfile(text, structure.withBlocks ? letters(26) : structure.blocks));
  return read[0]!;
}

/** A name is drafted as overshot, in blocks of its own; the table's letters and the draft's number must be there. */
function spelled(name: NameAsked, written: Written, structures: readonly Structure[]): NameAsked {
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

function ordersOf(texts: readonly string[], yarns: readonly Yarn[]): Order[] {
  return under('orders', () => texts.map((text, place) => under(place, () => parseOrder(text, yarns))));
}

function weftOf(text: string, yarns: readonly Yarn[]): WeftRule {
  const rule = WEFT_RULES.find((each) => each === text);
  if (rule !== undefined) return { rule };
  try {
    return { rule: 'fixed', order: parseOrder(text, yarns) };
  } catch (error) {
    const near = nearestWord(text, WEFT_RULES);
    if (near === undefined) throw error;
    throw new Misread(`found “${text}”; expected same, exchange, own, a letter or an order (did you mean “${near}”?)`);
  }
}

function tabbyOf(letter: string | undefined, yarns: readonly Yarn[]): number {
  if (letter === undefined) return yarns.length - 1;
  const index = yarns.findIndex((yarn) => yarn.letter === letter.toUpperCase());
  if (index < 0) {
    throw new Misread(
      `found “${letter}”; expected the letter of a yarn, ${yarns.map((yarn) => yarn.letter).join(' or ')}`,
    );
  }
  return index;
}
