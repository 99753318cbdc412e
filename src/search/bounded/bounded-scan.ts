import { values } from '../../colour/yarn.js';
import { isSquareSett, spacing } from '../../draft/draft.js';
import type { Order } from '../../order/order.js';
import { PARTS } from '../../score/parts/parts.js';
import { type PartsMost, PLACE } from '../evaluate/reach.js';
import { isBeyond } from '../evaluate/weave-limits.js';
import type { Question } from '../question/question.js';
import { type Orbits, orbitsOf } from '../space/orbit.js';
import { boundOf, MANY_PAIRS } from '../space/part-bounds.js';
import type { Stratum } from '../space/stratum.js';
import { type Ground, groundAt } from './bound-ground.js';
import { ExactLines } from './line-forms.js';
import { NicheBound } from './niche-bound.js';
import { type Form, pairForms, products, quadratic, toneForm } from './pair-form.js';
import type { Aim, Guessed, Passed, Scan, Visitor } from './scan.js';
import { ScoreBound } from './score-bound.js';
import { LaidSides, type SideOrders, shownAs } from './side-orders.js';
import { LONGEST_WORD, type SymmetryBound, symmetryBound, type Words, wordsOf } from './symmetry-bound.js';

/** Pairs of a block from which exact lines pay; where niches are asked for, many a pair passes the coarse bound. */
const PAIRS_FOR_LINES = 1_000_000;

/** What is computed once for all candidates of a block with one pair of starts. */
interface Prepared {
  readonly form: Form;
  readonly symmetry: SymmetryBound;
  /** For each warp order: s'As, and its coarse line bound. */
  readonly warpTone: Float64Array;
  readonly warpLine: Float64Array;
  /** The weft orders grouped by symmetry class, in the order in which the scan visits them. */
  readonly classes: readonly WeftClass[];
  readonly niches: NicheBound | undefined;
  readonly lines: ExactLines | undefined;
  /** The orders that are over a limit by themselves: 1 for such a warp order, the numbers of such weft orders. */
  readonly beyond: { readonly warp: Uint8Array; readonly wefts: readonly number[] };
}

/**
 * Weft orders of one symmetry class, and where niches are asked for of one niche under each warp order: numbers, bits, t'Bt and
 * coarse line bounds, and the largest of the last two.
 */
interface WeftClass {
  readonly symmetry: number;
  readonly weft: Int32Array;
  readonly bits: Int32Array;
  readonly tone: Float64Array;
  readonly line: Float64Array;
  readonly mostTone: number;
  readonly mostLine: number;
}

/** Receives a candidate that is not pruned, with T². */
type Visit = (warp: number, weft: number, start: number, place: number, toneSquared: number) => void;

/** How warp orders are gone through. */
interface Sweep {
  /** Whether a candidate may have line contrast; if not, what is needed must come of its tone. */
  readonly lines: boolean;
  readonly aim: Aim;
  readonly visit: Visit;
  readonly told: Pick<Visitor, 'pruned' | 'leastTone'>;
  readonly passed: Passed;
}

/**
 * Holds all pairs of orders of one block against their bounds, with a few additions a pair. T² is a number of the warp
 * order, plus a number of the weft order, plus a cross term that is the sum of two table entries: one for the lower and
 * one for the upper half of the weft order's bits. See BOUNDS.md.
 */
export class BoundedScan implements Scan {
  readonly stratum: Stratum;
  readonly orbits: Orbits;
  private readonly question: Question;
  private readonly bound: ScoreBound;
  private readonly warps: Words;
  private readonly wefts: Words;
  private readonly warpSpins: readonly Float64Array[];
  private readonly weftSpins: readonly Float64Array[];
  private readonly prepared: (Prepared | undefined)[];
  private readonly laid: LaidSides;
  private readonly most: PartsMost = new Float64Array(PARTS.length).fill(1);

  constructor(question: Question, stratum: Stratum, floatPart = 1, laid = new LaidSides(question)) {
    this.question = question;
    this.laid = laid;
    this.bound = new ScoreBound(question, floatPart);
    this.stratum = stratum;
    this.orbits = orbitsOf(question, stratum);
    this.warps = wordsOf(stratum.warps);
    this.wefts = wordsOf(stratum.wefts);
    this.warpSpins = spins(stratum.warps, tabbySpin(question));
    this.weftSpins = spins(stratum.wefts, tabbySpin(question));
    this.prepared = stratum.starts.map(() => undefined);
    this.most[PLACE.float] = floatPart;
  }

  scan(from: number, to: number, aim: Aim, visitor: Visitor): Passed {
    const { most } = this;
    const visit: Visit = (warp, weft, start, place) => {
      most[PLACE.symmetry] = this.symmetryAtMost(warp, weft, start);
      visitor.reached(warp, weft, start, () => ({ most: most.slice(), least: aim(place) }));
    };
    return this.each(from, to, { aim, lines: true, visit, told: visitor });
  }

  guess(from: number, to: number, aim: Aim, guessed: Guessed): void {
    const visit: Visit = (warp, weft, start, place, toneSquared) =>
      guessed(warp, weft, start, place, this.bound.of(toneSquared, this.symmetryAtMost(warp, weft, start)));
    this.each(from, to, { aim, lines: false, visit, told: {} });
  }

  private each(from: number, to: number, asked: Omit<Sweep, 'passed'>): Passed {
    const passed = { pruned: 0, limits: 0 };
    const sweep: Sweep = { ...asked, passed };
    for (let start = 0; start < this.stratum.starts.length; start++) {
      const prepared = this.prepare(start);
      for (let warp = from; warp < to; warp++) this.scanWarp(prepared, [warp, start], sweep);
      // The forms of the weft orders are many and serve one start only: keeping them costs more than it saves.
      prepared.lines?.forget();
    }
    return passed;
  }

  /** Upper bound of the symmetry of one candidate. */
  symmetryAtMost(warp: number, weft: number, start: number): number {
    const { most, warpClass, weftClass, weftClasses } = this.prepare(start).symmetry;
    return most[warpClass[warp]! * weftClasses + weftClass[weft]!]!;
  }

  private scanWarp(
    p: Prepared,
    [warp, start]: readonly [number, number],
    { lines, aim, visit, told: { pruned: tell, leastTone = Number.NEGATIVE_INFINITY }, passed }: Sweep,
  ): void {
    const standing = this.orbits.ofWarp(warp);
    if (standing === 'none') return;
    const counts = (weft: number): boolean => standing === 'all' || this.orbits.stands(warp, weft, start);
    if (p.beyond.warp[warp] === 1) {
      for (let weft = 0; weft < this.stratum.wefts.length; weft++) if (counts(weft)) passed.limits++;
      return;
    }
    for (const weft of p.beyond.wefts) if (counts(weft)) passed.limits++;
    const { symmetry, niches } = p;
    const { low, high, half, most } = this.crossTables(p.form, warp);
    const own = p.warpTone[warp]!;
    const line = lines ? p.warpLine[warp]! : 0;
    const mask = (1 << half) - 1;
    let pruned = 0;
    p.classes.forEach((wefts) => {
      const symmetryMost = symmetry.most[symmetry.warpClass[warp]! * symmetry.weftClasses + wefts.symmetry]!;
      const place = niches?.place(warp, wefts.weft[0]!, symmetryMost, aim) ?? 0;
      const enough = this.bound.needed(aim(place), symmetryMost);
      const { weft, bits, tone, line: lineOf } = wefts;
      // Most classes are pruned as a whole.
      const mostTone = own + wefts.mostTone + most;
      const falls = mostTone + (lines ? (line + wefts.mostLine) ** 2 : 0) < enough;
      if (falls && standing === 'all' && (tell === undefined || mostTone < leastTone)) {
        pruned += weft.length;
        return;
      }
      for (let k = 0; k < weft.length; k++) {
        const word = bits[k]!;
        const toneSquared = own + tone[k]! + low[word & mask]! + high[word >>> half]!;
        const both = lines ? line + lineOf[k]! : 0;
        if (toneSquared + both * both < enough) {
          if (!counts(weft[k]!)) continue;
          pruned++;
          if (tell !== undefined && toneSquared >= leastTone) tell(warp, weft[k]!, start, toneSquared);
        } else if (counts(weft[k]!)) {
          if (lines && p.lines && !reaches(p.lines, warp, weft[k]!, lineOf[k]!, enough - toneSquared)) pruned++;
          else visit(warp, weft[k]!, start, place, toneSquared);
        }
      }
    });
    passed.pruned += pruned;
  }

  /**
   * 2s'Ct for one warp order: tables by the lower and the upper half of the weft order's bits, and its largest value.
   */
  private crossTables(form: Form, warp: number): { low: Float64Array; high: Float64Array; half: number; most: number } {
    const m = this.wefts.length;
    const half = m >> 1;
    const spin = this.warpSpins[warp]!;
    const weight = new Float64Array(form.m);
    for (let e = 0; e < form.n; e++) {
      for (let d = 0; d < form.m; d++) weight[d] = weight[d]! + 2 * spin[e]! * form.C[e * form.m + d]!;
    }
    const tabby = weight[m]! * tabbySpin(this.question);
    let most = tabby;
    for (let d = 0; d < m; d++) most += Math.abs(weight[d]!);
    return { low: sumTable(weight, 0, half, tabby), high: sumTable(weight, half, m, 0), half, most };
  }

  private prepare(start: number): Prepared {
    const known = this.prepared[start];
    if (known) return known;
    const { stratum, question } = this;
    const { across, along } = spacing(question.sett);
    const { family } = stratum;
    const [a, b] = stratum.starts[start]!;
    const ground = groundAt(family, this.warps.length, this.wefts.length, [a, b]);
    const form = toneForm(ground, across / along);
    const symmetry = symmetryBound(ground, this.warps, this.wefts, isSquareSett(question.sett));
    const { warpSpins, weftSpins } = this;
    const warps = this.laid.warps({ family, list: stratum.warps, start: a }, ground);
    const wefts = this.laid.wefts({ family, list: stratum.wefts, start: b }, ground);
    const weftBeyond = Array.from(wefts.repeat, (repeat, at) =>
      isBeyond(question, repeat, { warpChanges: 0, weftChanges: wefts.changes[at]!, shuttles: wefts.shuttles[at]! }),
    );
    const palette = values(question.yarns);
    const paysLines = question.oneOfEachKind || stratum.warps.length * stratum.wefts.length >= PAIRS_FOR_LINES;
    const means = question.oneOfEachKind ? meansOn(ground, warps, wefts, palette) : undefined;
    const prepared: Prepared = {
      niches: means && new NicheBound(question, { warps, wefts, ...means }),
      lines: paysLines ? new ExactLines(ground, warps, wefts, across / along, palette) : undefined,
      form,
      symmetry,
      warpTone: Float64Array.from(warpSpins, (s) => quadratic(form.A, s.subarray(0, form.n))),
      warpLine: warps.lines,
      classes: weftClasses(
        symmetry,
        (weft) => (means ? `${wefts.repeats!.sign(weft)} ${Math.round(means.weftMean[weft]! * 1e10)}` : ''),
        this.wefts.bits,
        Float64Array.from(weftSpins, (t) => quadratic(form.B, t)),
        wefts.lines,
        weftBeyond,
      ),
      beyond: {
        warp: Uint8Array.from(warps.repeat, (repeat, at) =>
          isBeyond(question, repeat, { warpChanges: warps.changes[at]!, weftChanges: 0, shuttles: 1 }) ? 1 : 0,
        ),
        wefts: weftBeyond.flatMap((beyond, weft) => (beyond ? [weft] : [])),
      },
    };
    this.prepared[start] = prepared;
    return prepared;
  }
}

/** What each order of both sides brings to the mean of a face. */
function meansOn(ground: Ground, warps: SideOrders, wefts: SideOrders, palette: Float64Array) {
  const { mean } = pairForms(ground);
  return {
    warpMean: products(mean.warp, shownAs(warps, palette)),
    weftMean: products(mean.weft, shownAs(wefts, palette)),
  };
}

/**
 * Whether line contrast can supply the missing M². First replaces the warp's coarse line bound by the exact part, then the
 * weft's.
 */
function reaches(lines: ExactLines, warp: number, weft: number, line: number, missing: number): boolean {
  if (missing <= 0) return true;
  const upright = lines.ofUpright(warp, weft);
  if ((upright + line) ** 2 < missing) return false;
  return (upright + lines.ofLevel(warp, weft)) ** 2 + 1e-9 >= missing;
}

/**
 * Whether a block is scanned by tables: two yarns, weft orders of their own, a ranking of contrast, symmetry and float
 * alone, and so many pairs that the tables pay.
 */
export function isTabled({ yarns, rank }: Question, { family, warps, wefts }: Stratum): boolean {
  return (
    yarns.length === 2 &&
    family.laid(warps[0]!, 'ends', family.weave([0], [0])) === warps[0] &&
    boundOf(rank) === 'tables' &&
    warps.length * wefts.length >= MANY_PAIRS &&
    Math.max(warps[0]!.length, wefts[0]!.length) <= LONGEST_WORD
  );
}

function tabbySpin(question: Question): number {
  return question.tabby === 1 ? 1 : -1;
}

const spinsOf = new WeakMap<readonly Order[], Map<number, readonly Float64Array[]>>();

/** Each order as ±1 an element, with the tabby's colour last; made once for all blocks that share the list. */
function spins(orders: readonly Order[], tabby: number): readonly Float64Array[] {
  const known = spinsOf.get(orders) ?? new Map<number, readonly Float64Array[]>();
  spinsOf.set(orders, known);
  const made =
    known.get(tabby) ??
    orders.map((order) => Float64Array.from([...order.map((colour) => (colour === 1 ? 1 : -1)), tabby]));
  known.set(tabby, made);
  return made;
}

/** Sums of ±weight[from … to) for every choice of signs: bit e of the index is 1 for a plus at `from` + e. */
function sumTable(weight: Float64Array, from: number, to: number, constant: number): Float64Array {
  const size = 1 << (to - from);
  const sums = new Float64Array(size);
  let all = constant;
  for (let d = from; d < to; d++) all -= weight[d]!;
  sums[0] = all;
  for (let index = 1; index < size; index++) {
    const lowest = index & -index;
    sums[index] = sums[index ^ lowest]! + 2 * weight[from + 31 - Math.clz32(lowest)]!;
  }
  return sums;
}

/** Groups weft orders by the class of their symmetry, and by a sign. */
function weftClasses(
  { weftClass }: SymmetryBound,
  signOf: (weft: number) => string,
  bits: Int32Array,
  tone: Float64Array,
  line: Float64Array,
  beyond: readonly boolean[],
): WeftClass[] {
  const members = new Map<string, number[]>();
  weftClass.forEach((c, weft) => {
    if (beyond[weft]) return;
    const name = `${c} ${signOf(weft)}`;
    const known = members.get(name);
    if (known) known.push(weft);
    else members.set(name, [weft]);
  });
  return [...members.values()].map((wefts) => ({
    symmetry: weftClass[wefts[0]!]!,
    weft: Int32Array.from(wefts),
    bits: Int32Array.from(wefts, (weft) => bits[weft]!),
    tone: Float64Array.from(wefts, (weft) => tone[weft]!),
    line: Float64Array.from(wefts, (weft) => line[weft]!),
    mostTone: wefts.reduce((most, weft) => Math.max(most, tone[weft]!), Number.NEGATIVE_INFINITY),
    mostLine: wefts.reduce((most, weft) => Math.max(most, line[weft]!), 0),
  }));
}
