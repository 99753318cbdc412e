import { drawdown, isUp } from '../cloth/drawdown.js';
import type { Draft } from '../draft/draft.js';
import { spacing } from '../draft/draft.js';
import { encodeLight, yarnLight } from './light.js';
import { type Cover, coverOf, FROM_BEFORE, lightOn, ON_AFTER, type Relief } from './shade.js';
import { countingLay, type Lay, type Strands, trueLay } from './strands.js';

/** A picture: rows from the top, points from the left, three bytes a point (sRGB). */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** Which side is seen, and whether as value only. */
export interface View {
  /** The back is seen with the cloth turned over left to right. Default: face. */
  readonly side?: 'face' | 'back';
  /** Each yarn as the grey of its luminance. Default: in colour. */
  readonly grey?: boolean;
}

/** A piece of cloth at a physical scale: how much of it, and how many picture points to the millimetre. */
export interface Scale extends View {
  readonly millimetres: { readonly width: number; readonly height: number };
  readonly perMillimetre: number;
}

/** Threads are drawn round in full from this many points across, and flat at one point and below. */
const FULL_RELIEF = 4;

/**
 * Light that a thread's surface throws back whatever its colour, taken away again on the average: without it the
 * threads of a dark area could not be told apart.
 */
const SHEEN = 0.03;

/** One repeat, ready to be drawn: what is on top at each crossing, and the yarn of each strand. */
interface Crossings {
  readonly ends: number;
  readonly picks: number;
  /** For each pick and end: 4 where the end is on top, plus the state of the thread on top along itself. */
  readonly cells: Uint8Array;
  readonly warp: ArrayLike<number>;
  readonly weft: ArrayLike<number>;
}

const END_ON_TOP = 4;

/**
 * Woven cloth at true scale. End 1 is at the left edge and the first pick at the top edge; the repeat goes on without
 * a seam. Light is gathered exactly over each picture point, in linear light, so that threads finer than a point mix
 * as they do in the eye; the shading of round threads is evened out so that the cloth as a whole keeps its lightness.
 */
export function paintCloth(draft: Draft, options: Scale): Picture {
  const { millimetres, perMillimetre } = options;
  const { across, along } = spacing(draft.sett);
  const finest = Math.min(across, along) * perMillimetre;
  const relief = Math.max(0, Math.min(1, (finest - 1) / (FULL_RELIEF - 1)));
  const lay = trueLay(draft, perMillimetre, relief);
  const width = Math.max(1, Math.round(millimetres.width * perMillimetre));
  const height = Math.max(1, Math.round(millimetres.height * perMillimetre));
  return paint(draft, options, lay, width, height, relief);
}

/** One whole repeat, near enough to count its threads: each end about `pointsPerEnd` points wide, edges sharp. */
export function paintClose(draft: Draft, options: View & { readonly pointsPerEnd: number }): Picture {
  const lay = countingLay(draft, options.pointsPerEnd);
  const sum = (strands: Strands) => strands.pitch.reduce((total, pitch) => total + pitch, 0);
  return paint(draft, options, lay, sum(lay.ends), sum(lay.picks), 1);
}

function paint(draft: Draft, view: View, lay: Lay, width: number, height: number, relief: Relief): Picture {
  const back = view.side === 'back';
  const ends = back ? turned(lay.ends) : lay.ends;
  const cloth = crossings(draft, back);
  const light = yarnLight(draft.yarns, view.grey ?? false);
  const lost = meanLight(cloth, ends, lay.picks, relief);
  const sheen = SHEEN * relief;
  const evened = light.map((l) => (l + sheen) / lost);
  const columns = coverOf(ends, width, relief);
  const rows = coverOf(lay.picks, height, relief);
  const rgb = new Uint8Array(width * height * 3);
  const row = new Float64Array(width * 3);
  for (let y = 0; y < height; y++) {
    row.fill(-sheen);
    for (let v = rows.first[y]!; v < rows.first[y + 1]!; v++) addPick(row, v, cloth, columns, rows, evened);
    for (let x = 0; x < row.length; x += 3) {
      // A crown brighter than white is held back in all three alike, or its hue would turn.
      const most = Math.max(row[x]!, row[x + 1]!, row[x + 2]!);
      const held = most > 1 ? 1 / most : 1;
      for (let c = 0; c < 3; c++) rgb[y * row.length + x + c] = encodeLight(row[x + c]! * held);
    }
  }
  return { width, height, rgb };
}

/** Adds to a row of linear light what entry `v` of the row's cover, a part of one pick, sends from every column. */
function addPick(
  row: Float64Array,
  v: number,
  cloth: Crossings,
  columns: Cover,
  rows: Cover,
  light: Float64Array,
): void {
  const pick = rows.strand[v]!;
  const cells = pick * cloth.ends;
  const weft = cloth.weft[pick]! * 3;
  const { first, strand, room, thread, gap, crossing } = columns;
  for (let x = 0, u = 0; x < row.length; x += 3) {
    for (const next = first[x / 3 + 1]!; u < next; u++) {
      const end = strand[u]!;
      const warp = cloth.warp[end]! * 3;
      const cell = cloth.cells[cells + end]!;
      const isUp = cell >= END_ON_TOP;
      const ofWarp = isUp ? thread[u]! * rows.crossing[v * 4 + cell - END_ON_TOP]! : rows.gap[v]! * room[u]!;
      const ofWeft = isUp ? gap[u]! * rows.room[v]! : rows.thread[v]! * crossing[u * 4 + cell]!;
      row[x] = row[x]! + ofWarp * light[warp]! + ofWeft * light[weft]!;
      row[x + 1] = row[x + 1]! + ofWarp * light[warp + 1]! + ofWeft * light[weft + 1]!;
      row[x + 2] = row[x + 2]! + ofWarp * light[warp + 2]! + ofWeft * light[weft + 2]!;
    }
  }
}

/** What is on top at each crossing of one repeat, seen from the face or from the back. */
function crossings(draft: Draft, back: boolean): Crossings {
  const cloth = drawdown(draft);
  const { ends, picks } = cloth;
  const top = new Uint8Array(ends * picks);
  for (let j = 0; j < picks; j++) {
    for (let i = 0; i < ends; i++) top[j * ends + i] = isUp(cloth, j, back ? ends - 1 - i : i) === back ? 0 : 1;
  }
  const cells = new Uint8Array(ends * picks);
  for (let j = 0; j < picks; j++) {
    const above = ((j + picks - 1) % picks) * ends;
    const below = ((j + 1) % picks) * ends;
    for (let i = 0; i < ends; i++) {
      const here = top[j * ends + i]!;
      const before = here ? top[above + i] : top[j * ends + ((i + ends - 1) % ends)];
      const after = here ? top[below + i] : top[j * ends + ((i + 1) % ends)];
      cells[j * ends + i] =
        (here ? END_ON_TOP : 0) | (before === here ? FROM_BEFORE : 0) | (after === here ? ON_AFTER : 0);
    }
  }
  return { ends, picks, cells, warp: back ? draft.warp.toReversed() : draft.warp, weft: draft.weft };
}

/** Mean light over one repeat of a cloth whose yarns are all white: what shading takes away. */
function meanLight(cloth: Crossings, ends: Strands, picks: Strands, relief: Relief): number {
  const whole = (strands: Strands) =>
    Array.from(strands.pitch, (pitch, s) => ({ pitch, ...lightOn(strands, s, 0, pitch, relief) }));
  const columns = whole(ends);
  const rows = whole(picks);
  let light = 0;
  let area = 0;
  rows.forEach((row, j) => {
    columns.forEach((column, i) => {
      const cell = cloth.cells[j * cloth.ends + i]!;
      light +=
        cell >= END_ON_TOP
          ? column.thread * row.crossing[cell - END_ON_TOP]! + column.gap * row.pitch
          : row.thread * column.crossing[cell]! + row.gap * column.pitch;
      area += column.pitch * row.pitch;
    });
  });
  return light / area;
}

/** The same strands in the opposite order. */
function turned({ pitch, before, body, line }: Strands): Strands {
  return {
    pitch: pitch.toReversed(),
    before: before.toReversed(),
    body: body.toReversed(),
    line: line.toReversed(),
  };
}
