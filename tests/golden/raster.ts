import { PDFiumLibrary } from '@hyzyla/pdfium';
import sharp, { type Sharp } from 'sharp';
import type { Picture } from '../../src/render/cloth.js';
import { outlined } from './outlined.js';

const pdfium = PDFiumLibrary.init();

/**
 * One page of a PDF, numbered from 1, with 72 points to the inch. PDFium runs as WebAssembly, and the type is in the
 * file: the page looks the same on every machine.
 */
export async function pdfPage(pdf: Buffer, number: number): Promise<Picture> {
  const document = await (await pdfium).loadDocument(pdf);
  const { data, width, height } = await document.getPage(number - 1).render({ scale: 1, render: 'bitmap' });
  document.destroy();
  const rgb = new Uint8Array(width * height * 3);
  for (let at = 0, from = 0; at < rgb.length; from++) {
    for (let colour = 0; colour < 3; colour++) rgb[at++] = data[from++]!;
  }
  return { width, height, rgb };
}

/** A picture in greys, as a printer without colours prints it. */
export function inGrey({ width, height, rgb }: Picture): Picture {
  const grey = new Uint8Array(rgb.length);
  for (let at = 0; at < rgb.length; at += 3)
    grey.fill(Math.round(0.299 * rgb[at]! + 0.587 * rgb[at + 1]! + 0.114 * rgb[at + 2]!), at, at + 3);
  return { width, height, rgb: grey };
}

/** A PNG, made so many times smaller. */
export async function pngPicture(png: Buffer, smaller = 1): Promise<Picture> {
  const picture = sharp(png);
  const { width } = await picture.metadata();
  return raw(picture.resize(Math.round(width / smaller)));
}

/** A draft's drawing at its own size. */
export function svgPicture(svg: string): Promise<Picture> {
  return raw(sharp(Buffer.from(outlined(svg))).flatten({ background: '#fff' }));
}

async function raw(picture: Sharp): Promise<Picture> {
  const { data, info } = await picture.removeAlpha().toColourspace('srgb').raw().toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, rgb: Uint8Array.from(data) };
}
