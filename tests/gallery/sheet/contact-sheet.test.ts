import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { AT_THE_LOOM } from '../../../src/draft/point-of-view.js';
import { type ContactOptions, contactSheetPages } from '../../../src/gallery/sheet/contact-sheet.js';
import { paintCloth } from '../../../src/render/cloth.js';
import { found, HOUNDS_TOOTH } from './hounds-tooth.js';

const OPTIONS: ContactOptions = {
  title: '2/2 twill, orders of two',
  ranking: 'Ranked by contrast 3, symmetry 2, float 1',
  seen: AT_THE_LOOM,
};
const many = (count: number) => Array.from({ length: count }, (_, n) => found(n + 1));
const dark = (png: PNG, x: number, y: number) => png.data[(y * png.width + x) * 4]! < 90;

describe('contact sheet', () => {
  it('has 16 or 25 pictures to a page, the best first, and no page without cloths', async () => {
    expect(await contactSheetPages(many(17), OPTIONS)).toHaveLength(2);
    expect(await contactSheetPages(many(25), { ...OPTIONS, perPage: 25 })).toHaveLength(1);
    expect(await contactSheetPages([], OPTIONS)).toEqual([]);
  });

  it('is A4 at 200 points to the inch, and says so in the file', async () => {
    const [file] = await contactSheetPages(many(1), OPTIONS);
    const { width, height } = PNG.sync.read(file!);
    expect([width / 200, height / 200].map((inches) => Math.round(inches * 25.4))).toEqual([210, 297]);
    // The chunk pHYs (PNG, third edition, 11.3.4.3): points per metre across and down, then 1 for metre.
    const at = file!.indexOf('pHYs') + 4;
    expect(file!.readUInt32BE(at) / 39.3700787).toBeCloseTo(200, 1);
    expect(file!.readUInt32BE(at + 4)).toBe(file!.readUInt32BE(at));
    expect(file![at + 8]).toBe(1);
  });

  it('has a rule of 100 mm at the foot', async () => {
    const png = PNG.sync.read((await contactSheetPages(many(1), OPTIONS))[0]!);
    const lengths = Array.from({ length: 300 }, (_, k) => {
      const y = png.height - 1 - k;
      let x = Math.round((10 / 25.4) * 200);
      const from = x;
      while (x < png.width && dark(png, x, y)) x++;
      return x - from;
    });
    expect((Math.max(...lengths) / 200) * 25.4).toBeCloseTo(100, 0);
  });

  it.each([
    [16, 'half', 44.5],
    [25, 'actual', 34.8],
  ] as const)('draws all %i pictures at %s size', async (perPage, scale, side) => {
    const page = PNG.sync.read((await contactSheetPages(many(perPage), { ...OPTIONS, perPage, scale }))[0]!);
    const times = scale === 'half' ? 2 : 1;
    const millimetres = { width: side * times, height: side * times };
    const { width, height, rgb } = paintCloth(HOUNDS_TOOTH, { millimetres, perMillimetre: 200 / 25.4 / times });
    expect((width / 200) * 25.4).toBeCloseTo(side, 0);
    const same = (left: number, top: number) => {
      for (let y = 2; y < height - 2; y++) {
        for (let x = 2; x < width - 2; x++) {
          for (let c = 0; c < 3; c++) {
            const shown = page.data[((top + y) * page.width + left + x) * 4 + c];
            if (shown !== rgb[(y * width + x) * 3 + c]) return false;
          }
        }
      }
      return true;
    };
    const columns = Math.sqrt(perPage);
    let seen = 0;
    for (let n = 0; n < columns; n++) {
      const left = Math.round(((10 + n * (side + 4)) / 25.4) * 200);
      for (let top = 0; top < page.height - height; top++) if (same(left, top)) seen++;
    }
    expect(seen).toBe(perPage);
  });

  it('gives the same bytes every time', async () => {
    const twice = [await contactSheetPages(many(3), OPTIONS), await contactSheetPages(many(3), OPTIONS)];
    expect(twice[0]![0]!.equals(twice[1]![0]!)).toBe(true);
  });
});
