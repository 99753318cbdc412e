import { exchanged, type Order, smallestPeriod } from '../../order/order.js';
import { type Candidate, weftOf } from '../candidate.js';
import type { Family } from '../family.js';
import type { Question } from '../question.js';
import { remembered } from '../remembered.js';
import { startsOf } from '../starts.js';
import { type Around, CHANGES, type Chance, type ChangeName, fitted, pickFrom, pickNumber } from './changes.js';
import { standing } from './written.js';

/** One way to make a candidate from an elite. */
export type Step =
  /** Mutates the warp order, the weft order, or both with the same random numbers. */
  | { readonly on: 'warp' | 'weft' | 'both'; readonly change: ChangeName }
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
export class Room {
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
    this.startsFor = remembered(
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
  draw(chance: Chance): Candidate {
    const warp = this.drawOrder(chance);
    const weft = this.question.warp || chance() < 0.5 ? this.drawOrder(chance) : warp;
    return this.candidate(pickFrom(this.families, chance), warp, weft, chance);
  }

  /** Applies a step to a candidate; `other` is another elite. */
  take(step: Step, from: Candidate, other: Candidate, chance: Chance): Candidate {
    const { family, warp, weft } = from;
    if ('lay' in step) {
      const laid = step.lay === 'otherwise' ? pickFrom(this.families, chance) : family;
      return this.candidate(laid, warp, weft, chance);
    }
    if ('weft' in step) {
      const followed = { same: warp, exchanged: exchanged(warp, this.colours), backwards: warp.toReversed() };
      return this.candidate(family, warp, followed[step.weft], chance, from.start);
    }
    if ('take' in step) {
      const orders = step.take === 'warp' ? ([other.warp, weft] as const) : ([warp, other.weft] as const);
      return this.candidate(family, ...orders, chance, from.start);
    }
    const change = (order: Order, near: Order): Order => this.changed(step.change, order, near, chance);
    switch (step.on) {
      case 'warp':
        return this.candidate(family, change(warp, other.warp), weft, chance, from.start);
      case 'weft':
        return this.candidate(family, warp, change(weft, other.weft), chance, from.start);
      case 'both': {
        const [first, again] = twice(chance);
        const changed = this.changed(step.change, warp, other.warp, first);
        return this.candidate(family, changed, this.changed(step.change, weft, other.weft, again), chance, from.start);
      }
    }
  }

  private get colours(): number {
    return this.question.yarns.length;
  }

  private possibleSteps(): Step[] {
    const { orders, warp } = this.question;
    const names = Object.keys(CHANGES) as ChangeName[];
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

  private drawOrder(chance: Chance): Order {
    const { orders, lengths } = this.question;
    if (orders.length > 0) return pickFrom(orders, chance);
    const length = pickFrom(lengths, chance);
    const manner = pickNumber(7, chance);
    if (manner === 0) return [pickNumber(this.colours, chance)];
    if (manner < 3) return Array.from({ length }, () => pickNumber(this.colours, chance));
    const runs = (upTo: number): Order => {
      const longest = 1 + pickNumber(LONGEST_RUN, chance);
      const order: number[] = [];
      for (let colour = pickNumber(this.colours, chance); order.length < upTo; ) {
        const run = 1 + pickNumber(longest, chance);
        for (let e = 0; e < run; e++) order.push(colour);
        colour = (colour + 1 + pickNumber(this.colours - 1, chance)) % this.colours;
      }
      return order.slice(0, upTo);
    };
    if (manner < 5) return runs(length);
    const half = runs(Math.ceil(length / 2));
    return [...half, ...half.toReversed()].slice(0, length);
  }

  /** Mutates an order and brings it back to an asked length. */
  private changed(name: ChangeName, order: Order, other: Order, chance: Chance): Order {
    const { lengths } = this.question;
    // A short order also represents its repetitions; the mutation starts from one of those that have an asked length.
    const whole = lengths.filter((length) => length % order.length === 0);
    const around: Around = { colours: this.colours, other };
    const from = whole.length > 0 ? fitted(order, [pickFrom(whole, chance)]) : order;
    return fitted(CHANGES[name](from, chance, around), lengths);
  }

  /**
   * A candidate in canonical form: orders as `standing` returns them, and one of the listed starts (`near` if it is
   * one).
   */
  private candidate(
    family: Family,
    warpOrder: Order,
    weftOrder: Order,
    chance: Chance,
    near?: readonly [number, number],
  ): Candidate {
    const stands = (order: Order): Order => {
      if (this.question.orders.length > 0) return order;
      // With the fill nest, a rotated order gives another cloth.
      return family.fill === 'nest' ? order.slice(0, smallestPeriod(order)) : standing(order);
    };
    const warp = this.question.warp ?? stands(warpOrder);
    const weft = this.own ? stands(weftOrder) : weftOf(this.question, warp);
    const starts = this.startsFor(family, warp.length, weft.length);
    const kept = near && starts.find(([a, b]) => a === near[0] && b === near[1]);
    return { family, warp, weft, start: kept ?? pickFrom(starts, chance) };
  }
}

/** Two readers of one random stream: the second gets the numbers that the first got, then new ones. */
function twice(chance: Chance): [Chance, Chance] {
  const drawn: number[] = [];
  let read = 0;
  const first = (): number => {
    const draw = chance();
    drawn.push(draw);
    return draw;
  };
  return [first, () => drawn[read++] ?? chance()];
}
