import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Picture } from '../../src/render/cloth.js';
import { Desk, LONG } from '../page/in-browser.js';
import { different, golden, HELD, hold } from './golden.js';
import { PAGE_VIEWS, type Pages, TYPE, writePages } from './page-views.js';
import { pdfPage, pngPicture } from './raster.js';

/**
 * Type is ours, and cloth is painted by our own code; but every version of a browser draws the frames, arrows and ticks of
 * its fields a little otherwise. A thousandth of the points are left to them.
 */
const BY_BROWSER = { ...HELD, folder: join(import.meta.dirname, 'pages'), most: 300 };
/** Points of a picture are the means of four points of the screen. */
const SMALLER = 2;
const WINDOWS = {
  desk: { width: 1280, height: 900 },
  dark: { width: 1280, height: 900, scheme: 'dark' },
  phone: { width: 390, height: 844, deviceScaleFactor: SMALLER },
} as const;
/** Whether every cloth in the window is painted. */
const PAINTED = `[...document.images, ...document.querySelectorAll('canvas')].every((each) => {
  const { top, bottom, width } = each.getBoundingClientRect();
  if (width === 0 || bottom <= 0 || top >= innerHeight) return true;
  if (each.tagName === 'IMG') return each.complete;
  return each.width > 0 && each.getContext('2d').getImageData(each.width >> 1, each.height >> 1, 1, 1).data[3] === 255;
})`;

const desk = new Desk();
let pages: Pages;
beforeAll(async () => {
  pages = await writePages(desk.home);
}, 120_000);

/** A view in a window of its own, in our own type; `wrong` spoils its style. */
async function opened(name: string, window: keyof typeof WINDOWS, wrong = ''): Promise<Page> {
  const { at, doing } = PAGE_VIEWS[name]!;
  const context = await desk.fresh({ ...WINDOWS[window], bypassCSP: true });
  const page = await context.newPage();
  await page.goto(at(pages));
  await page.addStyleTag({ content: TYPE + wrong });
  await page.evaluate('document.fonts.ready');
  await doing?.(page);
  return page;
}

/** What the window shows, once all is painted and nothing changes any more. */
async function seen(page: Page): Promise<Picture> {
  await page.waitForFunction(PAINTED);
  let before: Buffer;
  let now = await page.screenshot();
  do {
    before = now;
    now = await page.screenshot();
  } while (!now.equals(before));
  return pngPicture(now, SMALLER);
}

/** Views that are looked at in the dark too: they have every colour of the style between them. */
const DARK = ['gallery', 'cloth', 'ask', 'structure'];
const views = Object.keys(PAGE_VIEWS).flatMap((name) =>
  (Object.keys(WINDOWS) as (keyof typeof WINDOWS)[])
    .filter((window) => window !== 'dark' || DARK.includes(name))
    .map((window) => [name, window] as const),
);
const printed = [1, 2];

describe('a page', LONG, () => {
  test.each(views)('%s, %s', async (name, window) => {
    await hold(`${name}-${window}`, await seen(await opened(name, window)), BY_BROWSER);
  });

  test.each(printed)('on paper, page %d', async (number) => {
    const pdf = await (await opened('gallery', 'desk')).pdf({ format: 'A4' });
    await hold(`paper-${number}`, await pdfPage(pdf, number), BY_BROWSER);
  });

  test('has a golden picture for each of these, and for nothing else', () => {
    const files = readdirSync(BY_BROWSER.folder).filter((file) => !file.endsWith('-changed.png'));
    const wanted = [...views.map((words) => words.join('-')), ...printed.map((number) => `paper-${number}`)];
    expect(files.toSorted()).toEqual(wanted.map((name) => `${name}.png`).toSorted());
  });

  test.each([
    ['gallery', 'desk', '.line { display: block; }'],
    ['gallery', 'dark', ':root { --ground: #404040; }'],
    ['gallery', 'phone', '.card .recipe { white-space: nowrap; }'],
    ['cloth', 'desk', '.closer .box-body { grid-template-columns: none; }'],
    ['compare', 'phone', '.compare th, .compare td { padding-right: 1.2rem; }'],
    ['still', 'desk', '.beside img { float: right; width: 10mm; }'],
  ] as const)('%s, %s, with a style that is wrong, differs: %s', async (name, window, wrong) => {
    const right = await golden(`${name}-${window}`, BY_BROWSER.folder);
    expect(different(right, await seen(await opened(name, window, wrong)))).toBeGreaterThan(3 * BY_BROWSER.most);
  });
});
