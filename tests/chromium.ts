import { type Browser, chromium } from 'playwright-core';
import { inject, type TestContext } from 'vitest';

/** The browser that all tests share. Where none is installed the test is skipped, with a word; in CI it fails. */
export async function openBrowser(context: TestContext): Promise<Browser> {
  const address = inject('browser');
  if (address !== '') return chromium.connect(address);
  const missing = 'no chromium found; install Debian’s package, or name one in CHROMIUM';
  if (process.env.CI) throw new Error(missing);
  return context.skip(missing);
}
