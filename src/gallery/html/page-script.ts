import { readFileSync } from 'node:fs';

/** The page's script as it was bundled at the build; the sources, when they are run as they are, borrow the built one. */
const BUILT = import.meta.url.endsWith('.ts') ? '../../../dist/page/page.js' : '../../page/page.js';

/** The text of the page's script. */
export function pageScript(): string {
  return readFileSync(new URL(BUILT, import.meta.url), 'utf8').trim();
}
