import type { Draft } from '../draft/draft.js';
import { paintCloth, type View } from '../render/cloth.js';
import { toPng } from './png.js';

/** Side of a gallery's square swatches, in picture points. */
export const SWATCH_POINTS = 400;
/** How much cloth a swatch shows, one scale for all: 63.5 mm (2½ inches) each way, 160 points to the inch. */
export const SWATCH_MILLIMETRES = 63.5;

/** One swatch as PNG: the cloth at true scale, end 1 at the left edge, the first pick at the top. */
export async function swatch(draft: Draft, view: View = {}): Promise<Buffer> {
  const perMillimetre = SWATCH_POINTS / SWATCH_MILLIMETRES;
  const millimetres = { width: SWATCH_MILLIMETRES, height: SWATCH_MILLIMETRES };
  return toPng(paintCloth(draft, { ...view, millimetres, perMillimetre }), perMillimetre);
}
