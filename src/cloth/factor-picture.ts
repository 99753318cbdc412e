import sharp, { type Sharp } from 'sharp';
import { LONGEST_DRAFT } from '../draft/limits.js';
import { gcd } from '../draft/repeat.js';
import { Problem } from '../problem.js';
import { type Cells, refuseBeyond } from './factor.js';

/** Largest picture that is opened, in dots each way: 2000 cells of 4 dots. */
const LARGEST_PICTURE = 8000;
/** A dot as light as this (of 255) is white, as dark as 255 less this is black; between the two it is neither. */
const LIGHT = 200;

/** First eight bytes of every PNG (ISO/IEC 15948, section 5.2). */
const SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];

/** What a picture of cells was read as. */
interface PictureCells {
  readonly cells: Cells;
  /** Dots per cell, each way, that the picture may have been drawn with; 1 where only one dot per cell fits. */
  readonly couldBe: number;
}

/**
 * Reads the cells of a black and white picture: black where the end lies on the face, the top row the first pick.
 *
 * @param dots dots each way of one cell
 * @throws Problem if the bytes are no PNG, or the picture is too large, not black and white, or not divisible into
 *   cells
 */
export async function cellsFromPicture(bytes: Uint8Array, dots = 1): Promise<PictureCells> {
  // Other kinds of picture can name files or other places; a PNG cannot.
  if (!SIGNATURE.every((byte, at) => bytes[at] === byte)) unreadable();
  const picture = sharp(bytes, { limitInputPixels: LARGEST_PICTURE ** 2, failOn: 'error' });
  const { width, height } = await sizeOf(picture);
  for (const [size, what] of [
    [width, 'dots across'],
    [height, 'dots down'],
  ] as const) {
    refuseBeyond(size, LARGEST_PICTURE, what);
    if (size % dots !== 0) throw new Problem(`found ${size} ${what}; expected whole cells of ${dots} dots`);
    refuseBeyond(size / dots, LONGEST_DRAFT, what === 'dots across' ? 'ends' : 'picks');
  }
  const { data } = await picture
    .flatten({ background: '#ffffff' })
    .toColourspace('b-w')
    .extractChannel(0)
    .raw()
    .toBuffer({ resolveWithObject: true })
    .catch(unreadable);
  const cells = Array.from({ length: height / dots }, (_, j) =>
    Uint8Array.from({ length: width / dots }, (_, i) => cellAt(data, width, i, j, dots)),
  );
  return { cells, couldBe: dots === 1 ? commonRun(cells) : 1 };
}

async function sizeOf(picture: Sharp): Promise<{ width: number; height: number }> {
  const { width, height } = await picture.metadata().catch(unreadable);
  if (!(width > 0 && height > 0)) return unreadable();
  return { width, height };
}

function unreadable(): never {
  throw new Problem('found no picture that can be read; expected a black and white PNG');
}

/** 1 where the cell is black; all its dots must agree. */
function cellAt(data: Uint8Array, width: number, end: number, pick: number, dots: number): 0 | 1 {
  let black = 0;
  for (let y = pick * dots; y < (pick + 1) * dots; y++) {
    for (let x = end * dots; x < (end + 1) * dots; x++) {
      const light = data[y * width + x]!;
      if (light < LIGHT && light > 255 - LIGHT) {
        throw new Problem(`found a grey dot at ${x + 1} across, ${y + 1} down; expected black and white alone`);
      }
      if (light <= 255 - LIGHT) black++;
    }
  }
  if (black !== 0 && black !== dots * dots) {
    throw new Problem(`found black and white in the cell of end ${end + 1}, pick ${pick + 1}; expected one of them`);
  }
  return black === 0 ? 0 : 1;
}

/** The greatest number that divides the length of every run of equal cells, across and down. */
function commonRun(cells: Cells): number {
  const ends = cells[0]!.length;
  let common = gcd(ends, cells.length);
  for (let j = 0; j < cells.length && common > 1; j++) {
    for (let i = 0; i < ends; i++) {
      if (i > 0 && cells[j]![i] !== cells[j]![i - 1]) common = gcd(common, i);
      if (j > 0 && cells[j]![i] !== cells[j - 1]![i]) common = gcd(common, j);
    }
  }
  return common;
}
