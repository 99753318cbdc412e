import { readFileSync } from 'node:fs';

/** Path of the bundled script, which the build makes; sources that run unbuilt use the one in dist. */
const BUILT = import.meta.url.endsWith('.ts') ? '../../../dist/page/page.js' : '../../page/page.js';

/** The text of the page's script. */
export function pageScript(): string {
  return readFileSync(new URL(BUILT, import.meta.url), 'utf8').trim();
}
