import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { emptyPage } from '../../src/gallery/html/page-html.js';
import { pageScript } from '../../src/gallery/html/page-script.js';
import { writeGallery } from '../../src/gallery/write.js';
import { explore } from '../../src/search/explore.js';
import { readQuestion } from '../../src/search/question/read-question.js';
import { filled } from '../page/asking.js';

/** The pages that are looked at: their addresses, and the codes of the gallery's cloths, best first. */
export interface Pages {
  readonly gallery: string;
  readonly still: string;
  readonly empty: string;
  readonly structures: string;
  readonly codes: readonly string[];
}

/** Writes the pages into a folder: a gallery, the same without its script, and the page that asks. */
export async function writePages(folder: string): Promise<Pages> {
  const flags = {
    structure: 'turned twill, 2/2 twill, overshot',
    orders: 'DLDDL, DDL',
    by: 'thread, unit',
    times: '1, 2, 4',
  };
  const question = readQuestion({ flags }, () => {
    throw new Error('no draft is asked for');
  });
  const outcome = await explore(question, { workers: 0 });
  const { index } = await writeGallery(join(folder, 'gallery'), question, outcome);
  const still = join(folder, 'gallery/still.html');
  writeFileSync(still, readFileSync(index, 'utf8').replace(/<script>[\s\S]*<\/script>/, ''));
  const empty = join(folder, 'shedlight.html');
  writeFileSync(empty, emptyPage(pageScript()));
  const [gallery, ...others] = [index, still, empty, join(import.meta.dirname, '../../gallery/structures/index.html')];
  return {
    gallery: pathToFileURL(gallery!).href,
    still: pathToFileURL(others[0]!).href,
    empty: pathToFileURL(others[1]!).href,
    structures: pathToFileURL(others[2]!).href,
    codes: outcome.found.map(({ code }) => code),
  };
}

/** What is looked at: the address, and what a person does there. */
export interface PageView {
  readonly at: (pages: Pages) => string;
  readonly doing?: (page: Page) => Promise<unknown>;
}

const press = (page: Page, name: string) => page.getByRole('button', { name }).click();

async function keepTwo(page: Page): Promise<void> {
  for (const at of [0, 1]) await page.locator('.card .keep').nth(at).click();
  await press(page, 'Kept 2');
  await page.getByLabel('Stars').first().selectOption('4');
  await page.getByLabel('Note').first().fill('For the hall curtain, in wool');
}

/** Every kind of page by the name of its picture. */
export const PAGE_VIEWS: Readonly<Record<string, PageView>> = {
  gallery: { at: ({ gallery }) => gallery },
  'far-in-grey': { at: ({ gallery }) => `${gallery}#size=actual&from=2&grey=yes` },
  cloth: { at: ({ gallery, codes }) => `${gallery}#cloth=${codes[0]}` },
  compare: { at: ({ gallery, codes }) => `${gallery}#compare=${[codes[0], codes[8], codes[10]].join('.')}&beside=yes` },
  kept: { at: ({ gallery }) => gallery, doing: keepTwo },
  ranking: { at: ({ gallery }) => gallery, doing: (page) => press(page, 'Rank and filter') },
  nothing: { at: ({ gallery }) => `${gallery}#find=nothing+is+like+this` },
  still: { at: ({ still }) => still },
  ask: {
    at: ({ empty }) => empty,
    doing: async (page) => {
      await filled(page, { structure: 'summer and winter', lengths: '2-5' });
      await page.getByText('every one will be tried').waitFor();
    },
  },
  structures: { at: ({ structures }) => structures },
  structure: { at: ({ structures }) => `${structures}#overshot` },
};

const require = createRequire(import.meta.url);
const face = (weight: number): string => {
  const file = require.resolve(
    `@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-${weight}-normal.woff2`,
  );
  return `@font-face { font-family: Held; font-weight: ${weight}; src: url(data:font/woff2;base64,${readFileSync(file, 'base64')}); }`;
};

/** The type of our sheets, on the whole page: every machine has another `system-ui`. */
export const TYPE = `${face(400)} ${face(700)} * { font-family: Held !important; }`;
