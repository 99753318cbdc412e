import type { Draft } from '../../draft/draft.js';
import type { Seen } from '../../draft/point-of-view.js';
import { paintCloth } from '../../render/cloth.js';
import { toPng } from '../../render/png.js';
import { QUARTER_CLOTH, QUARTER_SIDE } from './scale.js';

/**
 * Side in picture points: one for each CSS pixel, so that a common screen shows the light as it was integrated here.
 */
export const QUARTER_POINTS = 120;

/** Path of a cloth's small picture in its gallery. */
export function quarterPath(code: string): string {
  return `swatches/${code}-quarter.png`;
}

/**
 * Paints the cloth at a quarter of its size, twice as much of it each way as a swatch shows. Large repeats are seen
 * whole, and small ones mix as from four times the distance.
 */
export function quarter(draft: Draft, seen: Seen): Promise<Buffer> {
  const perMillimetre = QUARTER_POINTS / QUARTER_CLOTH;
  const millimetres = { width: QUARTER_CLOTH, height: QUARTER_CLOTH };
  // The PNG states its scale on the page.
  return toPng(paintCloth(draft, { seen, millimetres, perMillimetre }), QUARTER_POINTS / QUARTER_SIDE);
}
