import { type Browser, chromium } from 'playwright-core';
import { inject, type TestContext } from 'vitest';
import { NO_BROWSER } from './browser.js';

/** The browser that all tests share. Where none is installed the test is skipped, with a word; in CI it fails. */
export async function openBrowser(context: TestContext): Promise<Browser> {
  const address = inject('browser');
  if (address !== '') return chromium.connect(address);
  if (process.env.CI) throw new Error(NO_BROWSER);
  return context.skip(NO_BROWSER);
}
