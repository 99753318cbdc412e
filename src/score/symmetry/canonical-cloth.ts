import { type Face, faceFromRows } from '../../cloth/face.js';
import { scratch } from '../../cloth/scratch.js';
import { analyse, type FaceAnalysis, type Side } from './analysis.js';
import type { CanonicalWord } from './canonical-word.js';
import { hashWords } from './hash.js';
import { IDENTITY, ISOMETRIES, type Isometry, type Vector } from './isometry.js';
import { rowSpacing } from './lattice.js';

/** What counts as the same cloth beside a plain shift. */
export const SAMENESS = ['mirror', 'half-turn', 'quarter-turn', 'exchange'] as const;
export type Sameness = (typeof SAMENESS)[number];

/** A face after an isometry: which side gives its rows and which its columns, and in which direction each is read. */
interface View {
  readonly isometry: Isometry;
  down: Side;
  level: Side;
  downReading: CanonicalWord;
  levelReading: CanonicalWord;
}

/** The matrix of cells that sorts first, with its view and the start of the reading on each side. */
interface Least {
  readonly cells: Uint8Array;
  readonly view: View;
  readonly down: number;
  readonly level: number;
}

/**
 * A key that two faces share exactly when they are the same cloth: when a translation carries one to the other, or
 * one after an operation that `same` allows (what they generate together: two mirrors make a half turn). Faces are
 * compared by their smallest repeats. With `exchange` the two colours may change places: in a palette of two
 * (`colours`), all dark and all light too; where more than two colours are shown there is no exchange. Quarter turns
 * ask nothing of the sett: who allows them says that cells are square.
 *
 * The key is a 128-bit hash as four words of 32 bits: among 10 million cloths the odds that any two share one by
 * accident are below 1e-24.
 */
export function clothKey(
  face: Face,
  same: readonly Sameness[],
  colours: number,
  analysis: FaceAnalysis = analyse(face),
): Uint32Array {
  return clothKeys(same, colours)(analysis);
}

/** The same for many faces, of which each has been analysed. Each key is overwritten by the next. */
export function clothKeys(same: readonly Sameness[], colours: number): (analysis: FaceAnalysis) => Uint32Array {
  const viewsOf = leastViews(isometriesOf(same));
  const mayExchange = same.includes('exchange');
  const leastCells = leastFinder();
  const roomForWords = scratch(Int32Array);
  const key = new Uint32Array(4);
  return (analysis) => {
    const views = viewsOf(analysis);
    const { shown } = analysis;
    const exchange = mayExchange && (shown === 2 || (shown === 1 && colours === 2));
    const { cells } = leastCells(analysis, views, exchange && shown === 2 && analysis.exchange === undefined);
    digest(views[0]!, cells, analysis, exchange, roomForWords, key);
    return key;
  };
}

/**
 * The canonical form of a face: its smallest repeat, shifted and turned so that its cells sort first. All faces of one
 * cloth (as `clothKey` defines it) give the same result, except that colours are not exchanged.
 */
export function standingFace(face: Face, same: readonly Sameness[], analysis: FaceAnalysis = analyse(face)): Face {
  const exchange = same.includes('exchange') && analysis.shown === 2 && analysis.exchange === undefined;
  const { view, ...starts } = leastFinder()(analysis, leastViews(isometriesOf(same))(analysis), exchange);
  const { isometry, down, level, downReading, levelReading } = view;
  const [downStep, levelStep] = isometry.turned ? [1, down.kinds] : [level.kinds, 1];
  const levels = kindsFrom(level, levelReading, starts.level);
  return faceFromRows(
    kindsFrom(down, downReading, starts.down).map((row) =>
      levels.map((column) => {
        const cell = analysis.cells[row * downStep + column * levelStep]!;
        return analysis.shown === 3 ? cell : cell === 0 ? analysis.low : analysis.high;
      }),
    ),
  );
}

/** The kinds of one side, read from a start of its least letters. */
function kindsFrom({ word, length, backward }: Side, reading: CanonicalWord, start: number): number[] {
  return Array.from({ length }, (_, k) => {
    const at = (start + k) % length;
    return word[reading === backward ? (2 * length - at) % length : at]!;
  });
}

/** The isometries that the allowed operations generate. */
function isometriesOf(same: readonly Sameness[]): readonly Isometry[] {
  const mirror = same.includes('mirror');
  const quarter = same.includes('quarter-turn');
  const found = [IDENTITY];
  if (mirror || quarter || same.includes('half-turn')) found.push(ISOMETRIES['half-turn']);
  if (mirror) found.push(ISOMETRIES['mirror-left-right'], ISOMETRIES['mirror-up-down']);
  if (quarter) found.push(ISOMETRIES['quarter-turn'], ISOMETRIES['quarter-turn-back']);
  if (mirror && quarter) found.push(ISOMETRIES.diagonal, ISOMETRIES.antidiagonal);
  return found;
}

/** Finds the views whose letters sort first; all of these have the same letters. They are overwritten by the next face's. */
function leastViews(isometries: readonly Isometry[]): (analysis: FaceAnalysis) => readonly View[] {
  const views: View[] = [];
  const least: View[] = [];
  return (analysis) => {
    let leastDown = Number.POSITIVE_INFINITY;
    let leastLevel = Number.POSITIVE_INFINITY;
    least.length = 0;
    for (let k = 0; k < isometries.length; k++) {
      const isometry = isometries[k]!;
      const down = isometry.turned ? analysis.columns : analysis.rows;
      const level = isometry.turned ? analysis.rows : analysis.columns;
      const downReading = (isometry.turned ? isometry.across : isometry.along) === 1 ? down.forward : down.backward;
      const levelReading = (isometry.turned ? isometry.along : isometry.across) === 1 ? level.forward : level.backward;
      const order = downReading.rank - leastDown || levelReading.rank - leastLevel;
      if (order > 0) continue;
      if (order < 0) least.length = 0;
      leastDown = downReading.rank;
      leastLevel = levelReading.rank;
      const view = views[k] ?? { isometry, down, level, downReading, levelReading };
      views[k] = view;
      view.down = down;
      view.level = level;
      view.downReading = downReading;
      view.levelReading = levelReading;
      least.push(view);
    }
    return least;
  };
}

/**
 * Finds the cells that sort first over all views and all starts of the least letters, with kinds numbered in the order
 * of first appearance. Letters and cells together determine the cloth. Starts of the rows that a translation of the face
 * makes equal are tried once. The cells are overwritten by the next face's.
 */
function leastFinder(): (analysis: FaceAnalysis, views: readonly View[], exchange: boolean) => Least {
  const room = scratch(Uint8Array);
  const downOrdersOf = orderer();
  const levelOrdersOf = orderer();
  return (analysis, views, exchange) => {
    const best = room(analysis.cells.length);
    // Above all cells, so that the first to be tried sort before it.
    best[0] = 255;
    let least = views[0]!;
    let [downStart, levelStart] = [0, 0];
    for (const view of views) {
      const { isometry, down, level, downReading, levelReading } = view;
      const { cells } = analysis;
      const downStep = isometry.turned ? 1 : level.kinds;
      const levelStep = isometry.turned ? down.kinds : 1;
      const differing = rowSpacing(analysis.lattice, isometry.turned ? ACROSS : ALONG);
      const downOrders = downOrdersOf(down, downReading, differing);
      const levelOrders = levelOrdersOf(level, levelReading, level.length);
      for (let u = 0; u < downOrders.length; u += down.kinds) {
        for (let v = 0; v < levelOrders.length; v += level.kinds) {
          // With colours as they are or exchanged, that which begins with 0 sorts first.
          const flip = exchange ? cells[downOrders[u]! * downStep + levelOrders[v]! * levelStep]! : 0;
          if (
            !keepLeast(best, cells, downOrders, u, down.kinds, downStep, levelOrders, v, level.kinds, levelStep, flip)
          ) {
            continue;
          }
          least = view;
          downStart = downReading.start + (u / down.kinds) * downReading.step;
          levelStart = levelReading.start + (v / level.kinds) * levelReading.step;
        }
      }
    }
    return { cells: best, view: least, down: downStart, level: levelStart };
  };
}

const ACROSS: Vector = { x: 1, y: 0 };
const ALONG: Vector = { x: 0, y: 1 };

/**
 * Lists the kinds of a side in order of first appearance, from each start of its least letters over a stretch, one after
 * another.
 */
function orderer(): (side: Side, reading: CanonicalWord, stretch: number) => Uint16Array {
  const room = scratch(Uint16Array);
  const roomForSeen = scratch(Int32Array);
  return (side, reading, stretch) => {
    const { length, kinds, word } = side;
    const backward = reading === side.backward;
    const orders = room((stretch / reading.step) * kinds);
    const seenFrom = roomForSeen(kinds);
    for (let kind = 0; kind < kinds; kind++) seenFrom[kind] = -1;
    const step = backward ? -1 : 1;
    for (let from = 0, written = 0; from < stretch; from += reading.step) {
      const start = (reading.start + from) % length;
      const full = written + kinds;
      // The word is there twice, so that no reading runs over its end.
      for (let at = backward ? 2 * length - (start || length) : start; written < full; at += step) {
        const kind = word[at]!;
        if (seenFrom[kind] === from) continue;
        seenFrom[kind] = from;
        orders[written++] = kind;
      }
    }
    return orders;
  };
}

/** Writes the renumbered cells over `best` if they sort before it; says whether. The orders begin at `u0` and `v0`. */
function keepLeast(
  best: Uint8Array,
  cells: Uint8Array,
  downOrders: Uint16Array,
  u0: number,
  downKinds: number,
  downStep: number,
  levelOrders: Uint16Array,
  v0: number,
  levelKinds: number,
  levelStep: number,
  flip: number,
): boolean {
  let before = false;
  for (let u = 0, at = 0; u < downKinds; u++) {
    const row = downOrders[u0 + u]! * downStep;
    for (let v = 0; v < levelKinds; v++, at++) {
      const cell = cells[row + levelOrders[v0 + v]! * levelStep]! ^ flip;
      if (before) best[at] = cell;
      else if (cell > best[at]!) return false;
      else if (cell < best[at]!) {
        before = true;
        best[at] = cell;
      }
    }
  }
  return before;
}

/** Hashes lengths, letters, cells and the colours shown. */
function digest(
  view: View,
  cells: Uint8Array,
  analysis: FaceAnalysis,
  exchange: boolean,
  room: (length: number) => Int32Array,
  key: Uint32Array,
): void {
  const words = room(3 + view.down.length + view.level.length + ((cells.length + 3) >> 2));
  words[0] = view.down.length;
  words[1] = view.level.length;
  words[2] = coloursWord(analysis, exchange);
  let to = write(words, 3, view.downReading, view.down.length);
  to = write(words, to, view.levelReading, view.level.length);
  // Four cells a word, the first in the lowest byte.
  for (let at = 0; at < cells.length; at += 4) {
    let word = 0;
    for (let k = at; k < at + 4 && k < cells.length; k++) word |= cells[k]! << (8 * (k - at));
    words[to++] = word;
  }
  hashWords(words, key);
}

/** Writes the least letters of a reading from a place on; returns the place after the last. */
function write(words: Int32Array, from: number, { letters, start }: CanonicalWord, length: number): number {
  for (let at = 0; at < length; at++) words[from + at] = letters[start + at]!;
  return from + length;
}

/** A number for the colours shown. A face of one colour that may be exchanged has the same number for either colour. */
function coloursWord({ shown, low, high }: FaceAnalysis, exchange: boolean): number {
  return shown === 1 && exchange ? -1 : (shown << 16) | (low << 8) | high;
}
