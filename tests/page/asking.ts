import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { type Desk, inPage } from './in-browser.js';

/** What the form calls a key, where that is not its name. */
const FIELDS: Readonly<Record<string, string>> = {
  times: 'Size ×',
  profile: 'Order of blocks',
  blocks: 'Number of blocks',
  by: 'Each colour covers',
  fill: 'Each element is',
  starts: 'Orders begin',
};

/** Fills the form of the page with a question, field by field, as a person does; `draft` is typed. */
export async function filled(page: Page, asked: Readonly<Record<string, string>>): Promise<void> {
  const form = page.locator('.ask');
  if ((await form.locator('.seldom[open]').count()) === 0) await form.getByText('Seldom needed').click();
  for (const [key, value] of Object.entries(asked)) {
    const name = FIELDS[key] ?? `${key[0]!.toUpperCase()}${key.slice(1)}`;
    if (key === 'structure') {
      for (const box of await form.locator('.structures :checked').all()) await box.uncheck();
      await form.getByRole('checkbox', { name: value, exact: true }).check();
    } else if (key === 'draft') await form.getByLabel('Threading, tie-up and treadling').fill(value);
    else if (key === 'by' || key === 'fill') {
      const boxes = form.getByRole('group', { name });
      for (const box of await boxes.getByRole('checkbox').all()) await box.uncheck();
      for (const word of value.split(', ')) await boxes.getByRole('checkbox', { name: `${word}:` }).check();
    } else if (key === 'seen') {
      const lists = await form.getByRole('group', { name: 'Drawn with' }).getByRole('combobox').all();
      for (const [at, word] of value.split(', ').entries()) await lists[at]!.selectOption(word);
    } else if (['weft', 'rank', 'show', 'starts'].includes(key)) {
      const list = form.getByRole('combobox', { name, exact: true });
      if ((await list.locator(`option[value="${value}"]`).count()) > 0) await list.selectOption(value);
      else {
        await list.selectOption('other');
        await form.getByRole('textbox', { name: `${name}: ` }).fill(value);
      }
    } else await form.getByLabel(name, { exact: true }).fill(value);
  }
}

/** Presses Search, and waits for the answer. */
export async function searched(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Search', exact: true }).click();
  await expect.poll(() => inPage(page, "document.querySelector('.ask').open"), { timeout: 120_000 }).toBe(false);
}

/** Presses a button that saves a file; returns where it is. */
export async function saved(desk: Desk, page: Page, name: string): Promise<string> {
  const ask = page.getByRole('button', { name: 'Ask', exact: true });
  if (name === 'Save the question' && !(await inPage(page, "document.querySelector('.ask').open"))) await ask.click();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
  if (name === 'Save the question') await page.keyboard.press('Escape');
  const file = join(desk.home, download.suggestedFilename());
  await download.saveAs(file);
  return file;
}

/** The gallery.json in a page, as text. */
export function dataIn(file: string): string {
  const packed = /<script type="text\/plain" id="gallery">([^<]+)</.exec(readFileSync(file, 'utf8'))![1]!;
  return inflateSync(Buffer.from(packed, 'base64')).toString();
}
