import { spacing } from '../../draft/draft.js';
import type { KeptCloth } from '../../formats/shortlist.js';
import { Problem } from '../../problem.js';
import { clothDistance, type Descriptor, descriptorOf } from '../../score/likeness/descriptor.js';
import type { Loom } from '../../structure/loom/loom-fit.js';
import { fixed, INCH } from '../../words/measure.js';
import type { PlanOptions } from '../options/plan-options.js';
import { planWarps, type WarpPlan } from '../piece/warp-plan.js';
import { mostUnlikeDeal } from './unlike.js';

/** A weaver, and the loom that the weaver's cloth must fit. */
export interface Weaver {
  readonly name: string;
  /** Width of this weaver's warp in millimetres, if it differs from the width in the plan's options. */
  readonly width?: number;
  readonly loom: Loom;
}

/** The cloth that one weaver gets. */
export interface Share {
  readonly weaver: Weaver;
  readonly cloth: KeptCloth;
  /** Distance to the nearest other share, 0 to 1; 1 if there is no other. */
  readonly apart: number;
}

/** A deal: a share for each weaver, in the order of the weavers, and spare cloths for drop-outs. */
export interface Deal {
  readonly shares: readonly Share[];
  /** Least distance of any two shares, and the greatest that any deal could have, as far as is known. */
  readonly least: number;
  readonly atMost: number;
  readonly spares: readonly {
    readonly cloth: KeptCloth;
    readonly apart: number;
    readonly weavers: readonly string[];
  }[];
  /** Pairs of weavers whose cloths are nearly alike, and the distance of the cloths; the nearest first. */
  readonly alike: readonly { readonly weavers: readonly [string, string]; readonly apart: number }[];
  /** Cloths that a weaver cannot take, and the reasons. */
  readonly refused: readonly { readonly weaver: string; readonly code: string; readonly why: readonly string[] }[];
}

/** Distance below which two cloths are nearly alike to the eye (a choice of ours). */
const ALIKE = 0.2;
/** Most spare cloths. */
const SPARES = 3;

/** Letters for weavers without names: A, B, … Z, AA, AB, … */
export function weaverLetters(count: number): string[] {
  return Array.from({ length: count }, (_, w) => {
    const last = String.fromCharCode(65 + (w % 26));
    return w < 26 ? last : String.fromCharCode(64 + Math.floor(w / 26)) + last;
  });
}

/** The plan's options with one weaver's loom and width. */
export function needsFor({ width, loom }: Weaver, options: PlanOptions): PlanOptions {
  return { ...options, loom, ...(width !== undefined && { width }) };
}

/** Plans a warp for one cloth on one loom. */
export function warpFor(cloth: KeptCloth, options: PlanOptions, loom: Loom): WarpPlan {
  return planWarps([cloth], {
    ...options,
    loom,
    ...(loom.width !== undefined && { width: Math.min(options.width, loom.width) }),
  })[0]!;
}

/**
 * The widest warp, in whole repeats of a cloth, that fits a loom; undefined if not even one repeat fits, or if
 * something other than the width is the obstacle.
 */
export function narrower(cloth: KeptCloth, options: PlanOptions, loom: Loom): WarpPlan | undefined {
  const whole = warpFor(cloth, options, loom);
  const { across } = spacing(whole.pieces[0]!.draft.sett);
  const around = whole.balance + 2 * whole.border;
  const of = (repeats: number): WarpPlan =>
    warpFor(cloth, { ...options, width: (repeats * whole.repeat + around) * across }, loom);
  // A narrower warp never needs more of anything, so bisection finds the widest that fits.
  let [fitting, tooWide] = [0, whole.repeats];
  let widest: WarpPlan | undefined;
  while (tooWide - fitting > 1) {
    const middle = fitting === 0 ? 1 : Math.floor((fitting + tooWide) / 2);
    const warp = of(middle);
    if (warp.faults.length === 0) [fitting, widest] = [middle, warp];
    else if (middle === 1) return undefined;
    else tooWide = middle;
  }
  return widest;
}

/**
 * Deals a different cloth to each weaver so that the two that are most alike are as unlike as can be, each within its
 * loom. The same cloths and weavers give the same deal, in whatever order the shortlist has them.
 *
 * @throws Problem if there are too few cloths, or too few that fit the looms
 */
export function dealOut(kept: readonly KeptCloth[], weavers: readonly Weaver[], options: PlanOptions): Deal {
  if (weavers.length === 0) throw new Problem('found no weavers; expected at least one');
  if (kept.length < weavers.length) {
    throw new Problem(`found ${kept.length} cloths for ${weavers.length} weavers; expected at least one each`);
  }
  const cloths = kept.toSorted((a, b) => (a.code < b.code ? -1 : a.code > b.code ? 1 : 0));
  const why = hindrancesOf(weavers, cloths, options);
  const fits = why.map((row) => row.map((reasons) => reasons.length === 0));
  const apart = distances(cloths.map(({ draft }) => descriptorOf(draft)));
  const choice = mostUnlikeDeal(fits, apart);
  if (choice === undefined) throw new Problem(tooFew(weavers, kept, options));
  const { dealt } = choice;
  const taken = new Set(dealt);
  const shares = weavers.map((weaver, w): Share => {
    const others = dealt.filter((_, other) => other !== w);
    return { weaver, cloth: cloths[dealt[w]!]!, apart: nearest(dealt[w]!, others, apart) };
  });
  const spares: number[] = [];
  while (spares.length < SPARES && taken.size < cloths.length) {
    const inHand = [...dealt, ...spares];
    const next = farthest(cloths.length, inHand, apart, (c) => !taken.has(c) && fits.some((row) => row[c]!));
    if (next < 0) break;
    spares.push(next);
    taken.add(next);
  }
  return {
    shares,
    least: choice.least,
    atMost: choice.atMost,
    spares: spares.map((c) => ({
      cloth: cloths[c]!,
      apart: nearest(c, [...dealt, ...spares.filter((other) => other !== c)], apart),
      weavers: weavers.filter((_, w) => fits[w]![c]).map(({ name }) => name),
    })),
    alike: alikeOf(weavers, dealt, apart),
    refused: weavers.flatMap(({ name }, w) =>
      cloths.flatMap(({ code }, c) => (fits[w]![c] ? [] : [{ weaver: name, code, why: why[w]![c]! }])),
    ),
  };
}

function alikeOf(weavers: readonly Weaver[], dealt: readonly number[], apart: Distances): Deal['alike'] {
  return weavers
    .flatMap(({ name }, w) =>
      weavers.slice(w + 1).map((other, after) => ({
        weavers: [name, other.name] as const,
        apart: apart[dealt[w]!]![dealt[w + 1 + after]!]!,
      })),
    )
    .filter((pair) => pair.apart < ALIKE)
    .sort((a, b) => a.apart - b.apart);
}

/** Distances of all pairs of cloths. */
type Distances = readonly (readonly number[])[];

function distances(portraits: readonly Descriptor[]): Distances {
  const apart = portraits.map(() => new Array<number>(portraits.length).fill(0));
  portraits.forEach((one, a) => {
    for (let b = a + 1; b < portraits.length; b++) {
      apart[a]![b] = clothDistance(one, portraits[b]!);
      apart[b]![a] = apart[a]![b]!;
    }
  });
  return apart;
}

/**
 * The allowed cloth farthest from all cloths already dealt; ties go to the first by code; −1 if none is
 * allowed.
 */
function farthest(
  cloths: number,
  inHand: readonly number[],
  apart: Distances,
  may: (cloth: number) => boolean,
): number {
  let best = -1;
  let most = -1;
  for (let c = 0; c < cloths; c++) {
    if (!may(c)) continue;
    const distance = nearest(c, inHand, apart);
    if (distance > most) [best, most] = [c, distance];
  }
  return best;
}

function nearest(cloth: number, others: readonly number[], apart: Distances): number {
  return Math.min(1, ...others.map((other) => apart[cloth]![other]!));
}

/** Why a weaver cannot take a cloth; empty if the weaver can. */
type Reasons = readonly string[];

/** The reasons why each weaver cannot take each cloth, computed once for weavers with the same loom and width. */
function hindrancesOf(weavers: readonly Weaver[], kept: readonly KeptCloth[], options: PlanOptions): Reasons[][] {
  const known = new Map<string, Reasons[]>();
  return weavers.map((weaver) => {
    const { width, loom } = weaver;
    const key = JSON.stringify([width, loom]);
    const asked = needsFor(weaver, options);
    const found = known.get(key) ?? kept.map((cloth) => warpFor(cloth, asked, loom).faults);
    known.set(key, found);
    return found;
  });
}

/** The message that some weaver cannot be served, with the reasons. */
function tooFew(weavers: readonly Weaver[], kept: readonly KeptCloth[], options: PlanOptions): string {
  const why = hindrancesOf(weavers, kept, options);
  const fitting = why.map((row) => row.filter((reasons) => reasons.length === 0).length);
  const empty = fitting.indexOf(0);
  if (empty >= 0) {
    const { name, loom } = weavers[empty]!;
    const asked = needsFor(weavers[empty]!, options);
    const said = kept.reduce((before, cloth) => {
      const warp = before === '' ? narrower(cloth, asked, loom) : undefined;
      return warp === undefined ? before : `; ${narrowerInWords(name, cloth, warp)}`;
    }, '');
    return `weaver ${name}: found no cloth of ${kept.length} that fits the loom (the first ${why[empty]![0]!.join(', ')})${said}`;
  }
  const scarce = weavers.map(({ name }, w) => `${name} ${fitting[w]}`).join(', ');
  return `found too few cloths that fit the looms for each weaver to have one of their own (that fit: ${scarce})`;
}

/** Says on how many ends a cloth would fit a loom, and how to write that in the weavers' file. */
function narrowerInWords(name: string, { code }: KeptCloth, warp: WarpPlan): string {
  return `${code} would fit on ${warp.ends.length} ends: give ${name} the width ${widthWords(warp)}`;
}

/** The width of a warp's ends as a person writes it: `17 in`, `43.5 cm`. */
export function widthWords({ ends, per, pieces }: WarpPlan): string {
  const width = ends.length * spacing(pieces[0]!.draft.sett).across;
  return per === 'inch' ? `${fixed(width / INCH, 3)} in` : `${fixed(width / 10, 2)} cm`;
}
