import { extname } from 'node:path';
import { type Draft, spacing } from '../../draft/draft.js';
import type { Seen } from '../../draft/point-of-view.js';
import { judgeFile, writeWhole } from '../../files/whole.js';
import { Problem, quote } from '../../problem.js';
import { paintCloth } from '../../render/cloth.js';
import { draftSvg } from '../../render/draft-svg.js';
import { toPng } from '../../render/png.js';

/** Cloth as PNG, or the draft as SVG. */
type PictureKind = 'png' | 'svg';

/** Picture points per millimetre: 254 per inch. */
const PER_MILLIMETRE = 10;
/** Least and greatest side in millimetres: enough to judge a motif at true size, and enough for a page. */
const SMALLEST = 60;
const LARGEST = 300;
/** Repeats that are shown if there is room. */
const REPEATS = 3;

/**
 * The kind of picture that the ending of a file name asks for; `cloth` and `draft` name the contents in messages.
 *
 * @throws Problem on any other ending, or if no file can be at that path
 */
export function pictureKind(path: string, cloth = 'the cloth', draft = 'the draft'): PictureKind {
  const kind = extname(path).toLowerCase();
  if (kind === '.png' || kind === '.svg') {
    judgeFile(path);
    return kind === '.png' ? 'png' : 'svg';
  }
  throw new Problem(`--out: found ${quote(path)}; expected a name that ends in .png (${cloth}) or .svg (${draft})`);
}

/** Writes a picture whole or not at all. */
export async function writePicture(
  path: string,
  kind: PictureKind,
  name: string,
  draft: Draft,
  seen: Seen,
): Promise<void> {
  writeWhole(path, kind === 'svg' ? `${draftSvg(draft, { title: name, seen })}\n` : await clothPng(draft, seen));
}

async function clothPng(draft: Draft, seen: Seen): Promise<Buffer> {
  const { across, along } = spacing(draft.sett);
  const side = (repeat: number): number => Math.min(LARGEST, Math.max(SMALLEST, Math.ceil(REPEATS * repeat)));
  const millimetres = { width: side(draft.warp.length * across), height: side(draft.weft.length * along) };
  return toPng(paintCloth(draft, { seen, millimetres, perMillimetre: PER_MILLIMETRE }), PER_MILLIMETRE);
}
