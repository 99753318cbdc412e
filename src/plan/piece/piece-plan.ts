import { drawdown } from '../../cloth/drawdown.js';
import { type Floats, floatsOf } from '../../cloth/floats.js';
import { type Draft, spacing } from '../../draft/draft.js';
import { shuttleOfPick } from '../../draft/shuttles.js';
import type { KeptCloth } from '../../formats/shortlist.js';
import { sayLength } from '../../words/measure.js';
import type { PlanOptions } from '../options/plan-options.js';
import type { Learnt } from '../results/learnt.js';
import { pickList, type Shuttle, type Starts, shuttlesOf, startingSides, type Throw } from '../warp/pick-list.js';
import { FLOAT_LIMITS, picksForSquare, threadsWithin } from '../warp/purpose.js';
import { before } from '../warp/warp-length.js';
import { type TiedUp, tiedUpOn } from '../warp/warp-loom.js';
import type { SettAdvice } from '../yarn/sett.js';
import { picksIn, tally, WEFT_EXTRA } from '../yarn/yarn-amounts.js';
import { settCautions, settFor } from './sett-advice.js';

/** One cloth of the shortlist as it is woven on its warp. Lengths in millimetres. */
export interface PiecePlan {
  /** Number on the warp, from 1; it goes into the cloth and on the sheet. */
  readonly number: number;
  readonly cloth: KeptCloth;
  /** The cloth's draft with the plan's sett and yarn sizes. */
  readonly draft: Draft;
  /** Pieces of this cloth. */
  readonly pieces: number;
  /** Results for this cloth, and the share of its length lost in washing (from results, else usual). */
  readonly learnt: Learnt;
  readonly shrinkage: number;
  /** Width of the cloth in the reed, without floating selvedges, and on the loom where it is woven, in millimetres. */
  readonly inReed: number;
  readonly widthOnLoom: number;
  /** Length of each piece on the loom, measured without tension, and its picks. */
  readonly woven: number;
  readonly picks: number;
  readonly shuttles: readonly (Shuttle & {
    readonly picks: number;
    readonly side: Throw['from'];
    readonly weft: number;
  })[];
  readonly starts: Starts;
  /** The throws of one repeat, from the starting sides. */
  readonly list: readonly Throw[];
  /** Longest carry, in picks and in millimetres. */
  readonly carry: { readonly picks: number; readonly mm: number };
  readonly floats: Floats;
  /** Advice on the sett, if the yarns are known. */
  readonly settAdvice?: SettAdvice;
  readonly tied: TiedUp;
  readonly cautions: readonly string[];
}

/** Carries longer than these are caught on the way, or cut and tucked in (common practice, no source). */
const CATCH_FROM = 12.7;
const CUT_FROM = 25.4;

/** The warp of a cloth: all its ends, the ends of each border, and its width in the reed in millimetres. */
interface OnWarp {
  readonly ends: number;
  readonly border: number;
  readonly width: number;
}

/** A piece before its warp is sleyed, which settles its width. */
export type Unsleyed = Omit<PiecePlan, 'inReed' | 'widthOnLoom'>;

/** Plans one cloth on its warp. */
export function planPiece(
  cloth: KeptCloth,
  draft: Draft,
  number: number,
  { ends, border, width }: OnWarp,
  options: PlanOptions,
  learnt: Learnt,
): Unsleyed {
  const { along } = spacing(draft.sett);
  const shrinkage = learnt.shrinkage?.value ?? options.shrinkage;
  const woven = before(options.piece, shrinkage);
  const picks = picksIn(woven, 1 / along);
  const shuttles = shuttlesOf(draft);
  const starts = startingSides(draft, ends, border);
  const thrown = tally(shuttleOfPick(draft.pickKinds, draft.weft), picks, shuttles.length);
  const list = pickList(draft, draft.weft.length * 2, starts.sides);
  const longest = Math.max(0, ...list.map(({ carry }) => carry));
  const carry = { picks: longest, mm: longest * along };
  const floats = floatsOf(drawdown(draft), draft.sett);
  const settAdvice = settFor(draft, options);
  return {
    number,
    cloth,
    draft,
    pieces: options.pieces,
    learnt,
    shrinkage,
    woven,
    picks,
    shuttles: shuttles.map((shuttle, s) => ({
      ...shuttle,
      picks: thrown[s]!,
      side: starts.sides[s]!,
      weft: thrown[s]! * width * (1 + WEFT_EXTRA),
    })),
    starts,
    // The first repeat, with the carries of every later repeat.
    list: list
      .slice(0, draft.weft.length)
      .map((thrown, j) => ({ ...thrown, carry: list[j + draft.weft.length]!.carry })),
    carry,
    floats,
    ...(settAdvice !== undefined && { settAdvice }),
    tied: tiedUpOn(draft, options.loom),
    cautions: [
      ...settCautions(settAdvice, draft),
      ...floatCautions(floats, options, draft),
      ...turnCautions(floats, cloth, draft),
      ...carryCautions(carry.mm, draft),
      ...lengthCautions(picks, draft, shrinkage),
      ...shapeCautions(draft, cloth.draft.sett),
    ],
  };
}

function floatCautions(floats: Floats, options: PlanOptions, draft: Draft): string[] {
  const limit = FLOAT_LIMITS[options.purpose];
  const { per } = draft.sett;
  const { across, along } = spacing(draft.sett);
  if (floats.longestMm === null) return ['Some threads never interlace: this cloth needs more threads to hold it.'];
  if (floats.longestMm <= limit + 1e-6) return [];
  const what =
    options.purpose === 'general'
      ? 'general use'
      : options.purpose === 'baby'
        ? 'a baby’s things'
        : `a ${options.purpose}`;
  return [
    `Longest float ${sayLength(floats.longestMm, per)}: longer than the ${sayLength(limit, per)} usual for ${what}, ` +
      `${threadsWithin(limit, Math.max(across, along))} threads here.`,
  ];
}

/** Cautions about a repeat that was drawn square and will not be square at the planned sett. */
function shapeCautions({ warp, weft, sett }: Draft, drawn: Draft['sett']): string[] {
  const wanted = picksForSquare(warp.length, sett.ends, sett.picks);
  const isSquare = Math.abs(picksForSquare(warp.length, drawn.ends, drawn.picks) - weft.length) < 0.5;
  if (!isSquare || Math.abs(wanted - weft.length) < 1) return [];
  return [
    `At ${sett.picks} picks a repeat of ${warp.length} ends is square with ${wanted.toFixed(0)} picks; it has ${weft.length}: ` +
      `it comes out ${wanted < weft.length ? 'longer' : 'shorter'} than drawn.`,
  ];
}

/** Cautions about floats made longer by mirroring: a turn may make neighbours of threads that were none. */
function turnCautions({ longest, longestMm }: Floats, cloth: KeptCloth, draft: Draft): string[] {
  const before = floatsOf(drawdown(cloth.draft), draft.sett).longest;
  if (longest === null || longestMm === null || before === null || longest <= before) return [];
  return [
    `The turns lengthen the longest float from ${before} to ${longest} threads, ${sayLength(longestMm, draft.sett.per)}.`,
  ];
}

function carryCautions(mm: number, draft: Draft): string[] {
  const { per } = draft.sett;
  if (mm > CUT_FROM + 1e-6) return [`Carries up to ${sayLength(mm, per)}: cut and tuck in rather than carry.`];
  if (mm > CATCH_FROM + 1e-6) return [`Carries up to ${sayLength(mm, per)}: catch the waiting weft on the way.`];
  return [];
}

function lengthCautions(picks: number, draft: Draft, shrinkage: number): string[] {
  const repeat = draft.weft.length;
  if (picks >= repeat) return [];
  const whole = repeat * spacing(draft.sett).along * (1 - shrinkage);
  return [
    `A piece of ${picks} picks shows part of one repeat, which takes ${repeat}: ${sayLength(whole, draft.sett.per)} finished.`,
  ];
}
