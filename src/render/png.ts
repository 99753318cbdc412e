import sharp from 'sharp';
import type { Picture } from './cloth.js';

/** Points of a whole page at 200 to the inch, and room to spare; nothing larger is ever drawn. */
const MOST_POINTS = 5000 * 5000;

/**
 * A picture as PNG that prints at its true size, with an SVG drawing of the same size laid over it where there is one.
 * Same picture, same bytes: fixed compression, only its scale said.
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
