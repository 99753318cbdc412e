import { modulo } from '../../draft/repeat.js';

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
  const picks = cells / ends;
  const tone = (at: number): -1 | 0 | 1 => (light[at]! < DARK ? -1 : light[at]! > LIGHT ? 1 : 0);
  // Where each place of an area lies when the area is followed from its first place without coming round.
  const x = new Int32Array(cells);
  const y = new Int32Array(cells);
  const area = new Int32Array(cells).fill(-1);
  const queue = new Int32Array(cells);
  const known = new Set<string>();
  let endless = 0;
  for (let first = 0; first < cells; first++) {
    const own = tone(first);
    if (own === 0 || area[first] !== -1) continue;
    x[first] = first % ends;
    y[first] = (first - x[first]!) / ends;
    area[first] = first;
    queue[0] = first;
    let count = 1;
    let comesRound = false;
    for (let next = 0; next < count; next++) {
      const here = queue[next]!;
      for (const [dx, dy] of SIDES) {
        const i = x[here]! + dx;
        const j = y[here]! + dy;
        const there = modulo(j, picks) * ends + modulo(i, ends);
        if (tone(there) !== own) continue;
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
    else known.add(`${own} ${outline(queue.subarray(0, count), x, y)}`);
  }
  return { closed: known.size, endless };
}

const SIDES = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

/** A name of an area that does not change when it is shifted: its cells, relative to its upper left corner, sorted. */
function outline(places: Int32Array, x: Int32Array, y: Int32Array): string {
  let left = Infinity;
  let top = Infinity;
  let right = -Infinity;
  for (const at of places) {
    left = Math.min(left, x[at]!);
    right = Math.max(right, x[at]!);
    top = Math.min(top, y[at]!);
  }
  const width = right - left + 1;
  const told = Int32Array.from(places, (at) => (y[at]! - top) * width + x[at]! - left).sort();
  return `${width}: ${told.join(' ')}`;
}
