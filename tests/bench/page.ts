import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { galleryPage } from '../../src/gallery/html/page-html.js';
import { pageScript } from '../../src/gallery/html/page-script.js';
import { explore } from '../../src/search/explore.js';
import { launchBrowser } from '../browser.js';
import { QUESTION } from '../search/question.js';

/** What is timed in the page: for each field new values, and the median of the milliseconds until the page has answered. */
const TIMED = `(async () => {
  const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  const timed = async (field, values) => {
    const all = [];
    for (const value of values) {
      await frame();
      const from = performance.now();
      field.value = value;
      field.dispatchEvent(new Event('input', { bubbles: true }));
      document.body.offsetHeight;
      all.push(performance.now() - from);
    }
    return all.sort((a, b) => a - b)[all.length >> 1];
  };
  const field = (words) => [...document.querySelectorAll('label')].find((label) => label.textContent.startsWith(words)).querySelector('input');
  return {
    'a page of 400 cloths, ranked again': await timed(field('symmetry'), [9, 1, 7, 0, 3]),
    'a page of 400 cloths, held to a limit': await timed(field('changes in the warp'), [6, 4, 2, 8, '']),
    'a page of 400 cloths, searched for words': await timed(field('Find'), ['D', 'DL', 'DLL', '×2', '']),
  };
})()`;

/**
 * How soon a page of 1,000 cloths is alive, and how quickly one of 400 answers, in milliseconds, in a real browser;
 * undefined where none is installed. The aims are 2,000 ms and 100 ms on a machine that does nothing else.
 */
export async function pageAnswers(): Promise<Readonly<Record<string, number>> | undefined> {
  const server = await launchBrowser();
  if (server === undefined) return undefined;
  const folder = mkdtempSync(join(tmpdir(), 'shedlight-bench-'));
  const written = async (show: number): Promise<string> => {
    const question = { ...QUESTION, lengths: [2, 3, 4, 5, 6], times: [1, 2], show };
    const file = join(folder, `${show}.html`);
    writeFileSync(file, galleryPage(question, await explore(question), pageScript()));
    return pathToFileURL(file).href;
  };
  try {
    const [many, more] = [await written(400), await written(1000)];
    const browser = await chromium.connect(server.wsEndpoint());
    const page = await browser.newPage();
    await page.goto(more);
    await page.waitForSelector('.is-alive');
    const alive = await page.evaluate<number>('performance.now()');
    await page.goto(many);
    await page.waitForSelector('.is-alive');
    return {
      'a page of 1,000 cloths, until it answers': alive,
      ...(await page.evaluate<Record<string, number>>(TIMED)),
    };
  } finally {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
