import { countNecklaces, writtenOrders } from '../../order/necklace.js';
import { PARTS } from '../../score/parts/parts.js';
import type { Question } from '../question/question.js';
import type { Candidate } from './candidate.js';
import { familiesOf } from './families.js';
import type { Family } from './family.js';
import { type Orbits, orbitsOf } from './orbit.js';
import { PART_BOUNDS } from './part-bounds.js';
import { countFamilies, countWritten, listFamilies } from './profile-search.js';
import { candidateIn, type Stratum, strataOf } from './stratum.js';

/** Up to so many candidates every one is scored. */
const SCORED_AT_MOST = 50_000;
/** Up to so many every one is scored if the question has no bounds. */
const LISTED_AT_MOST = 2_000_000;
/** Up to so many every one is held against its bounds if the question has them. */
const BOUNDED_AT_MOST = 20_000_000_000;
/** How many candidates are scored at the most of a space that is larger still. */
const EVOLVED_AT_MOST = 400_000;
/** The longest order, in elements, that the bounds can hold as bits of one number. */
const LONGEST_BOUNDED = 24;

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
  const estimate = estimated(question) * sumOf(asked, countFamilies);
  const bounded = canBeBounded(question, asked);
  const listed = estimate > (bounded ? BOUNDED_AT_MOST : LISTED_AT_MOST) ? [undefined] : asked.map(listFamilies);
  if (!listed.every((list) => list !== undefined)) return beyondListing(asked, written, estimate);
  const families = listed.flat();
  const strata = strataOf(question, families);
  const numbers = strata.reduce((sum, stratum) => sum + stratum.count, 0);
  if (numbers > LISTED_AT_MOST && !bounded) return beyondListing(asked, written, numbers);
  const orbits = new Map<Stratum, Orbits>();
  const orbitsIn = (stratum: Stratum): Orbits => {
    let known = orbits.get(stratum);
    if (known === undefined) {
      known = orbitsOf(question, stratum);
      orbits.set(stratum, known);
    }
    return known;
  };
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
    count: strata.reduce((sum, stratum) => sum + orbitsIn(stratum).count(), 0),
    way: bounded && numbers > SCORED_AT_MOST ? 'bounded' : 'scored',
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

/** Whether the question has bounds: two yarns, own weft orders, and weaves that do not depend on the orders. */
function canBeBounded(question: Question, families: readonly Family[]): boolean {
  return (
    question.yarns.length === 2 &&
    question.weft.rule === 'own' &&
    question.orders.length === 0 &&
    question.warp === undefined &&
    question.rank.contrast > 0 &&
    // The best of a niche may score far below the best of all.
    !question.oneOfEachKind &&
    // The other parts have no bound below 1, so hardly any candidate would be pruned.
    PARTS.every((part) => PART_BOUNDS[part] !== 'one' || question.rank[part] === 0) &&
    Math.max(...question.lengths) <= LONGEST_BOUNDED &&
    families.every((family) => family.fixedWeave && family.fill !== 'nest')
  );
}

function sumOf(families: readonly Family[], count: (family: Family) => number): number {
  return families.reduce((sum, family) => sum + count(family), 0);
}

/** A rough count that needs no list. */
function estimated(question: Question): number {
  const orders =
    question.orders.length > 0
      ? question.orders.length
      : question.lengths.reduce((sum, length) => sum + countNecklaces(length, question.yarns.length), 0);
  return pairsOf(question, orders);
}

/** Pairs of a warp and a weft order, of so many orders. */
function pairsOf(question: Question, orders: number): number {
  const own = question.weft.rule === 'own';
  if (question.warp !== undefined) return own ? orders : 1;
  return own ? orders ** 2 : orders;
}

/** A space too large to list. */
function beyondListing(families: readonly Family[], written: number, count: number): Space {
  return {
    written,
    count,
    way: 'evolved',
    numbers: EVOLVED_AT_MOST,
    families,
    strata: [],
    at: (index) => {
      throw new RangeError(`candidate ${index} of a space that is beyond listing`);
    },
    isRepresentative: () => true,
  };
}
