import { constants } from 'node:fs';
import { cp, mkdir, mkdtemp, open, readdir, readFile, realpath, rename, rm } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { MachineFault, Problem } from '../problem.js';
import type { Outcome } from '../search/found.js';
import type { Question } from '../search/question.js';
import type { Stage } from '../search/run.js';
import { clothsTable, isClothsTable, TABLE } from './cloths-table.js';
import { groupsOf } from './groups.js';
import { inFlight } from './in-flight.js';
import { type Manifest, manifestOf, manifestText, parseManifest, swatchPath } from './manifest.js';
import { galleryPage } from './page.js';
import { rankingOf, titleOf } from './page-asked.js';
import { quarter, quarterPath } from './page-quarter.js';
import { pageScript } from './page-script.js';
import { contactSheetPages } from './sheet.js';
import { swatch } from './swatch.js';

/** Cloths drawn at once: while some are packed and written, the next are painted. */
const AT_ONCE = 4;

/** A gallery as it lies on the disk. */
export interface Written {
  /** Its folder, and the page to open, as absolute paths. */
  readonly folder: string;
  readonly index: string;
  /** Size of all that was written, without what was carried over. */
  readonly bytes: number;
}

/**
 * Writes a gallery whole or not at all. Everything is drawn in a folder beside its place, which is moved there at the
 * end: whenever it is interrupted, the old gallery stands, or none. An old gallery of ours is replaced, and whatever a
 * person has put into its folder is carried over.
 *
 * @throws Problem where the folder holds anything but a gallery, MachineFault where the disk fails, and the signal's
 *   reason where it was interrupted
 */
export async function writeGallery(
  folder: string,
  question: Question,
  outcome: Outcome,
  onStage?: (stage: Stage) => void,
  signal?: AbortSignal,
): Promise<Written> {
  try {
    const place = await placeOf(folder);
    await strangersIn(place, folder);
    const parent = dirname(place);
    await mkdir(parent, { recursive: true });
    const workshop = await mkdtemp(join(parent, `.${basename(place)}-`));
    try {
      const fresh = join(workshop, 'new');
      await mkdir(join(fresh, 'swatches'), { recursive: true });
      const bytes = await fill(fresh, question, outcome, onStage, signal);
      await carryOver(place, fresh, folder);
      await syncFolder(join(fresh, 'swatches'));
      await syncFolder(fresh);
      signal?.throwIfAborted();
      await moveIntoPlace(fresh, place, join(workshop, 'old'));
      await syncFolder(parent);
      return { folder: place, index: join(place, 'index.html'), bytes };
    } finally {
      await rm(workshop, { recursive: true, force: true });
    }
  } catch (error) {
    throw explained(error, folder);
  }
}

/** Draws and writes every file, the list of them last. */
async function fill(
  fresh: string,
  question: Question,
  outcome: Outcome,
  onStage?: (stage: Stage) => void,
  signal?: AbortSignal,
): Promise<number> {
  const { found } = outcome;
  let bytes = 0;
  const write = async (name: string, data: string | Buffer): Promise<void> => {
    signal?.throwIfAborted();
    const size = await writeSynced(join(fresh, name), data);
    bytes += size;
  };
  let drawn = 0;
  await inFlight(found, AT_ONCE, async ({ code, draft }) => {
    await write(swatchPath(code), await swatch(draft));
    await write(quarterPath(code), await quarter(draft));
    onStage?.({ name: 'draw', done: ++drawn, of: found.length });
  });
  // One of each kind: near twins would fill the sheets with what looks the same.
  const kinds = groupsOf(found).map((group) => group.found);
  const twins = found.length - kinds.length;
  const ranking = `${rankingOf(question)}${twins === 0 ? '' : ` · ${twins} near twins left out`}`;
  const sheets = await contactSheetPages(kinds, { title: titleOf(question), ranking }, (done, of) => {
    signal?.throwIfAborted();
    onStage?.({ name: 'contact sheet', done, of });
  });
  for (const [at, sheet] of sheets.entries()) await write(sheetPath(at + 1), sheet);
  const sheetPaths = sheets.map((_, at) => sheetPath(at + 1));
  await write('index.html', galleryPage(question, outcome, pageScript(), sheetPaths));
  await write(TABLE, clothsTable(found));
  await write('gallery.json', manifestText(manifestOf(question, outcome)));
  return bytes;
}

/** The contact sheet's file names: page 1, and the pages after it. */
function sheetPath(page: number): string {
  return page === 1 ? 'contact-sheet.png' : `contact-sheet-${page}.png`;
}

/** Where the gallery will really lie: links followed. Refuses a folder that cannot be exchanged for another. */
async function placeOf(folder: string): Promise<string> {
  const place = await realpath(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return resolve(folder);
    throw error;
  });
  const within = relative(place, process.cwd());
  const outside = within === '..' || within.startsWith(`..${sep}`) || isAbsolute(within);
  if (!outside) {
    throw new Problem(`${folder}: found the folder that you are in; expected one inside it or beside it`);
  }
  return place;
}

/**
 * What lies in a gallery's folder and is not the gallery's own, as paths in it; nothing where there is no folder yet.
 * Refuses a folder that holds something but no gallery of ours.
 */
async function strangersIn(place: string, folder: string): Promise<string[]> {
  const names = await namesIn(place);
  if (names.length === 0) return [];
  if (!names.includes('gallery.json')) {
    throw new Problem(
      `${folder}: found a folder with other things in it (“${names[0]}”); expected a gallery, or an empty or new folder`,
    );
  }
  const manifest = parseManifest(await readFile(join(place, 'gallery.json'), 'utf8'), join(folder, 'gallery.json'));
  const own = ownFiles(manifest);
  // A table with columns that a person has added is theirs.
  if (names.includes(TABLE) && isClothsTable(await readFile(join(place, TABLE), 'utf8'))) own.add(TABLE);
  const swatches = names.includes('swatches') ? await swatchesIn(place) : [];
  return [...names.filter((name) => name !== 'swatches'), ...swatches].filter((name) => !own.has(name));
}

/** Every file that a gallery's list accounts for. */
function ownFiles({ candidates }: Manifest): Set<string> {
  const sheets = candidates.map((_, at) => sheetPath(at + 1));
  return new Set([
    'index.html',
    'gallery.json',
    ...sheets,
    ...candidates.flatMap(({ code }) => [swatchPath(code), quarterPath(code)]),
  ]);
}

async function namesIn(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return [];
    throw error;
  });
  return names.sort();
}

async function swatchesIn(place: string): Promise<string[]> {
  return (await readdir(join(place, 'swatches'))).sort().map((name) => `swatches/${name}`);
}

/** Copies what a person has put into the old gallery, so that it is never missing, whenever the power fails. */
async function carryOver(place: string, fresh: string, folder: string): Promise<void> {
  for (const name of await strangersIn(place, folder)) {
    await cp(join(place, name), join(fresh, name), {
      recursive: true,
      force: false,
      errorOnExist: true,
      preserveTimestamps: true,
      verbatimSymlinks: true,
      mode: constants.COPYFILE_FICLONE,
    }).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'ERR_FS_CP_EEXIST') throw error;
      throw new Problem(
        `${join(folder, name)}: found a file that the old gallery did not write, but the new one will; expected another name`,
      );
    });
  }
}

async function moveIntoPlace(fresh: string, place: string, aside: string): Promise<void> {
  const old = await rename(place, aside).then(
    () => true,
    (error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return false;
      throw error;
    },
  );
  try {
    await rename(fresh, place);
  } catch (error) {
    if (old) await rename(aside, place);
    throw error;
  }
}

/** Writes a file that was not there, down to the disk. */
async function writeSynced(path: string, data: string | Buffer): Promise<number> {
  const file = await open(path, 'wx');
  try {
    await file.writeFile(data);
    await file.sync();
  } finally {
    await file.close();
  }
  return Buffer.byteLength(data);
}

async function syncFolder(path: string): Promise<void> {
  // Windows cannot open a folder to sync it, and keeps its entries by itself.
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

const FAULTS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  EACCES: 'you may not write there',
  EPERM: 'you may not write there',
  EROFS: 'the disk can only be read',
  EBUSY: 'the folder is in use or is a disk of its own; a folder inside it will do',
  EXDEV: 'the folder is a disk of its own; a folder inside it will do',
  EIO: 'the disk failed',
  EMFILE: 'too many files are open',
};

/** A failure of the disk in one clear sentence; anything else as it is. */
function explained(error: unknown, folder: string): unknown {
  if (!(error instanceof Error) || !('syscall' in error) || !('code' in error)) return error;
  const code = String(error.code);
  if (code === 'ENOTDIR' || code === 'EEXIST')
    return new Problem(`${folder}: found a file in the way; expected a folder`);
  if (code === 'ENAMETOOLONG')
    return new Problem(`${folder.slice(0, 40)}…: found a name too long for this disk; expected a shorter one`);
  return new MachineFault(`${folder}: the gallery could not be written: ${FAULTS[code] ?? error.message}`, {
    cause: error,
  });
}
