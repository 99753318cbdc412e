import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { emptyPage } from '../../../src/gallery/html/page-html.js';
import { pageScript } from '../../../src/gallery/html/page-script.js';
import { explore } from '../../../src/search/explore.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import type { Outcome } from '../../../src/search/strategy/outcome.js';
import { Desk, inPage, LONG, listed, SOON } from '../in-browser.js';

const DEMO = join(import.meta.dirname, '../../../gallery/turned-twill.yaml');
/** How many of the listed cloths were not painted as they are shown. */
const UNPAINTED = `(() => {
  const looks = [...document.querySelectorAll('.room .card canvas')].map((canvas) => canvas.dataset.look);
  return looks.filter((look) => look === undefined || look !== looks[0]).length;
})()`;

const desk = new Desk();
let demo: string;
let many: string;
let outcome: Outcome;

beforeAll(async () => {
  const read = (flags: Record<string, string>) =>
    readQuestion({ text: readFileSync(DEMO, 'utf8'), file: DEMO, flags }, () => {
      throw new Error('no draft is asked for');
    });
  const question = read({});
  demo = desk.written('demo', question, await explore(question, { workers: 0 }));
  const more = read({ show: '240', rank: 'calm' });
  outcome = await explore(more, { workers: 0 });
  many = desk.written('many', more, outcome);
}, 120_000);

test('a page of 400 cloths is no larger than 1.5 MB', () => {
  // Style and script are in a page once, however many its cloths are.
  const once = Buffer.byteLength(emptyPage(pageScript()));
  const each = (statSync(fileURLToPath(many)).size - once) / outcome.found.length;
  expect(once + 400 * each).toBeLessThanOrEqual(1.5e6);
});

describe('cloth first', LONG, () => {
  test.each([
    [390, 844, 434, 2],
    [1280, 800, 217, 4],
    [1920, 1080, 169, 14],
  ])(
    'a window %d wide: the first cloth is near its top, and whole ones stand in it',
    async (width, height, top, whole) => {
      const page = await desk.opened(await desk.fresh({ width, height }), demo);
      const seen = await inPage<{ top: number; bottom: number; right: number }[]>(
        page,
        `[...document.querySelectorAll('.card canvas')].map((canvas) => {
        const { top, bottom, right } = canvas.getBoundingClientRect();
        return { top, bottom, right };
      })`,
      );
      expect(seen[0]!.top).toBeLessThanOrEqual(top);
      expect(seen.filter(({ bottom, right }) => bottom <= height && right <= width).length).toBeGreaterThanOrEqual(
        whole,
      );
    },
  );

  test('every motif is whole, at one scale; actual size is true', async () => {
    const page = await desk.opened(await desk.fresh(), demo);
    await expect
      .poll(() => inPage(page, "document.querySelector('.card canvas').dataset.look ?? ''"), SOON)
      .toMatch(/^motif/);
    const [side, scale] = await inPage<string>(page, "document.querySelector('.card canvas').dataset.look").then(
      (look) => look.split(' ').slice(-2).map(Number),
    );
    // 80 ends at 24 to the inch are the longest repeat of the demo.
    expect((80 / 24) * 25.4 * scale!).toBeLessThanOrEqual(side! + 1e-6);
    await desk.view(page, `${demo}#size=actual`);
    const width = "document.querySelector('.card canvas').getBoundingClientRect().width";
    expect(await inPage<number>(page, width)).toBeCloseTo((63.5 / 25.4) * 96, 1);
  });

  test.each(['', '#size=actual&from=4', '#grey=yes&order=calm', '#size=close', '#rank=balance:3&page=2'])(
    'on paper every cloth is painted: %s',
    async (view) => {
      const page = await desk.opened(await desk.fresh(), (view.includes('page=') ? many : demo) + view);
      expect(await inPage(page, UNPAINTED)).toBeGreaterThan(0);
      await page.pdf({ format: 'A4' });
      expect(await inPage(page, UNPAINTED)).toBe(0);
    },
  );

  test('nothing moves when the view changes, painted or not', async () => {
    const page = await desk.opened(await desk.fresh(), demo);
    const places = () =>
      inPage<number[]>(page, "[...document.querySelectorAll('.card')].map((c) => c.getBoundingClientRect().top)");
    const before = await places();
    await page.locator('.bench').getByLabel('View from').press('ArrowRight');
    expect(await places()).toEqual(before);
    await page.locator('.bench').getByLabel('Greys only').check();
    expect(await places()).toEqual(before);
    await expect.poll(() => inPage(page, "document.querySelector('.card canvas').dataset.look"), SOON).toMatch(/true/);
    expect(await places()).toEqual(before);
  });
});

describe('the list', LONG, () => {
  const bestTop = "document.querySelector('.card').getBoundingClientRect().top";
  const barBottom = "document.querySelector('.bench').getBoundingClientRect().bottom";

  test('scrolls to the best of a new ranking, clear of the bar', async () => {
    const page = await desk.opened(await desk.fresh(), demo);
    await inPage(page, 'scrollTo(0, 2000)');
    await page.getByRole('button', { name: 'Rank and filter' }).click();
    await page.getByRole('button', { name: 'lively', exact: true }).click();
    expect(await inPage<number>(page, bestTop)).toBeGreaterThanOrEqual(await inPage<number>(page, barBottom));
    expect(await inPage<number>(page, bestTop)).toBeLessThan(200);
  });

  test('is reached by the link at the top, and no link that has the keyboard is under the bar', async () => {
    const page = await desk.opened(await desk.fresh(), demo);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    const [first] = await listed(page);
    expect(await inPage(page, 'document.activeElement.textContent')).toBe(first);
    await inPage(page, 'scrollTo(0, 1500)');
    await page.locator('.card .code').nth(20).focus();
    for (let step = 0; step < 40; step++) {
      await page.keyboard.press('Shift+Tab');
      const hidden = `(() => { const at = document.activeElement;
        return at.closest('.card') !== null && at.getBoundingClientRect().top < ${barBottom} - 0.5; })()`;
      expect(await inPage(page, hidden)).toBe(false);
    }
  });

  test('is turned page by page, and the address holds the page', async () => {
    const page = await desk.opened(await desk.fresh(), many);
    const first = await listed(page);
    expect(first).toHaveLength(100);
    await page.getByRole('button', { name: 'Further cloths' }).click();
    const second = await listed(page);
    expect(first.filter((code) => second.includes(code))).toEqual([]);
    expect(await inPage(page, 'document.activeElement.textContent')).toBe(second[0]);
    expect(page.url()).toContain('page=2');
    await page.goBack();
    await expect.poll(() => listed(page), SOON).toEqual(first);
    await page.goForward();
    await expect.poll(() => listed(page), SOON).toEqual(second);
    await page.locator('.bench').getByLabel('Sort').selectOption('lively');
    expect(page.url()).not.toContain('order=lively');
    await page.waitForURL(/order=lively/);
    expect(page.url()).not.toContain('page=');
  });

  test('says that it is empty, and offers what fills it', async () => {
    const page = await desk.opened(await desk.fresh(), demo);
    await page.locator('.bench').getByLabel('Find').fill('no such cloth');
    await page.getByText('No cloth of this gallery passes').waitFor();
    await page.locator('.empty').getByRole('button', { name: 'Clear filters' }).click();
    expect(await page.textContent('.count')).toBe('40 cloths');
    await page.locator('.bench').getByLabel('Find').fill('log cabin half dark navy');
    expect(await page.textContent('.count')).toMatch(/^\d+ of 40 cloths$/);
    expect((await listed(page)).length).toBeGreaterThan(0);
  });

  test('shows the near twins of a cloth on request', async () => {
    const page: Page = await desk.opened(await desk.fresh(), demo);
    const before = await listed(page);
    await page.getByRole('button', { name: '1 near twin hidden: show' }).first().click();
    expect(await listed(page)).toHaveLength(before.length + 1);
    await page.getByRole('button', { name: '1 near twin shown: hide' }).click();
    expect(await listed(page)).toEqual(before);
  });
});
