import type { LocalLight } from './local-light.js';
import { type Shapes, ToneAreas } from './tone-areas.js';
import { tonesOf } from './tones.js';

/** A cell is dark where its blurred value is below the first, light where it is above the second. */
const DARK = 0.4;
const LIGHT = 0.6;

const areas = new ToneAreas();

/**
 * Counts the shapes of a repeat that has no edge: connected areas of dark places (below 0.4) and of light ones (above
 * 0.6); cells are connected where they share a side. Few (to four) are easily learnt, five and six lively, above eight
 * busy; none closed is stripes or a net (common practice).
 *
 * @param of values as they are gathered from two metres
 * @param enough a number of closed shapes from which on no more need be counted
 */
export function shapesOf(of: LocalLight, enough = Number.POSITIVE_INFINITY): Shapes {
  return areas.counted(tonesOf(of, DARK, LIGHT), of.ends, of.picks, enough);
}
