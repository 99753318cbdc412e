import { beforeAll, describe, expect, test } from 'vitest';
import type { Outcome } from '../../../src/search/strategy/outcome.js';
import { Desk, inPage, LONG, search } from '../in-browser.js';

const desk = new Desk();
let address: string;
let outcome: Outcome;
beforeAll(async () => {
  const [question, found] = await search({ show: '12' });
  outcome = found;
  address = desk.written('few', question, outcome);
});

describe('one cloth in detail', LONG, () => {
  test.each([390, 1280])(
    'stays in sight while its text scrolls, and the draft is its first picture: %d',
    async (width) => {
      const page = await desk.opened(await desk.fresh({ width }), `${address}#cloth=${outcome.found[0]!.code}`);
      const heads = await page.locator('.telling h3').allTextContents();
      expect(heads.slice(0, 2)).toEqual(['Draft', 'The orders']);
      await inPage(page, "document.querySelector('.closer .box-body').scrollTo(0, 100_000)");
      const seen = `(() => { const { top, height } = document.querySelector('.large canvas').getBoundingClientRect();
      return top >= 0 && top + height <= innerHeight && document.querySelector('.closer .box-body').scrollTop > 300; })()`;
      await expect.poll(() => inPage(page, seen)).toBe(true);
    },
  );

  test('keeps the keyboard on Next and Before, cloth after cloth', async () => {
    const page = await desk.opened(await desk.fresh(), `${address}#find=DL&cloth=${outcome.found[0]!.code}`);
    const held = 'document.activeElement.textContent';
    await page.locator('.closer .to-next').focus();
    await page.keyboard.press('Enter');
    expect(await inPage(page, held)).toBe('Next');
    await page.keyboard.press('Enter');
    expect(await inPage(page, held)).toBe('Next');
    await page.locator('.closer .to-before').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    // The first cloth has none before it: the keyboard goes to the heading.
    expect(await inPage(page, 'document.activeElement.tagName')).toBe('H2');
  });
});
