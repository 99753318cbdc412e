import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { readDraft } from '../../../src/draft/yaml/read-draft.js';
import { emptyPage } from '../../../src/gallery/html/page-html.js';
import { pageScript } from '../../../src/gallery/html/page-script.js';
import { STYLE } from '../../../src/gallery/html/page-style.js';
import { manifestOf } from '../../../src/gallery/manifest/manifest.js';
import { askedOfAddress } from '../../../src/page/ask/asked.js';
import { readAsked } from '../../../src/page/ask/read-asked.js';
import { explore } from '../../../src/search/explore.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { withUnits } from '../../../src/structure/recognise/with-units.js';
import { dataIn, filled, saved, searched } from '../asking.js';
import { faults } from '../axe.js';
import { Desk, inPage, LONG, listed, SOON, search } from '../in-browser.js';

const desk = new Desk();
let address: string;
beforeAll(() => {
  const file = join(desk.home, 'shedlight.html');
  writeFileSync(file, emptyPage(pageScript()));
  address = pathToFileURL(file).href;
});

const noDraft = (): never => {
  throw new Error('no draft is asked for');
};
const DRAFT = 'threading: 1-4, 3-2\ntie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4, 3-2\n';

describe('a question asked in the page', LONG, () => {
  test.each<Record<string, string>>([
    { structure: 'turned twill', by: 'thread, unit', fill: 'solid, alternate', times: '1, 2, 4', rank: 'figure 3' },
    { draft: DRAFT, lengths: '2-5', weft: 'own', limits: 'float 3/8 in, repeat 200', rank: 'unexpected' },
    { structure: '2/2 twill', lengths: '2-7', weft: 'own', show: '100', seen: 'top, right, below' },
    { structure: 'turned twill', blocks: '3', profile: 'search', 'profile lengths': '2-4', show: '9' },
    { structure: 'turned twill', profile: 'A B', treadled: 'search, together', 'profile lengths': '2-3', rank: 'fine' },
    { structure: 'summer and winter', blocks: '3', profile: 'A B C', treadled: 'A+C B .', orders: 'DL', times: '1, 3' },
    { structure: 'plain weave', lengths: '2-5', weft: 'own', limits: 'contrast 0, warp changes 4', rank: 'fine' },
  ])('is answered as by the command: the same codes, order, figures and counts: %j', async (asked) => {
    const page = await desk.opened(await desk.fresh(), address);
    await filled(page, asked);
    await searched(page);
    const flags = { ...asked, ...(asked.draft !== undefined && { draft: 'draft.yaml' }) };
    const question = readQuestion({ flags }, (path) => withUnits(path, readDraft(DRAFT, path), () => {}));
    const outcome = await explore(question);
    const file = await saved(desk, page, 'Save this page');
    expect(dataIn(file)).toBe(JSON.stringify(manifestOf(question, outcome)));
    // The address alone asks the same again, with the typed draft.
    const held = askedOfAddress(new URL(page.url()).hash.slice(1))!;
    expect(readAsked(held)).toEqual(question);
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
    const text = readFileSync(await saved(desk, page, 'Save the question'), 'utf8');
    const read = readQuestion({ text, file: 'question.yaml', flags: {} }, () => {
      throw new Error('no draft is asked for');
    });
    expect(read).toMatchObject({ structures: ['2/2 twill'], lengths: [2, 3, 4], weft: { rule: 'own' } });
  });

  test('keeps the draft: in the saved question, in the saved page, and when either is opened', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    await filled(page, { draft: DRAFT, lengths: '2-4' });
    await page.getByLabel('Its warp is on the loom').check();
    await searched(page);
    const codes = await listed(page);
    const asked = await saved(desk, page, 'Save the question');
    const text = readFileSync(asked, 'utf8');
    const read = readQuestion({ text, file: 'question.yaml', flags: {} }, () => {
      throw new Error('the draft is in the question');
    });
    expect(read.onTheLoom).toBe(true);
    expect(read.draft!.draft).toEqual(withUnits('draft.yaml', readDraft(DRAFT, 'draft.yaml'), () => {}));
    const file = await saved(desk, page, 'Save this page');

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

  test('a question of the gallery keeps what it asked of the point of view, and the form keeps to what is searched', async () => {
    const [question, outcome] = await search({ show: '3', lengths: '2-3', seen: 'top, right, above' });
    const page = await desk.opened(await desk.fresh(), desk.written('seen', question, outcome));
    await page.getByRole('button', { name: 'Ask', exact: true }).click();
    const lists = page.getByRole('group', { name: 'Drawn with' }).getByRole('combobox');
    const chosen = await Promise.all((await lists.all()).map((list) => list.inputValue()));
    expect(chosen).toEqual(['top', 'right', 'above']);
    expect(await page.locator('.structures legend').textContent()).toBe('Structure, one or more: 2/2 twill');
    // Yarns as short as a file may have them, and what the form has no field for.
    const text = 'structure: Turned Twill\nyarns: { D: navy, L: { colour: "#efe6d2", tex: 150 } }\ndone: kept.json\n';
    await page.getByLabel('Question file').setInputFiles({
      name: 'short.yaml',
      mimeType: 'application/yaml',
      buffer: Buffer.from(text),
    });
    await expect.poll(() => page.getByLabel('Colour of D').inputValue(), SOON).toBe('#000080');
    expect(await page.locator('.structures legend').textContent()).toBe('Structure, one or more: turned twill');
    expect(await page.locator('.ask-fields > .caution').textContent()).toMatch(/done before \(kept\.json\)/);
    const short = readQuestion(
      { text: readFileSync(await saved(desk, page, 'Save the question'), 'utf8'), flags: {} },
      noDraft,
    );
    expect(short.yarns).toMatchObject([
      { letter: 'D', name: 'D', hex: '#000080' },
      { letter: 'L', name: 'L', tex: 150 },
    ]);
    await page.getByRole('button', { name: 'Ask', exact: true }).click();
    // Long enough that it is under way when it is ended.
    await filled(page, { structure: '2/2 twill', lengths: '24', tries: '9' });
    await page.getByRole('button', { name: 'Search', exact: true }).click();
    expect(await inPage(page, "document.querySelector('.ask-fields').inert")).toBe(true);
    await page.getByRole('button', { name: 'Cancel' }).click();
    expect(await inPage(page, "document.querySelector('.ask-fields').inert")).toBe(false);
  });

  test('says before it starts what is too large for a browser, and the command for it', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    const said = page.locator('.ask-said');
    const large = page.locator('.too-large');
    await filled(page, { structure: '2/2 twill', lengths: '2-12', weft: 'own', show: 'one of each kind' });
    await expect.poll(() => said.textContent(), SOON).toMatch(/^280,739 candidates: every one will be tried\./);
    expect(await large.isVisible()).toBe(false);
    // Nothing foretells sharp outlines, so that nearly all of them are measured: some minutes on two threads.
    await filled(page, { lengths: '2-14', show: '60', rank: 'clear' });
    await expect.poll(() => said.textContent(), SOON).toMatch(/^2,425,132 .* It takes about \d+ minutes?\.$/);
    // Too many to list: at most 400,000 for each try.
    await filled(page, { lengths: '2-40', rank: 'clear', tries: '40' });
    await expect
      .poll(() => said.textContent(), SOON)
      .toMatch(/^More than 10¹⁵ candidates: too many to try them all\. Up to 16,000,000 will be, .* minutes\.$/);
    expect(await large.textContent()).toContain('shedlight explore question.yaml');
    await filled(page, { tries: '1' });
    await expect.poll(() => large.isVisible(), SOON).toBe(false);
  });

  test('a count that comes late says nothing of what is in the form by then', async () => {
    const context = await desk.fresh();
    await context.addInitScript(`
      globalThis.heard = 0;
      globalThis.Worker = class extends Worker {
        postMessage(wanted) {
          this.addEventListener('message', () => { globalThis.heard++; });
          globalThis.release = () => super.postMessage(wanted);
        }
      };
    `);
    const page = await desk.opened(context, address);
    await filled(page, { structure: '2/2 twill', lengths: '2-4' });
    await expect.poll(() => inPage(page, 'typeof release'), SOON).toBe('function');
    await filled(page, { lengths: 'two' });
    const said = page.locator('.ask-said');
    await expect.poll(() => said.textContent(), SOON).toMatch(/^Found “two”/);
    await inPage(page, 'release()');
    await expect.poll(() => inPage(page, 'heard'), SOON).toBe(1);
    expect(await said.textContent()).toMatch(/^Found “two”/);
    expect(await page.getByRole('button', { name: 'Search', exact: true }).isDisabled()).toBe(true);
  });

  test('says a fault that only the search finds in one sentence', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    await filled(page, { structure: 'huck', profile: 'search', 'profile lengths': '3' });
    await expect.poll(() => page.locator('.ask-said').textContent(), SOON).toMatch(/^Profile: found no block order/);
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
    const file = await saved(desk, page, 'Save this page');
    const alone = await desk.opened(await desk.fresh(), pathToFileURL(file).href);
    expect(await listed(alone)).toEqual(codes);
    writeFileSync(file, readFileSync(file, 'utf8').replace(/<script>[\s\S]*<\/script>/, ''));
    await alone.goto(pathToFileURL(file).href);
    const broken = "[...document.images].filter((image) => !image.src.startsWith('data:image/png')).length";
    expect(await inPage(alone, broken)).toBe(0);
    expect(await alone.locator('.card img').count()).toBe(6);
    expect(desk.complaints).toEqual([]);
  });

  test('is asked by keyboard alone, and the keyboard is not lost', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    const label = 'document.activeElement.labels?.[0]?.textContent ?? document.activeElement.textContent';
    const held = () => inPage<string>(page, label);
    const to = async (name: string, key = 'Tab'): Promise<void> => {
      for (let step = 0; step < 300 && !(await held()).startsWith(name); step++) await page.keyboard.press(key);
      expect(await held()).toMatch(new RegExp(`^${name}`));
    };
    await to('plain weave');
    await page.keyboard.press('Space');
    await to('Lengths');
    await page.keyboard.type('2-5');
    await to('Weft');
    await page.keyboard.type('own');
    await to('Search', 'Shift+Tab');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.room .card', { timeout: 120_000 });
    await to('Ask');
    await page.keyboard.press('Enter');
    expect(await held()).toMatch(/^Ask a question/);
    await page.keyboard.press('Escape');
    expect(await held()).toBe('Ask');
    expect(desk.complaints).toEqual([]);
  });

  test('axe finds nothing in the box, light and dark, and nothing scrolls sideways', async () => {
    for (const scheme of ['light', 'dark'] as const) {
      const page = await desk.opened(await desk.fresh({ scheme }), address);
      await page.getByText('Seldom needed').click();
      const dark = scheme === 'dark';
      expect(await faults(page, dark)).toEqual([]);
      await filled(page, { structure: '2/2 twill', lengths: '2-40', weft: 'own', tries: '40' });
      await page.locator('.too-large').waitFor();
      await page.getByRole('button', { name: 'Search', exact: true }).click();
      expect(await faults(page, dark)).toEqual([]);
      await page.getByRole('button', { name: 'Cancel' }).click();
      await page.keyboard.press('Escape');
      expect(await faults(page, dark)).toEqual([]);
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
