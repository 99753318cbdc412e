import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { type Browser, chromium } from 'playwright-core';
import { emptyPage, galleryPage } from '../../src/gallery/html/page-html.js';
import { pageScript } from '../../src/gallery/html/page-script.js';
import { STYLE } from '../../src/gallery/html/page-style.js';
import { type Asked, addressOfAsked } from '../../src/page/ask/asked.js';
import { askedOfFile } from '../../src/page/ask/read-asked.js';
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

/** Notes in the page when it is alive, when a box is closed, and the tasks of more than 50 ms on its thread. */
const WATCHED = `
  globalThis.tasks = [];
  new PerformanceObserver((list) => tasks.push(...list.getEntries().map((e) => [e.startTime, e.duration])))
    .observe({ type: 'longtask', buffered: true });
  addEventListener('close', () => { globalThis.answeredAt = performance.now(); }, true);
  new MutationObserver(() => {
    if (document.documentElement.matches('.is-alive')) globalThis.alive ??= performance.now();
  }).observe(document, { attributes: true, subtree: true, attributeFilter: ['class'] });
`;

/** Questions asked in the page, each with the seconds in which it should be answered. */
const ASKED: readonly (readonly [name: string, aim: number, asked: Asked])[] = [
  ['the demo', 6, askedOfFile(readFileSync('gallery/turned-twill.yaml', 'utf8'), 'turned-twill.yaml')],
  ['2/2 twill, own orders of 2 to 10', 6, { structure: ['2/2 twill'], lengths: '2-10', weft: 'own' }],
  ['2/2 twill, own orders of 2 to 12', 15, { structure: ['2/2 twill'], lengths: '2-12', weft: 'own' }],
];

/** How soon the page answers questions, and its longest task meanwhile; what is aimed at stands beside. */
async function* askedInPage(
  browser: Browser,
  file: string,
  quick: boolean,
): AsyncGenerator<readonly [string, string, string]> {
  writeFileSync(file, emptyPage(pageScript()));
  for (const [name, aim, asked] of quick ? ASKED.slice(0, 1) : ASKED) {
    const page = await browser.newPage();
    await page.addInitScript(WATCHED);
    await page.goto(`${pathToFileURL(file).href}#${addressOfAsked({ asked })}`);
    await page.waitForSelector('.room .card', { timeout: 600_000 });
    const { seconds, longest } = await page.evaluate<{ seconds: number; longest: number }>(`({
      seconds: answeredAt / 1000,
      longest: Math.max(0, ...tasks.filter(([at, ms]) => at > alive && at + ms < answeredAt).map(([, ms]) => ms)),
    })`);
    await page.close();
    const thread = longest === 0 ? 'no task over 50 ms' : `longest task ${longest.toFixed(0)} ms`;
    yield [`asked in the page: ${name}`, `${seconds.toFixed(1)} s`, `aim ${aim} s; ${thread} on the page’s thread`];
  }
}

/**
 * How soon a page of 1,000 cloths is alive, how quickly one of 400 answers, how soon questions are answered in the page,
 * and how large it all is, in a real browser, with what is aimed at on a machine that does nothing else.
 */
export async function* pageRows(quick: boolean): AsyncGenerator<readonly [string, string, string]> {
  const server = await launchBrowser();
  if (server === undefined) return yield ['the page of a gallery', 'no browser', ''];
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
    yield ['a page of 1,000 cloths, until it answers', `${alive.toFixed(0)} ms`, 'aim 2,000 ms'];
    for (const [what, ms] of Object.entries(await page.evaluate<Record<string, number>>(TIMED))) {
      yield [what, `${ms.toFixed(0)} ms`, 'aim 100 ms'];
    }
    await page.close();
    yield* askedInPage(browser, join(folder, 'shedlight.html'), quick);
    const size = statSync(join(folder, '400.html')).size;
    yield ['the page of 400 cloths', `${(size / 1e6).toFixed(2)} MB`, 'aim 1.5 MB'];
    const code = gzipSync(pageScript() + STYLE).length;
    yield ['script and style, compressed', `${(code / 1000).toFixed(0)} kB`, 'aim 250 kB'];
  } finally {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
