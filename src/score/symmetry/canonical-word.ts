import { roomy, scratch } from '../../cloth/scratch.js';
import { smallestPeriod } from '../../order/order.js';

/**
 * A cyclic word of kinds, read in one direction, in letters that do not depend on the numbers of the kinds. The letter
 * of a place is the distance to the next place of the same kind (16 bits) with a mark of the kind above it. Renaming
 * kinds makes two words equal exactly when their distances agree place by place. See CANONICAL-CLOTH.md.
 */
export interface CanonicalWord {
  /** Letters, the word written twice. */
  readonly letters: Int32Array;
  /** Where the rotation that sorts first begins. */
  readonly start: number;
  /** Rotations by whole multiples of this give the same letters; it divides the length. */
  readonly step: number;
  /** Among the four readings of a face: equal exactly when the rotations that sort first are equal. */
  readonly rank: number;
}

/** A reading that is still being made. */
type Reading = { -readonly [K in keyof CanonicalWord]: CanonicalWord[K] };

/** What a word of kinds says by itself, whatever its threads show. Arrays may be longer than what they hold. */
export class RepeatedWord {
  /** Places in the smallest repeat. */
  length = 0;
  kinds = 0;
  /** Kind at each place, the repeat written twice. */
  word: Uint16Array = new Uint16Array(0);
  /** First place of each kind. */
  first: Uint16Array = new Uint16Array(0);
  /** Distance from each place to the next of its kind; `backward` reads from place 0 towards the end of the word. */
  forward: Int32Array = new Int32Array(0);
  backward: Int32Array = new Int32Array(0);
  private of: Uint16Array | undefined;

  /** Turns to another word: cuts it to its smallest repeat and takes the distances between places of one kind. */
  turnTo(long: Uint16Array, kinds: number): void {
    if (long === this.of) return;
    this.of = long;
    const length = smallestPeriod(long);
    this.length = length;
    this.kinds = kinds;
    this.word = roomy(this.word, 2 * length);
    this.first = roomy(this.first, kinds);
    this.forward = roomy(this.forward, length);
    this.backward = roomy(this.backward, length);
    const last = roomForLast(kinds);
    for (let at = 0; at < length; at++) {
      const kind = long[at]!;
      this.word[at] = kind;
      this.word[at + length] = kind;
      last[kind] = at - length;
    }
    for (let at = 0; at < length; at++) {
      const kind = long[at]!;
      const before = last[kind]!;
      const distance = at - before;
      last[kind] = at;
      if (before < 0) this.first[kind] = at;
      this.forward[before < 0 ? before + length : before] = distance;
      this.backward[at === 0 ? 0 : length - at] = distance;
    }
  }
}

const roomForLast = scratch(Int32Array);

/** Marks are 15 bits above the 16 of a distance. */
const MARK_SHIFT = 16;
const MARK_MASK = 0x7fff;
/**
 * The golden ratio in 32 bits, which spreads small numbers over all bits (Knuth, The Art of Computer Programming 3,
 * 6.4).
 */
const SPREAD = 0x9e3779b1;

/**
 * Reads rows forward and backward, then columns, with cells as in `FaceAnalysis`. The readings are overwritten by the next
 * face's.
 */
export function canonicalReader(): (
  rows: RepeatedWord,
  columns: RepeatedWord,
  cells: Uint8Array,
  twoColours: boolean,
) => readonly [CanonicalWord, CanonicalWord, CanonicalWord, CanonicalWord] {
  const rooms = [scratch(Int32Array), scratch(Int32Array), scratch(Int32Array), scratch(Int32Array)] as const;
  const roomForMarks = scratch(Int32Array);
  const reading = (): Reading => ({ letters: new Int32Array(0), start: 0, step: 0, rank: 0 });
  const readings = [reading(), reading(), reading(), reading()] as const;
  return (rows, columns, cells, twoColours) => {
    const [rowsForward, rowsBackward] = [rooms[0](2 * rows.length), rooms[1](2 * rows.length)];
    const [columnsForward, columnsBackward] = [rooms[2](2 * columns.length), rooms[3](2 * columns.length)];
    const marks = roomForMarks(Math.max(rows.kinds, columns.kinds));
    for (let r = 0, at = 0; r < rows.kinds; r++) {
      let sum = 0;
      for (let c = 0; c < columns.kinds; c++, at++) sum += cells[at]!;
      marks[r] = markOf(sum, columns, twoColours);
    }
    write(rows, marks, rowsForward, rowsBackward);
    for (let c = 0; c < columns.kinds; c++) {
      let sum = 0;
      for (let r = 0, at = c; r < rows.kinds; r++, at += columns.kinds) sum += cells[at]!;
      marks[c] = markOf(sum, rows, twoColours);
    }
    write(columns, marks, columnsForward, columnsBackward);
    readLeast(rowsForward, readings[0]);
    readLeast(rowsBackward, readings[1]);
    readLeast(columnsForward, readings[2]);
    readLeast(columnsBackward, readings[3]);
    rank(readings);
    return readings;
  };
}

/**
 * The mark of a kind, computed from the sum of its cells, each taken times the length of the crossing word. No isometry
 * and no exchange of two colours changes it. Letters with different marks rule out rotations that cannot carry the face
 * to itself. Different kinds may have the same mark: then more rotations are tried, in vain.
 */
function markOf(cells: number, crossing: RepeatedWord, twoColours: boolean): number {
  const weight = Math.imul(crossing.length, SPREAD);
  const sum = Math.imul(weight, cells);
  const rest = (Math.imul(weight, crossing.kinds) - sum) | 0;
  const either = twoColours ? Math.imul(sum, rest) : Math.imul(sum, SPREAD);
  return ((either ^ (either >>> 15)) & MARK_MASK) << MARK_SHIFT;
}

/** Writes the letters, distances with the marks of their kinds, twice. */
function write(
  { length, word, forward, backward }: RepeatedWord,
  marks: Int32Array,
  toForward: Int32Array,
  toBackward: Int32Array,
): void {
  for (let at = 0; at < length; at++) {
    const mark = marks[word[at]!]!;
    const back = at === 0 ? 0 : length - at;
    toForward[at] = toForward[at + length] = forward[at]! | mark;
    toBackward[back] = toBackward[back + length] = backward[back]! | mark;
  }
}

/** Finds the rotation that sorts first, in the two-pointer form of Booth (Inf. Process. Lett. 10, 1980), and its period. */
function readLeast(letters: Int32Array, to: Reading): void {
  const length = letters.length / 2;
  let start = 0;
  let rival = 1;
  let same = 0;
  // All places before `rival` but `start` are known to begin no least rotation.
  while (rival < length && same < length) {
    const difference = letters[start + same]! - letters[rival + same]!;
    if (difference === 0) {
      same++;
      continue;
    }
    if (difference < 0) rival += same + 1;
    else {
      start = Math.max(start + same + 1, rival);
      rival = start + 1;
    }
    same = 0;
  }
  to.letters = letters;
  to.start = start;
  to.step = rival < length ? rival - start : length;
  to.rank = 0;
}

/** Sets each reading's rank to the number of readings that sort before it. */
function rank(readings: readonly Reading[]): void {
  for (let a = 0; a < readings.length; a++) {
    for (let b = a + 1; b < readings.length; b++) {
      const order = compare(readings[a]!, readings[b]!);
      if (order < 0) readings[b]!.rank++;
      else if (order > 0) readings[a]!.rank++;
    }
  }
}

/**
 * Below 0, 0 or above as the rotation of `a` that sorts first is shorter or sorts before, equals, or follows that of
 * `b`.
 */
function compare(a: CanonicalWord, b: CanonicalWord): number {
  if (a.letters.length !== b.letters.length) return a.letters.length - b.letters.length;
  const length = a.letters.length / 2;
  for (let at = 0; at < length; at++) {
    const difference = a.letters[a.start + at]! - b.letters[b.start + at]!;
    if (difference !== 0) return difference;
  }
  return 0;
}
