import { describe, expect, test } from 'vitest';
import { lightness } from '../../../src/colour/yarn.js';
import { clothFrom } from '../../../src/page/paint/step-back.js';
import { foundOf, HOUNDS_TOOTH, LOG_CABIN, SETT } from '../../gallery/trial.js';

describe('stepping back', () => {
  // The spread of lightness over the middles of the crossings is the figure `reads`, which knows flat threads only:
  // the shadows between round threads change it a little.
  test.each([
    ['hound’s tooth', HOUNDS_TOOTH],
    ['log cabin', LOG_CABIN],
  ])('shows as much as the figures say: %s', (_, draft) => {
    const { reads } = foundOf(draft, 1).scores;
    const thread = 25.4 / SETT.ends;
    const ends = draft.warp.length;
    const millimetres = { width: ends * thread, height: ends * thread };
    for (const metres of [2, 6] as const) {
      const { width, rgb } = clothFrom(draft, { millimetres, perMillimetre: 6, grey: true }, metres);
      const light = Array.from({ length: ends * ends }, (_, at) => {
        const middle = (place: number): number => Math.floor(((place + 0.5) / ends) * width);
        const v = rgb[(middle(Math.floor(at / ends)) * width + middle(at % ends)) * 3]! / 255;
        return lightness(v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
      });
      const mean = light.reduce((sum, l) => sum + l, 0) / light.length;
      const spread = Math.sqrt(light.reduce((sum, l) => sum + (l - mean) ** 2, 0) / light.length);
      expect(Math.abs(spread - reads[metres])).toBeLessThan(0.1 * reads[metres] + 0.5);
    }
  });
});
