import { isSquareSett, spacing } from '../../draft/draft.js';
import type { Order } from '../../order/order.js';
import { smallestPeriod } from '../../order/order.js';
import type { Block } from '../block.js';
import { type Orbits, orbitsOf } from '../orbit.js';
import type { Question } from '../question.js';
import { type Form, quadratic, toneForm } from './form.js';
import { groundAt } from './ground.js';
import { type SymmetryBound, symmetryBound, type Words } from './likeness.js';
import { lineBounds } from './line.js';
import { type LineForm, type LineForms, lineDeviation, lineForms } from './lines.js';

/** What is the same for all candidates of a block that begin at one start. */
interface Prepared {
  readonly form: Form;
  readonly symmetry: SymmetryBound;
  /** t'Bt, and the bound of line contrast, of each weft order; s'As and the bound of each warp order. */
  readonly weftTone: Float64Array;
  readonly weftLine: Float64Array;
  readonly warpTone: Float64Array;
  readonly warpLine: Float64Array;
  readonly warpSpins: readonly Float64Array[];
  readonly weftSpins: readonly Float64Array[];
  readonly lines: LineForms;
  /** Weft orders sorted by their symmetry class, with where each class begins. */
  readonly sorted: Int32Array;
  readonly classStart: Int32Array;
}

/** Told of a candidate: warp, weft and start by their numbers in the block, and T². */
export type Visit = (warp: number, weft: number, start: number, toneSquared: number) => void;

/**
 * Runs over all pairs of orders of one block, with nothing but a few additions a pair. T² splits into a part of the
 * warp order, a part of the weft order, and a part of both that two tables of half the weft order each answer at once.
 */
export class BlockScan {
  readonly block: Block;
  readonly orbits: Orbits;
  private readonly question: Question;
  private readonly warps: Words;
  private readonly wefts: Words;
  private readonly prepared: (Prepared | undefined)[];
  /** Line forms of the warp order at hand, and of the weft orders at the start at hand. */
  private upright: { start: number; warp: number; form: LineForm } | undefined;
  private level: { start: number; forms: (LineForm | undefined)[] } | undefined;

  constructor(question: Question, block: Block) {
    this.question = question;
    this.block = block;
    this.orbits = orbitsOf(question, block);
    this.warps = wordsOf(block.warps);
    this.wefts = wordsOf(block.wefts);
    this.prepared = block.starts.map(() => undefined);
  }

  /**
   * Visits the candidates with warp orders `from` to before `to` that stand for themselves and may reach the score
   * whose contrast `needed` gives for a symmetry (the least M² that is enough, infinite where none is). Counts the
   * others.
   *
   * @returns how many candidates that stand for themselves were passed over
   */
  scan(from: number, to: number, needed: (symmetry: number) => number, visit: Visit): number {
    let passed = 0;
    for (let start = 0; start < this.block.starts.length; start++) {
      const prepared = this.prepare(start);
      for (let warp = from; warp < to; warp++) passed += this.scanWarp(prepared, start, warp, needed, visit);
    }
    // The weft orders' forms are many and belong to one start; they are not worth keeping beyond the stretch.
    this.level = undefined;
    return passed;
  }

  /** The bound of symmetry of one candidate. */
  symmetryAtMost(warp: number, weft: number, start: number): number {
    const { most, warpClass, weftClass, weftClasses } = this.prepare(start).symmetry;
    return most[warpClass[warp]! * weftClasses + weftClass[weft]!]!;
  }

  private scanWarp(p: Prepared, start: number, warp: number, needed: (s: number) => number, visit: Visit): number {
    const standing = this.orbits.ofWarp(warp);
    if (standing === 'none') return 0;
    const { form, symmetry, sorted, classStart, weftTone, weftLine } = p;
    const [low, high, half] = this.crossTables(form, warp);
    const own = p.warpTone[warp]!;
    const line = p.warpLine[warp]!;
    const mask = (1 << half) - 1;
    const bits = this.wefts.bits;
    let passed = 0;
    for (let c = 0; c < symmetry.weftClasses; c++) {
      const most = symmetry.most[symmetry.warpClass[warp]! * symmetry.weftClasses + c]!;
      const enough = needed(most);
      for (let k = classStart[c]!; k < classStart[c + 1]!; k++) {
        const weft = sorted[k]!;
        const word = bits[weft]!;
        const tone = own + weftTone[weft]! + low[word & mask]! + high[word >>> half]!;
        const lines = line + weftLine[weft]!;
        const reaches = tone + lines * lines >= enough && this.reaches(p, start, warp, weft, enough - tone);
        if (!reaches && standing === 'all') passed++;
        else if (standing === 'all' || this.orbits.stands(warp, weft, start)) {
          if (reaches) visit(warp, weft, start, tone);
          else passed++;
        }
      }
    }
    return passed;
  }

  /** Whether line contrast may make up what tone leaves missing of M², by the exact parts of its bound. */
  private reaches(p: Prepared, start: number, warp: number, weft: number, missing: number): boolean {
    if (missing <= 0) return true;
    if (this.upright?.warp !== warp || this.upright.start !== start) {
      this.upright = { start, warp, form: p.lines.upright(p.warpSpins[warp]!) };
    }
    const upright = lineDeviation(this.upright.form, p.weftSpins[weft]!);
    if ((upright + p.weftLine[weft]!) ** 2 < missing) return false;
    if (this.level?.start !== start) this.level = { start, forms: p.weftSpins.map(() => undefined) };
    this.level.forms[weft] ??= p.lines.level(p.weftSpins[weft]!);
    const level = lineDeviation(this.level.forms[weft]!, p.warpSpins[warp]!);
    return (upright + level) ** 2 + 1e-9 >= missing;
  }

  /** 2s'Ct for one warp order, by the lower and the upper half of the weft order's bits. */
  private crossTables(form: Form, warp: number): [Float64Array, Float64Array, number] {
    const m = this.wefts.length;
    const half = m >> 1;
    const order = this.block.warps[warp]!;
    const weight = new Float64Array(form.m);
    for (let e = 0; e < form.n; e++) {
      const sign = 2 * (order[e] === 1 ? 1 : -1);
      for (let d = 0; d < form.m; d++) weight[d] = weight[d]! + sign * form.C[e * form.m + d]!;
    }
    const tabby = weight[m]! * tabbySpin(this.question);
    return [sumTable(weight, 0, half, tabby), sumTable(weight, half, m, 0), half];
  }

  private prepare(start: number): Prepared {
    const known = this.prepared[start];
    if (known) return known;
    const { block, question } = this;
    const { across, along } = spacing(question.sett);
    const ground = groundAt(block, block.starts[start]!);
    const form = toneForm(ground, across / along);
    const bounds = lineBounds(ground, across / along);
    const symmetry = symmetryBound(ground, this.warps, this.wefts, isSquareSett(question.sett));
    const tabby = tabbySpin(question);
    const warpSpins = block.warps.map((order) => spins(order, tabby));
    const weftSpins = block.wefts.map((order) => spins(order, tabby));
    const prepared: Prepared = {
      form,
      symmetry,
      warpSpins,
      weftSpins,
      lines: lineForms(ground, across / along),
      warpTone: Float64Array.from(warpSpins, (s) => quadratic(form.A, s.subarray(0, form.n))),
      weftTone: Float64Array.from(weftSpins, (t) => quadratic(form.B, t)),
      warpLine: Float64Array.from(warpSpins, (s) => bounds.warp.of(s)),
      weftLine: Float64Array.from(weftSpins, (t) => bounds.weft.of(t)),
      ...byClass(symmetry),
    };
    this.prepared[start] = prepared;
    return prepared;
  }
}

function tabbySpin(question: Question): number {
  return question.tabby === 1 ? 1 : -1;
}

/** ±1 for each element, the tabby's after them. */
function spins(order: Order, tabby: number): Float64Array {
  return Float64Array.from([...order.map((colour) => (colour === 1 ? 1 : -1)), tabby]);
}

function wordsOf(orders: readonly Order[]): Words {
  return {
    length: orders[0]!.length,
    bits: Int32Array.from(orders, (order) => order.reduce((bits, colour, e) => bits | (colour << e), 0)),
    primitive: Uint8Array.from(orders, (order) => (smallestPeriod(order) === order.length ? 1 : 0)),
  };
}

/** Sums of ±weight[from … to) for every choice of signs: bit e of the index is 1 where the sign is plus. */
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

function byClass(symmetry: SymmetryBound): { sorted: Int32Array; classStart: Int32Array } {
  const { weftClass, weftClasses } = symmetry;
  const classStart = new Int32Array(weftClasses + 1);
  for (const c of weftClass) classStart[c + 1] = classStart[c + 1]! + 1;
  for (let c = 0; c < weftClasses; c++) classStart[c + 1] = classStart[c + 1]! + classStart[c]!;
  const next = classStart.slice();
  const sorted = new Int32Array(weftClass.length);
  weftClass.forEach((c, weft) => {
    sorted[next[c]!] = weft;
    next[c] = next[c]! + 1;
  });
  return { sorted, classStart };
}
