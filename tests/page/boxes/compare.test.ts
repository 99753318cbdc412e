import { beforeAll, describe, expect, test } from 'vitest';
import { Desk, inPage, LONG, listed, SOON, search } from '../in-browser.js';

const desk = new Desk();
let address: string;
beforeAll(async () => {
  address = desk.written('few', ...(await search({ show: '30' })));
});

describe('six cloths side by side', LONG, () => {
  test('all in the window, at one scale, from afar and in greys', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    const codes = (await listed(page)).slice(0, 6);
    expect(codes).toHaveLength(6);
    await desk.view(page, `${address}#compare=${codes.join('.')}&beside=yes`);
    const right = "document.querySelector('.compare td:last-child canvas').getBoundingClientRect().right";
    expect(await inPage<number>(page, right)).toBeLessThanOrEqual(1280);
    const beside = page.locator('.compare');
    const slider = beside.getByLabel('View from');
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    // The slider keeps the keyboard while the pictures are painted anew.
    expect(await slider.getAttribute('aria-valuetext')).toBe('1 m');
    await beside.getByLabel('Greys only').check();
    await expect.poll(() => page.url(), SOON).toMatch(/from=1&grey=yes/);
    const coloured = `(() => {
      const canvas = document.querySelector('.compare canvas');
      const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
      return data.some((_, at) => at % 4 === 0 && data[at] !== data[at + 2]);
    })()`;
    expect(await inPage(page, coloured)).toBe(false);
  });

  test('the keyboard goes on after Remove', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    const codes = (await listed(page)).slice(0, 3);
    await desk.view(page, `${address}#compare=${codes.join('.')}&beside=yes`);
    await page.locator('.compare thead button').nth(1).focus();
    await page.keyboard.press('Enter');
    expect(await inPage(page, "document.activeElement.closest('th').textContent")).toContain(codes[2]);
  });
});
