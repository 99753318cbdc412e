import type { Draft } from '../draft/draft.js';
import { spacing } from '../draft/draft.js';
import { AT_THE_LOOM, type Seen } from '../draft/point-of-view.js';
import { type Crossings, crossings, END_ON_TOP } from './crossings.js';
import { encodeLight, yarnLight } from './light.js';
import { type Cover, coverOf, lightOn, type Relief } from './shade.js';
import { type DrawnStrands, type Lay, trueLay } from './strands.js';

/** A picture: rows from the top, points from the left, three bytes a point (sRGB). */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** The side that is drawn, from where, and whether in colour or grey. */
export interface ClothView {
  /** The back is drawn with the cloth turned over left to right. Default: face. */
  readonly side?: 'face' | 'back';
  /** Draw each yarn as the grey of its luminance. Default: in colour. */
  readonly grey?: boolean;
  /** The corner at which the cloth begins. Default: as at the loom. */
  readonly seen?: Seen;
}

/** A piece of cloth at a physical scale: its size in millimetres, and picture points per millimetre. */
export interface Scale extends ClothView {
  readonly millimetres: { readonly width: number; readonly height: number };
  readonly perMillimetre: number;
}

/**
 * Picture points across a thread from which its roundness is drawn in full; at one point and below threads are flat.
 */
const FULL_RELIEF = 4;

/**
 * Light that the surface of a thread reflects whatever its colour, subtracted again on average. Without it the threads
 * of a dark area could not be told apart.
 */
const SHEEN = 0.03;

/**
 * Paints woven cloth at true scale, end 1 and the first pick at the edges of its point of view, the repeat without a
 * seam. Linear light is integrated exactly over each picture point, so threads finer than a point mix as they do in the
 * eye. The shading of round threads is compensated, so that the cloth as a whole keeps its lightness.
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

function paint(draft: Draft, view: ClothView, lay: Lay, width: number, height: number, relief: Relief): Picture {
  const back = view.side === 'back';
  const ends = back ? turned(lay.ends) : lay.ends;
  const cloth = crossings(draft, back);
  const light = yarnLight(draft.yarns, view.grey ?? false);
  const lost = meanLight(cloth, ends, lay.picks, relief);
  const sheen = SHEEN * relief;
  const evened = light.map((l) => (l + sheen) / lost);
  const columns = coverOf(ends, width, relief, cloth.sameEnd);
  const rows = coverOf(lay.picks, height, relief, cloth.samePick);
  const woven: WovenPick[] = [];
  const across = columns.first.length - 1;
  const down = rows.first.length - 1;
  const row = new Float64Array(across * 3);
  const rgb = new Uint8Array(down * across * 3);
  for (let y = 0; y < down; y++) {
    row.fill(-sheen);
    for (let v = rows.first[y]!; v < rows.first[y + 1]!; v++) {
      const pick = rows.strand[v]!;
      woven[pick] ??= weave(cloth, pick, columns, evened);
      addPick(row, v, woven[pick], columns, rows);
    }
    encode(row, rgb, y * row.length);
  }
  const { pick, end } = view.seen ?? AT_THE_LOOM;
  return spread(
    { width: across, height: down, rgb },
    end === 'right' ? columns.point.toReversed() : columns.point,
    pick === 'bottom' ? rows.point.toReversed() : rows.point,
  );
}

/** Makes the whole picture from one copy of each of its different columns and rows. */
function spread(different: Picture, columns: Int32Array, rows: Int32Array): Picture {
  const width = columns.length;
  const height = rows.length;
  const rgb = new Uint8Array(width * height * 3);
  const drawn = new Int32Array(different.height).fill(-1);
  for (let y = 0; y < height; y++) {
    const row = rows[y]!;
    const start = y * width * 3;
    if (drawn[row] === -1) {
      const from = row * different.width * 3;
      copyColumns(different.rgb.subarray(from, from + different.width * 3), columns, rgb, start);
      drawn[row] = start;
    } else {
      rgb.copyWithin(start, drawn[row]!, drawn[row]! + width * 3);
    }
  }
  return { width, height, rgb };
}

/** Writes one row of the whole picture from one copy of each different point. */
function copyColumns(row: Uint8Array, columns: Int32Array, rgb: Uint8Array, start: number): void {
  for (let x = 0, to = start; x < columns.length; x++, to += 3) {
    const from = columns[x]! * 3;
    rgb[to] = row[from]!;
    rgb[to + 1] = row[from + 1]!;
    rgb[to + 2] = row[from + 2]!;
  }
}

/** Writes a row of linear light as bytes. */
function encode(row: Float64Array, rgb: Uint8Array, to: number): void {
  for (let x = 0; x < row.length; x += 3) {
    // A crown brighter than white is scaled down equally in all three colours, or its hue would change.
    const most = Math.max(row[x]!, row[x + 1]!, row[x + 2]!);
    const held = most > 1 ? 1 / most : 1;
    for (let c = 0; c < 3; c++) rgb[to + x + c] = encodeLight(row[x + c]! * held);
  }
}

/** The light of one pick and the ends that cross it, for each entry of the columns' cover, before weighting by rows. */
interface WovenPick {
  /** State of the crossing, as in {@link Crossings}. */
  readonly cell: Uint8Array;
  /** Light of the end, and of the pick, in the three colours of each entry. */
  readonly end: Float64Array;
  readonly pick: Float64Array;
}

function weave(cloth: Crossings, pick: number, columns: Cover, light: Float64Array): WovenPick {
  const { strand, room, half, thread, gap, crossing } = columns;
  const woven = {
    cell: new Uint8Array(strand.length),
    end: new Float64Array(strand.length * 3),
    pick: new Float64Array(strand.length * 3),
  };
  const weft = cloth.weft[pick]! * 3;
  strand.forEach((end, u) => {
    const cell = cloth.cells[pick * cloth.ends + end]!;
    const warp = cloth.warp[end]! * 3;
    const isUp = cell >= END_ON_TOP;
    const ofPick = isUp ? gap[u]! : crossing[u * 4 + cell]!;
    // Light beside the pick: the end itself, or, if the end is down, the ends that close over it.
    const before = cloth.closing === undefined || isUp ? warp : cloth.closing.before[pick * cloth.ends + end]! * 3;
    const after = cloth.closing === undefined || isUp ? warp : cloth.closing.after[pick * cloth.ends + end]! * 3;
    woven.cell[u] = cell;
    for (let c = 0; c < 3; c++) {
      woven.end[u * 3 + c] = isUp
        ? thread[u]! * light[warp + c]!
        : half[u]! * light[before + c]! + (room[u]! - half[u]!) * light[after + c]!;
      woven.pick[u * 3 + c] = ofPick * light[weft + c]!;
    }
  });
  return woven;
}

/** Adds to a row of linear light the light of entry `v` of the rows' cover (a part of one pick) in every column. */
function addPick(row: Float64Array, v: number, { cell, end, pick }: WovenPick, columns: Cover, rows: Cover): void {
  const { first } = columns;
  const room = rows.room[v]!;
  const gap = rows.gap[v]!;
  const thread = rows.thread[v]!;
  for (let x = 0, u = 0; x < row.length; x += 3) {
    for (const next = first[x / 3 + 1]!; u < next; u++) {
      const state = cell[u]!;
      const isUp = state >= END_ON_TOP;
      const ofEnd = isUp ? rows.crossing[v * 4 + state - END_ON_TOP]! : gap;
      const ofPick = isUp ? room : thread;
      row[x] = row[x]! + ofEnd * end[u * 3]! + ofPick * pick[u * 3]!;
      row[x + 1] = row[x + 1]! + ofEnd * end[u * 3 + 1]! + ofPick * pick[u * 3 + 1]!;
      row[x + 2] = row[x + 2]! + ofEnd * end[u * 3 + 2]! + ofPick * pick[u * 3 + 2]!;
    }
  }
}

/** Mean light over one repeat of a cloth with white yarns: the share of light that the shading leaves. */
function meanLight(cloth: Crossings, ends: DrawnStrands, picks: DrawnStrands, relief: Relief): number {
  const whole = (strands: DrawnStrands) =>
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
function turned({ pitch, before, body, line }: DrawnStrands): DrawnStrands {
  return {
    pitch: pitch.toReversed(),
    before: before.toReversed(),
    body: body.toReversed(),
    line: line.toReversed(),
  };
}
