import { exchanged, type Order, smallestPeriod } from '../../order/order.js';
import type { Question } from '../question/question.js';
import { type Candidate, weftOf } from '../space/candidate.js';
import type { Family } from '../space/family.js';
import { canonicalOrder } from '../space/genome.js';
import { memoized } from '../space/memoize.js';
import { startsOf } from '../space/starts.js';
import { type Around, fitted, MUTATIONS, type MutationName, pickFrom, pickNumber, type Rng } from './mutations.js';

/** One way to make a candidate from an elite. */
export type Step =
  /** Mutates the warp order, the weft order, or both with the same random numbers. */
  | { readonly on: 'warp' | 'weft' | 'both'; readonly change: MutationName }
  /** Makes the weft order from the warp order: equal, with colours exchanged, or backwards. */
  | { readonly weft: 'same' | 'exchanged' | 'backwards' }
  /** Takes one order from another elite (crossover). */
  | { readonly take: 'warp' | 'weft' }
  /** Lays the orders in another way (thread or unit, fill, times, structure), or begins them elsewhere. */
  | { readonly lay: 'otherwise' | 'elsewhere' };

/** Longest run of one colour in orders that are drawn in runs. */
const LONGEST_RUN = 6;
/** Lists of starts that are memoized. */
const REMEMBERED = 4000;

/** The mutation space: draws candidates of a question and mutates them, where they are too many to list. */
export class MutationSpace {
  /** The steps that this question allows. */
  readonly steps: readonly Step[];
  private readonly question: Question;
  private readonly families: readonly Family[];
  /** Whether the weft has orders of its own. */
  private readonly own: boolean;
  private readonly startsFor: (family: Family, n: number, m: number) => readonly (readonly [number, number])[];

  constructor(question: Question, families: readonly Family[]) {
    this.question = question;
    this.families = families;
    this.own = question.weft.rule === 'own';
    this.startsFor = memoized(
      REMEMBERED,
      (family: Family, n: number, m: number) => startsOf(question.starts, family, n, m),
      (family, n, m) => `${families.indexOf(family)}/${n}/${m}`,
    );
    this.steps = this.possibleSteps();
  }

  /**
   * A random candidate. Its orders are of one colour, random, in runs, or mirrored; half the time the weft's is the
   * warp's.
   */
  draw(rng: Rng): Candidate {
    const warp = this.drawOrder(rng);
    const weft = this.question.warp || rng() < 0.5 ? this.drawOrder(rng) : warp;
    return this.candidate(pickFrom(this.families, rng), warp, weft, rng);
  }

  /** Applies a step to a candidate; `other` is another elite. */
  take(step: Step, from: Candidate, other: Candidate, rng: Rng): Candidate {
    const { family, warp, weft } = from;
    if ('lay' in step) {
      const laid = step.lay === 'otherwise' ? pickFrom(this.families, rng) : family;
      return this.candidate(laid, warp, weft, rng);
    }
    if ('weft' in step) {
      const followed = { same: warp, exchanged: exchanged(warp, this.colours), backwards: warp.toReversed() };
      return this.candidate(family, warp, followed[step.weft], rng, from.start);
    }
    if ('take' in step) {
      const orders = step.take === 'warp' ? ([other.warp, weft] as const) : ([warp, other.weft] as const);
      return this.candidate(family, ...orders, rng, from.start);
    }
    const change = (order: Order, near: Order): Order => this.changed(step.change, order, near, rng);
    switch (step.on) {
      case 'warp':
        return this.candidate(family, change(warp, other.warp), weft, rng, from.start);
      case 'weft':
        return this.candidate(family, warp, change(weft, other.weft), rng, from.start);
      case 'both': {
        const [first, again] = twice(rng);
        const changed = this.changed(step.change, warp, other.warp, first);
        return this.candidate(family, changed, this.changed(step.change, weft, other.weft, again), rng, from.start);
      }
    }
  }

  private get colours(): number {
    return this.question.yarns.length;
  }

  private possibleSteps(): Step[] {
    const { orders, warp } = this.question;
    const names = Object.keys(MUTATIONS) as MutationName[];
    const sides = [...(warp ? [] : (['warp'] as const)), ...(this.own ? (['weft'] as const) : [])];
    // Given orders are never mutated, nor is a given warp.
    const both = sides.length === 2 && orders.length === 0;
    const changed = orders.length > 0 ? [] : both ? ([...sides, 'both'] as const) : sides;
    return [
      ...changed.flatMap((on) => names.map((change): Step => ({ on, change }))),
      ...(both ? (['same', 'exchanged', 'backwards'] as const).map((weft): Step => ({ weft })) : []),
      ...(this.own ? sides.map((take): Step => ({ take })) : []),
      ...(this.families.length > 1 ? [{ lay: 'otherwise' } as const] : []),
      ...(this.question.starts !== 'first' ? [{ lay: 'elsewhere' } as const] : []),
    ];
  }

  private drawOrder(rng: Rng): Order {
    const { orders, lengths } = this.question;
    if (orders.length > 0) return pickFrom(orders, rng);
    const length = pickFrom(lengths, rng);
    const manner = pickNumber(7, rng);
    if (manner === 0) return [pickNumber(this.colours, rng)];
    if (manner < 3) return Array.from({ length }, () => pickNumber(this.colours, rng));
    const runs = (upTo: number): Order => {
      const longest = 1 + pickNumber(LONGEST_RUN, rng);
      const order: number[] = [];
      for (let colour = pickNumber(this.colours, rng); order.length < upTo; ) {
        const run = 1 + pickNumber(longest, rng);
        for (let e = 0; e < run; e++) order.push(colour);
        colour = (colour + 1 + pickNumber(this.colours - 1, rng)) % this.colours;
      }
      return order.slice(0, upTo);
    };
    if (manner < 5) return runs(length);
    const half = runs(Math.ceil(length / 2));
    return [...half, ...half.toReversed()].slice(0, length);
  }

  /** Mutates an order and brings it back to an asked length. */
  private changed(name: MutationName, order: Order, other: Order, rng: Rng): Order {
    const { lengths } = this.question;
    // A short order also represents its repetitions; the mutation starts from one of those that have an asked length.
    const whole = lengths.filter((length) => length % order.length === 0);
    const around: Around = { colours: this.colours, other };
    const from = whole.length > 0 ? fitted(order, [pickFrom(whole, rng)]) : order;
    return fitted(MUTATIONS[name](from, rng, around), lengths);
  }

  /**
   * A candidate in canonical form: orders as `standing` returns them, and one of the listed starts (`near` if it is
   * one).
   */
  private candidate(
    family: Family,
    warpOrder: Order,
    weftOrder: Order,
    rng: Rng,
    near?: readonly [number, number],
  ): Candidate {
    const stands = (order: Order): Order => {
      if (this.question.orders.length > 0) return order;
      // With the fill nest, a rotated order gives another cloth.
      return family.fill === 'nest' ? order.slice(0, smallestPeriod(order)) : canonicalOrder(order);
    };
    const warp = this.question.warp ?? stands(warpOrder);
    const weft = this.own ? stands(weftOrder) : weftOf(this.question, warp);
    const starts = this.startsFor(family, warp.length, weft.length);
    const kept = near && starts.find(([a, b]) => a === near[0] && b === near[1]);
    return { family, warp, weft, start: kept ?? pickFrom(starts, rng) };
  }
}

/** Two readers of one random stream: the second gets the numbers that the first got, then new ones. */
function twice(rng: Rng): [Rng, Rng] {
  const drawn: number[] = [];
  let read = 0;
  const first = (): number => {
    const draw = rng();
    drawn.push(draw);
    return draw;
  };
  return [first, () => drawn[read++] ?? rng()];
}
