import type { Drawdown } from '../../cloth/drawdown.js';
import type { Woven } from '../../cloth/face.js';
import { roomIn } from '../../cloth/scratch.js';
import { smallestPeriod } from '../../order/order.js';
import { LightLines, slopesOf, tapsOf } from './light-lines.js';
import type { LightOrder } from './light-order.js';

/**
 * The light of a cloth as the eye gathers it: the values of the face blurred by a Gaussian, cell by cell. A cell shows
 * either its end or its pick. So its light is what the ends bring where they lie on the face, blurred, plus what the
 * picks bring where they do, blurred. From pick to pick, what the ends bring repeats with the weave, whatever the
 * colours: a few lines hold all of it.
 */
export interface LocalLight {
  readonly ends: number;
  readonly picks: number;
  /** After how many ends, and picks, the weave repeats. */
  readonly everyEnd: number;
  readonly everyPick: number;
  /** What the ends bring: `byEnds[place of the pick in the weave * ends + end]`. Both may be longer than what they hold. */
  readonly byEnds: Float64Array;
  /** What the picks bring: `byPicks[pick * everyEnd + place of the end in the weave]`. */
  readonly byPicks: Float64Array;
  /** The least and the largest of the ends at one place: `leastEnds[place of the pick * everyEnd + place of the end]`. */
  readonly leastEnds: Float64Array;
  readonly mostEnds: Float64Array;
  /** Twice the slopes of both, across and then along, two numbers a place; only where they are asked for. */
  readonly slopesOfEnds: Float64Array;
  readonly slopesOfPicks: Float64Array;
  /** Ends and picks in order of what they bring, where there are many ends at one place. */
  readonly order: readonly [ends: LightOrder, picks: LightOrder] | undefined;
}

/**
 * Gathers the light of cloths. The lines of the ends depend on the warp alone and stay in its rooms, as those of the
 * picks do with the weft; where they are too long for that, each cloth is overwritten by the next.
 *
 * @param values 0 (dark) to 1 (light) of each palette index
 * @param across, along σ of the blur in ends and in picks
 * @param withSlopes false where no slopes are asked for
 */
export function lightGatherer(
  values: ArrayLike<number>,
  across: number,
  along: number,
  withSlopes = true,
): (woven: Woven) => LocalLight {
  const linesOfEnds = roomIn(() => new LightLines());
  const linesOfPicks = roomIn(() => new LightLines());
  const wide = tapsOf(across);
  const high = tapsOf(along);
  return ({ cloth, ends, picks }) => {
    const [width, height] = [ends.kind.length, picks.kind.length];
    const [everyEnd, everyPick] = periodsOf(cloth);
    const byEnds = linesOfEnds(everyPick * width > MOST_KEPT ? undefined : ends.rooms);
    const byPicks = linesOfPicks(everyEnd * height > MOST_KEPT ? undefined : picks.rooms);
    const isOrdered = width >= MANY * everyEnd;
    if (!byEnds.hold(cloth, ends)) {
      const step = cloth.endKinds;
      const shown = (end: number, pick: number): boolean => cloth.up[pick * step + end] === 1;
      byEnds.fill(values, shown, wide(width), high(everyPick), cloth.pickKind, cloth.pickKinds, false);
      byEnds.takeRange(everyEnd, everyPick);
      if (withSlopes) byEnds.slopes = slopesOf(byEnds.lines, everyPick, width, byEnds.slopes);
    }
    if (!byPicks.hold(cloth, picks)) {
      const step = cloth.endKinds;
      const shown = (pick: number, end: number): boolean => cloth.up[pick * step + end] === 0;
      byPicks.fill(values, shown, high(height), wide(everyEnd), cloth.endKind, cloth.endKinds, true);
      if (withSlopes) byPicks.slopes = slopesOf(byPicks.lines, height, everyEnd, byPicks.slopes);
    }
    return {
      ends: width,
      picks: height,
      everyEnd,
      everyPick,
      byEnds: byEnds.lines,
      byPicks: byPicks.lines,
      leastEnds: byEnds.least,
      mostEnds: byEnds.most,
      slopesOfEnds: byEnds.slopes,
      slopesOfPicks: byPicks.slopes,
      order: isOrdered
        ? [byEnds.sorted(everyEnd, everyPick, 1, width), byPicks.sorted(everyPick, everyEnd, everyEnd, 1)]
        : undefined,
    };
  };
}

/** The darkest and the lightest place. */
export function rangeOf({ picks, everyEnd, everyPick, byPicks, leastEnds, mostEnds }: LocalLight) {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let j = 0, at = 0, of = 0; j < picks; j++) {
    for (let x = 0; x < everyEnd; x++, at++, of++) {
      const darkest = leastEnds[of]! + byPicks[at]!;
      const lightest = mostEnds[of]! + byPicks[at]!;
      if (darkest < least) least = darkest;
      if (lightest > most) most = lightest;
    }
    if (of === everyPick * everyEnd) of = 0;
  }
  return { least, most };
}

/** So many ends at one place are sooner found by their order than compared one by one. */
const MANY = 8;

/** Most numbers that are kept with one warp or weft; longer weaves keep only the last. */
const MOST_KEPT = 2048;

const known = new WeakMap<Drawdown, readonly [ends: number, picks: number]>();

/** After how many ends, and picks, the weave repeats. */
function periodsOf(cloth: Drawdown): readonly [ends: number, picks: number] {
  let periods = known.get(cloth);
  if (periods === undefined) {
    periods = [smallestPeriod(cloth.endKind), smallestPeriod(cloth.pickKind)];
    known.set(cloth, periods);
  }
  return periods;
}
