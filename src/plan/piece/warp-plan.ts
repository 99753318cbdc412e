import { valueWarnings } from '../../colour/lightness.js';
import type { Yarn } from '../../colour/yarn.js';
import { type Draft, shaftCount, spacing } from '../../draft/draft.js';
import type { KeptCloth } from '../../formats/shortlist.js';
import { describe } from '../../input/misread.js';
import { smallestPeriod } from '../../order/order.js';
import { Problem } from '../../problem.js';
import type { Per } from '../../words/measure.js';
import type { PlanOptions } from '../options/plan-options.js';
import { type Learnt, picksAfter } from '../results/learnt.js';
import { type Denting, dentingOf, dentsFilled, rankReeds, settIn } from '../warp/denting.js';
import type { Filling } from '../warp/fill-width.js';
import { mirroredDraft, mirrorWords } from '../warp/mirror.js';
import type { Reed } from '../warp/reed.js';
import { usualWaste, type WarpLength, warpLength } from '../warp/warp-length.js';
import { loomObstacles } from '../warp/warp-loom.js';
import { NO_WINDING, type Winding, windingOf } from '../warp/winding.js';
import type { YarnAmount } from '../yarn/yarn-amounts.js';
import { type PiecePlan, planPiece } from './piece-plan.js';
import { repeatsAcross } from './repeats-across.js';
import { patternCautions, patternSized, yarnNeeded } from './yarn-needed.js';

/** One end of the warp as it is threaded. */
interface ThreadedEnd {
  readonly shafts: readonly number[];
  /** Palette index. */
  readonly yarn: number;
}

/** One warp and all pieces woven on it. Lengths in millimetres. */
export interface WarpPlan {
  readonly number: number;
  /** Set if the warp is on the loom already, so that nothing is wound, threaded or sleyed; its width is as given. */
  readonly onTheLoom?: true;
  readonly per: Per;
  readonly yarns: readonly Yarn[];
  /** All ends from left to right, without floating selvedges. */
  readonly ends: readonly ThreadedEnd[];
  /** Ends in one repeat, number of whole repeats, ends that balance the last repeat, border ends on each side. */
  readonly repeat: number;
  readonly repeats: number;
  readonly balance: number;
  readonly border: number;
  /** Ends that fill the width asked for, and the three nearest possible fillings. */
  readonly wanted: number;
  readonly fillings: readonly Filling[];
  /** Floating selvedges, both in one yarn: 2 or none. */
  readonly floating: { readonly ends: number; readonly letter: string };
  /** Ends to wind of each yarn, floating selvedges included; none of a warp on the loom. */
  readonly wound: readonly { readonly letter: string; readonly ends: number }[];
  readonly heddles: readonly number[];
  readonly denting: Denting;
  readonly dents: number;
  readonly widthInReed: number;
  readonly reeds: readonly Denting[];
  readonly length: WarpLength;
  readonly winding: Winding;
  readonly pieces: readonly PiecePlan[];
  readonly yarn: readonly YarnAmount[];
  /** Reasons why the loom cannot weave it; empty if it can. */
  readonly faults: readonly string[];
  readonly cautions: readonly string[];
}

/** Most cloths of one plan: each has pages of its own, which are held in memory until all are drawn. */
export const MOST_PLANNED = 200;

/** Reeds that most weavers can lay hands on: dents in an inch, and in a centimetre (common practice, no source). */
const USUAL_REEDS: Readonly<Record<Per, readonly number[]>> = {
  inch: [5, 6, 8, 10, 12, 14, 15],
  cm: [2, 2.5, 3, 3.5, 4, 5, 6],
};

/**
 * Plans the warps of a shortlist: cloths with the same threading, warp colours and sett share a warp.
 *
 * @param learnt results for each cloth, used in place of the usual figures
 */
export function planWarps(
  kept: readonly KeptCloth[],
  options: PlanOptions,
  learnt: (cloth: KeptCloth) => Learnt = () => ({}),
): WarpPlan[] {
  if (kept.length === 0) throw new Problem('found a shortlist with nothing in it; expected at least one cloth');
  if (kept.length > MOST_PLANNED) {
    throw new Problem(`found ${kept.length} cloths to plan; expected ${MOST_PLANNED} at most: keep fewer in a list`);
  }
  const groups = new Map<string, Placed[]>();
  for (const cloth of kept) {
    const draft = fitted(cloth.draft, options);
    const ends = draft.warp.map((yarn, i) => [draft.threading[i], draft.yarns[yarn]!.hex]);
    const key = JSON.stringify([ends, draft.yarns, draft.sett, cloth.onTheLoom]);
    const found = learnt(cloth);
    const placed = { cloth: called(cloth, options), draft: beaten(draft, found), learnt: found };
    groups.set(key, [...(groups.get(key) ?? []), placed]);
  }
  let number = 0;
  return [...groups.values()].map((group, at) => {
    const first = number;
    number += group.length;
    return planWarp(group, at + 1, first, options);
  });
}

/**
 * The reed for a sett beyond the range of the usual reeds: the finest for a close sett, the coarsest for an open one.
 */
function extremeReed({ ends, per }: Draft['sett']): Reed {
  const usual = USUAL_REEDS[per];
  return { dents: ends > usual[0]! ? usual.at(-1)! : usual[0]! };
}

/** Throws a Problem if a size or an amount is given for a yarn that no cloth has. */
export function checkLetters(kept: readonly KeptCloth[], { yarns, inHand, putUps }: PlanOptions): void {
  const letters = kept.flatMap(({ draft }) => draft.yarns.map(({ letter }) => letter));
  const pattern = kept.some(({ draft }) => draft.pickKinds.includes('pattern')) ? ['pattern'] : [];
  const known = [...new Set(letters), ...pattern];
  for (const [key, given] of Object.entries({ 'yarn size': yarns, 'in hand': inHand, 'put-up': putUps })) {
    const stranger = Object.keys(given).find((letter) => letter !== '' && !known.includes(letter));
    if (stranger === undefined) continue;
    throw new Problem(`${key}: found ${describe(stranger)}; expected yarns that are in the cloths: ${known.join(' ')}`);
  }
}

/** A cloth of the shortlist with its draft as planned, and the results for it. */
interface Placed {
  readonly cloth: KeptCloth;
  readonly draft: Draft;
  readonly learnt: Learnt;
}

/** A cloth whose recipe also names the plan's mirroring. Its draft is unchanged. */
function called(cloth: KeptCloth, { mirror }: PlanOptions): KeptCloth {
  const words = mirrorWords(mirror);
  return words === '' ? cloth : { ...cloth, recipe: `${cloth.recipe}; ${words}` };
}

/** A draft with the plan's sett, yarn sizes and mirroring. */
function fitted(draft: Draft, options: PlanOptions): Draft {
  const yarns = draft.yarns.map((yarn) => {
    const size = options.yarns[yarn.letter] ?? options.yarns[''];
    return size === undefined ? yarn : { ...yarn, tex: size.tex };
  });
  const sized = { ...mirroredDraft(draft, options.mirror), yarns, sett: options.sett ?? draft.sett };
  return patternSized(sized, options.yarns.pattern);
}

/** A draft with the picks per inch (or centimetre) that results found. */
function beaten(draft: Draft, learnt: Learnt): Draft {
  return { ...draft, sett: { ...draft.sett, picks: picksAfter(learnt, draft.sett) } };
}

function planWarp(group: readonly Placed[], number: number, before: number, options: PlanOptions): WarpPlan {
  const { draft, cloth: first } = group[0]!;
  const there = first.onTheLoom === true;
  if (there) checkThere(group, options);
  const { across } = spacing(draft.sett);
  const { per } = draft.sett;
  const repeat = draft.warp.length;
  const filled = repeatsAcross(draft, options);
  const { border, count } = filled;
  const ends = layEnds(draft, count, border, options);
  const width = count * across;
  const unsleyed = group.map(({ cloth, draft: own, learnt }, at) =>
    planPiece(cloth, own, before + at + 1, { ends: count, border, width }, options, learnt),
  );
  const floats =
    options.floating === 'yes' ||
    (options.floating === 'auto' && !there && unsleyed.some(({ starts }) => !starts.allCaught));
  const floating = { ends: floats ? 2 : 0, letter: draft.yarns[ends[0]!.yarn]!.letter };
  const wound = there ? [] : endsOfYarns(draft, ends, floating);
  const colours = smallestPeriod(draft.warp);
  const reeds = rankReeds(draft.sett.ends, USUAL_REEDS[per], per, colours);
  const denting =
    options.reed === undefined && reeds.length > 0
      ? reeds[0]!
      : dentingOf(draft.sett.ends, options.reed ?? extremeReed(draft.sett), per, colours);
  const dents = dentsFilled(count, denting, floating.ends);
  const dentWidth = (per === 'inch' ? 25.4 : 10) / denting.reed;
  const inReed = (dents - floating.ends) * dentWidth;
  const pieces = unsleyed.map((piece): PiecePlan => {
    const drawIn = piece.learnt.drawIn?.value ?? options.drawIn;
    return { ...piece, inReed, widthOnLoom: inReed * (1 - drawIn) };
  });
  const length = warpLength(
    {
      ...options,
      // All pieces are woven on one warp, which must be long enough for the one that shrinks most.
      shrinkage: Math.max(...pieces.map(({ shrinkage }) => shrinkage)),
      takeUp: Math.max(...pieces.map(({ learnt }) => learnt.takeUp?.value ?? options.takeUp)),
      loomWaste: options.loomWaste ?? usualWaste(options.loom.kind, per),
      pieces: pieces.flatMap((each) => new Array(each.pieces).fill(options.piece)),
    },
    per,
    there,
  );
  const heddles = heddlesOf(ends, shaftCount(draft));
  const faults = loomFaults(pieces, heddles, dents * dentWidth, there, options);
  return {
    number,
    ...(there && { onTheLoom: true }),
    per,
    yarns: draft.yarns,
    ends,
    repeat,
    repeats: filled.repeats,
    balance: filled.balance,
    border,
    wanted: filled.wanted,
    fillings: filled.fillings,
    floating,
    wound,
    heddles,
    denting,
    dents,
    widthInReed: dents * dentWidth,
    reeds,
    length,
    winding: there
      ? NO_WINDING
      : windingOf(
          ends.map((end) => end.yarn),
          colours,
          border,
        ),
    pieces,
    yarn: yarnNeeded(draft, pieces, wound, length, width),
    faults,
    cautions: [
      ...faults.map((fault) => `Not on this loom: ${fault}.`),
      ...valueWarnings(used(draft, ends, pieces)).map((warning) => `${warning}.`),
      ...(there ? edgeCautions(pieces, options) : reedCautions(draft.sett, denting)),
      ...patternCautions(pieces, options),
    ],
  };
}

/** Ends of each yarn that is wound, floating selvedges included. */
function endsOfYarns(
  { yarns }: Draft,
  ends: WarpPlan['ends'],
  floating: WarpPlan['floating'],
): { letter: string; ends: number }[] {
  return yarns
    .map(({ letter }, yarn) => ({
      letter,
      ends: ends.filter((end) => end.yarn === yarn).length + (letter === floating.letter ? floating.ends : 0),
    }))
    .filter((each) => each.ends > 0);
}

/** What the loom cannot weave, one clause each. */
function loomFaults(
  pieces: readonly PiecePlan[],
  heddles: readonly number[],
  width: number,
  there: boolean,
  { loom: { heddles: owned, width: wide, ...kept }, loom: whole }: PlanOptions,
): string[] {
  const demands = pieces.map(({ draft, shuttles }) => ({ draft, heddles, width, shuttles: shuttles.length }));
  // A warp that is on the loom has its heddles and its width there.
  const loom = there ? kept : whole;
  return [...new Set(demands.flatMap((demand) => loomObstacles(demand, loom, demand.draft.sett.per)))];
}

/**
 * Throws a Problem if the options would move or colour ends of a warp that is on the loom.
 */
function checkThere(group: readonly Placed[], { mirror, border }: PlanOptions): void {
  const key = mirror.warp ? 'mirror' : border ? 'border' : undefined;
  if (key === undefined) return;
  const codes = group.map(({ cloth }) => cloth.code).join(' ');
  throw new Problem(
    `${key}: found it for a warp that is on the loom (${codes}); expected none, as its ends lie as they do`,
  );
}

/** Where turns miss the edge of a warp on the loom. */
function edgeCautions(pieces: readonly PiecePlan[], { floating }: PlanOptions): string[] {
  return floating === 'yes' || pieces.every(({ starts }) => starts.allCaught)
    ? []
    : ['Some turns miss the edge: if the warp has no floating selvedges, hang one at each side.'];
}

/** Where the reed sets other ends than asked, and where its dents may show. */
function reedCautions({ ends, per }: Draft['sett'], denting: WarpPlan['denting']): string[] {
  const { dents, inStep, meets } = denting;
  const streaks = `The dents (${dents.join('-')}) fall in step with the colours every ${meets} ends and may show as streaks.`;
  return [
    ...(Math.abs(settIn(denting) - ends) > ends / 200
      ? [`The reed sets ${settIn(denting).toFixed(1)} ends per ${per} in place of ${ends}.`]
      : []),
    ...(inStep ? [streaks] : []),
  ];
}

/** All ends: border, whole repeats with their balance, border. The threading runs on through the borders. */
function layEnds(draft: Draft, count: number, border: number, options: PlanOptions): ThreadedEnd[] {
  const n = draft.warp.length;
  const letter = options.border?.letter;
  const edge = draft.yarns.findIndex((yarn) => yarn.letter === letter);
  if (border > 0 && edge < 0) {
    const letters = draft.yarns.map((yarn) => yarn.letter).join(' ');
    throw new Problem(`border: found “${letter}”; expected one of the yarns ${letters}`);
  }
  return Array.from({ length: count }, (_, at) => {
    const i = (((at - border) % n) + n) % n;
    const inside = at >= border && at < count - border;
    return { shafts: draft.threading[i]!, yarn: inside ? draft.warp[i]! : edge };
  });
}

/** Heddles on each shaft, shaft 1 first. */
function heddlesOf(ends: readonly ThreadedEnd[], shafts: number): number[] {
  const counts = new Array<number>(shafts).fill(0);
  for (const shaft of ends.flatMap((end) => end.shafts)) counts[shaft - 1]!++;
  return counts;
}

/** Yarns that are in the warp or in a weft. */
function used(draft: Draft, ends: readonly ThreadedEnd[], pieces: readonly PiecePlan[]): Yarn[] {
  const there = new Set([...ends.map((end) => end.yarn), ...pieces.flatMap((piece) => piece.draft.weft)]);
  return draft.yarns.filter((_, index) => there.has(index));
}
