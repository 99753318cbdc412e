import sharp from 'sharp';
import type { Picture } from './cloth.js';

/** Most picture points: a whole page at 200 per inch, and room to spare. */
const MOST_POINTS = 5000 * 5000;

/**
 * Encodes a picture as PNG that prints at its true size, with an SVG drawing of the same size over it if one is given.
 * The same picture gives the same bytes: the compression is fixed, and the scale is the only metadata.
 */
export function toPng({ width, height, rgb }: Picture, perMillimetre: number, laidOver?: string): Promise<Buffer> {
  const picture = sharp(rgb, { raw: { width, height, channels: 3 }, limitInputPixels: MOST_POINTS });
  if (laidOver !== undefined) {
    picture.composite([{ input: Buffer.from(laidOver), limitInputPixels: MOST_POINTS }]).removeAlpha();
  }
  return picture
    .withDensity(perMillimetre * 25.4)
    .png({ compressionLevel: 6, adaptiveFiltering: false, palette: false })
    .toBuffer();
}
