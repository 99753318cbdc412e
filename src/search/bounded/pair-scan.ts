import { values } from '../../colour/yarn.js';
import { isSquareSett, spacing } from '../../draft/draft.js';
import type { Order } from '../../order/order.js';
import type { Shared } from '../evaluate/evaluate.js';
import { PLACE, SLACK } from '../evaluate/reach.js';
import { isBeyond } from '../evaluate/weave-limits.js';
import type { Question } from '../question/question.js';
import { weftOf } from '../space/candidate.js';
import { type Orbits, orbitsOf } from '../space/orbit.js';
import { boundOf } from '../space/part-bounds.js';
import type { Stratum } from '../space/stratum.js';
import { type Ground, groundAt } from './bound-ground.js';
import { ExactLines } from './line-forms.js';
import { NicheBound } from './niche-bound.js';
import { PairBound, type Ranking, rankingOf } from './pair-bound.js';
import type { Aim, Guessed, Passed, Scan, Visitor } from './scan.js';
import { LaidSides, type SideOrders } from './side-orders.js';
import { hasSymmetryBound, symmetryBound, wordsOf } from './symmetry-bound.js';

/** What is guessed of symmetry where there is no table. */
const USUAL_SYMMETRY = 0.25;
/** Pairs of a block from which exact lines pay for contrast alone: many of so many pass the coarse bound. */
const LARGE_BLOCK = 50_000;
/**
 * Pairs for each order from which exact lines pay, where they tell how near a cloth is to a classic, or many a pair comes
 * so far because its niche is poor.
 */
const PAIRS_AN_ORDER = 8;
/** Pairs of orders for each cell of the ground from which a table of symmetries pays. */
const PAIRS_A_CELL = 6;

type Visit = (bound: PairBound, warp: number, weft: number, start: number, place: number) => void;

/** A ground with its orders laid on it, and their bound, made once a pair is within the limits. */
interface LaidGround {
  readonly ground: Ground;
  readonly warps: SideOrders;
  readonly wefts: SideOrders;
  bound?: PairBound;
  niches?: NicheBound;
}

/**
 * Bounds the score of every candidate of a block by quadratic forms in its two orders: for any number of yarns, any rule
 * for the weft, any ranking. See BOUNDS.md.
 */
export class PairScan implements Scan {
  private readonly stratum: Stratum;
  private readonly question: Question;
  private readonly orbits: Orbits;
  private readonly warps: readonly Order[];
  private readonly wefts: readonly Order[];
  /** Whether the weft has orders of its own; else each warp order has one weft order, of the same number. */
  private readonly own: boolean;
  private readonly ranking: Ranking;
  private readonly all: number;
  private readonly laid: LaidSides;
  private readonly grounds: (LaidGround | undefined)[] = [];

  constructor(question: Question, stratum: Stratum, shared: Shared, laid = new LaidSides(question)) {
    this.laid = laid;
    this.question = question;
    this.stratum = stratum;
    this.orbits = orbitsOf(question, stratum);
    const { family, warps, wefts } = stratum;
    const weave = family.weave([0], [0]);
    this.own = wefts.length > 0;
    this.warps = warps.map((order) => family.laid(order, 'ends', weave));
    this.wefts = (this.own ? wefts : warps.map((order) => weftOf(question, order))).map((order) =>
      family.laid(order, 'picks', weave),
    );
    const { across, along } = spacing(question.sett);
    this.ranking = rankingOf(question, shared, across / along);
    this.all = this.ranking.weights.reduce((sum, weight) => sum + weight, 0);
  }

  scan(from: number, to: number, aim: Aim, visitor: Visitor): Passed {
    let pruned = 0;
    const limits = this.each(from, to, aim, (bound, warp, weft, start, place) => {
      const least = aim(place);
      const enough = this.enough(least);
      if (bound.with(warp, this.weftAt(warp, weft), enough) >= enough)
        visitor.reached(warp, weft, start, () => bound.foresee(least));
      else {
        pruned++;
        visitor.pruned?.(warp, weft, start, bound.toneSquared);
      }
    });
    return { pruned, limits };
  }

  guess(from: number, to: number, aim: Aim, guessed: Guessed): void {
    const symmetry = this.ranking.weights[PLACE.symmetry]! * (1 - USUAL_SYMMETRY);
    this.each(from, to, aim, (bound, warp, weft, start, place) => {
      const enough = this.enough(aim(place));
      const sum = bound.with(warp, this.weftAt(warp, weft), enough, false) - (bound.symmetry ? 0 : symmetry);
      if (sum >= enough) guessed(warp, weft, start, place, sum / this.all);
    });
  }

  private enough(least: number): number {
    return (least - SLACK) * this.all;
  }

  /** Where a weft is in the list of wefts: without orders of its own it is that of its warp. */
  private weftAt(warp: number, weft: number): number {
    return this.own ? weft : warp;
  }

  /**
   * Visits the candidates that are within the limits, each with the bound of its ground and its place. What is remembered of orders as
   * they lie from a start serves the next: weft orders of their own come again under every warp order from one start,
   * while a warp order that is the weft's too comes again from every start.
   *
   * @returns how many are over a limit
   */
  private each(from: number, to: number, aim: Aim, visit: Visit): number {
    let limits = 0;
    const starts = this.stratum.starts.length;
    if (this.own) {
      for (let start = 0; start < starts; start++) {
        for (let warp = from; warp < to; warp++) limits += this.underWarp(warp, start, aim, visit);
        // The forms of the weft orders are many and serve one start only: keeping them costs more than it saves.
        this.grounds[start]?.bound?.lines?.forget();
      }
    } else {
      for (let warp = from; warp < to; warp++) {
        for (let start = 0; start < starts; start++) limits += this.underWarp(warp, start, aim, visit);
      }
    }
    return limits;
  }

  /** Visits those under one warp order from one start; returns how many are over a limit. */
  private underWarp(warp: number, start: number, aim: Aim, visit: Visit): number {
    const standing = this.orbits.ofWarp(warp);
    if (standing === 'none') return 0;
    const laid = this.laidAt(start);
    const { warps, wefts } = laid;
    const count = this.own ? this.wefts.length : 1;
    let limits = 0;
    let bound: PairBound | undefined;
    for (let weft = 0; weft < count; weft++) {
      if (standing === 'some' && !this.orbits.stands(warp, weft, start)) continue;
      const at = this.weftAt(warp, weft);
      const ease = {
        warpChanges: warps.changes[warp]!,
        weftChanges: wefts.changes[at]!,
        shuttles: wefts.shuttles[at]!,
      };
      if (isBeyond(this.question, Math.max(warps.repeat[warp]!, wefts.repeat[at]!), ease)) {
        limits++;
        continue;
      }
      if (bound === undefined) {
        laid.bound ??= this.boundOn(laid);
        if (this.question.oneOfEachKind) laid.niches ??= new NicheBound(this.question, laid.bound);
        bound = laid.bound;
        bound.take(warp);
      }
      visit(bound, warp, weft, start, laid.niches?.place(warp, at, bound.symmetryMost(warp, at), aim) ?? 0);
    }
    return limits;
  }

  private laidAt(start: number): LaidGround {
    const known = this.grounds[start];
    if (known !== undefined) return known;
    const { stratum, warps, wefts } = this;
    const { family } = stratum;
    const [a, b] = stratum.starts[start]!;
    const ground = groundAt(family, warps[0]!.length, wefts[0]!.length, [a, b]);
    const weftList = this.own ? stratum.wefts : stratum.warps;
    const laid: LaidGround = {
      ground,
      warps: this.laid.warps({ family, list: stratum.warps, start: a }, ground, warps),
      wefts: this.laid.wefts({ family, list: weftList, start: b }, ground, wefts),
    };
    this.grounds[start] = laid;
    return laid;
  }

  private boundOn({ ground, warps: laidWarps, wefts: laidWefts }: LaidGround): PairBound {
    const { question, ranking, warps, wefts } = this;
    const pairs = warps.length * (this.own ? wefts.length : 1);
    const colours = question.yarns.length;
    const symmetry =
      (question.rank.symmetry > 0 || question.oneOfEachKind) &&
      hasSymmetryBound(ground, colours) &&
      pairs > PAIRS_A_CELL * ground.ends.length * ground.picks.length
        ? symmetryBound(ground, wordsOf(warps, colours), wordsOf(wefts, colours), isSquareSett(question.sett))
        : undefined;
    const foretells = question.rank.contrast > 0 && boundOf(question.rank) !== 'nothing';
    const weighsLines =
      ranking.noveltyMost !== undefined || (foretells && (question.oneOfEachKind || pairs >= LARGE_BLOCK));
    const lines =
      weighsLines && pairs > PAIRS_AN_ORDER * (warps.length + wefts.length)
        ? new ExactLines(ground, laidWarps, laidWefts, ranking.squareness, values(question.yarns))
        : undefined;
    return new PairBound(ranking, ground, { warps: laidWarps, wefts: laidWefts, symmetry, lines });
  }
}
