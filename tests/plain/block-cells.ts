// Drawdowns of block weaves crossing by crossing, each from a rule in words: no threading, no tie-up, no shafts.
import type { Lifts } from './floats.js';

/** Whether the end at this place of its unit lies over the pick at that place of its own. */
type Rule = (end: number, pick: number, shown: boolean, turn: number, together: string) => boolean;

interface BlockRule {
  readonly ends: number;
  readonly picks: number;
  readonly rule: Rule;
  /** Tabby picks of a unit, where they must come out even over the whole. */
  readonly tabbies?: number;
}

/** One end up in a block that shows, one down elsewhere; there the twill runs the other way, or the same way. */
const turned = (order: readonly number[], opposite: boolean): BlockRule => ({
  ends: order.length,
  picks: order.length,
  rule: (end, pick, shown) => {
    const at = order[pick]!;
    return shown ? end === at : end !== (opposite ? order.length - 1 - at : at);
  },
});

/**
 * Pattern picks with tabby between. Odd ends are ties, first and second by turns; the tie named goes up, its fellow
 * down; pattern ends are down where the block shows. `turn` counts tabby picks through the cloth.
 */
const tied = (ties: readonly number[]): BlockRule => ({
  ends: 4,
  picks: 2 * ties.length,
  rule: (end, pick, shown, turn) => {
    const isTie = end % 2 === 0;
    if (pick % 2 === 1) return (turn % 2 === 0) === isTie;
    return isTie ? end / 2 + 1 === ties[pick / 2] : !shown;
  },
});

/** Pattern picks with tabby between, over all ends of a unit that shows but its tie, and elsewhere under all but the tie. */
const ownTie = (ends: number, tie: number): BlockRule => ({
  ends,
  picks: ends,
  tabbies: ends / 2,
  rule: (end, pick, shown, turn) => (pick % 2 === 1 ? (turn % 2 === 0) === (end % 2 === 0) : shown === (end === tie)),
});

/** Cells of each weave of any number of blocks, by structure and manner. */
export const BLOCK_RULES: Readonly<Record<string, BlockRule>> = {
  'turned twill, clean cuts': turned([0, 1, 2, 3], true),
  'turned twill, broken order': turned([0, 1, 3, 2], true),
  'turned twill, same twill direction': turned([0, 1, 2, 3], false),
  'turned twill of three, clean cuts': turned([0, 1, 2], true),
  'turned twill of three, same twill direction': turned([0, 1, 2], false),
  'turned satin, clean cuts': turned([3, 0, 2, 4, 1], true),
  // Ties over the first two ends, then over the last two; between them odd ends where the block shows, else even ones.
  'turned taqueté by shafts, as drawn in': {
    ends: 4,
    picks: 4,
    rule: (end, pick, shown) => (pick % 2 === 0 ? end < 2 === (pick === 0) : (end % 2 === 0) === shown),
  },
  'summer and winter, singles': tied([1, 2]),
  'summer and winter, pairs X': tied([2, 1, 1, 2]),
  'summer and winter, pairs O': tied([1, 2, 2, 1]),
  'summer and winter, columns': tied([1, 1]),
  // Blocks A, C … tie on the second tie of every unit, the others on the first.
  'halvdräll, as drawn in': {
    ends: 4,
    picks: 4,
    rule: (end, pick, shown, turn, together) => {
      const second = together === '.' || (together.charCodeAt(0) - 65) % 2 === 0;
      return tied(second ? [2, 2] : [1, 1]).rule(end, pick, shown, turn, together);
    },
  },
  'halvdräll, float of five, as drawn in': ownTie(6, 2),
  'halvdräll, float of seven, as drawn in': ownTie(8, 4),
  // The pattern weft over whole units, or under them.
  'monk’s belt, as drawn in': {
    ends: 2,
    picks: 4,
    rule: (end, pick, shown, turn) => (pick % 2 === 1 ? (turn % 2 === 0) === (end === 0) : !shown),
  },
  // Ends 1 3 5 8 opposite to 2 4 6 7 for plain weave is every other end; for ribs, halves of the unit.
  'M’s and O’s with tabby, as drawn in': {
    ends: 8,
    picks: 8,
    rule: (end, pick, shown) => (shown ? end < 4 : end % 2 === 0) === (pick % 2 === 0),
  },
  // Odd ends over every odd pick; even ends over the even picks, but not where the block shows.
  'spot Bronson, as drawn in': {
    ends: 2,
    picks: 2,
    rule: (end, pick, shown) => (end === 0 ? pick === 0 : pick === 1 && !shown),
  },
  'Bronson lace, as drawn in': {
    ends: 6,
    picks: 6,
    rule: (end, pick, shown) =>
      (end % 2 === 0) === (pick % 2 === 0) && !(shown && end % 2 === 1 && end < 5 && pick < 5),
  },
};

/**
 * The drawdown of a block weave: every unit of ends with every unit of picks.
 *
 * @param threaded the block of each unit of ends, `.` for none
 * @param treadled the blocks that show at each unit of picks, as `A+C`
 */
export function blockCells(
  { ends, picks, rule, tabbies = 0 }: BlockRule,
  threaded: readonly string[],
  treadled: readonly string[],
): Lifts {
  let tabby = 0;
  const odd = (treadled.length * tabbies) % 2 === 1;
  return (odd ? [...treadled, ...treadled] : treadled).flatMap((together) =>
    Array.from({ length: picks }, (_, pick) => {
      const row = threaded.flatMap((block) =>
        Array.from({ length: ends }, (__, end) =>
          rule(end, pick, block !== '.' && together.split('+').includes(block), tabby, together) ? 1 : 0,
        ),
      );
      if (pick % 2 === 1) tabby++;
      return row;
    }),
  );
}
