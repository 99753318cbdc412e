import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { html } from '../../src/gallery/html/html.js';
import { writeGallery } from '../../src/gallery/write.js';
import { openBrowser } from '../chromium.js';
import { foundOf, LOG_CABIN, trialOutcome, trialQuestion, WIDE } from './trial.js';

const SLY = '<img src=x onerror="document.title=1">';
const wide = foundOf(WIDE, 4, { recipe: `${SLY}${'DLDDL'.repeat(30)} by thread` });
const outcome = { ...trialOutcome(), found: [...trialOutcome().found, wide] };
const draft = { ...LOG_CABIN, name: SLY };
const question = trialQuestion({ structures: [], draft: { file: 'cabin.yaml', draft } });

let home: string;
let address: string;
let browser: Browser | undefined;
const asked: string[] = [];
const complaints: string[] = [];

beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'page-'));
  const { index } = await writeGallery(join(home, 'gallery'), question, outcome);
  // As it is where scripts do not run; tests/page/ tries it with its script.
  await writeFile(index, (await readFile(index, 'utf8')).replace(/<script>[\s\S]*<\/script>/, ''));
  address = pathToFileURL(index).href;
});
afterAll(async () => {
  await browser?.close();
  await rm(home, { recursive: true, force: true });
});
beforeEach(async (context) => {
  browser ??= await openBrowser(context);
  asked.length = 0;
  complaints.length = 0;
});

/** The gallery from the disk, without a network, in a window of that width. */
async function opened(width: number, scheme: 'light' | 'dark' = 'light'): Promise<Page> {
  const context = await browser!.newContext({ offline: true, viewport: { width, height: 900 }, colorScheme: scheme });
  const page = await context.newPage();
  page.on('request', (request) => asked.push(request.url()));
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(address);
  return page;
}

/** Runs in the page; given as text because the page's own types are not known here. */
const inPage = <T>(page: Page, script: string): Promise<T> => page.evaluate(script);

describe('the page in a browser, without its script', () => {
  test('asks for files only, and is complained of nowhere', async () => {
    const page = await opened(1280);
    await inPage(page, 'window.scrollTo(0, document.body.scrollHeight)');
    // Asked again and again from here: the page lets no text be run that a wait within it would have to run.
    const loaded = '[...document.images].filter((i) => i.checkVisibility()).every((i) => i.complete)';
    await expect.poll(() => inPage(page, loaded), { timeout: 30_000 }).toBe(true);
    expect(asked.length).toBeGreaterThan(3);
    for (const url of asked) expect(url).toMatch(/^file:/);
    expect(complaints).toEqual([]);
  });

  test('shows every cloth, its picture loaded, at actual size', async () => {
    const page = await opened(1280);
    const found = await inPage<{ broken: number; sizes: number[]; ground: string }>(
      page,
      `(async () => {
        document.querySelectorAll('details').forEach((each) => { each.open = true; });
        const images = [...document.images];
        for (const image of images) { image.loading = 'eager'; await image.decode().catch(() => undefined); }
        return {
          broken: images.filter((image) => image.naturalWidth === 0).length,
          sizes: [...document.querySelectorAll('.cloth img')].map((image) => image.getBoundingClientRect().width),
          ground: getComputedStyle(document.body).backgroundColor,
        };
      })()`,
    );
    expect(found.broken).toBe(0);
    expect(found.sizes).toHaveLength(outcome.found.length);
    // 63.5 mm at 96 points to the inch, as CSS counts millimetres.
    for (const size of found.sizes) expect(size).toBeCloseTo((63.5 / 25.4) * 96, 3);
    // The style is let in by its hash.
    expect(found.ground).toBe('rgb(222, 222, 222)');
    expect(await page.locator('.card').count()).toBe(outcome.found.length);
  });

  test.each([320, 390, 1280, 2000])('never scrolls sideways at %d, folded or unfolded', async (width) => {
    const page = await opened(width);
    const overflow = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';
    expect(await inPage(page, overflow)).toBe(0);
    await inPage(page, "document.querySelectorAll('details').forEach((each) => { each.open = true; })");
    expect(await inPage(page, overflow)).toBe(0);
  });

  test('has a language, one first heading, landmarks, headings in order, and words for every picture', async () => {
    const page = await opened(1280);
    expect(await page.getAttribute('html', 'lang')).toBe('en');
    for (const part of ['h1', 'header', 'main', 'footer']) expect(await page.locator(part).count()).toBe(1);
    const levels = await inPage<number[]>(
      page,
      "[...document.querySelectorAll('h1,h2,h3,h4')].map((h) => +h.tagName[1])",
    );
    levels.forEach((level, k) => {
      expect(level - (levels[k - 1] ?? 0)).toBeLessThanOrEqual(1);
    });
    const unnamed =
      "[...document.images].filter((i) => !i.alt).length + document.querySelectorAll('svg[role=img]:not(:has(> title))').length";
    expect(await inPage(page, unnamed)).toBe(0);
    expect(await inPage(page, "new Set([...document.querySelectorAll('[id]')].map((e) => e.id)).size")).toBe(
      await page.locator('[id]').count(),
    );
  });

  test('is used by keyboard: straight to the cloths', async () => {
    const page = await opened(1280);
    await page.keyboard.press('Tab');
    expect(await inPage(page, 'document.activeElement.textContent')).toBe('To the cloths');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    expect(await inPage(page, 'document.activeElement.className')).toBe('code');
    expect(await inPage(page, 'getComputedStyle(document.activeElement).outlineStyle')).toBe('solid');
  });

  test('shows what a person wrote as text', async () => {
    const page = await opened(390, 'dark');
    expect(await page.textContent('h1')).toContain(SLY);
    expect(await page.locator('img:not([src^="swatches/"])').count()).toBe(0);
    expect(await page.title()).toContain('<img');
  });

  test('prints in black on white, with a box to tick for each cloth', async () => {
    const page = await opened(1280, 'dark');
    await page.emulateMedia({ media: 'print' });
    expect(await inPage(page, 'getComputedStyle(document.body).color')).toBe('rgb(0, 0, 0)');
    expect(await page.locator('.tick').first().isVisible()).toBe(true);
    expect(await page.locator('summary').first().isVisible()).toBe(false);
    const pages = await page.pdf({ format: 'A4' });
    expect(pages.length).toBeGreaterThan(10_000);
  });

  // The browser's own parser, as a second opinion on html.test.ts.
  test('reads a template’s holes back as they were given', async () => {
    const page = await opened(390);
    for (const given of [SLY, `"'&<>`, '</p><b>', '&lt;&amp;amp;', 'ÅÄÖ ⅜ 𝔇']) {
      const { markup } = html`<p title="${given}">${given}</p>`;
      const read = await page.evaluate(
        `(() => { const p = new DOMParser().parseFromString(${JSON.stringify(markup)}, 'text/html').body.firstChild;
          return [p.textContent, p.title, p.children.length]; })()`,
      );
      expect(read).toEqual([given, given, 0]);
    }
  });
});
