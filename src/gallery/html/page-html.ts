import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import { programVersion } from '../../files/program-version.js';
import type { Question } from '../../search/question/question.js';
import type { Outcome } from '../../search/strategy/outcome.js';
import { TABLE } from '../manifest/cloths-table.js';
import { type Manifest, manifestOf, swatchPath } from '../manifest/manifest.js';
import { quarterPath } from './page-quarter.js';
import { STYLE } from './page-style.js';
import { pageText } from './page-text.js';

/**
 * Makes the page of a gallery: one file that needs no network, with its pictures beside it.
 *
 * @param script bundled from src/page
 * @param sheets file names of the contact sheets beside the page
 * @param manifest what the page's script works on, where it is made already
 */
export function galleryPage(
  question: Question,
  outcome: Outcome,
  script: string,
  sheets: readonly string[] = ['contact-sheet.png'],
  manifest: Manifest = manifestOf(question, outcome),
): string {
  const parts = { policy: policy(script), script, program: program(), packed: packed(JSON.stringify(manifest)) };
  return pageText(parts, {
    question,
    outcome,
    sheets: outcome.found.length > 0 ? sheets : [],
    pictures: ({ code }) => ({ cloth: swatchPath(code), quarter: quarterPath(code) }),
    figures: TABLE,
  });
}

/** Makes the page without a gallery, in which questions are asked. */
export function emptyPage(script: string): string {
  return pageText({ policy: policy(script), script, program: program(), packed: '' });
}

const program = (): string => `shedlight ${programVersion()}`;

/** What the page's script works on, in a sixth of its length: zlib data (RFC 1950) in base 64. */
function packed(text: string): string {
  return deflateSync(text, { level: 9 }).toString('base64');
}

/**
 * The content security policy: only pictures beside the page load (`file:` for browsers without `self` on disk), and
 * only the page's own script runs, in workers too.
 */
function policy(script: string): string {
  const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  return `default-src 'none'; img-src 'self' file: data:; style-src ${hash(STYLE)}; script-src ${hash(script)}; worker-src blob:; base-uri 'none'; form-action 'none'`;
}
