import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach } from 'vitest';
import { galleryPage } from '../../src/gallery/html/page-html.js';
import { pageScript } from '../../src/gallery/html/page-script.js';
import { explore } from '../../src/search/explore.js';
import type { Question } from '../../src/search/question/question.js';
import { readQuestion } from '../../src/search/question/read-question.js';
import type { Outcome } from '../../src/search/strategy/outcome.js';
import { openBrowser } from '../chromium.js';

/** How long the page may take to answer a key or the history, on a machine that does other things too. */
export const SOON = { timeout: 10_000 };
/** Browser tests are long, on a machine that does other things beside. */
export const LONG = { timeout: 180_000 };

/** A small question of plain weave and twill, with these flags beside. */
export async function search(flags: Record<string, string>): Promise<[Question, Outcome]> {
  const read = readQuestion({ flags: { structure: '2/2 twill', lengths: '2-5', weft: 'own', ...flags } }, () => {
    throw new Error('no draft is asked for');
  });
  return [read, await explore(read, { workers: 0 })];
}

/** Runs in the page; given as text because the page's own types are not known here. */
export const inPage = <T>(page: Page, script: string): Promise<T> => page.evaluate(script);

/** The codes of the cards that are listed, in order. */
export const listed = (page: Page): Promise<string[]> =>
  inPage(page, "[...document.querySelectorAll('.room .card')].map((card) => card.id)");

interface Window extends BrowserContextOptions {
  readonly width?: number;
  readonly height?: number;
  readonly scheme?: 'light' | 'dark';
}

/** The browser of a file of tests: its windows, the pages written for it, and what they asked for or complained of. */
export class Desk {
  readonly home = mkdtempSync(join(tmpdir(), 'live-'));
  readonly asked: string[] = [];
  readonly complaints: string[] = [];
  private browser: Browser | undefined;

  /** Call once in a file of tests. */
  constructor() {
    beforeEach(async (context) => {
      this.browser ??= await openBrowser(context);
      this.asked.length = 0;
      this.complaints.length = 0;
    });
    afterEach(async () => {
      for (const context of this.browser?.contexts() ?? []) await context.close();
    });
    afterAll(async () => {
      await this.browser?.close();
      rmSync(this.home, { recursive: true, force: true });
    });
  }

  /** A window without a network that has seen nothing yet. */
  fresh({ width = 1280, height = 900, scheme = 'light', ...more }: Window = {}): Promise<BrowserContext> {
    return this.browser!.newContext({ offline: true, viewport: { width, height }, colorScheme: scheme, ...more });
  }

  /** Opens a page at an address, and waits until it is alive. */
  async opened(context: BrowserContext, address: string): Promise<Page> {
    const page = await context.newPage();
    page.on('request', (request) => this.asked.push(request.url()));
    page.on('console', (message) => this.complaints.push(message.text()));
    page.on('pageerror', (error) => this.complaints.push(error.message));
    await page.goto(address);
    await page.waitForSelector('.is-alive');
    return page;
  }

  /** Goes to another view of the page, as from a bookmark. */
  async view(page: Page, address: string): Promise<void> {
    await page.goto('about:blank');
    await page.goto(address);
    await page.waitForSelector('.is-alive');
  }

  /** Writes the page of a gallery, without its pictures; returns its address. */
  written(name: string, question: Question, outcome: Outcome): string {
    const file = join(this.home, `${name}.html`);
    writeFileSync(file, galleryPage(question, outcome, pageScript()));
    return pathToFileURL(file).href;
  }
}
