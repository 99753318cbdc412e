import { join } from 'node:path';
import { replaceFolder, type WriteFile } from '../files/folder.js';
import type { Stage } from '../search/explore.js';
import type { Question } from '../search/question/question.js';
import type { Outcome } from '../search/strategy/outcome.js';
import { capital } from '../words/counts.js';
import { GALLERY, sheetPath } from './gallery-folder.js';
import { rankingInWords, titleOf } from './html/page-asked.js';
import { galleryPage } from './html/page-html.js';
import { quarter, quarterPath } from './html/page-quarter.js';
import { pageScript } from './html/page-script.js';
import { clothsTable, TABLE } from './manifest/cloths-table.js';
import { groupsOf } from './manifest/groups.js';
import { manifestOf, manifestText, swatchPath } from './manifest/manifest.js';
import { contactSheetPages, PER_PAGE } from './sheet/contact-sheet.js';
import { inFlight } from './sheet/in-flight.js';
import { sheetOrder } from './sheet/sheet-order.js';
import { swatch } from './sheet/swatch.js';

/** Cloths in progress at once: while some are encoded and written, the next are painted. */
const AT_ONCE = 4;

/** A written gallery. */
export interface WrittenGallery {
  /** Its folder, and the page to open, as absolute paths. */
  readonly folder: string;
  readonly index: string;
  /** Bytes written, without the files that were carried over. */
  readonly bytes: number;
}

/**
 * Writes a gallery whole or not at all: if the run is interrupted, the old gallery (or none) is there. An old gallery
 * is replaced; files that a person has put into its folder are carried over.
 *
 * @throws Problem if the folder holds anything but a gallery, MachineFault if the disk fails, the signal's reason if
 *   aborted
 */
export async function writeGallery(
  folder: string,
  question: Question,
  outcome: Outcome,
  onStage?: (stage: Stage) => void,
  signal?: AbortSignal,
): Promise<WrittenGallery> {
  const draw = (write: WriteFile): Promise<void> => fill(write, question, outcome, onStage, signal);
  const { place, bytes } = await replaceFolder(folder, GALLERY, draw, signal);
  return { folder: place, index: join(place, 'index.html'), bytes };
}

/** Draws and writes every file, gallery.json last. */
async function fill(
  write: WriteFile,
  question: Question,
  outcome: Outcome,
  onStage?: (stage: Stage) => void,
  signal?: AbortSignal,
): Promise<void> {
  const { found } = outcome;
  const { seen } = question;
  let drawn = 0;
  await inFlight(found, AT_ONCE, async ({ code, draft }) => {
    write(swatchPath(code), await swatch(draft, { seen }));
    write(quarterPath(code), await quarter(draft, seen));
    onStage?.({ name: 'draw', done: ++drawn, of: found.length });
  });
  // One cloth of each group: near twins would fill the sheets with look-alikes.
  const kinds = groupsOf(found).map((group) => group.found);
  const ranking = `${rankingInWords(question)}${choiceInWords(found.length, kinds.length)}`;
  const sheets = await contactSheetPages(
    sheetOrder(kinds, PER_PAGE),
    { title: titleOf(question), ranking, seen },
    (done, of) => {
      signal?.throwIfAborted();
      onStage?.({ name: 'contact sheet', done, of });
    },
  );
  for (const [at, sheet] of sheets.entries()) write(sheetPath(at + 1), sheet);
  const sheetPaths = sheets.map((_, at) => sheetPath(at + 1));
  const manifest = manifestOf(question, outcome);
  write('index.html', galleryPage(question, outcome, pageScript(), sheetPaths, manifest));
  write(TABLE, clothsTable(found));
  write('gallery.json', manifestText(manifest));
}

/** What the sheets show of all cloths, where it is not simply all of them by rank. */
function choiceInWords(cloths: number, kinds: number): string {
  const twins = kinds < cloths ? ['near twins are on the page'] : [];
  const first = kinds > PER_PAGE ? ['sheet 1 shows the best of each kind'] : [];
  const said = [...first, ...twins].join('; ');
  return said === '' ? '' : `. ${capital(said)}.`;
}
