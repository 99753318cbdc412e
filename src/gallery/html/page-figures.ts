import { type Draft, spacing } from '../../draft/draft.js';
import { formatOrder, formatRuns, smallestPeriod } from '../../order/order.js';
import type { Floats, Operation } from '../../score/model/figures.js';
import { LOOK_FIGURES } from '../../score/parts/look-figures.js';
import type { Scores } from '../../score/parts/scores.js';
import { lengthInWords, readsInWords } from '../../score/words/figure-words.js';
import { longestFloatInWords, weftKindsInWords } from '../../score/words/float-words.js';
import type { Found } from '../../search/strategy/outcome.js';
import { andList, capital, counted, grouped } from '../../words/counts.js';

/** One figure of a cloth: its name, its value in words, and what it means in one line. */
export interface Figure {
  readonly name: string;
  readonly value: string;
  readonly meaning: string;
}

/** A cloth's picture in words, for people who cannot see it. */
export function pictureWords({ draft, scores }: Found, rank: number): string {
  const dark = `${(scores.darkShare * 100).toFixed(0)} % dark`;
  return `Cloth ${rank} as woven: ${draft.warp.length} ends by ${draft.weft.length} picks in a repeat, ${dark}, ${readsInWords(scores)}`;
}

/** All figures of a cloth's appearance. */
export function figuresOf({ scores, draft }: Found): Figure[] {
  const of1 = (value: number): string => value.toFixed(3);
  const { floats } = scores;
  return [
    figure('Score', of1(scores.score), 'what the list is ranked by: the weighted mean of the parts that count, 0 to 1'),
    figure('Contrast', of1(scores.contrast), 'how strongly a pattern shows: tone and line together, 0 to 1'),
    figure('Tone', of1(scores.tone), 'light and dark in areas that the eye can tell apart; 0 is an even mixture'),
    figure('Line', of1(scores.line), 'upright hairlines against level ones, as in log cabin'),
    figure('Figure', of1(scores.figure), 'how much of the pattern is more than stripes crossing; a gingham is near 0'),
    figure('Symmetry', scores.symmetry.toFixed(2), 'how many turns and mirrors bring the face back to itself, 0 to 1'),
    figure('Turns and mirrors', turnsOf(scores), 'what brings the face back to itself'),
    ...(scores.nearly
      ? [
          figure(
            'Almost symmetric',
            `${TURN_WORDS[scores.nearly.op]}, ${percent(scores.nearly.agreement)}`,
            'the turn or mirror under which most crossings agree, and their share',
          ),
        ]
      : []),
    figure(
      'Light and dark swap',
      scores.shiftExchange ? 'yes' : 'no',
      'whether a shift alone swaps the two colours everywhere, as in hound’s tooth',
    ),
    figure(
      'Plane group',
      scores.colourGroup === null ? scores.planeGroup : `${scores.planeGroup}, in two colours ${scores.colourGroup}`,
      'the symmetry of the whole pattern, in the notation of the International Tables',
    ),
    figure('Longest float', floatOf(scores.floats, draft), 'of either system, on face or back, round the whole repeat'),
    figure(
      'Where it lies',
      longestFloatInWords(draft),
      'the first of the longest; ends are numbered from end 1, picks from the first pick',
    ),
    figure('Warp floats', sides(floats.warpFace, floats.warpBack), 'longest on the face and on the back, in picks'),
    figure('Weft floats', sides(floats.weftFace, floats.weftBack), 'longest on the face and on the back, in ends'),
    ...weftKindsInWords(draft).map(([kind, value]) =>
      figure(capital(kind), value, 'longest weft floats of these picks alone, in ends'),
    ),
    figure('Dark share', percent(scores.darkShare), 'how much of the face is dark'),
    ...LOOK_FIGURES.map(({ key, name, places, means }) => figure(name, scores[key].toFixed(places), means)),
    figure(
      'Contrast left at 0.6, 2 and 6 m',
      (['0.6', '2', '6'] as const).map((at) => scores.reads[at].toFixed(1)).join(' · '),
      'in units of L* (0 to 100): from 12 the pattern is clear, from 6 only texture, below that one tone',
    ),
    figure('Repeat easy to see up to', metres(scores.easyTo), 'by the width of the repeat alone, not by its contrast'),
    figure(
      'Repeat too small from',
      metres(scores.goneBy),
      'distance from which a repeat of that width is too small to see',
    ),
  ];
}

/** Figures of the work of weaving, counted over one repeat. */
export function easeFigures({ ease, draft, equals }: Found): Figure[] {
  const ends = draft.warp.length;
  const picks = draft.weft.length;
  const { across, along } = spacing(draft.sett);
  const perYarn = Object.entries(ease.ends).map(([letter, n]) => `${letter} ${n}`);
  const windings = ease.winding.map(({ way, knots }) => `${way}: ${knots === 0 ? 'no knots' : counted(knots, 'knot')}`);
  const carry = ease.longestCarry;
  return [
    figure(
      'Repeat',
      `${ends} ends by ${picks} picks, ${lengthInWords(ends * across, draft.sett)} by ${lengthInWords(picks * along, draft.sett)}`,
      'the whole repeat of weave and colour, as woven, before washing',
    ),
    figure('Ends of each yarn', perYarn.join(' · '), 'in one repeat'),
    figure('Winding', windings.join('; '), 'the ways to wind it, with the knots in each repeat'),
    figure('Warp changes', String(ease.warpChanges), 'neighbouring ends of different colour, round the repeat'),
    figure('Shuttles', String(ease.shuttles), 'one for each yarn and kind of pick'),
    figure('Weft changes', String(ease.weftChanges), 'neighbouring picks of different colour, round the repeat'),
    figure(
      'Longest carry',
      carry === 0 ? 'none' : `${counted(carry, 'pick')} (${lengthInWords(carry * along, draft.sett)})`,
      'picks that a waiting shuttle must pass along the edge',
    ),
    figure(
      'Shuttles end where they began',
      ease.sameSide ? 'yes' : 'no',
      'whether every shuttle begins each repeat from the side where it rests',
    ),
    figure(
      'Woven by other orders',
      equals === 0 ? 'none' : grouped(equals),
      'other candidates that weave this very cloth',
    ),
  ];
}

/** A viewing distance in words, rounded to its accuracy. */
export function metres(distance: number): string {
  return `${distance < 10 ? distance.toFixed(1) : distance.toFixed(0)} m`;
}

/** The longest float in threads, and in length if that is known. */
export function floatOf({ longest, longestMm }: Floats, { sett }: Pick<Draft, 'sett'>): string {
  if (longest === null || longestMm === null) return 'never interlaces';
  return `${counted(longest, 'thread')} (${lengthInWords(longestMm, sett)})`;
}

/** Lengths in millimetres above which floats are marked (3/8 in and 1/2 in: common practice, no source). */
const MINDS = 9.525;
const SNAGS = 12.7;

/** The caution for a cloth with long floats; undefined where they are short. */
export function floatCaution({ longestMm }: Pick<Floats, 'longestMm'>): string | undefined {
  if (longestMm !== null && longestMm <= MINDS) return undefined;
  return longestMm !== null && longestMm <= SNAGS
    ? 'The longest float is over ⅜ in (10 mm): it may snag on towels and whatever is rubbed.'
    : 'The longest float is over ½ in (13 mm): it will snag in use. Keep it for hangings, and out of things for babies.';
}

/** The colours of the threads as wound and thrown, in letters: one pair for both systems, or one each. */
export function woundOf(draft: Draft): readonly (readonly [name: string, order: string])[] {
  const warp = letters(draft.warp, draft);
  const weft = weftLetters(draft);
  return warp === weft
    ? [['warp and weft', warp]]
    : [
        ['warp', warp],
        ['weft', weft],
      ];
}

/** The weft order in letters; with tabby, the order of the other picks and the yarn of the tabby. */
function weftLetters(draft: Draft): string {
  const { weft, pickKinds, yarns } = draft;
  const tabby = weft.find((_, j) => pickKinds[j] === 'tabby');
  if (tabby === undefined || pickKinds.every((kind) => kind === 'tabby')) return letters(weft, draft);
  const pattern = weft.filter((_, j) => pickKinds[j] !== 'tabby');
  return `${letters(pattern, draft)}, tabby ${yarns[tabby]!.letter}`;
}

/** One repeat of the colours of threads, in letters or in runs, whichever is shorter. */
function letters(strands: readonly number[], { yarns }: Draft): string {
  const repeat = strands.slice(0, smallestPeriod(strands));
  const plain = formatOrder(repeat, yarns);
  const runs = formatRuns(repeat, yarns);
  return runs.length < plain.length ? runs : plain;
}

function figure(name: string, value: string, meaning: string): Figure {
  return { name, value, meaning };
}

const TURN_WORDS: Readonly<Record<Operation, string>> = {
  'half-turn': 'half turn',
  'mirror-left-right': 'mirror left to right',
  'mirror-up-down': 'mirror up and down',
  'quarter-turn': 'quarter turn',
  'quarter-turn-back': 'quarter turn back',
  diagonal: 'mirror about the diagonal',
  antidiagonal: 'mirror about the other diagonal',
};

function turnsOf({ operations }: Scores): string {
  if (operations.length === 0) return 'none';
  return andList(
    operations.map(({ op, counterchange }) => TURN_WORDS[op] + (counterchange ? ' with colours swapped' : '')),
  );
}

function sides(face: number | null, back: number | null): string {
  return `face ${face ?? 'never interlaces'}, back ${back ?? 'never interlaces'}`;
}

function percent(share: number): string {
  return `${(share * 100).toFixed(0)} %`;
}
