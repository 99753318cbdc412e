import { luminance, type Yarn } from '../../colour/yarn.js';
import type { Draft, Sett } from '../../draft/draft.js';
import { DEFAULT_SETT, DEFAULT_YARNS, readDraft } from '../../draft/yaml/read-draft.js';
import { overlaid } from '../../input/flags.js';
import { type Given, Misread, under } from '../../input/given.js';
import { readKeys } from '../../input/key.js';
import { parseSource, placed, type Source } from '../../input/source.js';
import { formatRuns, type Order } from '../../order/order.js';
import { brief, nearestWord, quote } from '../../problem.js';
import { DEFAULT_RANK } from '../../score/parts/parts.js';
import type { Structure } from '../../structure/catalogue/catalogue.js';
import { usualSett } from '../../structure/catalogue/usual-sett.js';
import { withUnits } from '../../structure/recognise/with-units.js';
import { portableName } from '../../words/file-name.js';
import type { Done, Question, WeftRule } from './question.js';
import { QUESTION_TABLE, type Written } from './question-table.js';
import { orderOf } from './read-classic.js';
import { onLoomStarts, refuseOnTheLoom, woundOrder } from './read-on-the-loom.js';
import { profilesOf } from './read-profiles.js';
import {
  blocksFrom,
  profileOf,
  refuseTooManyBlocks,
  refuseWithDraft,
  spelled,
  structuresOf,
  treadledOf,
  treadlingsOf,
  treadlingsOn,
} from './read-weave.js';
import { ALL } from './treadlings-tried.js';

export { resolvedQuestion } from './resolved-question.js';

/** The source of a question. Flags win over the text. */
export interface QuestionSource {
  /** A question in YAML. */
  readonly text?: string;
  /** Name of its file, for messages. */
  readonly file?: string;
  /** The path of a file that the text names, relative to the text's own file. Absent: as written. */
  readonly beside?: (file: string, written: string) => string;
  /** Values of flags by key, as written. */
  readonly flags: Readonly<Record<string, string>>;
  /** Words for flags that are not called like their keys, by key: `{ orders: '--warp' }`. */
  readonly flagNames?: Readonly<Record<string, string>>;
}

const WEFT_RULES = ['same', 'exchange', 'own'] as const;
/** A structure by name, and the keys that say how it is woven. */
const OF_A_STRUCTURE = ['structure', 'treadling', 'blocks', 'profile', 'treadled', 'profile lengths', 'name draft'];
/** Keys of the file that the flag for a key overrides, besides that key. */
const INSTEAD: Readonly<Record<string, readonly string[]>> = {
  structure: ['draft', 'on the loom', 'draft text'],
  draft: [...OF_A_STRUCTURE, 'on the loom', 'draft text'],
  'on the loom': [...OF_A_STRUCTURE, 'draft', 'draft text', 'warp', 'by', 'fill', 'times'],
  lengths: ['orders'],
  orders: ['lengths'],
};
/** Default lengths, if the question has neither lengths nor orders. */
const USUAL_LENGTHS = [2, 3, 4, 5, 6];

/**
 * Reads a question, fills in defaults, and checks names and letters against structures and yarns.
 *
 * @param loadDraft reads a draft from a path
 * @param loadDone reads the cloths already woven from all files that list them
 * @throws Problem with file, line and column, or the flag, of the first fault
 */
export function readQuestion(
  source: QuestionSource,
  loadDraft: (path: string) => Draft,
  loadDone: (paths: readonly string[]) => readonly Draft[] = () => [],
): Question {
  const merged = mergedSource(source);
  const pathOf = (written: string, ...flags: readonly string[]): string => {
    const { beside, file } = source;
    const fromFlag = flags.some((flag) => source.flags[flag] !== undefined);
    return fromFlag || beside === undefined || file === undefined ? written : beside(file, written);
  };
  return placed(merged, () =>
    understood(
      readKeys(QUESTION_TABLE, merged.value),
      (written) => loadDraft(pathOf(written, 'draft', 'on the loom')),
      (written) => loadDone(written.map((file) => pathOf(file, 'done'))),
    ),
  );
}

/** The values of the file, overridden by those of the flags; each value keeps its place. */
function mergedSource({ text, file, flags, flagNames = {} }: QuestionSource): Source {
  const nothing = file ?? 'question';
  if (text === undefined) return overlaid(QUESTION_TABLE, undefined, flags, { nothing, named: flagNames });
  const written = parseSource(text, nothing);
  const value = { ...(written.value as { readonly [key: string]: Given }) };
  for (const key of Object.keys(flags)) for (const other of INSTEAD[key] ?? []) delete value[other];
  return overlaid(QUESTION_TABLE, { ...written, value }, flags, { nothing, named: flagNames });
}

function understood(
  written: Written,
  loadDraft: (path: string) => Draft,
  loadDone: (paths: readonly string[]) => readonly Draft[],
): Question {
  const structures = structuresOf(written);
  const onTheLoom = written['on the loom'];
  if (onTheLoom !== undefined) refuseOnTheLoom(written);
  const file = written.draft ?? onTheLoom;
  const draft =
    file === undefined ? undefined : { file: portableName(file), draft: draftFrom(written, file, loadDraft) };
  refuseWithDraft(written, draft);
  const withBlocks = blocksFrom(structures, draft);
  const own = draft?.draft.yarns ?? [];
  const yarns = written.yarns ?? (own.length > 1 ? own : DEFAULT_YARNS);
  if (yarns.length < 2) throw new Misread('found one yarn; expected at least two', { within: ['yarns'] });
  if (written.lengths !== undefined && written.orders !== undefined) {
    throw new Misread('found lengths and orders; expected one or the other', { within: ['orders'], key: true });
  }
  const orders = ordersOf(written.orders ?? [], yarns);
  if (orders.length > 1 && (written.weft ?? 'same') === 'same' && orders.every((order) => new Set(order).size === 1)) {
    const [one, other] = orders.map((order) => formatRuns(order, yarns));
    throw new Misread(
      `found ${one} and ${other}, orders of one yarn each; expected orders of two: without the comma, ${one} ${other} is one`,
      { within: ['orders'] },
    );
  }
  const wound = onTheLoom === undefined ? undefined : under('yarns', () => woundOrder(draft!.draft, yarns));
  const warp = wound ?? (written.warp === undefined ? undefined : under('warp', () => orderOf(written.warp!, yarns)));
  const { 'name draft': name, by, fill, times, limits, loom, same, show, seen, seed, tries } = written;
  const done = doneOf(written, loadDone);
  const profile = profileOf(written.profile, withBlocks);
  const treadled = treadledOf(written.treadled, withBlocks);
  const treadlings = draft ? treadlingsOn(written, draft) : treadlingsOf(written.treadling ?? [], structures);
  const profiles = profilesOf(written, withBlocks);
  refuseTooManyBlocks(written, withBlocks, { profile: profile === 'order' ? [] : profile, treadled });
  return {
    structures: structures.map((structure) => structure.name),
    ...(draft && { draft }),
    ...(wound && { onTheLoom: true as const }),
    treadlings,
    ...(name && { name: under('name draft', () => spelled(name, written, structures)) }),
    ...(written.blocks !== undefined && { blocks: written.blocks }),
    profile,
    treadled,
    ...(profiles && { profiles }),
    yarns,
    lengths: orders.length > 0 ? [] : (written.lengths ?? USUAL_LENGTHS),
    orders,
    ...(warp && { warp }),
    // If the warp is given, the orders are for the weft.
    weft: under('weft', () => weftOf(written.weft ?? (warp ? 'own' : 'same'), yarns)),
    ...(profiles && alone(written) && coloursAlone(yarns)),
    tabby: under('tabby', () => tabbyOf(written.tabby, yarns)),
    by,
    fill,
    times,
    starts: wound ? onLoomStarts(written) : (written.starts ?? 'all'),
    sett: written.sett ?? draft?.draft.sett ?? usualSettOf(structures, treadlings),
    limits,
    ...(loom && { loom }),
    ...(done && { done }),
    // A search of block orders is for figures, not for stripes.
    rank: written.rank ?? (profiles ? { ...DEFAULT_RANK, figure: 3 } : DEFAULT_RANK),
    same,
    show: show.most,
    ...(show.oneOfEachKind && { oneOfEachKind: true as const }),
    seen,
    seed,
    tries,
  };
}

/** The draft of a question: the one that it holds, or the one in the file that it names. */
function draftFrom(written: Written, file: string, loadDraft: (path: string) => Draft): Draft {
  const text = written['draft text'];
  return text === undefined
    ? loadDraft(file)
    : withUnits(file, readDraft(text, `${brief(file)} in the question`), () => {});
}

/** Whether no colour orders are asked for. */
function alone({ lengths, orders, warp, weft, 'on the loom': onTheLoom }: Written): boolean {
  return [lengths, orders, warp, weft, onTheLoom].every((given) => given === undefined);
}

/** Colours in which blocks show by themselves: the lightest yarn in the warp, the darkest in the (pattern) weft. */
function coloursAlone(yarns: readonly Yarn[]): Pick<Question, 'lengths' | 'orders' | 'weft'> {
  const byLight = yarns.map((_, at) => at).sort((a, b) => luminance(yarns[a]!.hex) - luminance(yarns[b]!.hex));
  return { lengths: [], orders: [[byLight.at(-1)!]], weft: { rule: 'fixed', order: [byLight[0]!] } };
}

/** The sett at which blocks come out square in the manners asked for, if it is the same for all; else the default. */
function usualSettOf(structures: readonly Structure[], treadlings: readonly string[]): Sett {
  const setts = structures.flatMap((structure) => {
    const manners = treadlings.includes(ALL) ? structure.manners.map(({ name }) => name) : treadlings;
    const asked = manners.length === 0 ? [structure.manners[0]!.name] : manners;
    return asked.map((manner) => usualSett(structure, DEFAULT_SETT, manner));
  });
  const [first, ...others] = setts;
  return first && others.every(({ picks }) => picks === first.picks) ? first : DEFAULT_SETT;
}

function ordersOf(texts: readonly string[], yarns: readonly Yarn[]): Order[] {
  return under('orders', () => texts.map((text, place) => under(place, () => orderOf(text, yarns))));
}

function doneOf(
  { done: files, 'unlike done': unlike }: Written,
  load: (paths: readonly string[]) => readonly Draft[],
): Done | undefined {
  if (files === undefined) {
    if (unlike === undefined) return undefined;
    throw new Misread('found it alone; expected done too: the files that say what was', {
      within: ['unlike done'],
      key: true,
    });
  }
  const drafts = under('done', () => load(files));
  return { files: files.map(portableName), drafts, ...(unlike !== undefined && { unlike }) };
}

function weftOf(text: string, yarns: readonly Yarn[]): WeftRule {
  const rule = WEFT_RULES.find((each) => each === text);
  if (rule !== undefined) return { rule };
  try {
    return { rule: 'fixed', order: orderOf(text, yarns) };
  } catch (error) {
    const near = nearestWord(text, WEFT_RULES);
    // A word, and no order with a slip in it.
    if (near === undefined && !/^[a-z]{4,}$/.test(text)) throw error;
    if (near === undefined) {
      throw new Misread(`found ${quote(text)}; expected same, exchange, own, a letter or an order`);
    }
    throw new Misread(
      `found ${quote(text)}; expected same, exchange, own, a letter or an order (did you mean “${near}”?)`,
    );
  }
}

function tabbyOf(letter: string | undefined, yarns: readonly Yarn[]): number {
  if (letter === undefined) return yarns.length - 1;
  const index = yarns.findIndex((yarn) => yarn.letter === letter.toUpperCase());
  if (index < 0) {
    throw new Misread(
      `found ${quote(letter)}; expected the letter of a yarn, ${yarns.map((yarn) => yarn.letter).join(' or ')}`,
    );
  }
  return index;
}
