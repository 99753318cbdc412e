import { type Draft, EVEN_WIDTHS, type PickKind, type Sett } from '../../src/draft/draft.js';
import { AT_THE_LOOM } from '../../src/draft/point-of-view.js';
import { UNWEIGHED } from '../../src/score/parts/parts.js';
import { scoreDraft } from '../../src/score/score.js';
import type { Question } from '../../src/search/question/question.js';
import type { Found, Outcome } from '../../src/search/strategy/outcome.js';

export const YARNS = [
  { letter: 'D', name: 'night blue', hex: '#1f2a44' },
  { letter: 'L', name: 'natural', hex: '#efe6d2' },
];
export const SETT: Sett = { ends: 20, picks: 20, per: 'inch' };
const RANK = { ...UNWEIGHED, contrast: 3, symmetry: 2, float: 1 };

/** A draft on a straight draw, from the shafts lifted at each pick and the two colour orders in letters. */
export function draftWith(
  lifts: readonly (readonly number[])[],
  warp: string,
  weft: string,
  more: Partial<Draft> = {},
): Draft {
  const shafts = Math.max(...lifts.flat());
  const colours = (word: string) => [...word].map((letter) => YARNS.findIndex((yarn) => yarn.letter === letter));
  return {
    threading: [...warp].map((_, i) => [(i % shafts) + 1]),
    tieUp: lifts,
    treadling: [...weft].map((_, j) => [(j % lifts.length) + 1]),
    pickKinds: [...weft].map((): PickKind => 'ground'),
    endUnits: [...warp].map(() => 1),
    pickUnits: [...weft].map(() => 1),
    widths: EVEN_WIDTHS,
    yarns: YARNS,
    warp: colours(warp),
    weft: colours(weft),
    sett: SETT,
    ...more,
  };
}

export const TWILL = [
  [1, 2],
  [2, 3],
  [3, 4],
  [1, 4],
];
export const PLAIN = [[1], [2]];

export const HOUNDS_TOOTH = draftWith(TWILL, 'DDDDLLLL', 'DDDDLLLL');
export const LOG_CABIN = draftWith(PLAIN, 'DLDLDLDLLDLDLDLD', 'DLDLDLDLLDLDLDLD');
export const FIVES = draftWith(TWILL, 'DLDDLDLDDLDLDDLDLDDL', 'DLDDLDLDDLDLDDLDLDDL');
export const WIDE = draftWith(TWILL, 'DDDDLLLLLLLLDDDDLLLL'.repeat(4), 'DDDDLLLLLLLLDDDDLLLL'.repeat(4));

/** One cloth as a search would hand it on. */
export function foundOf(draft: Draft, rank: number, more: Partial<Found> = {}): Found {
  const { scores, ease, code } = scoreDraft(draft, { weights: RANK, floatLimit: { threads: 7 }, classics: [] });
  const letters = (order: readonly number[]) => order.map((colour) => draft.yarns[colour]!.letter).join('');
  return {
    rank,
    code,
    recipe: `trial weave, ${letters(draft.warp)}, thread by thread, weft as warp`,
    shortRecipe: 'trial weave, thread by thread',
    why: 'ranked here for: symmetry 0.25; nearest classic: hound’s tooth, 0.12 away',
    structure: 'trial weave',
    redraw: [
      ['structure', 'trial weave'],
      ['warp', letters(draft.warp)],
    ],
    draft,
    order: {
      warp: letters(draft.warp),
      weft: letters(draft.weft),
      by: 'thread',
      fill: 'solid',
      times: 1,
      start: [0, 0],
    },
    scores,
    ease,
    equals: 0,
    nearTwin: null,
    ...more,
  };
}

/** Three cloths, the last a near twin of the first. */
export function trialOutcome(): Outcome {
  const first = foundOf(LOG_CABIN, 1);
  const found = [first, foundOf(HOUNDS_TOOTH, 2, { equals: 3 }), foundOf(FIVES, 3, { nearTwin: first.code })];
  return {
    counts: {
      written: 1024,
      examined: 48,
      cloths: 24,
      equals: 6,
      setAside: { float: 5, unsound: 0, flat: 12, limits: 1 },
      cutOff: 0,
      exhaustive: true,
    },
    found,
  };
}

export function trialQuestion(more: Partial<Question> = {}): Question {
  return {
    structures: ['2/2 twill'],
    treadlings: [],
    profile: [],
    treadled: [],
    yarns: YARNS,
    lengths: [2, 3, 4, 5, 6],
    orders: [],
    weft: { rule: 'same' },
    tabby: 1,
    by: ['thread', 'unit'],
    fill: ['solid'],
    times: [1, 2, 4],
    starts: 'all',
    sett: SETT,
    limits: { float: { threads: 7 }, repeat: 400 },
    rank: RANK,
    same: ['mirror', 'half-turn', 'exchange'],
    show: 60,
    seen: AT_THE_LOOM,
    seed: 'sampler-1',
    tries: 1,
    ...more,
  };
}
