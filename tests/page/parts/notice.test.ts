import { copyFileSync, mkdirSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { Desk, inPage, LONG, listed, SOON, search } from '../in-browser.js';

const desk = new Desk();
let address: string;
beforeAll(async () => {
  address = desk.written('few', ...(await search({ show: '12' })));
});

describe('what is kept is not lost', LONG, () => {
  test('between two tabs', async () => {
    const context = await desk.fresh();
    const [here, there] = [await desk.opened(context, address), await desk.opened(context, address)];
    const [one, two] = await listed(here);
    await here.locator(`[id="${one}"] .keep`).click();
    await there.locator(`[id="${two}"] .keep`).click();
    await here.reload();
    await here.waitForSelector('.is-alive');
    expect(await here.locator('.bench').textContent()).toContain('Kept 2');
    await expect.poll(() => there.locator('.bench').textContent(), SOON).toContain('Kept 2');
  });

  test('when Keep is pressed again: stars and note come back', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    const [one] = await listed(page);
    await page.locator(`[id="${one}"] .keep`).click();
    await page.locator(`[id="${one}"] .code`).click();
    await page.locator('.closer').getByLabel('Stars').selectOption('4');
    // Stored while it is typed: no other field is entered.
    await page.locator('.closer').getByLabel('Note').pressSequentially('for the hall');
    await page.reload();
    await page.waitForSelector('.is-alive');
    await page.locator('.closer .keep').click();
    await page.getByText(`${one} is no longer kept.`).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.locator('.closer').getByLabel('Note').inputValue()).toBe('for the hall');
    await page.keyboard.press('Escape');
    expect(await page.locator(`[id="${one}"] .marks`).textContent()).toBe('★★★★ for the hall');
    expect(await page.locator('.notice').isVisible()).toBe(false);
  });

  test('when the folder of the gallery has another name', async () => {
    const context = await desk.fresh();
    mkdirSync(join(desk.home, 'old'));
    copyFileSync(fileURLToPath(address), join(desk.home, 'old', 'index.html'));
    const page = await desk.opened(context, pathToFileURL(join(desk.home, 'old', 'index.html')).href);
    await page.locator('.card .keep').first().click();
    renameSync(join(desk.home, 'old'), join(desk.home, 'new'));
    await desk.view(page, pathToFileURL(join(desk.home, 'new', 'index.html')).href);
    expect(await page.locator('.bench').textContent()).toContain('Kept 1');
    const [question, outcome] = await search({ show: '12', lengths: '2-3' });
    await desk.view(page, desk.written('other', question, outcome));
    expect(await page.locator('.bench').textContent()).toContain('Kept 0');
  });

  test('when what is stored cannot be read: it is set aside, and can be saved', async () => {
    const page = await desk.opened(await desk.fresh(), address);
    await page.locator('.card .keep').first().click();
    await inPage(page, 'localStorage.setItem(Object.keys(localStorage).find((k) => /kept/.test(k)), \'{"torn":\')');
    await page.reload();
    await page.waitForSelector('.is-alive');
    await page.locator('.card .keep').nth(1).click();
    await page.getByRole('button', { name: 'Kept 1', exact: true }).click();
    await page.getByText('It was set aside, not deleted').waitFor();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save what was set aside' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('set-aside-1.json');
  });

  test('when the browser stores nothing: the page says so', async () => {
    const context = await desk.fresh();
    await context.addInitScript("Storage.prototype.setItem = () => { throw new Error('full'); };");
    const page = await desk.opened(context, address);
    await page.locator('.card .keep').first().click();
    await page.getByText('This browser does not store what is kept').waitFor();
    await page.locator('.card .keep').nth(1).click();
    expect(await page.locator('.bench').textContent()).toContain('Kept 2');
  });
});
