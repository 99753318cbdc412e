import { spacing } from '../../draft/draft.js';
import type { KeptCloth } from '../../formats/shortlist.js';
import { Problem } from '../../problem.js';
import { clothDistance, type Descriptor, descriptorOf } from '../../score/likeness/descriptor.js';
import type { Loom } from '../../structure/loom/loom-fit.js';
import { fixed, INCH } from '../../words/measure.js';
import type { PlanOptions } from '../options/plan-options.js';
import { planWarps, type WarpPlan } from '../piece/warp-plan.js';

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
 * Deals a different cloth to each weaver, by farthest-first traversal: each step takes the cloth farthest from all
 * cloths already dealt, and gives it to a weaver whose loom it fits, provided every other weaver can still be served.
 * The first cloth dealt is the first of the shortlist that fits. The same shortlist and weavers give the same deal.
 *
 * @throws Problem if there are too few cloths, or too few that fit the looms
 */
export function dealOut(kept: readonly KeptCloth[], weavers: readonly Weaver[], options: PlanOptions): Deal {
  if (weavers.length === 0) throw new Problem('found no weavers; expected at least one');
  if (kept.length < weavers.length) {
    throw new Problem(`found ${kept.length} cloths for ${weavers.length} weavers; expected at least one each`);
  }
  const why = hindrancesOf(weavers, kept, options);
  const fits = why.map((row) => row.map((reasons) => reasons.length === 0));
  const matching = matchAll(fits, kept.length);
  if (matching === undefined) throw new Problem(tooFew(weavers, fits, kept, options, why));
  const apart = distances(kept.map(({ draft }) => descriptorOf(draft)));
  const dealt = farthestFirst(fits, apart);
  const taken = new Set(dealt);
  const shares = weavers.map((weaver, w): Share => {
    const others = dealt.filter((_, other) => other !== w);
    return { weaver, cloth: kept[dealt[w]!]!, apart: nearest(dealt[w]!, others, apart) };
  });
  const spares: number[] = [];
  while (spares.length < SPARES && taken.size < kept.length) {
    const inHand = [...dealt, ...spares];
    const next = farthest(kept.length, inHand, apart, (c) => !taken.has(c) && fits.some((row) => row[c]!));
    if (next < 0) break;
    spares.push(next);
    taken.add(next);
  }
  return {
    shares,
    spares: spares.map((c) => ({
      cloth: kept[c]!,
      apart: nearest(c, [...dealt, ...spares.filter((other) => other !== c)], apart),
      weavers: weavers.filter((_, w) => fits[w]![c]).map(({ name }) => name),
    })),
    alike: alikeOf(weavers, dealt, apart),
    refused: weavers.flatMap(({ name }, w) =>
      kept.flatMap(({ code }, c) => (fits[w]![c] ? [] : [{ weaver: name, code, why: why[w]![c]! }])),
    ),
  };
}

function alikeOf(weavers: readonly Weaver[], dealt: readonly number[], apart: Distances): Deal['alike'] {
  return weavers
    .flatMap(({ name }, w) =>
      weavers.slice(w + 1).map((other, after) => ({
        weavers: [name, other.name] as const,
        apart: apart(dealt[w]!, dealt[w + 1 + after]!),
      })),
    )
    .filter((pair) => pair.apart < ALIKE)
    .sort((a, b) => a.apart - b.apart);
}

/** Index of each weaver's cloth. After every step a full matching exists for the weavers who still wait. */
function farthestFirst(fits: readonly (readonly boolean[])[], apart: Distances): number[] {
  const cloths = fits[0]!.length;
  const dealt = new Map<number, number>();
  const open = fits.map((row) => [...row]);
  const taken: number[] = [];
  while (dealt.size < fits.length) {
    const tried = new Set<number>();
    for (;;) {
      const cloth = farthest(cloths, taken, apart, (c) => !taken.includes(c) && !tried.has(c));
      if (cloth < 0) throw new Error(`no cloth is left for ${fits.length - dealt.size} weavers who can all be served`);
      tried.add(cloth);
      const weaver = takerOf(cloth, open, dealt, cloths);
      if (weaver === undefined) continue;
      dealt.set(weaver, cloth);
      taken.push(cloth);
      open.forEach((row, w) => {
        row[cloth] = w === weaver;
        if (w === weaver) open[w] = row.map((_, c) => c === cloth);
      });
      break;
    }
  }
  return fits.map((_, w) => dealt.get(w)!);
}

/** Of the weavers who can take a cloth while all others can still be served, the one with the fewest other choices. */
function takerOf(
  cloth: number,
  open: readonly (readonly boolean[])[],
  dealt: ReadonlyMap<number, number>,
  cloths: number,
): number | undefined {
  const choices = (w: number): number => open[w]!.filter(Boolean).length;
  const able = open
    .flatMap((row, w) => (row[cloth] && !dealt.has(w) ? [w] : []))
    .sort((a, b) => choices(a) - choices(b) || a - b);
  return able.find((weaver) => {
    const then = open.map((row, w) => row.map((fits, c) => (w === weaver ? c === cloth : c !== cloth && fits)));
    return matchAll(then, cloths) !== undefined;
  });
}

/** A different cloth for every weaver (bipartite matching by augmenting paths); undefined if there is none. */
function matchAll(fits: readonly (readonly boolean[])[], cloths: number): number[] | undefined {
  const weaverOf = new Array<number>(cloths).fill(-1);
  const place = (w: number, seen: Set<number>): boolean => {
    for (let c = 0; c < cloths; c++) {
      if (!fits[w]![c] || seen.has(c)) continue;
      seen.add(c);
      if (weaverOf[c]! < 0 || place(weaverOf[c]!, seen)) {
        weaverOf[c] = w;
        return true;
      }
    }
    return false;
  };
  return fits.every((_, w) => place(w, new Set())) ? weaverOf : undefined;
}

/** Distance of two cloths, given by their indices in the shortlist. */
type Distances = (a: number, b: number) => number;

/** Distances, computed on demand and remembered. */
function distances(portraits: readonly Descriptor[]): Distances {
  const known = new Map<number, number>();
  return (a, b) => {
    const key = Math.min(a, b) * portraits.length + Math.max(a, b);
    const distance = known.get(key) ?? clothDistance(portraits[Math.min(a, b)]!, portraits[Math.max(a, b)]!);
    known.set(key, distance);
    return distance;
  };
}

/**
 * The allowed cloth farthest from all cloths already dealt; ties go to the first of the shortlist; −1 if none is
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
  return Math.min(1, ...others.map((other) => apart(cloth, other)));
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
function tooFew(
  weavers: readonly Weaver[],
  fits: readonly (readonly boolean[])[],
  kept: readonly KeptCloth[],
  options: PlanOptions,
  why: readonly (readonly Reasons[])[],
): string {
  const empty = fits.findIndex((row) => !row.some(Boolean));
  if (empty >= 0) {
    const { name, loom } = weavers[empty]!;
    const asked = needsFor(weavers[empty]!, options);
    const said = kept.reduce((before, cloth) => {
      const warp = before === '' ? narrower(cloth, asked, loom) : undefined;
      return warp === undefined ? before : `; ${narrowerInWords(name, cloth, warp)}`;
    }, '');
    return `weaver ${name}: found no cloth of ${kept.length} that fits the loom (the first ${why[empty]![0]!.join(', ')})${said}`;
  }
  const scarce = weavers.map(({ name }, w) => `${name} ${fits[w]!.filter(Boolean).length}`).join(', ');
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
