import { beforeAll, describe, expect, test } from 'vitest';
import { Desk, inPage, LONG, search } from '../in-browser.js';

const desk = new Desk();
let address: string;
beforeAll(async () => {
  address = desk.written('few', ...(await search({ show: '4' })));
});

describe('true size', LONG, () => {
  test('is asked for once, set with a bank card, and remembered', async () => {
    const context = await desk.fresh({ width: 390 });
    const page = await desk.opened(context, `${address}#size=actual`);
    await page.getByRole('button', { name: 'Set it with a bank card' }).click();
    const size =
      "(({ width, height }) => [width, height])(document.querySelector('.bank-card').getBoundingClientRect())";
    // ISO/IEC 7810: a card of the format ID-1 is 85.60 mm by 53.98 mm (from memory).
    const [width, height] = await inPage<[number, number]>(page, size);
    expect((width / 96) * 25.4).toBeCloseTo(53.98, 1);
    expect((height / 96) * 25.4).toBeCloseTo(85.6, 1);
    await page.getByLabel('Size of the card').fill('120');
    await page.keyboard.press('Escape');
    const cloth = "document.querySelector('.card canvas').getBoundingClientRect().width";
    await expect.poll(() => inPage<number>(page, cloth)).toBeCloseTo((63.5 / 25.4) * 96 * 1.2, 1);
    await expect.poll(() => page.locator('.asks').isVisible()).toBe(false);
    await page.reload();
    await page.waitForSelector('.is-alive');
    await expect.poll(() => inPage<number>(page, cloth)).toBeCloseTo((63.5 / 25.4) * 96 * 1.2, 1);
    await expect.poll(() => page.locator('.asks').isVisible()).toBe(false);
  });
});
