import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeWif } from '../../src/draft/wif/read-wif.js';
import { readDraft } from '../../src/draft/yaml/read-draft.js';
import { parseShortlist } from '../../src/formats/shortlist.js';
import { inFolder, run } from '../cli/run.js';
import { dataIn, filled, saved, searched } from './asking.js';
import { Desk, inPage, LONG, listed, SOON } from './in-browser.js';

const desk = new Desk();
const POINT = 'threading: 1-4, 3-2\ntie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4, 3-2\n';
const LOOM = 'threading: 1-4\ntie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4\nwarp: D D L L\nweft: L\n';

/** Keeps the first cloths that are listed, and returns their codes. */
async function keep(page: Page, count: number): Promise<string[]> {
  const codes = (await listed(page)).slice(0, count);
  for (const code of codes) await page.locator(`[id="${code}"] .keep`).click();
  return codes;
}

async function dropped(page: Page, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    `(() => { const data = new DataTransfer(); data.items.add(new File([${JSON.stringify(text)}], ${JSON.stringify(name)})); return data; })()`,
  );
  await page.dispatchEvent('.own-draft', 'drop', { dataTransfer: data });
  await expect.poll(() => page.locator('.own-draft [role=status]').textContent(), SOON).toBe(`${name} is the draft.`);
}

test('with the page alone: four questions, five cloths kept, one list for the plan', LONG, async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'shedlight.html');
    expect((await run('page', '--out', file)).code).toBe(0);
    const address = pathToFileURL(file).href;
    const context = await desk.fresh();
    const page = await desk.opened(context, address);
    const ask = () => page.getByRole('button', { name: 'Ask', exact: true }).click();
    const [bench, kept] = [page.locator('.bench'), [] as string[]];

    // A structure by its name.
    await filled(page, { structure: '2/2 twill', lengths: '2-5', weft: 'own', show: '8' });
    await searched(page);
    kept.push(...(await keep(page, 2)));
    await page.getByRole('button', { name: 'Kept 2' }).click();
    await page.getByLabel('Stars').first().selectOption('5');
    await page.getByLabel('Note').first().fill('the hall curtain');
    await page.keyboard.press('Escape');

    // A threading that is typed.
    await ask();
    await filled(page, { draft: POINT, lengths: '2-4' });
    await searched(page);
    expect(await bench.textContent()).toContain('Kept 2');
    kept.push(...(await keep(page, 1)));

    // A WIF dropped in.
    await ask();
    await dropped(
      page,
      'from-my-loom.wif',
      writeWif({ ...readDraft(POINT, 'point'), name: 'Point' }, { version: '1', origin: 'a loom' }),
    );
    await filled(page, { lengths: '5' });
    await searched(page);
    kept.push(...(await keep(page, 1)));

    // A warp that is on the loom; the address finds the question again, its draft with it.
    await ask();
    await filled(page, { draft: LOOM, lengths: '2-4' });
    await page.getByLabel('Its warp is on the loom').check();
    await searched(page);
    const onTheLoom = await listed(page);
    kept.push(...(await keep(page, 1)));
    expect(await bench.textContent()).toContain('Kept 5');
    const again = await desk.opened(context, page.url());
    await again.waitForSelector('.room .card', { timeout: 120_000 });
    expect(await listed(again)).toEqual(onTheLoom);
    expect(await again.locator('.bench').textContent()).toContain('Kept 5');

    // The list is a file, and the plan is made of that file.
    await page.getByRole('button', { name: 'Kept 5' }).click();
    const list = await saved(desk, page, 'Save shortlist.json');
    await page.keyboard.press('Escape');
    const shortlist = parseShortlist(readFileSync(list, 'utf8'), list);
    expect(shortlist.map(({ code }) => code)).toEqual(kept);
    expect(shortlist[0]).toMatchObject({ stars: 5, note: 'the hall curtain' });
    const planned = await run('plan', list, '--yarn-size', '8/2 cotton', '--out', join(folder, 'plan'));
    expect([planned.code, planned.err]).toEqual([0, '']);
    const { warps } = JSON.parse(readFileSync(join(folder, 'plan/plan.json'), 'utf8'));
    const planned5 = warps.flatMap(({ pieces }: { pieces: { code: string }[] }) => pieces.map(({ code }) => code));
    expect(planned5.sort()).toEqual([...kept].sort());

    // The question as a file: the command makes the same gallery of it. The page as a file: it still asks.
    const alone = await saved(desk, page, 'Save this page');
    const question = await saved(desk, page, 'Save the question');
    const explored = await run('explore', question, '--out', join(folder, 'gallery'), '--quiet');
    expect(explored.code).toBe(0);
    expect(JSON.parse(readFileSync(join(folder, 'gallery/gallery.json'), 'utf8'))).toEqual(JSON.parse(dataIn(alone)));
    const opened = await desk.opened(await desk.fresh(), pathToFileURL(alone).href);
    expect(await listed(opened)).toEqual(onTheLoom);
    await opened.getByRole('button', { name: 'Ask', exact: true }).click();
    await filled(opened, { lengths: '5' });
    await searched(opened);
    expect(await opened.textContent('h1')).toContain('orders of 5 elements');
    expect(desk.complaints).toEqual([]);
    for (const url of desk.asked) expect(url).toMatch(/^(file|blob|data):/);
  });
});

test(
  'what is marked outlives other questions, two windows, a renamed page and a browser that stores nothing',
  LONG,
  async () => {
    const [first, second] = ['shedlight.html', 'renamed.html'].map((name) => join(desk.home, name));
    await run('page', '--out', first!);
    writeFileSync(second!, readFileSync(first!));
    const address = pathToFileURL(first!).href;
    const context = await desk.fresh();
    const page = await desk.opened(context, address);
    await filled(page, { structure: '2/2 twill', lengths: '2-4', weft: 'own', show: '6' });
    await searched(page);
    const [one] = await keep(page, 1);

    // Another window with the same question: both add, neither loses.
    const other = await desk.opened(context, page.url().replace('shedlight.html', 'renamed.html'));
    await other.waitForSelector('.room .card', { timeout: 120_000 });
    expect(await other.locator('.bench').textContent()).toContain('Kept 1');
    const two = (await listed(other))[1]!;
    await other.locator(`[id="${two}"] .keep`).click();
    await expect.poll(() => page.locator('.bench').textContent(), SOON).toContain('Kept 2');

    // Another question, and the first one again: everything is still marked.
    const ask = async (lengths: string): Promise<void> => {
      await page.getByRole('button', { name: 'Ask', exact: true }).click();
      await filled(page, { lengths });
      await searched(page);
    };
    await ask('5');
    expect(await page.locator('.bench').textContent()).toContain('Kept 2');
    await keep(page, 1);
    await ask('2-4');
    expect(await page.locator('.bench').textContent()).toContain('Kept 3');
    expect(await page.locator(`[id="${one}"] .keep`).getAttribute('aria-pressed')).toBe('true');
    await page.goBack();
    await expect.poll(() => page.textContent('h1').catch(() => ''), SOON).toContain('orders of 5 elements');
    await page.waitForSelector('.room .card', { timeout: 120_000 });
    expect(await page.locator('.bench').textContent()).toContain('Kept 3');

    // A browser that stores nothing says so, and the list goes on to the next question all the same.
    const mute = await desk.fresh();
    await mute.addInitScript(
      "Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused'); } })",
    );
    const deaf = await desk.opened(mute, address);
    await filled(deaf, { structure: '2/2 twill', lengths: '2-4', weft: 'own', show: '6' });
    await searched(deaf);
    await keep(deaf, 2);
    await deaf.getByText('This browser does not store what is kept on this page.').waitFor();
    await deaf.getByRole('button', { name: 'Ask', exact: true }).click();
    await filled(deaf, { lengths: '5' });
    await searched(deaf);
    expect(await deaf.locator('.bench').textContent()).toContain('Kept 2');
    expect(await inPage(deaf, "document.querySelector('.notice').textContent")).toContain('does not store');
    expect(desk.complaints).toEqual([]);
  },
);
