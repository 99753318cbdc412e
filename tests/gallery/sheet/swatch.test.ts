import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { SWATCH_MILLIMETRES, SWATCH_POINTS, swatch } from '../../../src/gallery/sheet/swatch.js';
import { HOUNDS_TOOTH } from './hounds-tooth.js';

describe('swatch', () => {
  it('shows one piece of cloth at one scale, whatever the draft', async () => {
    const png = PNG.sync.read(await swatch(HOUNDS_TOOTH));
    expect([png.width, png.height]).toEqual([SWATCH_POINTS, SWATCH_POINTS]);
    // 63.5 mm at 20 ends to the inch are 50 ends of 8 points: a hound's tooth of 8 ends comes back after 64.
    expect(SWATCH_MILLIMETRES / 25.4).toBe(2.5);
    const at = (x: number, y: number) => [...png.data.subarray((y * 400 + x) * 4, (y * 400 + x) * 4 + 3)];
    for (let x = 0; x < 336; x++) expect(at(x + 64, 37)).toEqual(at(x, 37));
  });
});
