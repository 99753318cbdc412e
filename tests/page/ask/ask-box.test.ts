import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync, inflateSync } from 'node:zlib';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { readDraft } from '../../../src/draft/yaml/read-draft.js';
import { emptyPage } from '../../../src/gallery/html/page-html.js';
import { pageScript } from '../../../src/gallery/html/page-script.js';
import { STYLE } from '../../../src/gallery/html/page-style.js';
import { manifestOf } from '../../../src/gallery/manifest/manifest.js';
import { explore } from '../../../src/search/explore.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { withUnits } from '../../../src/structure/recognise/with-units.js';
import { Desk, inPage, LONG, listed, SOON, search } from '../in-browser.js';

const desk = new Desk();
let address: string;
beforeAll(() => {
  const file = join(desk.home, 'shedlight.html');
  writeFileSync(file, emptyPage(pageScript()));
  address = pathToFileURL(file).href;
});

const DRAFT = 'threading: 1-4, 3-2\ntie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4, 3-2\n';

/** Fills the form of the page with a question. */
async function filled(page: Page, flags: Record<string, string>): Promise<void> {
  const fields: Record<string, string> = { times: 'Size ×', profile: 'Blocks' };
  for (const [key, value] of Object.entries(flags)) {
    if (key === 'structure') await page.getByRole('checkbox', { name: value, exact: true }).check();
    else if (key === 'draft') await page.getByLabel('Threading, tie-up and treadling').fill(DRAFT);
    else if (key === 'by' || key === 'fill') {
      const boxes = page.getByRole('group', { name: key === 'by' ? 'Each colour covers' : 'Each element is' });
      for (const box of await boxes.getByRole('checkbox').all()) await box.uncheck();
      for (const word of value.split(', ')) await boxes.getByRole('checkbox', { name: `${word}:` }).check();
    } else if (key === 'weft' || key === 'rank' || key === 'show') {
      const name = `${key[0]!.toUpperCase()}${key.slice(1)}`;
      const list = page.getByRole('combobox', { name, exact: true });
      if ((await list.locator(`option[value="${value}"]`).count()) > 0) await list.selectOption(value);
      else {
        await list.selectOption('other');
        await page.getByRole('textbox', { name: `${name}: ` }).fill(value);
      }
    } else await page.getByLabel(fields[key] ?? `${key[0]!.toUpperCase()}${key.slice(1)}`, { exact: true }).fill(value);
  }
}

async function searched(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Search', exact: true }).click();
  await page.waitForSelector('.room .card', { timeout: 120_000 });
}

async function saved(page: Page, name: string): Promise<string> {
  await page.getByRole('button', { name: 'Ask', exact: true }).click();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
  const file = join(desk.home, download.suggestedFilename());
  await download.saveAs(file);
  return file;
}

const dataOf = (page: string): unknown =>
  JSON.parse(
    inflateSync(Buffer.from(/<script type="text\/plain" id="gallery">([^<]+)</.exec(page)![1]!, 'base64')).toString(),
  );

describe('a question asked in the page', LONG, () => {
  test.each([
    { structure: 'turned twill', by: 'thread, unit', fill: 'solid, alternate', times: '1, 2, 4', rank: 'figure 3' },
    { draft: 'draft.yaml', lengths: '2-5', weft: 'own', limits: 'float 3/8 in, repeat 200', rank: 'unexpected' },
    { structure: '2/2 twill', lengths: '2-7', weft: 'own', show: '100' },
  ])('is answered as by the command: the same codes, order, figures and counts: %j', async (flags) => {
    const page = await desk.opened(await desk.fresh(), address);
    await filled(page, flags as unknown as Record<string, string>);
    await searched(page);
    const question = readQuestion({ flags: flags as unknown as Record<string, string> }, (path) =>
      withUnits(path, readDraft(DRAFT, path), () => {}),
    );
    const outcome = await explore(question);
    const file = await saved(page, 'Save the page');
    expect(dataOf(readFileSync(file, 'utf8'))).toEqual(JSON.parse(JSON.stringify(manifestOf(question, outcome))));
    // The address alone finds them again, the typed draft with it.
    const codes = outcome.found.map(({ code }) => code);
    const again = await desk.opened(await desk.fresh(), page.url());
    await again.waitForSelector('.room .card', { timeout: 120_000 });
    expect((await listed(again)).every((code) => codes.includes(code))).toBe(true);
    expect(desk.complaints).toEqual([]);
    for (const url of desk.asked) expect(url).toMatch(/^(file|blob|data):/);
  });

  test('is counted while it is typed, refused in one sentence, saved, and held by the address', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    const said = page.locator('.ask-said');
    await expect.poll(() => said.textContent(), SOON).toBe('Choose a structure, or give a draft of your own.');
    await filled(page, { structure: '2/2 twill', lengths: '2-4', weft: 'own' });
    await expect.poll(() => said.textContent(), SOON).toMatch(/^\d+ candidates: every one will be tried\.$/);
    await page.getByLabel('Lengths', { exact: true }).fill('two');
    await expect.poll(() => said.textContent(), SOON).toMatch(/^Found “two”; expected lengths from 1 to 64/);
    expect(await page.getByRole('button', { name: 'Search', exact: true }).isDisabled()).toBe(true);
    await page.getByLabel('Lengths', { exact: true }).fill('2-4');
    await page.getByRole('button', { name: 'Search', exact: true }).click();
    await page.waitForSelector('.room .card');
    const codes = await listed(page);
    const other = await desk.fresh();
    const again = await desk.opened(other, page.url());
    await again.waitForSelector('.room .card');
    expect(await listed(again)).toEqual(codes);
    const text = readFileSync(await saved(page, 'Save the question'), 'utf8');
    const read = readQuestion({ text, file: 'question.yaml', flags: {} }, () => {
      throw new Error('no draft is asked for');
    });
    expect(read).toMatchObject({ structures: ['2/2 twill'], lengths: [2, 3, 4], weft: { rule: 'own' } });
  });

  test('keeps the draft: in the saved question, in the saved page, and when either is opened', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    await filled(page, { draft: 'draft.yaml', lengths: '2-4' });
    await page.getByLabel('Its warp is on the loom').check();
    await searched(page);
    const codes = await listed(page);
    const asked = await saved(page, 'Save the question');
    const text = readFileSync(asked, 'utf8');
    const read = readQuestion({ text, file: 'question.yaml', flags: {} }, () => {
      throw new Error('the draft is in the question');
    });
    expect(read.onTheLoom).toBe(true);
    expect(read.draft!.draft).toEqual(withUnits('draft.yaml', readDraft(DRAFT, 'draft.yaml'), () => {}));
    await page.keyboard.press('Escape');
    const file = await saved(page, 'Save the page');

    const alone = await desk.opened(await desk.fresh(), pathToFileURL(file).href);
    await alone.getByRole('button', { name: 'Ask', exact: true }).click();
    const typed = alone.getByLabel('Threading, tie-up and treadling');
    expect(readDraft(await typed.inputValue(), 'typed')).toEqual(read.draft!.draft);
    expect(await alone.getByLabel('Its warp is on the loom').isChecked()).toBe(true);

    const empty = await desk.opened(await desk.fresh(), address);
    await empty.getByLabel('Question file').setInputFiles({
      name: 'wrong.yaml',
      mimeType: 'application/yaml',
      buffer: Buffer.from('wefts: own\n'),
    });
    await expect
      .poll(() => empty.locator('.ask-said').textContent(), SOON)
      .toMatch(/^Wrong\.yaml:1:1: found the unknown key “wefts”/);
    await empty.getByLabel('Question file').setInputFiles(asked);
    await expect
      .poll(() => empty.getByLabel('Threading, tie-up and treadling').inputValue(), SOON)
      .toBe(DRAFT.trimEnd());
    await searched(empty);
    expect(await listed(empty)).toEqual(codes);
    expect(desk.complaints).toEqual([]);
  });

  test('begins from the question of the gallery, and its answer takes the gallery’s place', async () => {
    const [question, outcome] = await search({ show: '6', lengths: '2-3' });
    const page = await desk.opened(await desk.fresh(), desk.written('few', question, outcome));
    const before = await listed(page);
    await page.getByRole('button', { name: 'Ask', exact: true }).click();
    expect(await page.getByLabel('Lengths', { exact: true }).inputValue()).toBe('2, 3');
    // Orders of four on a twill of four are too fine: the gallery stays, and the box says why.
    await filled(page, { lengths: '4' });
    await page.getByRole('button', { name: 'Search', exact: true }).click();
    await expect.poll(() => page.textContent('.ask-said'), SOON).toMatch(/^Nothing fits the question\. .* too fine/);
    expect(await listed(page)).toEqual(before);
    await filled(page, { lengths: '5' });
    await page.getByRole('button', { name: 'Search', exact: true }).click();
    await expect.poll(() => page.textContent('h1'), SOON).toBe('2/2 twill: colour orders of 5 elements');
    expect(await listed(page)).not.toEqual(before);
    await page.locator('.card .keep').first().click();
    expect(await page.locator('.bench').textContent()).toContain('Kept 1');
    // Back goes to the gallery of the file.
    await page.goBack();
    await expect.poll(() => listed(page), SOON).toEqual(before);
  });

  test('can be stopped with what was found, or cancelled', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    await filled(page, { structure: '2/2 twill', lengths: '12', weft: 'own', show: '10' });
    await page.getByRole('button', { name: 'Search', exact: true }).click();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await expect.poll(() => page.locator('.ask-said').textContent(), SOON).toBe('Cancelled.');
    await page.getByRole('button', { name: 'Search', exact: true }).click();
    await expect.poll(() => page.locator('.ask-said').textContent(), { timeout: 60_000 }).toMatch(/: [1-9][\d,]* of/);
    await page.getByRole('button', { name: 'Stop, and show what was found' }).click();
    await page.waitForSelector('h1 bdi', { timeout: 60_000 });
    expect(desk.complaints).toEqual([]);
  });

  test('a saved page stands alone: alive, and without its script', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    await filled(page, { structure: '2/2 twill', lengths: '2-4', weft: 'own', show: '6' });
    await searched(page);
    const codes = await listed(page);
    const file = await saved(page, 'Save the page');
    const alone = await desk.opened(await desk.fresh(), pathToFileURL(file).href);
    expect(await listed(alone)).toEqual(codes);
    writeFileSync(file, readFileSync(file, 'utf8').replace(/<script>[\s\S]*<\/script>/, ''));
    await alone.goto(pathToFileURL(file).href);
    const broken = "[...document.images].filter((image) => !image.src.startsWith('data:image/png')).length";
    expect(await inPage(alone, broken)).toBe(0);
    expect(await alone.locator('.card img').count()).toBe(6);
    expect(desk.complaints).toEqual([]);
  });

  test('axe finds nothing in the box, light and dark, and nothing scrolls sideways', async () => {
    for (const scheme of ['light', 'dark'] as const) {
      const page = await desk.opened(await desk.fresh({ scheme }), address);
      await page.getByText('Seldom needed').click();
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html.slice(0, 160)}`)).toEqual([]);
    }
    for (const width of [320, 390, 1920]) {
      const page = await desk.opened(await desk.fresh({ width }), address);
      const wide =
        "(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)(document.querySelector('.ask .box-body'))";
      expect(await inPage(page, wide)).toBe(0);
    }
  });
});

test('script and style are no larger than 250 kB, compressed', () => {
  expect(gzipSync(pageScript() + STYLE).length).toBeLessThanOrEqual(250_000);
});
