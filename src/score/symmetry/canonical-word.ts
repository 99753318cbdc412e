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

/** A reading whose rank is still being counted. */
type Ranked = Omit<CanonicalWord, 'rank'> & { rank: number };

interface BothWays {
  readonly forward: CanonicalWord;
  readonly backward: CanonicalWord;
}

/** Marks are 15 bits above the 16 of a distance. */
const MARK_SHIFT = 16;
const MARK_MASK = 0x7fff;
/**
 * The golden ratio in 32 bits, which spreads small numbers over all bits (Knuth, The Art of Computer Programming 3,
 * 6.4).
 */
const SPREAD = 0x9e3779b1;

/** Reads rows and columns both ways. Words are written twice; cells as in `FaceAnalysis`. */
export function canonicalWords(
  rowWord: Uint16Array,
  columnWord: Uint16Array,
  cells: Uint8Array,
  rowKinds: number,
  columnKinds: number,
  twoColours: boolean,
): { readonly rows: BothWays; readonly columns: BothWays } {
  const rows = distances(rowWord, rowKinds);
  const columns = distances(columnWord, columnKinds);
  mark(rows, rowWord, weights(columns.forward, columnWord, columnKinds), cells, columnKinds, 1, twoColours);
  mark(columns, columnWord, weights(rows.forward, rowWord, rowKinds), cells, 1, columnKinds, twoColours);
  const rowsForward = least(rows.forward);
  const rowsBackward = least(rows.backward);
  const columnsForward = least(columns.forward);
  const columnsBackward = least(columns.backward);
  rank([rowsForward, rowsBackward, columnsForward, columnsBackward]);
  return {
    rows: { forward: rowsForward, backward: rowsBackward },
    columns: { forward: columnsForward, backward: columnsBackward },
  };
}

/** Distances to the next of the same kind; `backward` reads from place 0 towards the end of the word. */
function distances(word: Uint16Array, kinds: number): { forward: Int32Array; backward: Int32Array } {
  const length = word.length / 2;
  const last = new Int32Array(kinds);
  for (let at = 0; at < length; at++) last[word[at]!] = at - length;
  const forward = new Int32Array(2 * length);
  const backward = new Int32Array(2 * length);
  for (let at = 0; at < length; at++) {
    const kind = word[at]!;
    const before = last[kind]!;
    const distance = at - before;
    last[kind] = at;
    forward[before < 0 ? before + length : before] = distance;
    backward[at === 0 ? 0 : length - at] = distance;
  }
  return { forward, backward };
}

/**
 * A weight for each kind that no shift, mirror or turn changes: a sum over its distances. The distances of a kind add
 * up to the length of the word, so all kinds of a word have the same weight.
 */
function weights(forward: Int32Array, word: Uint16Array, kinds: number): Int32Array {
  const weight = new Int32Array(kinds);
  for (let at = 0; at < word.length / 2; at++) weight[word[at]!]! += Math.imul(forward[at]! & 0xffff, SPREAD);
  return weight;
}

/**
 * Puts a mark of its kind on every letter and writes the letters twice. The mark is computed from the sum of the kind's
 * cells; no isometry and no exchange of two colours changes it. Letters with different marks rule out rotations that
 * cannot carry the face to itself. Different kinds may have the same mark: then more rotations are tried, in vain.
 */
function mark(
  { forward, backward }: { forward: Int32Array; backward: Int32Array },
  word: Uint16Array,
  weight: Int32Array,
  cells: Uint8Array,
  kindStride: number,
  cellStride: number,
  twoColours: boolean,
): void {
  const length = word.length / 2;
  let whole = 0;
  for (const w of weight) whole = (whole + w) | 0;
  const marks = new Int32Array(cells.length / weight.length);
  for (let kind = 0; kind < marks.length; kind++) {
    let sum = 0;
    for (let c = 0, at = kind * kindStride; c < weight.length; c++, at += cellStride) {
      sum = (sum + Math.imul(weight[c]!, cells[at]!)) | 0;
    }
    const either = twoColours ? Math.imul(sum, whole - sum) : Math.imul(sum, SPREAD);
    marks[kind] = ((either ^ (either >>> 15)) & MARK_MASK) << MARK_SHIFT;
  }
  for (let at = 0; at < length; at++) {
    const there = marks[word[at]!]!;
    const back = at === 0 ? 0 : length - at;
    forward[at] = forward[at + length] = forward[at]! | there;
    backward[back] = backward[back + length] = backward[back]! | there;
  }
}

/** The rotation that sorts first, in the two-pointer form of Booth (Inf. Process. Lett. 10, 1980), and its period. */
function least(letters: Int32Array): Ranked {
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
  return { letters, start, step: rival < length ? rival - start : length, rank: 0 };
}

/** Sets each reading's rank to the number of readings that sort before it. */
function rank(readings: readonly Ranked[]): void {
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
