import { existsSync } from 'node:fs';
import { type BrowserServer, chromium } from 'playwright-core';

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
  '--font-render-hinting=none',
];

/** What is said where none is installed. */
export const NO_BROWSER =
  'browser tests need chromium, and none was found; install Debian’s package, or name one in CHROMIUM';

/** Starts a browser to which others may connect; undefined where none is installed. */
export async function launchBrowser(): Promise<BrowserServer | undefined> {
  const executablePath = PLACES.find((place) => place !== undefined && existsSync(place));
  return executablePath === undefined ? undefined : chromium.launchServer({ executablePath, args: FLAGS });
}
