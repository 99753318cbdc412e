import sharp from 'sharp';
import type { Picture } from '../render/cloth.js';

/** Points of a whole page at 200 to the inch, and room to spare; nothing larger is ever drawn. */
const MOST_POINTS = 5000 * 5000;

/** A picture as PNG that prints at its true size. Same picture, same bytes: fixed compression, only its scale said. */
export function toPng({ width, height, rgb }: Picture, perMillimetre: number): Promise<Buffer> {
  return sharp(rgb, { raw: { width, height, channels: 3 }, limitInputPixels: MOST_POINTS })
    .withDensity(perMillimetre * 25.4)
    .png({ compressionLevel: 8, adaptiveFiltering: false, palette: false })
    .toBuffer();
}

/** Lays an SVG drawing of the picture's own size over it, in place. */
export async function layOver({ width, height, rgb }: Picture, svg: string): Promise<void> {
  const drawing = sharp(Buffer.from(svg), { limitInputPixels: MOST_POINTS, unlimited: true });
  const layer = await drawing.ensureAlpha().raw().toBuffer();
  for (let at = 0, from = 0; at < width * height * 3; at += 3, from += 4) {
    const opaque = layer[from + 3]!;
    if (opaque === 0) continue;
    for (let c = 0; c < 3; c++) {
      rgb[at + c] = Math.round((layer[from + c]! * opaque + rgb[at + c]! * (255 - opaque)) / 255);
    }
  }
}
