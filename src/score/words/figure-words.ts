import type { Yarn } from '../../colour/yarn.js';
import { type Draft, type Sett, spacing } from '../../draft/draft.js';
import { counted, orList } from '../../words/counts.js';
import { FLAT } from '../contrast/contrast.js';
import { DISTANCES, MELTS, READS } from '../contrast/viewing-distance.js';
import type { Operation } from '../model/figures.js';
import type { FloatLimit } from '../model/float-limit.js';
import type { Scores } from '../parts/scores.js';
import { exceedsFloat } from '../rank/rank.js';

/** What must be known of a cloth, beside its figures, to say them in words. */
export interface Facts extends Pick<Draft, 'yarns' | 'warp' | 'weft' | 'sett'> {
  /** Said only where a float is above it. */
  readonly floatLimit?: FloatLimit;
}

const SHARES: readonly (readonly [number, string])[] = [
  [0, 'no'],
  [1 / 4, 'a quarter'],
  [1 / 3, 'a third'],
  [2 / 5, 'two fifths'],
  [1 / 2, 'half'],
  [3 / 5, 'three fifths'],
  [2 / 3, 'two thirds'],
  [3 / 4, 'three quarters'],
  [1, 'all'],
];

const KEPT: Readonly<Record<Operation, string>> = {
  'half-turn': 'half-turn symmetry',
  'mirror-left-right': 'left–right mirror symmetry',
  'mirror-up-down': 'top–bottom mirror symmetry',
  'quarter-turn': 'quarter-turn symmetry',
  'quarter-turn-back': 'quarter-turn symmetry',
  diagonal: 'mirror symmetry about the diagonal',
  antidiagonal: 'mirror symmetry about the other diagonal',
};

/** Pairs of mirrors that are said together. */
const PAIRS: readonly (readonly [Operation, Operation, kept: string, exchanged: string])[] = [
  [
    'mirror-left-right',
    'mirror-up-down',
    'left–right and top–bottom mirror symmetry',
    'mirrored left–right or top–bottom',
  ],
  ['diagonal', 'antidiagonal', 'mirror symmetry about both diagonals', 'mirrored about either diagonal'],
];

const EXCHANGED: Readonly<Record<Operation, string>> = {
  'half-turn': 'half-turned',
  'mirror-left-right': 'mirrored left–right',
  'mirror-up-down': 'mirrored top–bottom',
  'quarter-turn': 'quarter-turned',
  'quarter-turn-back': 'quarter-turned',
  diagonal: 'mirrored about the diagonal',
  antidiagonal: 'mirrored about the other diagonal',
};

/** The figures of a cloth in one plain sentence: “half dark; D and L swap when the pattern is shifted; pattern clear at 6 m; …”. */
export function inWords(scores: Scores, facts: Facts): string {
  return [
    darkInWords(scores),
    ...symmetryInWords(scores, facts),
    readsInWords(scores),
    floatInWords(scores, facts),
  ].join('; ');
}

/** How much of the face is dark; and that it is a fine texture, where no larger pattern shows. */
export function darkInWords({ darkShare, contrast }: Pick<Scores, 'darkShare' | 'contrast'>): string {
  const share = SHARES.find(([part]) => Math.abs(part - darkShare) < 0.005);
  const dark = `${share?.[1] ?? `${Math.round(100 * darkShare)} %`} dark`;
  return contrast < FLAT ? `${dark}, a fine texture` : dark;
}

/** What carries the face to itself: colours kept, colours exchanged, and what just fails to. */
export function symmetryInWords(
  scores: Pick<Scores, 'operations' | 'shiftExchange' | 'nearly'>,
  facts: Pick<Facts, 'yarns' | 'warp' | 'weft'>,
): string[] {
  const holding = (counterchange: boolean): Operation[] =>
    scores.operations.filter((each) => each.counterchange === counterchange).map((each) => each.op);
  const kept = holding(false);
  // A quarter turn done twice is a half turn.
  const turns = kept.includes('quarter-turn') ? kept.filter((op) => op !== 'half-turn') : kept;
  const exchanged = [...(scores.shiftExchange ? ['shifted'] : []), ...sayAll(holding(true), EXCHANGED, 3)];
  const said = sayAll(turns, KEPT, 2);
  if (exchanged.length > 0) said.push(`${pairOf(facts)} swap when the pattern is ${orList(exchanged)}`);
  if (said.length === 0) said.push('no symmetry');
  if (scores.nearly !== undefined) {
    const { op, agreement } = scores.nearly;
    said.push(`almost ${KEPT[op]} (${Math.round(100 * agreement)} % of crossings agree)`);
  }
  return said;
}

/** Operations in words, each once, two mirrors that belong together as one. */
function sayAll(operations: readonly Operation[], words: Readonly<Record<Operation, string>>, form: 2 | 3): string[] {
  const said = operations.map((op) => {
    const pair = PAIRS.find(([a, b]) => (op === a || op === b) && operations.includes(a) && operations.includes(b));
    return pair === undefined ? words[op] : pair[form];
  });
  return [...new Set(said)];
}

/** How far away the pattern is still clear, and what becomes of it at the next distance. */
export function readsInWords({ reads, contrast }: Pick<Scores, 'reads' | 'contrast'>): string {
  const what = contrast < FLAT ? 'texture' : 'pattern';
  const fails = DISTANCES.findIndex((distance) => reads[distance] < READS);
  const last = DISTANCES.at(fails < 0 ? -1 : fails - 1);
  if (fails < 0) return `${what} clear at ${last} m`;
  const then = reads[DISTANCES[fails]!] < MELTS ? 'one tone' : 'only texture';
  return fails === 0 ? `${then} at ${DISTANCES[0]} m` : `${what} clear at ${last} m, ${then} at ${DISTANCES[fails]} m`;
}

/** The longest float in threads and in length; another one too, where it is longer in length; the limit it breaks. */
export function floatInWords(
  { floats }: Pick<Scores, 'floats'>,
  { sett, floatLimit }: Pick<Facts, 'sett' | 'floatLimit'>,
): string {
  const over =
    floatLimit !== undefined && exceedsFloat(floats, floatLimit)
      ? `, over the limit of ${limitInWords(floatLimit, sett)}`
      : '';
  const { warpFace, warpBack, weftFace, weftBack } = floats;
  if (warpFace === null || warpBack === null || weftFace === null || weftBack === null) {
    return `a thread never interlaces${over}`;
  }
  const { across, along } = spacing(sett);
  const weft = float(Math.max(weftFace, weftBack), 'end', across);
  const warp = float(Math.max(warpFace, warpBack), 'pick', along);
  const [main, other] =
    warp.threads > weft.threads || (warp.threads === weft.threads && warp.mm > weft.mm) ? [warp, weft] : [weft, warp];
  const say = ({ threads, thread, mm }: typeof weft): string =>
    `${counted(threads, thread)} = ${lengthInWords(mm, sett)}`;
  const longer = other.mm > main.mm + 1e-9 ? `, longest in length ${say(other)}` : '';
  return `longest float ${say(main)}${longer}${over}`;
}

/** A length in the units of the sett: inches to two places, or millimetres to one. */
export function lengthInWords(mm: number, { per }: Pick<Sett, 'per'>): string {
  return per === 'inch' ? `${(mm / 25.4).toFixed(2)} in` : `${mm.toFixed(1)} mm`;
}

/** A limit for floats in words, in the units of the sett. */
export function limitInWords(limit: FloatLimit, sett: Sett): string {
  if ('threads' in limit) return counted(limit.threads, 'thread');
  // Limits are round in the unit in which they are given: 3/8 in is 0.375, not 0.38.
  return sett.per === 'inch' ? `${Number((limit.mm / 25.4).toFixed(3))} in` : `${Number(limit.mm.toFixed(2))} mm`;
}

/** The letters of the two yarns that are woven; “light and dark” where there are not just two. */
function pairOf({
  yarns,
  warp,
  weft,
}: {
  readonly yarns: readonly Yarn[];
  readonly warp: readonly number[];
  readonly weft: readonly number[];
}): string {
  const used = [...new Set([...warp, ...weft])].sort((a, b) => a - b);
  return used.length === 2 ? used.map((yarn) => yarns[yarn]!.letter).join(' and ') : 'dark and light';
}

const float = (threads: number, thread: string, spacing: number) => ({ threads, thread, mm: threads * spacing });
