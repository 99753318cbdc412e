import { isSquareSett, spacing } from '../../draft/draft.js';
import type { Order } from '../../order/order.js';
import { smallestPeriod } from '../../order/order.js';
import type { Question } from '../question/question.js';
import { type Orbits, orbitsOf } from '../space/orbit.js';
import type { Stratum } from '../space/stratum.js';
import { groundAt } from './bound-ground.js';
import { lineBounds } from './line-bound.js';
import { type LineForm, type LineForms, lineDeviation, lineForms } from './line-forms.js';
import { type SymmetryBound, symmetryBound, type Words } from './symmetry-bound.js';
import { type Form, quadratic, toneForm } from './tone-form.js';

/** What is computed once for all candidates of a block with one pair of starts. */
interface Prepared {
  readonly form: Form;
  readonly symmetry: SymmetryBound;
  readonly lines: LineForms;
  /** For each warp order: s'As, and its coarse line bound. */
  readonly warpTone: Float64Array;
  readonly warpLine: Float64Array;
  /** The weft orders grouped by symmetry class, in the order in which the scan visits them. */
  readonly classes: readonly WeftClass[];
}

/** Weft orders of one symmetry class: numbers, bits, t'Bt and coarse line bounds, and the largest of the last two. */
interface WeftClass {
  readonly weft: Int32Array;
  readonly bits: Int32Array;
  readonly tone: Float64Array;
  readonly line: Float64Array;
  readonly mostTone: number;
  readonly mostLine: number;
}

/** Receives a candidate that is not pruned: warp, weft and start by their numbers in the block, and T². */
type Visit = (warp: number, weft: number, start: number, toneSquared: number) => void;

/**
 * Holds all pairs of orders of one block against their bounds, with a few additions a pair. T² is a number of the warp
 * order, plus a number of the weft order, plus a cross term that is the sum of two table entries: one for the lower and
 * one for the upper half of the weft order's bits. See BOUNDS.md.
 */
export class BoundedScan {
  readonly stratum: Stratum;
  readonly orbits: Orbits;
  private readonly question: Question;
  private readonly warps: Words;
  private readonly wefts: Words;
  private readonly warpSpins: readonly Float64Array[];
  private readonly weftSpins: readonly Float64Array[];
  private readonly prepared: (Prepared | undefined)[];
  /** Line form of the current warp order, and line forms of the weft orders at the current start. */
  private upright: { start: number; warp: number; form: LineForm } | undefined;
  private level: { start: number; forms: (LineForm | undefined)[] } | undefined;

  constructor(question: Question, stratum: Stratum) {
    this.question = question;
    this.stratum = stratum;
    this.orbits = orbitsOf(question, stratum);
    this.warps = wordsOf(stratum.warps);
    this.wefts = wordsOf(stratum.wefts);
    this.warpSpins = spins(stratum.warps, tabbySpin(question));
    this.weftSpins = spins(stratum.wefts, tabbySpin(question));
    this.prepared = stratum.starts.map(() => undefined);
  }

  /**
   * Visits the candidates with warp orders `from` to before `to` that represent their orbit and are not pruned.
   * `needed` gives the least M² that a candidate of some symmetry must have (∞: none is enough).
   *
   * @returns how many candidates that represent their orbit were pruned
   */
  scan(from: number, to: number, needed: (symmetry: number) => number, visit: Visit): number {
    let pruned = 0;
    for (let start = 0; start < this.stratum.starts.length; start++) {
      const prepared = this.prepare(start);
      for (let warp = from; warp < to; warp++) pruned += this.scanWarp(prepared, start, warp, needed, visit);
    }
    // The line forms of the weft orders are many and serve one start only; keeping them longer costs more than it
    // saves.
    this.level = undefined;
    return pruned;
  }

  /** Upper bound of the symmetry of one candidate. */
  symmetryAtMost(warp: number, weft: number, start: number): number {
    const { most, warpClass, weftClass, weftClasses } = this.prepare(start).symmetry;
    return most[warpClass[warp]! * weftClasses + weftClass[weft]!]!;
  }

  private scanWarp(p: Prepared, start: number, warp: number, needed: (s: number) => number, visit: Visit): number {
    const standing = this.orbits.ofWarp(warp);
    if (standing === 'none') return 0;
    const { symmetry } = p;
    const { low, high, half, most } = this.crossTables(p.form, warp);
    const own = p.warpTone[warp]!;
    const line = p.warpLine[warp]!;
    const mask = (1 << half) - 1;
    let pruned = 0;
    p.classes.forEach((wefts, c) => {
      const enough = needed(symmetry.most[symmetry.warpClass[warp]! * symmetry.weftClasses + c]!);
      const { weft, bits, tone, line: lineOf } = wefts;
      // Most classes are pruned as a whole.
      const falls = own + wefts.mostTone + most + (line + wefts.mostLine) ** 2 < enough;
      if (falls && standing === 'all') {
        pruned += weft.length;
        return;
      }
      for (let k = 0; k < weft.length; k++) {
        const word = bits[k]!;
        const toneSquared = own + tone[k]! + low[word & mask]! + high[word >>> half]!;
        const lines = line + lineOf[k]!;
        if (toneSquared + lines * lines < enough) {
          if (standing === 'all' || this.orbits.stands(warp, weft[k]!, start)) pruned++;
        } else if (standing === 'all' || this.orbits.stands(warp, weft[k]!, start)) {
          if (this.reaches(p, start, warp, weft[k]!, lineOf[k]!, enough - toneSquared)) {
            visit(warp, weft[k]!, start, toneSquared);
          } else pruned++;
        }
      }
    });
    return pruned;
  }

  /**
   * Whether line contrast can supply the missing M². First replaces the warp's coarse line bound by the exact part,
   * then the weft's.
   */
  private reaches(p: Prepared, start: number, warp: number, weft: number, line: number, missing: number): boolean {
    if (missing <= 0) return true;
    if (this.upright?.warp !== warp || this.upright.start !== start) {
      this.upright = { start, warp, form: p.lines.upright(this.warpSpins[warp]!) };
    }
    const upright = lineDeviation(this.upright.form, this.weftSpins[weft]!);
    if ((upright + line) ** 2 < missing) return false;
    if (this.level?.start !== start) this.level = { start, forms: this.weftSpins.map(() => undefined) };
    this.level.forms[weft] ??= p.lines.level(this.weftSpins[weft]!);
    const level = lineDeviation(this.level.forms[weft]!, this.warpSpins[warp]!);
    return (upright + level) ** 2 + 1e-9 >= missing;
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
    const ground = groundAt(stratum, stratum.starts[start]!);
    const form = toneForm(ground, across / along);
    const bounds = lineBounds(ground, across / along);
    const symmetry = symmetryBound(ground, this.warps, this.wefts, isSquareSett(question.sett));
    const { warpSpins, weftSpins } = this;
    const prepared: Prepared = {
      form,
      symmetry,
      lines: lineForms(ground, across / along),
      warpTone: Float64Array.from(warpSpins, (s) => quadratic(form.A, s.subarray(0, form.n))),
      warpLine: Float64Array.from(warpSpins, (s) => bounds.warp.of(s)),
      classes: weftClasses(
        symmetry,
        this.wefts.bits,
        Float64Array.from(weftSpins, (t) => quadratic(form.B, t)),
        Float64Array.from(weftSpins, (t) => bounds.weft.of(t)),
      ),
    };
    this.prepared[start] = prepared;
    return prepared;
  }
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

function wordsOf(orders: readonly Order[]): Words {
  return {
    length: orders[0]!.length,
    bits: Int32Array.from(orders, (order) => order.reduce((bits, colour, e) => bits | (colour << e), 0)),
    primitive: Uint8Array.from(orders, (order) => (smallestPeriod(order) === order.length ? 1 : 0)),
  };
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

function weftClasses(
  { weftClass, weftClasses: count }: SymmetryBound,
  bits: Int32Array,
  tone: Float64Array,
  line: Float64Array,
): WeftClass[] {
  const members = Array.from({ length: count }, (): number[] => []);
  weftClass.forEach((c, weft) => {
    members[c]!.push(weft);
  });
  return members.map((wefts) => ({
    weft: Int32Array.from(wefts),
    bits: Int32Array.from(wefts, (weft) => bits[weft]!),
    tone: Float64Array.from(wefts, (weft) => tone[weft]!),
    line: Float64Array.from(wefts, (weft) => line[weft]!),
    mostTone: wefts.reduce((most, weft) => Math.max(most, tone[weft]!), Number.NEGATIVE_INFINITY),
    mostLine: wefts.reduce((most, weft) => Math.max(most, line[weft]!), 0),
  }));
}
