import { spacing } from '../../draft/draft.js';
import type { KeptCloth } from '../../formats/shortlist.js';
import { Problem } from '../../problem.js';
import { clothDistance, type Descriptor, descriptorOf } from '../../score/likeness/descriptor.js';
import { fixed, INCH } from '../../words/measure.js';
import type { PlanOptions } from '../options/plan-options.js';
import { planWarps, type WarpPlan } from '../piece/warp-plan.js';
import { type Loom, obstacles } from '../warp/warp-loom.js';

/** A weaver with the loom that the variation has to fit. */
export interface Weaver {
  readonly name: string;
  /** Of their warp, where it is not that of the others. */
  readonly width?: number;
  readonly loom: Loom;
}

/** What one weaver gets. */
export interface Share {
  readonly weaver: Weaver;
  readonly cloth: KeptCloth;
  /** How unlike the nearest other share is, 0 to 1; 1 where there is none. */
  readonly apart: number;
}

/** A deal: a share for each weaver, in their order, and variations in hand for drop-outs. */
export interface Deal {
  readonly shares: readonly Share[];
  readonly spares: readonly {
    readonly cloth: KeptCloth;
    readonly apart: number;
    readonly weavers: readonly string[];
  }[];
  /** Weavers whose cloths are nearly alike, and how unlike they are; the likest first. */
  readonly alike: readonly { readonly weavers: readonly [string, string]; readonly apart: number }[];
  /** Why a cloth cannot go to a weaver, for those that were not dealt to them. */
  readonly refused: readonly { readonly weaver: string; readonly code: string; readonly why: readonly string[] }[];
}

/** Two cloths that are less unlike than this are nearly alike to the eye (a choice of ours). */
const ALIKE = 0.2;
/** Variations in hand, at most. */
const SPARES = 3;

/** Loom letters for weavers who are only counted: A, B, … Z, AA, AB, … */
export function weaverLetters(count: number): string[] {
  return Array.from({ length: count }, (_, w) => {
    const last = String.fromCharCode(65 + (w % 26));
    return w < 26 ? last : String.fromCharCode(64 + Math.floor(w / 26)) + last;
  });
}

/** What is asked of a weaver's warp. */
export function needsFor({ width, loom }: Weaver, options: PlanOptions): PlanOptions {
  return { ...options, loom, ...(width !== undefined && { width }) };
}

/** One warp for one cloth, as it would be on a weaver's loom. */
export function warpFor(cloth: KeptCloth, options: PlanOptions, loom: Loom): WarpPlan {
  return planWarps([cloth], {
    ...options,
    loom,
    ...(loom.width !== undefined && { width: Math.min(options.width, loom.width) }),
  })[0]!;
}

/**
 * The widest warp of whole repeats of a cloth that fits a loom; undefined where not even one repeat does, or where it
 * is not the width that stands in the way.
 */
export function narrower(cloth: KeptCloth, options: PlanOptions, loom: Loom): WarpPlan | undefined {
  const whole = warpFor(cloth, options, loom);
  const { across } = spacing(whole.pieces[0]!.draft.sett);
  const around = whole.balance + 2 * whole.border;
  const of = (repeats: number): WarpPlan =>
    warpFor(cloth, { ...options, width: (repeats * whole.repeat + around) * across }, loom);
  // A narrower warp asks for no more of anything: between one that fits and one that does not lies the widest.
  let [fitting, tooWide] = [0, whole.repeats];
  let widest: WarpPlan | undefined;
  while (tooWide - fitting > 1) {
    const middle = fitting === 0 ? 1 : Math.floor((fitting + tooWide) / 2);
    const warp = of(middle);
    if (hindrances(warp, loom).length === 0) [fitting, widest] = [middle, warp];
    else if (middle === 1) return undefined;
    else tooWide = middle;
  }
  return widest;
}

/**
 * Deals a different cloth to each weaver, as unlike one another as can be: in turn the cloth that is farthest from all
 * that were dealt goes to a weaver whose loom it fits, as long as every other weaver can still be served. The first is
 * the first of the shortlist that fits. The same shortlist and weavers give the same deal.
 *
 * @throws Problem where there are too few cloths, or looms that too few of them fit
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

/** Index of the cloth of each weaver. Every step leaves a full matching for those who still wait. */
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

/** The weaver with the fewest other choices who can take a cloth while all others are still served. */
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

/** A cloth for every weaver, each once (augmenting paths); undefined where there is none. */
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

/** Distance of two cloths by their places in the shortlist. */
type Distances = (a: number, b: number) => number;

/** Distances, each reckoned once and only when asked for. */
function distances(portraits: readonly Descriptor[]): Distances {
  const known = new Map<number, number>();
  return (a, b) => {
    const key = Math.min(a, b) * portraits.length + Math.max(a, b);
    const distance = known.get(key) ?? clothDistance(portraits[Math.min(a, b)]!, portraits[Math.max(a, b)]!);
    known.set(key, distance);
    return distance;
  };
}

/** The cloth farthest from all in hand, of equals the first of the shortlist; −1 where none may be taken. */
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

/** What keeps each cloth from each weaver; found once for weavers of one loom and width. */
function hindrancesOf(weavers: readonly Weaver[], kept: readonly KeptCloth[], options: PlanOptions): string[][][] {
  const known = new Map<string, string[][]>();
  return weavers.map((weaver) => {
    const { width, loom } = weaver;
    const key = JSON.stringify([width, loom]);
    const asked = needsFor(weaver, options);
    const found = known.get(key) ?? kept.map((cloth) => hindrances(warpFor(cloth, asked, loom), loom));
    known.set(key, found);
    return found;
  });
}

function hindrances(warp: WarpPlan, loom: Loom): string[] {
  const { draft, shuttles } = warp.pieces[0]!;
  return obstacles(
    { draft, heddles: warp.heddles, width: warp.widthInReed, shuttles: shuttles.length },
    loom,
    warp.per,
  );
}

/** Who cannot be served, with what stands in the way. */
function tooFew(
  weavers: readonly Weaver[],
  fits: readonly (readonly boolean[])[],
  kept: readonly KeptCloth[],
  options: PlanOptions,
  why: readonly (readonly string[][])[],
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

/** What would make a cloth fit a loom, as the weavers' file has it. */
function narrowerInWords(name: string, { code }: KeptCloth, { ends, per, pieces }: WarpPlan): string {
  const width = ends.length * spacing(pieces[0]!.draft.sett).across;
  const said = per === 'inch' ? `${fixed(width / INCH, 3)} in` : `${fixed(width / 10, 2)} cm`;
  return `${code} would fit on ${ends.length} ends: give ${name} the width ${said}`;
}
