import { type Rooms, roomIn, scratch } from './scratch.js';

/** A word of threads in which kinds that look the same have become one. */
export interface Merged {
  readonly word: Uint16Array;
  /** Of each new kind the first old one. */
  readonly kept: readonly number[];
  readonly rooms: Rooms;
}

/** The words made of one, each with the new kind of every old one. */
interface Forms {
  of: Uint16Array | undefined;
  used: number;
  readonly all: { word: Uint16Array; kept: readonly number[]; kinds: Uint16Array; readonly rooms: Rooms }[];
}

/** Most words made of one that are remembered. */
const MOST_FORMS = 16;

/**
 * Finds the equal lines of a matrix, and renames the kinds of a word by them: undefined if all differ. The matrix has
 * `lines` lines of `cells` cells; a step from line to line, and from cell to cell, is given. Words whose rooms are known
 * are remembered there.
 */
export function merger() {
  const room = scratch(Uint16Array);
  const roomForSigns = scratch(Int32Array);
  const formsIn = roomIn((): Forms => ({ of: undefined, used: 0, all: [] }));
  return (
    word: Uint16Array,
    rooms: Rooms | undefined,
    colour: Uint8Array,
    lines: number,
    cells: number,
    lineStep: number,
    cellStep: number,
  ): Merged | undefined => {
    const kinds = room(lines);
    const signs = roomForSigns(lines);
    let next = 0;
    for (let a = 0; a < lines; a++) {
      let sign = 0;
      for (let c = 0, at = a * lineStep; c < cells; c++, at += cellStep) sign = Math.imul(sign, 5) + colour[at]!;
      signs[a] = sign;
      let b = 0;
      while (b < a && (signs[b] !== sign || !isSame(colour, a * lineStep, b * lineStep, cells, cellStep))) b++;
      kinds[a] = b === a ? next++ : kinds[b]!;
    }
    if (next === lines) return undefined;
    const forms = formsIn(rooms);
    if (forms.of !== word || forms.used === MOST_FORMS) forms.used = 0;
    forms.of = word;
    for (let f = 0; f < forms.used; f++) if (equal(forms.all[f]!.kinds, kinds)) return forms.all[f]!;
    const form = {
      word: word.map((kind) => kinds[kind]!),
      kept: Array.from(kinds, (_, a) => a).filter((a) => kinds.indexOf(kinds[a]!) === a),
      kinds: kinds.slice(),
      rooms: forms.all[forms.used]?.rooms ?? [],
    };
    forms.all[forms.used++] = form;
    return form;
  };
}

function equal(a: Uint16Array, b: Uint16Array): boolean {
  for (let at = 0; at < a.length; at++) if (a[at] !== b[at]) return false;
  return true;
}

/** Whether two lines of a matrix, given by where they begin, are the same. */
function isSame(colour: Uint8Array, a: number, b: number, cells: number, cellStep: number): boolean {
  for (let at = 0; at < cells * cellStep; at += cellStep) if (colour[a + at] !== colour[b + at]) return false;
  return true;
}
