import type { Draft } from '../../draft/draft.js';
import { type ClothView, paintCloth } from '../../render/cloth.js';
import { toPng } from '../../render/png.js';
import { SWATCH_MILLIMETRES } from '../html/scale.js';

export { SWATCH_MILLIMETRES };

/** Side of a gallery's square swatches, in picture points: 160 to the inch. */
export const SWATCH_POINTS = 400;

/** One swatch as PNG: the cloth at true scale. */
export async function swatch(draft: Draft, view: ClothView = {}): Promise<Buffer> {
  const perMillimetre = SWATCH_POINTS / SWATCH_MILLIMETRES;
  const millimetres = { width: SWATCH_MILLIMETRES, height: SWATCH_MILLIMETRES };
  return toPng(paintCloth(draft, { ...view, millimetres, perMillimetre }), perMillimetre);
}
