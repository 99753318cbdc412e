import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { writeWhole } from '../../files/whole.js';
import { type Structure, structures } from '../../structure/catalogue/catalogue.js';
import { plainWord } from '../../structure/model/structure.js';
import { MOTIF } from './structure-pictures.js';
import { structureSheet } from './structure-sheet.js';
import { structuresPage } from './structures-page.js';

/** Variants without a sheet of their own: another sheet shows their cloth. */
const SHOWN_ELSEWHERE: ReadonlySet<string> = new Set([
  'plain weave on four shafts',
  '3/3 basket',
  '1/2 twill',
  'halvdräll, float of five',
  'halvdräll, float of seven',
  'huck lace',
]);
/** Whether a structure gets a sheet. Of the many similar 1/3 and 3/1 twills only the straight ones do. */
const isShown = ({ name }: Structure): boolean => !SHOWN_ELSEWHERE.has(name) && !/^(1\/3|3\/1) (?!twill$)/.test(name);

/** Writes one sheet for each structure, and the page that shows them all, into a folder. */
async function writeGalleries(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const shown = structures.filter(isShown).map((structure) => ({ structure, file: `${fileName(structure)}.png` }));
  for (const { structure, file } of shown) writeWhole(join(folder, file), await structureSheet(structure));
  writeWhole(join(folder, 'index.html'), structuresPage(shown, MOTIF));
  console.log(`${shown.length} sheets. Open ${join(folder, 'index.html')}`);
}

/** `ms-and-os` for M’s and O’s. */
function fileName({ name }: Structure): string {
  return plainWord(name)
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

await writeGalleries(process.argv[2] ?? join('gallery', 'structures'));
