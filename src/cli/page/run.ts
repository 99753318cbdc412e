import { extname } from 'node:path';
import { writeWhole } from '../../files/whole.js';
import { emptyPage } from '../../gallery/html/page-html.js';
import { pageScript } from '../../gallery/html/page-script.js';
import { Problem } from '../../problem.js';
import { bold, EXIT, type Io, say } from '../shell/io.js';

/** Writes the page in which questions are asked. Returns the exit code. */
export function runPage({ out = 'shedlight.html' }: { readonly out?: string }, io: Io): number {
  if (extname(out).toLowerCase() !== '.html') throw new Problem(`${out}: found another ending; expected .html`);
  writeWhole(out, emptyPage(pageScript()));
  say(io.stdout, `Open ${bold(io.stdout, out)}`);
  return EXIT.done;
}
