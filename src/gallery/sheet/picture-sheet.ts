import type { Picture } from '../../render/cloth.js';
import { toPng } from '../../render/png.js';
import { type Pen, POINTS } from './sheet-text.js';

/** A sheet as wide as A4 and as high as it needs to be; all lengths in millimetres. */
export const PAGE = { width: 210, side: 10, top: 8 };

/** A picture and its top left corner on the sheet. */
export interface Placed {
  readonly picture: Picture;
  readonly x: number;
  readonly y: number;
}

/** The sheet as PNG, 200 points per inch. */
export async function pngOf(pictures: readonly Placed[], pen: Pen, millimetres: number): Promise<Buffer> {
  const width = Math.round(PAGE.width * POINTS);
  const height = Math.round(millimetres * POINTS);
  const page: Picture = { width, height, rgb: new Uint8Array(width * height * 3).fill(255) };
  for (const { picture, x, y } of pictures) {
    const [left, top] = [Math.round(x * POINTS), Math.round(y * POINTS)];
    for (let row = 0; row < picture.height; row++) {
      const from = row * picture.width * 3;
      page.rgb.set(picture.rgb.subarray(from, from + picture.width * 3), ((top + row) * width + left) * 3);
    }
  }
  return toPng(page, POINTS, pen.layer(width, height));
}

/** The sheet as SVG, in one file: the pictures are embedded. */
export async function svgOf(pictures: readonly Placed[], pen: Pen, millimetres: number): Promise<string> {
  const width = Math.round(PAGE.width * POINTS);
  const height = Math.round(millimetres * POINTS);
  const images = await Promise.all(
    pictures.map(async ({ picture, x, y }) => {
      const data = (await toPng(picture, POINTS)).toString('base64');
      const place = `x="${Math.round(x * POINTS)}" y="${Math.round(y * POINTS)}"`;
      return `<image ${place} width="${picture.width}" height="${picture.height}" href="data:image/png;base64,${data}"/>`;
    }),
  );
  const size = `width="${PAGE.width}mm" height="${millimetres}mm" viewBox="0 0 ${width} ${height}"`;
  const ground = `<rect width="${width}" height="${height}" fill="#fff"/>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${ground}${images.join('')}${pen.layer(width, height)}</svg>\n`;
}
