import type { Draft } from '../../draft/draft.js';
import { paintCloth } from '../../render/cloth.js';
import { toPng } from '../../render/png.js';

/** How much cloth a small picture shows each way, and how large it stands on the page: a quarter of its size. */
export const QUARTER_CLOTH = 127;
export const QUARTER_SIDE = QUARTER_CLOTH / 4;
/** One for each point of CSS, so that a common screen shows the light as it was gathered here. */
export const QUARTER_POINTS = 120;

/** Where the small picture of a cloth stands in its gallery. */
export function quarterPath(code: string): string {
  return `swatches/${code}-quarter.png`;
}

/**
 * The cloth at a quarter of its size, twice as much of it each way as a swatch holds: large repeats are seen whole, and
 * small ones mix as they do from four times as far.
 */
export function quarter(draft: Draft): Promise<Buffer> {
  const perMillimetre = QUARTER_POINTS / QUARTER_CLOTH;
  const millimetres = { width: QUARTER_CLOTH, height: QUARTER_CLOTH };
  // The PNG says at which scale it stands on the page.
  return toPng(paintCloth(draft, { millimetres, perMillimetre }), QUARTER_POINTS / QUARTER_SIDE);
}
