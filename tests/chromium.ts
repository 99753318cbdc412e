import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import type { TestContext } from 'vitest';

/** Where Debian's package, and others' of its kind, put the browser. */
const PLACES = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'];

/** No window, no network of its own accord; without a sandbox, which a container does not allow. */
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
];

/** A real browser. Where none is installed the test is skipped, with a word; in CI it fails. */
export async function openBrowser(context: TestContext): Promise<Browser> {
  const executablePath = PLACES.find((place) => place !== undefined && existsSync(place));
  if (executablePath !== undefined) return chromium.launch({ executablePath, args: FLAGS });
  const missing = 'no chromium found; install Debian’s package, or name one in CHROMIUM';
  if (process.env.CI) throw new Error(missing);
  return context.skip(missing);
}
