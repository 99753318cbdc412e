import { existsSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { textUpTo } from '../../files/reading.js';
import { standing } from '../../files/standing.js';
import { LARGEST_LIST } from '../../formats/shortlist.js';
import { type Manifest, parseManifest } from '../../gallery/manifest/manifest.js';
import { askedIn, askedInShort } from '../../gallery/manifest/origin.js';
import type { Question } from '../../search/question/question.js';
import { resolvedQuestion } from '../../search/question/read-question.js';

/**
 * The folder of a question's gallery, if none is given: beside the question file, with its name; without a file, in
 * `gallery`, named after the weave. A folder that answers another question stays, with what a person kept in its page:
 * then the name has a number behind it.
 */
export function ownFolder(file: string | undefined, question: Question, say: (line: string) => void): string {
  const first = namedAfter(file, question);
  let folder = first;
  for (let number = 2; otherIn(folder, question) !== undefined; number++) folder = `${bare(first)}-${number}`;
  if (folder !== first) say(`${first} answers another question and stays as it is; this one is in ${folder}`);
  return folder;
}

/** Says that a gallery of another question is about to be replaced, where a person names its folder. */
export function sayReplaced(folder: string, question: Question, say: (line: string) => void): void {
  const other = otherIn(folder, question);
  if (other === undefined) return;
  say(
    `${folder} answered another question (${askedInShort(other)}) and is replaced; ` +
      'what was kept in its page is there again once that is asked again',
  );
}

/** The path of a folder without a slash at its end, to which names are added. */
export function bare(folder: string): string {
  return folder.replace(/(?<=.)[/\\]+$/, '');
}

/** The question that a folder's gallery answers, if it is another; undefined also where no gallery can be read. */
function otherIn(folder: string, question: Question): Manifest['question'] | undefined {
  const path = join(standing(folder), 'gallery.json');
  if (!existsSync(path)) return undefined;
  try {
    const there = parseManifest(textUpTo(path, LARGEST_LIST) ?? '', path).question;
    const asked = JSON.parse(JSON.stringify(resolvedQuestion(question))) as Manifest['question'];
    return isDeepStrictEqual(askedIn(there), askedIn(asked)) ? undefined : there;
  } catch {
    // Whoever writes the gallery says what is wrong with this one.
    return undefined;
  }
}

function namedAfter(file: string | undefined, question: Question): string {
  if (file !== undefined) {
    const name = basename(file, extname(file));
    return join(dirname(file), extname(file) === '' ? `${name}-gallery` : name);
  }
  const { draft } = question;
  const woven = draft ? basename(draft.file, extname(draft.file)) : question.structures.join(' ');
  const plain = woven
    .normalize('NFD')
    .toLowerCase()
    .replace(/[\p{M}'’]/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  const there = question.onTheLoom ? '-on-the-loom' : '';
  return join('gallery', (plain.slice(0, 60) || 'gallery') + there);
}
