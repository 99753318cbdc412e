import { countNecklaces, writtenOrders } from '../../order/necklace.js';
import type { Question } from '../question/question.js';
import type { Candidate } from './candidate.js';
import { evolvedSeconds, secondsByWay } from './cost.js';
import { familiesOf } from './families.js';
import type { Family } from './family.js';
import { type Orbits, orbitsOf } from './orbit.js';
import { countFamilies, countWritten, listFamilies, NO_PROFILE } from './profile-search.js';
import { candidateIn, type Stratum, strataOf } from './stratum.js';

/** A space is searched whole where that takes one thread at most so many seconds, by estimate. */
const WHOLE_AT_MOST = 600;
/** Cloths that fit the memory where each candidate is scored: some 90 bytes each. */
const LISTED_AT_MOST = 10_000_000;
/** Pairs of orders, and orders, up to which a list of orders is made: the list must fit the memory. */
const PAIRS_AT_MOST = 20_000_000_000;
const ORDERS_AT_MOST = 500_000;
/** How many candidates are scored at the most of a space that is larger still. */
const EVOLVED_AT_MOST = 400_000;

/** All candidates of a question. */
export interface Space {
  /** Orders that can be written, rotations and one-colour words included; squared where the weft has its own. */
  readonly written: number;
  /**
   * Orbits of candidates: orders laid in every asked way from every start, those that a symmetry makes equal counted
   * once.
   */
  readonly count: number;
  /**
   * How it is searched. `scored`: every candidate is scored. `bounded`: every candidate is held against a bound, and
   * scored unless pruned. `evolved`: there are too many to list; good candidates are mutated.
   */
  readonly way: 'scored' | 'bounded' | 'evolved';
  /** About how long that takes, in seconds of one thread. */
  readonly seconds: number;
  /** Candidates have numbers from 0 to below this. In an evolved search, the most candidates that a restart scores. */
  readonly numbers: number;
  readonly families: readonly Family[];
  readonly strata: readonly Stratum[];
  /** The candidate with a number. Throws in an evolved search, where candidates have no fixed numbers. */
  at(index: number): Candidate;
  /** Whether the candidate represents its orbit; the others are not scored. */
  isRepresentative(index: number): boolean;
}

/** Counts the space of a question and makes every candidate addressable by its number. */
export function spaceOf(question: Question): Space {
  const asked = familiesOf(question);
  const orders =
    question.orders.length > 0 ? question.orders.length : writtenOrders(question.lengths, question.yarns.length);
  const written = pairsOf(question, orders) * Math.max(1, ...asked.map(countWritten));
  const differing = distinctOrders(question);
  const estimate = pairsOf(question, differing) * sumOf(asked, countFamilies);
  const isLong = estimate > PAIRS_AT_MOST || differing > ORDERS_AT_MOST;
  const listed = isLong ? [undefined] : asked.map(listFamilies);
  if (!listed.every((list) => list !== undefined)) return beyondListing(question, asked, written, estimate);
  const families = listed.flat();
  if (families.length === 0 && asked.length > 0) throw NO_PROFILE;
  const strata = strataOf(question, families);
  const numbers = strata.reduce((sum, stratum) => sum + stratum.count, 0);
  const orbits = new Map<Stratum, Orbits>();
  const orbitsIn = (stratum: Stratum): Orbits => {
    let known = orbits.get(stratum);
    if (known === undefined) {
      known = orbitsOf(question, stratum);
      orbits.set(stratum, known);
    }
    return known;
  };
  const count = strata.reduce((sum, stratum) => sum + orbitsIn(stratum).count(), 0);
  // Weaves that depend on the orders have no bounds.
  const hasBounds = families.every(({ fixedWeave }) => fixedWeave);
  const fits = count <= LISTED_AT_MOST;
  const seconds = secondsByWay(question, strata, count);
  const way = hasBounds && (seconds.bounded < seconds.scored || !fits) ? 'bounded' : 'scored';
  if (seconds[way] > WHOLE_AT_MOST || !(hasBounds || fits)) return beyondListing(question, asked, written, count);
  const blockOf = (index: number): Stratum => {
    let low = 0;
    let high = strata.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (strata[middle]!.first <= index) low = middle;
      else high = middle - 1;
    }
    return strata[low]!;
  };
  return {
    written,
    count,
    way,
    seconds: seconds[way],
    numbers,
    families,
    strata,
    at: (index) => {
      const stratum = blockOf(index);
      return candidateIn(question, stratum, index - stratum.first);
    },
    isRepresentative: (index) => {
      const stratum = blockOf(index);
      const offset = index - stratum.first;
      const pair = Math.floor(offset / stratum.starts.length);
      const wefts = Math.max(1, stratum.wefts.length);
      return orbitsIn(stratum).stands(Math.floor(pair / wefts), pair % wefts, offset % stratum.starts.length);
    },
  };
}

function sumOf(families: readonly Family[], count: (family: Family) => number): number {
  return families.reduce((sum, family) => sum + count(family), 0);
}

/** Orders that differ by more than their beginning, counted without a list. */
function distinctOrders({ orders, lengths, yarns }: Question): number {
  if (orders.length > 0) return orders.length;
  return lengths.reduce((sum, length) => sum + countNecklaces(length, yarns.length), 0);
}

/** Pairs of a warp and a weft order, of so many orders. */
function pairsOf(question: Question, orders: number): number {
  const own = question.weft.rule === 'own';
  if (question.warp !== undefined) return own ? orders : 1;
  return own ? orders ** 2 : orders;
}

/** A space too large to list. */
function beyondListing({ tries }: Question, families: readonly Family[], written: number, count: number): Space {
  return {
    written,
    count,
    way: 'evolved',
    seconds: evolvedSeconds(tries * EVOLVED_AT_MOST),
    numbers: EVOLVED_AT_MOST,
    families,
    strata: [],
    at: (index) => {
      throw new RangeError(`candidate ${index} of a space that is beyond listing`);
    },
    isRepresentative: () => true,
  };
}
