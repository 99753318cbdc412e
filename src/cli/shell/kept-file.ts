import { existsSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { programVersion } from '../../files/program-version.js';
import { standing } from '../../files/standing.js';
import { isShortlist, type KeptCloth, keptOf, LARGEST_LIST, parseShortlist } from '../../formats/shortlist.js';
import { manifestDraft, parseManifest } from '../../gallery/manifest/manifest.js';
import { sourceOf } from '../../gallery/manifest/origin.js';
import { Problem } from '../../problem.js';
import { asArgument } from '../../words/shell.js';
import { readText } from './files.js';

/** Reads a shortlist from a file. */
export function loadShortlist(path: string): KeptCloth[] {
  if (isFolder(standing(path))) {
    throw new Problem(
      `${path}: found a folder; expected a shortlist, as made by: shedlight keep ${asArgument(path)} CODE`,
    );
  }
  const text = readText(path, 'a shortlist', LARGEST_LIST);
  if (/^\s*\{\s*"format":\s*"shedlight-gallery"/.test(text)) {
    throw new Problem(
      `${path}: found a gallery; expected a shortlist, as made by: shedlight keep ${asArgument(dirname(path))} CODE`,
    );
  }
  return parseShortlist(text, path);
}

/** Reads the cloths of a shortlist, or of a gallery (its folder or its gallery.json). `chosen`: it is a shortlist. */
export function loadCloths(path: string): { file: string; cloths: KeptCloth[]; chosen: boolean } {
  const file = isFolder(standing(path)) ? join(path, 'gallery.json') : path;
  const text = readText(file, 'a gallery, or a list that its page saved', LARGEST_LIST);
  const chosen = isShortlist(text);
  return { file, cloths: chosen ? parseShortlist(text, file) : galleryCloths(text, file), chosen };
}

function galleryCloths(text: string, file: string): KeptCloth[] {
  const manifest = parseManifest(text, file);
  const source = sourceOf(`shedlight ${programVersion()}`, manifest.question);
  return manifest.candidates.map((candidate) => {
    return keptOf({ ...candidate, ...source, draft: manifestDraft(candidate, manifest) });
  });
}

function isFolder(path: string): boolean {
  return existsSync(path) && statSync(path).isDirectory();
}
