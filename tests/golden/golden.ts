import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import sharp from 'sharp';
import type { Picture } from '../../src/render/cloth.js';
import { toPng } from '../../src/render/png.js';
import { pngPicture } from './raster.js';

/** Golden pictures keep 16 steps of each colour, which makes their files less than half as large. */
const STEP = 17;

/**
 * How far red, green or blue of a point may be from the golden picture, of 255: up to 8 come from its steps, and 16 are
 * for machines. Node 20, 22 and 24 draw the same bytes, with and without vectors; other processors may round light and
 * the edges of letters otherwise. No single point may be farther off, so that a missing comma is seen.
 */
export const TOLERANCE = 24;

/** Where golden pictures are, and what becomes of one that is different or missing. */
export interface Held {
  readonly folder: string;
  /** Takes what is drawn now for right. */
  readonly accept: boolean;
  /** A missing picture is a mistake, where a person cannot look at it. */
  readonly strict: boolean;
  /** Points that may be farther off than is tolerated. Default: none. */
  readonly most?: number;
}

export const HELD: Held = {
  folder: join(import.meta.dirname, 'pictures'),
  accept: process.env.UPDATE_GOLDEN === '1',
  strict: process.env.CI !== undefined,
};

/** How many points are farther off than is tolerated; all of them where the sizes differ. */
export function different(one: Picture, other: Picture): number {
  if (one.width !== other.width || one.height !== other.height) {
    return Math.max(one.width * one.height, other.width * other.height);
  }
  let points = 0;
  for (let at = 0; at < one.rgb.length; at += 3) {
    if ([at, at + 1, at + 2].some((c) => Math.abs(one.rgb[c]! - other.rgb[c]!) > TOLERANCE)) points++;
  }
  return points;
}

/** The golden picture of a name. */
export function golden(name: string, folder = HELD.folder): Promise<Picture> {
  return pngPicture(readFileSync(join(folder, `${name}.png`)));
}

/**
 * Holds a picture against the golden one of its name. A different picture is written beside it.
 *
 * @throws Error with both files and how to accept the new one
 */
export async function hold(name: string, drawn: Picture, held: Held = HELD): Promise<void> {
  const { folder, accept, strict, most = 0 } = held;
  const file = relative(process.cwd(), join(folder, `${name}.png`));
  const changed = relative(process.cwd(), join(folder, `${name}-changed.png`));
  const write = async (path: string): Promise<void> => writeFileSync(path, await encoded(inSteps(drawn)));
  rmSync(changed, { force: true });
  if (!existsSync(file)) {
    if (strict && !accept) throw new Error(`${file}: found no golden picture; expected one: npm run golden draws it`);
    await write(file);
    console.log(`${file}: drawn for the first time; look at it before you commit it`);
    return;
  }
  const points = different(await golden(name, folder), drawn);
  if (points <= most) return;
  if (accept) {
    await write(file);
    console.log(`${file}: drawn anew, ${points} points differ`);
    return;
  }
  await write(changed);
  throw new Error(
    `${changed}: found ${points} points that differ from ${file}; expected ${most === 0 ? 'none' : `at most ${most}`}. ` +
      'Look at both; where the new one is right, accept it: npm run golden',
  );
}

/** A PNG; a picture in greys alone in one channel, which makes its file smaller. */
async function encoded(picture: Picture): Promise<Buffer> {
  const { width, height, rgb } = picture;
  const isGrey = rgb.every((level, at) => level === rgb[at - (at % 3)]);
  if (!isGrey) return toPng(picture, 72 / 25.4);
  const raw = sharp(rgb, { raw: { width, height, channels: 3 } });
  return raw.toColourspace('b-w').png({ compressionLevel: 9 }).toBuffer();
}

function inSteps({ width, height, rgb }: Picture): Picture {
  return { width, height, rgb: rgb.map((level) => Math.round(level / STEP) * STEP) };
}
