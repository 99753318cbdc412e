import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContext, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { parseShortlist } from '../../src/formats/shortlist.js';
import { ranked } from '../../src/gallery/manifest/ranking.js';
import { writeGallery } from '../../src/gallery/write.js';
import { PART_WORDS, UNWEIGHED } from '../../src/score/parts/parts.js';
import { PRESET_NAMES } from '../../src/score/rank/presets.js';
import type { Question } from '../../src/search/question/question.js';
import type { Outcome } from '../../src/search/strategy/outcome.js';
import { foundOf, HOUNDS_TOOTH, LOG_CABIN, trialOutcome, trialQuestion } from '../gallery/trial.js';
import { faults } from './axe.js';
import { Desk, inPage, LONG, listed, SOON, search } from './in-browser.js';

const desk = new Desk();
const { asked, complaints } = desk;
let address: string;
let question: Question;
let outcome: Outcome;

beforeAll(async () => {
  [question, outcome] = await search({ show: '12' });
  address = pathToFileURL((await writeGallery(join(desk.home, 'gallery'), question, outcome)).index).href;
});

const order = listed;
const fresh = (width?: number, scheme?: 'light' | 'dark') =>
  desk.fresh({ ...(width && { width }), ...(scheme && { scheme }) });
const opened = (context: BrowserContext, at = address) => desk.opened(context, at);
const firstLook = (page: Page): Promise<string> =>
  inPage(page, "document.querySelector('.card canvas').dataset.look ?? ''");
const firstCode = (page: Page): Promise<string> => inPage(page, "document.querySelector('.room .card').id");

describe('the page alive', LONG, () => {
  test('is opened, sifted, ranked again, seen from afar, compared; three are kept with notes, saved, restored', async () => {
    const context = await fresh();
    const page = await opened(context);
    const best = outcome.found[0]!.code;
    expect(await firstCode(page)).toBe(best);
    expect(await page.textContent('.count')).toBe('12 cloths');

    await page.getByRole('button', { name: 'Rank and filter' }).click();
    // Sift: only what has few changes in the warp.
    await page.getByLabel('changes in the warp, at most').fill('4');
    const few = outcome.found.filter(({ ease }) => ease.warpChanges <= 4);
    expect(few.length).toBeGreaterThan(0);
    expect(await page.textContent('.count')).toBe(`${few.length} of 12 cloths`);
    await page.getByRole('button', { name: 'Clear filters' }).click();

    // Rank again: the page's order is the one that the command's own code gives.
    await page.getByRole('button', { name: 'balanced' }).click();
    const pressed = page.locator('.ways [aria-pressed=true]');
    expect(await pressed.allTextContents()).toEqual(['balanced']);
    await page.getByText('What counts, and how much').first().click();
    await page.getByLabel('contrast', { exact: true }).fill('0');
    const weights = { ...UNWEIGHED, balance: 3, symmetry: 3 };
    const wanted = ranked(outcome.found, weights, question.limits.float);
    expect(await firstCode(page)).toBe(wanted[0]!.found.code);
    // What is said of ranking and cloth is of the new weights.
    const said = `Ranked by ${PART_WORDS.symmetry} ×3 and ${PART_WORDS.balance} ×3.`;
    expect(await page.textContent('header .ranking')).toBe(said);
    const best2 = page.locator(`[id="${wanted[0]!.found.code}"]`);
    expect(await best2.locator('.rank').textContent()).toBe('1');
    expect(await best2.locator('canvas').getAttribute('aria-label')).toMatch(/^Cloth 1 /);
    await best2.locator('.code').click();
    const why = page.locator('.telling p', { hasText: 'Ranked here' });
    expect(await why.textContent()).toMatch(/balance of dark and light \d|symmetry \d/);
    expect(await why.textContent()).not.toContain('contrast');
    await page.keyboard.press('Escape');
    // The address is written a moment later: with the ranking, and without the cloth that was closed.
    await page.waitForURL(({ hash }) => hash.includes('rank=symmetry:3,balance:3') && !hash.includes('cloth='));
    await page.reload();
    await page.waitForSelector('.is-alive');
    expect(await firstCode(page)).toBe(wanted[0]!.found.code);
    await page.getByRole('button', { name: 'Rank and filter' }).click();
    await page.getByRole('button', { name: 'as in my question' }).click();

    // View from afar: the picture is painted, and has less light and dark in it than from near.
    await page.locator('.bench').getByLabel('View from').focus();
    for (let step = 0; step < 9; step++) await page.keyboard.press('ArrowRight');
    await expect.poll(() => firstLook(page), SOON).toMatch(/^motif 10/);
    const spread = `(() => {
      const { width, height } = document.querySelector('.card canvas');
      const copy = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
      copy.drawImage(document.querySelector('.card canvas'), 0, 0);
      const { data } = copy.getImageData(0, 0, width, height);
      const green = [...data].filter((_, at) => at % 4 === 1);
      const mean = green.reduce((a, b) => a + b) / green.length;
      return Math.sqrt(green.reduce((a, b) => a + (b - mean) ** 2, 0) / green.length);
    })()`;
    const far = await inPage<number>(page, spread);
    for (let step = 0; step < 8; step++) await page.keyboard.press('ArrowLeft');
    await expect.poll(() => firstLook(page), SOON).toMatch(/^motif 0\.6/);
    expect(await inPage<number>(page, spread)).toBeGreaterThan(2 * far);

    // Compare two.
    const [one, two] = await order(page);
    await page.locator(`[id="${one}"] .beside-others`).click();
    await page.locator(`[id="${two}"] .beside-others`).click();
    await page.getByRole('button', { name: 'Compare 2' }).click();
    await expect.poll(() => page.locator('.compare thead th').count(), SOON).toBe(2);
    await expect.poll(() => page.locator('.compare canvas').count(), SOON).toBe(6);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.compare[open]').count(), SOON).toBe(0);

    // Keep three with notes and stars.
    const codes = (await order(page)).slice(0, 3);
    for (const code of codes) await page.locator(`[id="${code}"] .keep`).click();
    await page.getByRole('button', { name: 'Kept 3' }).click();
    for (const [at, code] of codes.entries()) {
      const entry = page.locator('.kept-cloths > li', { hasText: code });
      await entry.getByLabel('Stars').selectOption(String(5 - at));
      await entry.getByLabel('Note').fill(`note <b>${at}</b>`);
      await entry.getByLabel('Note').blur();
    }
    expect(await page.locator('.bars li').count()).toBeGreaterThan(3);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save shortlist.json' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('shortlist.json');
    const saved = join(desk.home, 'shortlist.json');
    await download.saveAs(saved);
    const kept = parseShortlist(await readFile(saved, 'utf8'), saved);
    expect(kept.map(({ code, stars, note }) => [code, stars, note])).toEqual(
      codes.map((code, at) => [code, 5 - at, `note <b>${at}</b>`]),
    );

    // The browser remembers; another browser is told by the file.
    await page.reload();
    await page.waitForSelector('.is-alive');
    expect(await page.locator('.bench').textContent()).toContain('Kept 3');
    expect(await page.locator(`[id="${codes[0]}"] .marks`).textContent()).toBe('★★★★★ note <b>0</b>');
    const other = await opened(await fresh());
    expect(await other.locator('.bench').textContent()).toContain('Kept 0');
    await other.getByRole('button', { name: 'Kept 0' }).click();
    await other.locator('.kept input[type=file]').setInputFiles(saved);
    await other.getByText('3 kept cloths read').waitFor();
    expect(await other.getByLabel('Note').nth(1).inputValue()).toBe('note <b>1</b>');

    for (const url of asked) expect(url).toMatch(/^(file|blob):/);
    expect(complaints).toEqual([]);
  });

  test('opens in the order of the command, whatever it was ranked by', async () => {
    const context = await fresh();
    const page = await context.newPage();
    for (const rank of PRESET_NAMES) {
      const [ranking, found] = await search({ lengths: '2-4', show: '20', rank });
      await desk.view(page, desk.written(rank, ranking, found));
      const hidden = page.getByRole('button', { name: 'hidden: show' });
      while ((await hidden.count()) > 0) await hidden.first().click();
      const ranks = await inPage<string[]>(page, "[...document.querySelectorAll('.rank')].map((r) => r.textContent)");
      const places = new Map((await listed(page)).map((code, at) => [code, Number(ranks[at])]));
      expect(found.found.map(({ code }) => places.get(code))).toEqual(found.found.map((_, at) => at + 1));
      expect(await page.locator('.ways [aria-pressed=true]').first().textContent()).toBe(rank);
    }
  });

  test('shows one cloth closer, by keyboard and by its address, and steps back', async () => {
    const context = await fresh();
    await context.grantPermissions(['clipboard-write', 'clipboard-read']).catch(() => undefined);
    const page = await opened(context);
    const { code, redraw } = outcome.found[0]!;
    await page.locator(`[id="${code}"] .code`).focus();
    await page.keyboard.press('Enter');
    expect(await page.locator('.closer[open] h2').textContent()).toBe(`Cloth 1, ${code}`);
    expect(page.url()).toContain(`cloth=${code}`);
    const command = await page.locator('.command code').textContent();
    for (const [flag] of redraw) expect(command).toContain(`--${flag}`);
    // Nothing is longer than the limit.
    expect(await page.getByLabel('Outline floats over').isChecked()).toBe(false);
    await page.getByLabel('threads', { exact: true }).fill('1');
    expect(await page.getByLabel('Outline floats over').isChecked()).toBe(true);
    for (const side of ['back', 'structure', 'colour']) {
      await page.locator('.closer').getByLabel(/^Side/).selectOption(side);
      await expect.poll(() => page.locator('.large svg').count(), SOON).toBe(side === 'colour' ? 0 : 1);
    }
    await page.goBack();
    await expect.poll(() => page.locator('.closer[open]').count(), SOON).toBe(0);
    await page.goForward();
    await expect.poll(() => page.locator('.closer[open]').count(), SOON).toBe(1);
    // A browser tells of a closed box a little later; by then it may be open again, and must stay so.
    await inPage(page, "document.querySelector('.closer').dispatchEvent(new Event('close'))");
    expect(await page.locator('.closer[open]').count()).toBe(1);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('.closer[open]').count(), SOON).toBe(0);
    expect(await inPage(page, 'document.activeElement.className')).toBe('code');
    expect(complaints).toEqual([]);
  });

  test('shows what a person wrote as text, wherever it stands', async () => {
    const sly = '<img src=x onerror="document.title=1">';
    const found = [LOG_CABIN, HOUNDS_TOOTH].map((draft, at) =>
      foundOf({ ...draft, yarns: draft.yarns.map((yarn) => ({ ...yarn, name: sly })) }, at + 1, {
        recipe: `${sly}</script>`,
        structure: sly,
        redraw: [['draft', `${sly}.yaml`]],
      }),
    );
    const at = desk.written('sly', trialQuestion(), { ...trialOutcome(), found });
    const page = await opened(await fresh(), at);
    const [one, two] = found.map(({ code }) => code);
    await page.locator(`[id="${one}"] .keep`).click();
    await page.getByRole('button', { name: 'Kept 1' }).click();
    expect(await page.locator('.kept-cloths').textContent()).toContain(sly);
    await page.keyboard.press('Escape');
    await desk.view(page, `${at}#cloth=${one}`);
    expect(await page.locator('.closer .recipe').textContent()).toBe(`${sly}</script>`);
    await desk.view(page, `${at}#compare=${one}.${two}&beside=yes`);
    await page.locator('.compare[open]').waitFor();
    expect(await page.locator('dialog img').count()).toBe(0);
    expect(await page.title()).toContain('2/2 twill');
  });

  test('long names wrap, and right-to-left marks turn nothing else about', async () => {
    const yarns = LOG_CABIN.yarns.map((yarn) => ({ ...yarn, name: `\u202E${'x'.repeat(199)}` }));
    const found = [foundOf({ ...LOG_CABIN, yarns, name: 'y'.repeat(200) }, 1, { recipe: 'z'.repeat(1000) })];
    const draft = { file: 'mine.wif', draft: found[0]!.draft };
    const at = desk.written('long', trialQuestion({ yarns, draft, structures: [] }), { ...trialOutcome(), found });
    for (const width of [320, 1280]) {
      const page = await opened(await fresh(width), at);
      const overflow = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';
      expect(await inPage(page, overflow)).toBe(0);
      await desk.view(page, `${at}#cloth=${found[0]!.code}`);
      expect(await inPage(page, overflow)).toBe(0);
      const inside =
        "(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)(document.querySelector('.closer .box-body'))";
      expect(await inPage(page, inside)).toBe(0);
    }
    const direction =
      "document.querySelector('.yarns bdi').matches('bdi') && getComputedStyle(document.querySelector('.yarns bdi')).unicodeBidi";
    const page = await opened(await fresh(1280), at);
    expect(await inPage(page, direction)).toBe('isolate');
  });

  // Among all other tests a key was seen to be lost, never in this file alone: then it is done once more.
  test('is used by keyboard alone: kept, starred, compared, ranked, filtered', { retry: 2 }, async () => {
    const page = await opened(await fresh());
    const key = (name: string) => page.keyboard.press(name);
    const held = () => inPage<string>(page, 'document.activeElement.textContent');
    await key('Tab');
    await key('Enter');
    const [one, two] = await order(page);
    expect(await held()).toBe(one);
    for (const name of ['Tab', 'Enter', 'Tab', 'Enter']) await key(name);
    while ((await held()) !== two) await key('Tab');
    for (const name of ['Tab', 'Tab', 'Enter']) await key(name);
    expect(await page.locator('.bench').textContent()).toContain('Compare 2Kept 1');
    while (!(await held()).startsWith('Compare 2')) await key('Shift+Tab');
    await key('Enter');
    await expect.poll(() => page.locator('.compare thead th').count(), SOON).toBe(2);
    await key('Escape');
    expect(await held()).toBe('Compare 2');
    while ((await held()) !== 'Kept 1') await key('Tab');
    await key('Enter');
    await expect.poll(() => page.locator('.kept-cloths > li').isVisible(), SOON).toBe(true);
    const starred = async (): Promise<string | null> => {
      while ((await inPage(page, 'document.activeElement.tagName')) !== 'SELECT') await key('Tab');
      for (const name of ['Home', 'End']) await key(name);
      return page.locator(`[id="${one}"] .marks`).textContent();
    };
    await expect.poll(starred, SOON).toBe('★★★★★');
    await key('Escape');
    while ((await held()) !== 'Rank and filter') await key('Shift+Tab');
    await key('Enter');
    while ((await held()) !== 'calm') await key('Tab');
    await key('Enter');
    expect(await page.textContent('header .ranking')).toMatch(/^The calm first/);
    expect(complaints).toEqual([]);
  });

  test('refuses a list that is none, in one sentence', async () => {
    const page = await opened(await fresh());
    const wrong = join(desk.home, 'wrong.json');
    await writeFile(wrong, '{"format":"something else"}');
    await page.getByRole('button', { name: 'Kept 0' }).click();
    await page.locator('.kept input[type=file]').setInputFiles(wrong);
    await page.getByText('wrong.json: found another kind of file').waitFor();
    expect(complaints).toEqual([]);
  });

  test.each(['light', 'dark'] as const)('axe finds nothing: %s', async (scheme) => {
    const page = await opened(await fresh(1280, scheme));
    const dark = scheme === 'dark';
    expect(await faults(page, dark)).toEqual([]);
    const codes = outcome.found.slice(0, 6).map(({ code }) => code);
    for (const hash of [
      `#cloth=${codes[0]}`,
      `#compare=${codes.join('.')}&beside=yes`,
      '#size=actual&from=4&grey=yes',
      '#find=nothing+is+like+this',
      '#page=2',
    ]) {
      await desk.view(page, address + hash);
      expect(await faults(page, dark)).toEqual([]);
    }
    await desk.view(page, address);
    for (const code of codes.slice(0, 3)) await page.locator(`[id="${code}"] .keep`).click();
    await page.locator(`[id="${codes[0]}"] .keep`).click();
    await page.getByRole('button', { name: 'Rank and filter' }).click();
    await page.getByText('What counts, and how much').first().click();
    expect(await faults(page, dark)).toEqual([]);
    await page.getByRole('button', { name: 'Set the screen to true size' }).click();
    expect(await faults(page, dark)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Kept 2' }).click();
    expect(await faults(page, dark)).toEqual([]);
  });

  test.each([320, 390, 1280, 2000])('never scrolls sideways at %d', async (width) => {
    const page = await opened(await fresh(width));
    const overflow = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';
    expect(await inPage(page, overflow)).toBe(0);
    await page.getByRole('button', { name: 'Rank and filter' }).click();
    await inPage(page, "document.querySelectorAll('details').forEach((each) => { each.open = true; })");
    expect(await inPage(page, overflow)).toBe(0);
    await page.locator('.panel .ways button').first().focus();
    await page.keyboard.press('Escape');
    await page.locator('.strip select').first().selectOption('actual');
    expect(await inPage(page, overflow)).toBe(0);
    await page.locator('.card .keep').first().click();
    await page.getByRole('button', { name: 'Kept 1' }).click();
    const within =
      "(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)(document.querySelector('.kept .box-body'))";
    expect(await inPage(page, within)).toBe(0);
  });
});
