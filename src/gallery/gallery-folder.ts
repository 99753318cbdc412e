import { closeSync, openSync, readSync } from 'node:fs';
import { join } from 'node:path';
import { type FolderKind, namesIn } from '../files/folder.js';
import { textUpTo } from '../files/reading.js';
import { LARGEST_LIST } from '../formats/shortlist.js';
import { Problem } from '../problem.js';
import { QUARTER_POINTS, quarterPath } from './html/page-quarter.js';
import { isTableOf, TABLE } from './manifest/cloths-table.js';
import { groupsOf } from './manifest/groups.js';
import { type Manifest, parseManifest, swatchPath } from './manifest/manifest.js';
import { SHEET_POINTS, sheetCount } from './sheet/contact-sheet.js';
import { SWATCH_POINTS } from './sheet/swatch.js';

/**
 * The kind of folder that holds a gallery. Each file is recognised by a rule: a picture by its size in points, the
 * table by gallery.json, the page by its title. A file with the right name that fails its rule is a person's.
 */
export const GALLERY: FolderKind = {
  called: 'a gallery',
  folders: ['swatches'],
  always: ['index.html', 'gallery.json', TABLE, sheetPath(1)],
  yields: [],
  ownFiles: (place, shown) => {
    if (!namesIn(place).includes('gallery.json')) return undefined;
    const file = join(shown, 'gallery.json');
    const written = textUpTo(join(place, 'gallery.json'), LARGEST_LIST);
    if (written === undefined) throw new Problem(`${file}: found no file of up to 200 MB; expected a gallery.json`);
    const manifest = parseManifest(written, file);
    const rules = rulesOf(manifest);
    const unchanged = [...rules].filter(([name, isOurs]) => looksRight(join(place, name), isOurs));
    return { named: new Set(rules.keys()), unchanged: new Set(unchanged.map(([name]) => name)) };
  },
};

/** The contact sheet's file names: page 1, and the pages after it. */
export function sheetPath(page: number): string {
  return page === 1 ? 'contact-sheet.png' : `contact-sheet-${page}.png`;
}

type Rule = (path: string) => boolean;

/** Every file of a gallery according to its gallery.json, with the rule that recognises it. */
function rulesOf(manifest: Manifest): Map<string, Rule> {
  const { candidates } = manifest;
  const text =
    (isOurs: (text: string) => boolean): Rule =>
    (path) =>
      isOurs(textUpTo(path, LARGEST_LIST) ?? '');
  const picture =
    (width: number, height: number): Rule =>
    (path) =>
      isPicture(path, width, height);
  const sheets = Array.from({ length: sheetCount(groupsOf(candidates).length) }, (_, at) => sheetPath(at + 1));
  return new Map<string, Rule>([
    ['gallery.json', () => true],
    ['index.html', text((page) => page.includes(' · shedlight gallery</title>'))],
    [TABLE, text((table) => isTableOf(manifest, table))],
    ...sheets.map((name) => [name, picture(SHEET_POINTS.width, SHEET_POINTS.height)] as const),
    ...candidates.map(({ code }) => [swatchPath(code), picture(SWATCH_POINTS, SWATCH_POINTS)] as const),
    ...candidates.map(({ code }) => [quarterPath(code), picture(QUARTER_POINTS, QUARTER_POINTS)] as const),
  ]);
}

/** Whether a path is a file that its rule recognises; false for a missing file or a folder. */
function looksRight(path: string, isOurs: Rule): boolean {
  try {
    return isOurs(path);
  } catch (error) {
    if (['ENOENT', 'EISDIR', 'ENOTDIR'].includes(String((error as NodeJS.ErrnoException).code))) return false;
    throw error;
  }
}

/** Whether a file is a PNG of this size in points, according to its first chunk. */
function isPicture(path: string, width: number, height: number): boolean {
  const head = Buffer.alloc(24);
  const file = openSync(path, 'r');
  try {
    readSync(file, head, 0, head.length, 0);
  } finally {
    closeSync(file);
  }
  return head.toString('latin1', 1, 4) === 'PNG' && head.readUInt32BE(16) === width && head.readUInt32BE(20) === height;
}
