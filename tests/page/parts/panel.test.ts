import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { Desk, inPage, LONG, search } from '../in-browser.js';

const desk = new Desk();
let address: string;
beforeAll(async () => {
  address = desk.written('few', ...(await search({ show: '12' })));
});

async function drawerOf(width = 1280): Promise<Page> {
  const page = await desk.opened(await desk.fresh({ width }), address);
  await page.getByRole('button', { name: 'Rank and filter' }).click();
  return page;
}

describe('the drawer', LONG, () => {
  test('is closed at first, opens by keyboard, and gives the keyboard back', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    const opener = page.getByRole('button', { name: 'Rank and filter' });
    expect(await page.locator('.panel').isVisible()).toBe(false);
    await opener.focus();
    await page.keyboard.press('Enter');
    expect(await page.locator('.panel').isVisible()).toBe(true);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Escape');
    expect(await page.locator('.panel').isVisible()).toBe(false);
    expect(await inPage(page, 'document.activeElement.textContent')).toBe('Rank and filter');
  });

  test.each([1000, 1200, 1400, 1600])(
    'its handle is never covered, wherever the page is scrolled to, at %d',
    async (width) => {
      const page = await drawerOf(width);
      await inPage(page, 'scrollTo(0, 1200)');
      // On a narrow window the drawer lies over the page, and has a handle of its own.
      const handle = width < 1200 ? '.panel .close' : '.bench > button';
      const reached = `(() => { const handle = document.querySelector('${handle}');
      const { x, y, width, height } = handle.getBoundingClientRect();
      return [y + 2, y + height - 2].every((at) => document.elementFromPoint(x + width / 2, at) === handle); })()`;
      expect(await inPage(page, reached)).toBe(true);
      await page.locator(handle).click();
      expect(await page.locator('.panel').isVisible()).toBe(false);
    },
  );

  test('says that only the cloths of the gallery are ranked again', async () => {
    const page = await drawerOf();
    expect(await page.locator('.panel').textContent()).toMatch(
      /Ranks the 12 cloths of this gallery again\. The search found [\d,]+ more/,
    );
  });

  test('a field shows what is used', async () => {
    const page = await drawerOf();
    const field = page.getByLabel('dark, from (%)');
    for (const [typed, used] of [
      ['-5', '0'],
      ['250', '100'],
      ['40', '40'],
    ]) {
      await field.fill(typed!);
      expect(await field.getAttribute('aria-invalid')).toBe(String(typed !== used));
      await field.blur();
      expect(await field.inputValue()).toBe(used);
      await page.waitForURL(new RegExp(`darkFrom=${used}\\b`));
    }
  });

  test('takes a limit for floats as a fraction of an inch', async () => {
    const page = await drawerOf();
    const field = page.getByLabel('longest float');
    await field.fill('3/8 in');
    expect(await field.getAttribute('aria-invalid')).toBe('false');
    await page.waitForURL(/float=9\.525/);
    await field.blur();
    expect(await field.inputValue()).toBe('0.375 in');
    await field.fill('3/8');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await field.blur();
    expect(await field.inputValue()).toBe('0.375 in');
    await page.getByRole('button', { name: 'Clear filters' }).first().click();
    expect(await field.inputValue()).toBe('');
  });
});
