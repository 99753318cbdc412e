import { scratch } from '../../cloth/scratch.js';
import { scattered } from '../symmetry/hash.js';

/** A cell is dark where its blurred value is below the first, light where it is above the second. */
const DARK = 0.4;
const LIGHT = 0.6;

/** Counts of the areas of a face. */
export interface Shapes {
  /** Closed dark shapes and closed light ones that differ by more than a shift. */
  readonly closed: number;
  /** Areas that run on from repeat to repeat: grounds, nets, stripes. */
  readonly endless: number;
}

/**
 * Counts the shapes of a repeat that has no edge: connected areas of dark places (below 0.4) and of light ones (above
 * 0.6); cells are connected where they share a side. Few (to four) are easily learnt, five and six lively, above eight
 * busy; none closed is stripes or a net (common practice).
 *
 * @param light values as they are gathered from two metres, cell by cell
 */
export function shapesOf(light: ArrayLike<number>, ends: number): Shapes {
  const cells = light.length;
  const tone = roomForTones(cells);
  for (let at = 0; at < cells; at++) tone[at] = light[at]! < DARK ? 1 : light[at]! > LIGHT ? 2 : 0;
  // Where each place of an area lies when the area is followed from its first place without coming round.
  const x = roomForX(cells);
  const y = roomForY(cells);
  const area = roomForAreas(cells).fill(-1);
  const queue = roomForQueue(cells);
  const known = new Set<string>();
  let endless = 0;
  for (let first = 0; first < cells; first++) {
    const own = tone[first]!;
    if (own === 0 || area[first] !== -1) continue;
    x[first] = first % ends;
    y[first] = (first - x[first]!) / ends;
    area[first] = first;
    queue[0] = first;
    let count = 1;
    let comesRound = false;
    for (let next = 0; next < count; next++) {
      const here = queue[next]!;
      const column = here % ends;
      for (let side = 0; side < 4; side++) {
        const there =
          side === 0
            ? here + (column + 1 === ends ? 1 - ends : 1)
            : side === 1
              ? here - (column === 0 ? 1 - ends : 1)
              : side === 2
                ? here + (here + ends >= cells ? ends - cells : ends)
                : here - (here < ends ? ends - cells : ends);
        if (tone[there] !== own) continue;
        const i = x[here]! + DX[side]!;
        const j = y[here]! + DY[side]!;
        if (area[there] === first) {
          if (x[there] !== i || y[there] !== j) comesRound = true;
          continue;
        }
        x[there] = i;
        y[there] = j;
        area[there] = first;
        queue[count++] = there;
      }
    }
    if (comesRound) endless++;
    else known.add(`${own} ${outline(queue, count, x, y)}`);
  }
  return { closed: known.size, endless };
}

const DX = [1, -1, 0, 0];
const DY = [0, 0, 1, -1];

const roomForTones = scratch(Uint8Array);
const roomForX = scratch(Int32Array);
const roomForY = scratch(Int32Array);
const roomForAreas = scratch(Int32Array);
const roomForQueue = scratch(Int32Array);

/**
 * A name of an area that does not change when it is shifted: its width, its cells, and two sums over the numbers that
 * its cells have in the rectangle around it, each scattered over 32 bits. Two of a cloth's areas share one by accident
 * with odds below one in 10^15.
 */
function outline(places: Int32Array, count: number, x: Int32Array, y: Int32Array): string {
  let left = Infinity;
  let top = Infinity;
  let right = -Infinity;
  for (let k = 0; k < count; k++) {
    const at = places[k]!;
    left = Math.min(left, x[at]!);
    right = Math.max(right, x[at]!);
    top = Math.min(top, y[at]!);
  }
  const width = right - left + 1;
  let one = 0;
  let other = 0;
  for (let k = 0; k < count; k++) {
    const at = places[k]!;
    const number = (y[at]! - top) * width + x[at]! - left + 1;
    one = (one + scattered(Math.imul(number, 0x9e3779b1))) | 0;
    other = (other + scattered(Math.imul(number, 0x239b961b) ^ 0x38b34ae5)) | 0;
  }
  return `${width} ${count} ${one} ${other}`;
}
