import { valuePairs } from '../../colour/lightness.js';
import type { Yarn } from '../../colour/yarn.js';
import type { Sett } from '../../draft/draft.js';
import { draftSeenInWords } from '../../draft/point-of-view.js';
import type { By, Fill } from '../../order/laid-order.js';
import { formatOrder, formatRuns, type Order, smallestPeriod } from '../../order/order.js';
import { PART_WORDS, PARTS } from '../../score/parts/parts.js';
import { presetOf } from '../../score/rank/presets.js';
import type { Done, NameAsked, ProfilesAsked, Question, Sameness } from '../../search/question/question.js';
import { BY_CHOICES, FILL_CHOICES } from '../../search/question/question-table.js';
import { ALL, waysInWords, waysTried } from '../../search/question/treadlings-tried.js';
import { profileInLetters } from '../../search/space/candidate.js';
import { recognitionOf } from '../../structure/recognise/recognition-of.js';
import { andList, capital, counted, plural } from '../../words/counts.js';
import { limitsInWords, loomInWords } from './page-limits.js';

/** Most given orders that are listed; more are only counted. */
const ORDERS_LISTED = 6;

/** Most letters of an order that is written out. */
const LONGEST_SAID = 60;

/** A thing that was asked, and what was asked of it. */
type Asked = readonly [thing: string, asked: string];

/** The question in one line: the weave, and the colour orders laid on it. */
export function titleOf(question: Question): string {
  const given = question.draft;
  const woven = given ? leftToRight(given.draft.name ?? given.file) : capital(andList(question.structures));
  const { profiles } = question;
  if (profiles) {
    const what = `${profiles.threaded ? 'block orders' : 'treadlings'} of ${lengthsOf(profiles.lengths)} elements`;
    return `${woven}: ${what}, ${question.warp ? 'one warp' : ordersOf(question)}`;
  }
  if (question.warp === undefined) return `${woven}: ${ordersOf(question)}`;
  const warp = `warp ${oneOrder(question.warp, question.yarns)}`;
  return `${woven}: ${isWeftsOwn(question) ? `${warp}, weft in ${ordersOf(question)}` : warp}`;
}

/** The ranking in one line. */
export function rankingInWords({ rank }: Pick<Question, 'rank'>): string {
  const weighed = PARTS.filter((part) => rank[part] > 0);
  if (weighed.length === 0) return 'Not ranked: no figure was given any weight';
  const parts = weighed.map((part) => `${PART_WORDS[part]} ×${rank[part]}`);
  const view = presetOf(rank);
  return view === undefined ? `Ranked by ${andList(parts)}` : `The ${view} first: ${andList(parts)}`;
}

const STARTS_WORDS: Readonly<Record<Question['starts'], string>> = {
  all: 'at every starting point that gives a new cloth',
  first: 'on the first end and pick',
  weft: 'the warp on the first end, the weft at every starting point that gives a new cloth',
};

/** A name without the marks that override the direction of writing, which would turn about what stands after it. */
function leftToRight(name: string): string {
  return name.replace(/[\u202a-\u202e\u2066-\u2069]/g, '');
}

/** All parts of the question, defaults included, in the order in which a weaver decides them. */
export function askedOf(question: Question): Asked[] {
  const {
    draft,
    structures,
    name,
    treadlings,
    blocks,
    profile,
    treadled,
    profiles,
    warp,
    yarns,
    by,
    fill,
    times,
    starts,
    sett,
    loom,
  } = question;
  const woven: Asked[] = draft
    ? draftAsked(question)
    : [
        ['Structure', andList(structures)],
        ...(name ? [['Name', nameOf(name)] as const] : []),
        ...(treadlings.length > 0 ? [['Treadled', waysOf(treadlings)] as const] : []),
      ];
  const tabby = yarns[question.tabby];
  const hasTabby = !draft || waysTried(question).some(({ weave }) => weave.pickKinds.includes('tabby'));
  return [
    ...woven,
    ...(blocks === undefined ? [] : [['Number of blocks', String(blocks)] as const]),
    ...(profile.length > 0 ? [['Blocks', blocksOf(profile)] as const] : []),
    ...(profiles ? searchedBlocks(profiles) : []),
    ...(treadled.length > 0 ? [['Blocks as treadled', treadled.join(' ')] as const] : []),
    warp ? ['Warp', oneOrder(warp, yarns)] : ['Warp orders', ordersOf(question)],
    ['Weft', weftOf(question)],
    ...(isWeftsOwn(question) ? [['Weft orders', ordersOf(question)] as const] : []),
    ...(tabby && hasTabby ? [['Tabby', `${tabby.letter}, where the structure has tabby`] as const] : []),
    [
      'Each colour covers',
      andList(by.map((way) => (way === 'block' && !choosesBlocks(question) ? WHOLE_BLOCKS : BY_WORDS[way]))),
    ],
    ['Each element is', andList(fill.map((way) => FILL_WORDS[way]))],
    ['Size', andList(times.map((k) => `×${k}`))],
    ['Orders begin', STARTS_WORDS[starts]],
    ['Sett', settOf(sett)],
    ...(loom ? [['Loom', `${loomInWords(loom)}; what it cannot weave is set aside`] as const] : []),
    ['Set aside', andList(limitsInWords(question.limits, question.sett))],
    ...(question.done ? [['Done before', doneOf(question.done)] as const] : []),
    ['Drawn', draftSeenInWords(question.seen)],
    ['Counted as the same cloth', andList(['shifts', ...question.same.map((way) => SAME_WORDS[way])])],
  ];
}

/** The two yarns nearest in lightness, and whether the eye can tell them apart (scale: common practice). */
export function nearestPair(yarns: readonly Yarn[]): { readonly words: string; readonly tooNear: boolean } | undefined {
  const pairs = valuePairs(yarns);
  const nearest = pairs.at(-1);
  if (nearest === undefined) return undefined;
  const { darker, lighter, difference, verdict } = nearest;
  const which = pairs.length > 1 ? ', the nearest pair,' : '';
  return {
    words: `${darker.letter} and ${lighter.letter}${which} are ${difference.toFixed(0)} of 100 apart in lightness: ${verdict}`,
    tooNear: verdict === 'will not show',
  };
}

/** `20 ends and 20 picks per inch`. */
function settOf({ ends, picks, per }: Sett): string {
  return `${ends} ends and ${picks} picks per ${per}`;
}

export const BY_WORDS: Readonly<Record<By, string>> = { ...BY_CHOICES, block: 'one unit, whose block it also chooses' };

const WHOLE_BLOCKS = 'a block: all units of one letter side by side';

/** Whether an order laid by block chooses the blocks too; with a profile it does not. */
function choosesBlocks({ profile, profiles }: Question): boolean {
  return profiles === undefined && (profile === 'order' || profile.length === 0);
}

export const FILL_WORDS: Readonly<Record<Fill, string>> = FILL_CHOICES;

const SAME_WORDS: Readonly<Record<Sameness, string>> = {
  mirror: 'mirrors',
  'half-turn': 'half turns',
  'quarter-turn': 'quarter turns',
  exchange: 'light and dark swapped',
};

function waysOf(treadlings: readonly string[]): string {
  return treadlings.includes(ALL) ? 'in every way' : andList(treadlings);
}

/** The parts of the question about a person's own draft: recognised structure, treadling. */
function draftAsked(question: Question): Asked[] {
  const { file, draft } = question.draft!;
  const named = leftToRight(draft.name === undefined ? file : `${draft.name} (${file})`);
  return [
    [question.onTheLoom ? 'On the loom' : 'Draft', named],
    ['Recognised', recognitionOf(draft).words[0]!],
    ['Treadled', question.treadlings.length > 0 ? waysInWords(question) : 'as the draft is'],
  ];
}

function ordersOf({ orders, lengths, yarns }: Question): string {
  if (orders.length > ORDERS_LISTED) return `${orders.length} colour orders that were given`;
  if (orders.length > 0) {
    return `colour ${plural(orders.length, 'order')} ${andList(orders.map((o) => formatOrder(o, yarns)))}`;
  }
  return `colour orders of ${lengthsOf(lengths)} elements`;
}

/** `2 to 6`, or `2, 3 and 5`. */
function lengthsOf(lengths: readonly number[]): string {
  const [first, last] = [lengths[0]!, lengths.at(-1)!];
  const unbroken = lengths.length > 2 && lengths.every((length, k) => length === first + k);
  return unbroken ? `${first} to ${last}` : andList(lengths.map(String));
}

/** Whether the orders are for the weft alone, on a given warp. */
function isWeftsOwn({ warp, weft }: Question): boolean {
  return warp !== undefined && weft.rule === 'own';
}

/** One repeat of an order in letters or runs, whichever is shorter; a very long order by its length. */
function oneOrder(order: Order, yarns: readonly Yarn[]): string {
  const repeat = order.slice(0, smallestPeriod(order));
  if (repeat.length === 1) return `all ${yarns[repeat[0]!]!.letter}`;
  const [letters, runs] = [formatOrder(repeat, yarns), formatRuns(repeat, yarns)];
  const said = runs.length < letters.length ? runs : letters;
  return said.length > LONGEST_SAID ? `an order of ${repeat.length} threads` : said;
}

function nameOf({ text, drafts, mirrored, letters }: NameAsked): string {
  const which = drafts === 'usual' ? 'the usual draft' : drafts === 'all' ? 'every draft' : `draft ${drafts}`;
  const own = Object.entries(letters).map(([letter, shaft]) => `${letter} on shaft ${shaft}`);
  return [`${text}, ${which} of its letters`, ...own, ...(mirrored ? ['mirrored'] : [])].join(', ');
}

function weftOf({ weft, warp, yarns }: Question): string {
  switch (weft.rule) {
    case 'same':
      return 'in the order of the warp';
    case 'exchange':
      return 'in the order of the warp, each colour changed for the next yarn';
    case 'own':
      return warp
        ? 'in an order of its own: every weft order on the one warp'
        : 'in an order of its own: every warp order against every weft order';
    case 'fixed':
      return oneOrder(weft.order, yarns);
  }
}

function doneOf({ files, drafts, unlike }: Done): string {
  const cloths = `${counted(drafts.length, 'cloth')} of ${andList(files)}`;
  return `${cloths}, set aside${unlike === undefined ? '' : ` with all that are less than ${unlike} unlike one of them`}`;
}

/** Which block orders are searched: `every mirrored one of 2 to 6 elements, each once`. */
function searchedBlocks({ lengths, threaded, treadled }: ProfilesAsked): Asked[] {
  const every = (mirrored: boolean): string =>
    `every ${mirrored ? 'mirrored ' : ''}order of ${lengthsOf(lengths)} elements, each once`;
  return [
    ...(threaded ? [['Blocks', every(threaded.mirrored)] as const] : []),
    ...(treadled
      ? [['Blocks as treadled', every(treadled.mirrored) + (treadled.together ? ', any blocks together' : '')] as const]
      : []),
  ];
}

function blocksOf(profile: Question['profile']): string {
  return typeof profile === 'string' ? 'chosen by the colour order' : profileInLetters(profile);
}
