import type { Wanted } from '../../order/bracelet.js';
import { exchanged, type Order, smallestPeriod } from '../../order/order.js';
import type { Question } from '../question/question.js';
import { type Candidate, weftOf } from '../space/candidate.js';
import type { Family, ProfileSearch, Profiles } from '../space/family.js';
import { canonicalOrder, familyWritten } from '../space/genome.js';
import { memoized } from '../space/memoize.js';
import { familyWith, NO_PROFILE } from '../space/profile-search.js';
import { startsOf } from '../space/starts.js';
import { type Around, fitted, MUTATIONS, type MutationName, pickFrom, pickNumber, type Rng } from './mutations.js';
import { nearOrders } from './near-orders.js';

/** One way to make a candidate from an elite. */
export type Step =
  /** Mutates the warp order, the weft order, or both with the same random numbers. */
  | { readonly on: 'warp' | 'weft' | 'both'; readonly change: MutationName }
  /** Makes the weft order from the warp order: equal, with colours exchanged, or backwards. */
  | { readonly weft: 'same' | 'exchanged' | 'backwards' }
  /** Takes one order from another elite (crossover). */
  | { readonly take: 'warp' | 'weft' }
  /** Mutates the block order of the threading, or of the treadling. */
  | { readonly blocks: 'threaded' | 'treadled'; readonly change: MutationName }
  /** Lays the orders in another way (thread or unit, fill, times, structure), or begins them elsewhere. */
  | { readonly lay: 'otherwise' | 'elsewhere' };

/** Longest run of one colour in orders that are drawn in runs. */
const LONGEST_RUN = 6;
/** Random block orders that are drawn, until one can be woven. */
const MOST_DRAWN = 10_000;
/** How many orders of others, and starts of its own, a candidate is tried with. */
const WITH_ORDERS = 12;
const WITH_STARTS = 16;
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
      (family, n, m) => `${familyWritten(family, families)} ${n} ${m}`,
    );
    this.steps = this.possibleSteps();
  }

  /**
   * A random candidate. Its orders are of one colour, random, in runs, or mirrored. A third of the wefts have the warp's
   * order, and a third one as long as it: with any two lengths, small motifs would be rare.
   */
  draw(rng: Rng): Candidate {
    const { warp: given, orders } = this.question;
    const warp = this.drawOrder(rng);
    const manner = given ? 2 : pickNumber(3, rng);
    const alike = manner === 1 && orders.length === 0 && warp.length > 1;
    const other = alike ? this.drawWord(warp.length, this.colours, rng) : this.drawOrder(rng);
    return this.candidate(this.drawFamily(rng), warp, manner === 0 ? warp : other, rng);
  }

  /** Applies a step to a candidate; `other` is another elite. */
  take(step: Step, from: Candidate, other: Candidate, rng: Rng): Candidate {
    const { family, warp, weft } = from;
    if ('lay' in step) {
      const laid = step.lay === 'otherwise' ? this.drawFamily(rng, family.searched?.profiles) : family;
      return this.candidate(laid, warp, weft, rng);
    }
    if ('blocks' in step) return this.candidate(this.otherBlocks(step, from, other, rng), warp, weft, rng, from.start);
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

  /**
   * The neighbours of a candidate, the likeliest first: its orders exchanged, or each alone for both sides; each with
   * the orders of `others`, from either side; begun elsewhere; then both orders changed alike, where one follows from the
   * other; and at last one of them changed.
   */
  *neighbours(from: Candidate, others: readonly Candidate[]): Generator<Candidate> {
    const { family, warp, weft, start } = from;
    const { orders, lengths, warp: given } = this.question;
    const made = (a: Order, b: Order): Candidate => this.candidate(family, a, b, undefined, start);
    const follows = [(order: Order) => order, (order: Order) => exchanged(order, this.colours)];
    const both = this.own && given === undefined;
    if (both) {
      yield made(weft, warp);
      for (const order of [warp, weft]) for (const follow of follows) yield made(order, follow(order));
    }
    if (this.own) {
      const known = new Map(others.flatMap((other) => [other.warp, other.weft]).map((order) => [order.join(), order]));
      for (const order of [...known.values()].slice(0, WITH_ORDERS)) {
        yield made(warp, order);
        if (both) yield made(order, weft);
      }
    }
    const starts = this.startsFor(family, warp.length, weft.length);
    for (const other of starts.slice(0, WITH_STARTS)) yield { ...from, start: other };
    if (orders.length > 0) return;
    const warps = given ? [] : nearOrders(warp, this.colours, lengths);
    const wefts = this.own ? nearOrders(weft, this.colours, lengths) : [];
    if (both) {
      for (const follow of follows) {
        if (canonicalOrder(follow(warp)).join() !== canonicalOrder(weft).join()) continue;
        for (const order of warps) yield made(order, follow(order));
      }
    }
    for (let k = 0; k < Math.max(warps.length, wefts.length); k++) {
      if (k < warps.length) yield made(warps[k]!, weft);
      if (k < wefts.length) yield made(warp, wefts[k]!);
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
      ...(['threaded', 'treadled'] as const)
        .filter((blocks) => this.families.some(({ search }) => search?.[blocks] !== undefined))
        .flatMap((blocks) => names.map((change): Step => ({ blocks, change }))),
      ...(this.families.length > 1 ? [{ lay: 'otherwise' } as const] : []),
      ...(this.question.starts !== 'first' ? [{ lay: 'elsewhere' } as const] : []),
    ];
  }

  /** A family; where block orders are searched, with these, or with random ones. */
  private drawFamily(rng: Rng, profiles?: Profiles): Family {
    for (let tried = 0; tried < MOST_DRAWN; tried++) {
      const family = pickFrom(this.families, rng);
      const { search } = family;
      if (search === undefined) return family;
      const draw = (of: Wanted | undefined): Order | undefined =>
        of && this.drawWord(pickFrom(search.lengths, rng), of.letters, rng);
      const [one, treadled] = [draw(search.threaded), mirroredIf(search.treadled, draw(search.treadled), rng)];
      // A threading of one block shows no figure, so one unit is of another.
      const threaded = mirroredIf(search.threaded, one && twoBlocks(one, search), rng);
      const drawn = { ...(threaded && { threaded }), ...(treadled && { treadled }) };
      const found = (profiles && familyWith(family, profiles)) ?? familyWith(family, whole(drawn));
      if (found !== undefined) return found;
    }
    throw NO_PROFILE;
  }

  /** The family with one of its block orders mutated; the same where the structure refuses the new one. */
  private otherBlocks(
    { blocks, change }: Extract<Step, { blocks: unknown }>,
    from: Candidate,
    other: Candidate,
    rng: Rng,
  ): Family {
    const { searched } = from.family;
    const wanted = searched?.base.search?.[blocks];
    if (searched === undefined || wanted === undefined) return from.family;
    const word = searched.profiles[blocks]!;
    const around = { colours: wanted.letters, other: other.family.searched?.profiles[blocks] ?? word };
    const mutated = fitted(MUTATIONS[change](word, rng, around), searched.base.search!.lengths);
    const changed = whole({ ...searched.profiles, [blocks]: mirroredIf(wanted, mutated, rng)! });
    return familyWith(searched.base, changed) ?? from.family;
  }

  private drawOrder(rng: Rng): Order {
    const { orders, lengths } = this.question;
    if (orders.length > 0) return pickFrom(orders, rng);
    return this.drawWord(pickFrom(lengths, rng), this.colours, rng);
  }

  /** A random word: of one letter, random, in runs, or mirrored. */
  private drawWord(length: number, letters: number, rng: Rng): Order {
    const manner = pickNumber(7, rng);
    if (manner === 0) return [pickNumber(letters, rng)];
    if (manner < 3) return Array.from({ length }, () => pickNumber(letters, rng));
    const runs = (upTo: number): Order => {
      const longest = 1 + pickNumber(LONGEST_RUN, rng);
      const order: number[] = [];
      for (let colour = pickNumber(letters, rng); order.length < upTo; ) {
        const run = 1 + pickNumber(longest, rng);
        for (let e = 0; e < run; e++) order.push(colour);
        colour = (colour + 1 + pickNumber(letters - 1, rng)) % letters;
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
   * A candidate in canonical form: orders as `stands` returns them, and one of the listed starts: `near` if it is one,
   * else a random one, or the first.
   */
  private candidate(
    family: Family,
    warpOrder: Order,
    weftOrder: Order,
    rng: Rng | undefined,
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
    return { family, warp, weft, start: kept ?? (rng ? pickFrom(starts, rng) : starts[0]!) };
  }
}

/** Block orders without the repeats of a shorter one. */
function whole(profiles: Profiles): Profiles {
  const cut = (word: Order): Order => word.slice(0, smallestPeriod(word));
  return Object.fromEntries(Object.entries(profiles).map(([of, word]) => [of, cut(word)]));
}

/** The word; where all its letters are the same, one of an asked length with another first letter. */
function twoBlocks(word: Order, { lengths, threaded }: ProfileSearch): Order {
  if (word.some((letter) => letter !== word[0])) return word;
  const longer = lengths.filter((length) => length > 1);
  return fitted(word, longer).with(0, (word[0]! + 1) % threaded!.letters);
}

/**
 * The word, or, where only mirrored ones are wanted, its first half and that half read backward, in the same length. The
 * turns of an even length are between elements, or on elements.
 */
function mirroredIf(wanted: Wanted | undefined, word: Order | undefined, rng: Rng): Order | undefined {
  if (word === undefined || !wanted?.mirrored) return word;
  const n = word.length;
  const half = Math.ceil(n / 2);
  if (n % 2 === 0 && pickNumber(2, rng) === 0) {
    return [...word.slice(0, half + 1), ...word.slice(1, half).toReversed()];
  }
  const first = word.slice(0, half);
  return [...first, ...first.toReversed()].slice(n % 2, n + (n % 2));
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
