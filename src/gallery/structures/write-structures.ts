import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { writeWhole } from '../../files/whole.js';
import { draftSvg } from '../../render/draft-svg.js';
import { type Structure, structures } from '../../structure/catalogue/catalogue.js';
import { plainWord } from '../../structure/model/structure.js';
import { MOTIF, usualDraft } from './structure-pictures.js';
import { structureSheet } from './structure-sheet.js';
import { structuresPage } from './structures-page.js';

/** Writes a sheet and a draft for each structure, and the page that shows them all, into a folder. */
async function writeGalleries(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const shown = structures.map((structure) => {
    const name = fileName(structure);
    return { structure, file: `${name}.png`, draft: `${name}-draft.svg` };
  });
  for (const { structure, file, draft } of shown) {
    writeWhole(join(folder, file), await structureSheet(structure));
    writeWhole(join(folder, draft), draftSvg(usualDraft(structure), { title: structure.name }));
  }
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
