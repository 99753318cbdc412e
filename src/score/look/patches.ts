import type { Face } from '../../cloth/face.js';
import { roomIn, roomy, scratch } from '../../cloth/scratch.js';

const roomForShown = scratch(Uint8Array);
const count = new Int32Array(16);

/**
 * The variety of a face, thread by thread: Shannon's bits of the sixteen possible patches of 2 × 2
 * cells, dark or light, over the whole repeat; 4 at most. 0 is one colour, 1 plain stripes; above 3.8 it is noise. A
 * cell is dark where its value is below one half.
 */
export function patchBits(face: Face, values: ArrayLike<number>): number {
  const { rowKinds, columnKinds, colour, ends, picks } = face;
  const rows = neighbouringRows(face.rowRooms);
  const columns = neighbouringColumns(face.columnRooms);
  rows.turnTo(face.row, rowKinds);
  columns.turnTo(face.column, columnKinds);
  // Of each kind of row, what it shows of a pair of ends: bit 0 where the left one is light, bit 1 where the right one is.
  const shown = roomForShown(rowKinds * columns.pairs);
  for (let r = 0, at = 0; r < rowKinds; r++) {
    for (let c = 0; c < columns.pairs; c++, at++) {
      const left = values[colour[r * columnKinds + columns.before[c]!]!]!;
      const right = values[colour[r * columnKinds + columns.after[c]!]!]!;
      shown[at] = Number(left >= 0.5) | (Number(right >= 0.5) << 1);
    }
  }
  count.fill(0);
  for (let r = 0; r < rows.pairs; r++) {
    const upper = rows.before[r]! * columns.pairs;
    const lower = rows.after[r]! * columns.pairs;
    const times = rows.count[r]!;
    for (let c = 0; c < columns.pairs; c++) {
      const patch = shown[upper + c]! | (shown[lower + c]! << 2);
      count[patch] = count[patch]! + times * columns.count[c]!;
    }
  }
  const cells = ends * picks;
  let bits = 0;
  for (const n of count) if (n > 0) bits -= (n / cells) * Math.log2(n / cells);
  return Math.min(4, Math.max(0, bits));
}

/**
 * Pairs of neighbouring threads by their kinds, with how often each occurs round the repeat. They depend on the word of
 * kinds alone and stay in its rooms. Arrays may be longer than what they hold.
 */
class Neighbours {
  pairs = 0;
  before = new Uint16Array(0);
  after = new Uint16Array(0);
  count = new Uint16Array(0);
  private word: Uint16Array | undefined;

  /** Turns to another word. */
  turnTo(word: Uint16Array, kinds: number): void {
    if (word === this.word) return;
    this.word = word;
    this.pairs = 0;
    this.before = roomy(this.before, word.length);
    this.after = roomy(this.after, word.length);
    this.count = roomy(this.count, word.length);
    const known = roomForKnown(kinds * kinds).fill(-1);
    for (let s = 0, before = word[word.length - 1]!; s < word.length; s++) {
      const after = word[s]!;
      let pair = known[before * kinds + after]!;
      if (pair < 0) {
        pair = this.pairs++;
        known[before * kinds + after] = pair;
        this.before[pair] = before;
        this.after[pair] = after;
        this.count[pair] = 0;
      }
      this.count[pair] = this.count[pair]! + 1;
      before = after;
    }
  }
}

const roomForKnown = scratch(Int32Array);
const neighbouringRows = roomIn(() => new Neighbours());
const neighbouringColumns = roomIn(() => new Neighbours());
