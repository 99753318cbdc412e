import { chmod, copyFile, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { parseManifest } from '../../src/gallery/manifest/manifest.js';
import { writeGallery } from '../../src/gallery/write.js';
import { MachineFault, Problem } from '../../src/problem.js';
import type { Outcome } from '../../src/search/strategy/outcome.js';
import { disk, fault, heal } from '../files/disk.js';
import { foundOf, HOUNDS_TOOTH, LOG_CABIN, trialOutcome, trialQuestion } from './trial.js';

// What other files of tests have loaded in this process has the disk as it is, and is loaded anew, and so it is after.
vi.hoisted(() => vi.resetModules());
vi.mock('node:fs', async (original) => (await import('../files/disk.js')).hooked(await original()));
afterAll(() => {
  vi.doUnmock('node:fs');
  vi.resetModules();
});

let home: string;
let place: string;
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'gallery-'));
  place = join(home, 'gallery');
});
afterEach(async () => {
  heal();
  await rm(home, { recursive: true, force: true });
});

const question = trialQuestion();
const outcome = trialOutcome();
const other = { ...outcome, found: [foundOf(HOUNDS_TOOTH, 1)] };
const contents = async (folder: string): Promise<string[]> =>
  (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
    .sort();
const bytesOf = async (folder: string): Promise<Map<string, string>> => {
  const names = await contents(folder);
  return new Map(
    await Promise.all(names.map(async (name) => [name, await readFile(join(folder, name), 'base64')] as const)),
  );
};
describe('writing a gallery', () => {
  test('writes page, contact sheet, pictures and list, and nothing beside them', async () => {
    const stages: string[] = [];
    const written = await writeGallery(place, question, outcome, ({ name, done, of }) =>
      stages.push(`${name} ${done}/${of}`),
    );
    const swatches = outcome.found.flatMap(({ code }) => [`swatches/${code}.png`, `swatches/${code}-quarter.png`]);
    const own = ['cloths.csv', 'contact-sheet.png', 'gallery.json', 'index.html', ...swatches];
    expect(await contents(place)).toEqual(own.sort());
    expect(await readdir(home)).toEqual(['gallery']);
    expect(written).toMatchObject({ folder: place, index: join(place, 'index.html') });
    const sizes = [...(await bytesOf(place)).values()].map((data) => Buffer.from(data, 'base64').length);
    expect(written.bytes).toBe(sizes.reduce((sum, size) => sum + size, 0));
    expect(stages).toEqual(['draw 1/3', 'draw 2/3', 'draw 3/3', 'contact sheet 1/1']);
    const picture = PNG.sync.read(await readFile(join(place, swatches[0]!)));
    expect([picture.width, picture.height]).toEqual([400, 400]);
    const manifest = parseManifest(await readFile(join(place, 'gallery.json'), 'utf8'), 'gallery.json');
    expect(manifest.candidates.map(({ code }) => code)).toEqual(outcome.found.map(({ code }) => code));
  });

  test('writes the same bytes for the same gallery', async () => {
    await writeGallery(place, question, outcome);
    const first = await bytesOf(place);
    await writeGallery(place, question, outcome);
    expect(await bytesOf(place)).toEqual(first);
    await writeGallery(join(home, 'second'), trialQuestion(), trialOutcome());
    expect(await bytesOf(join(home, 'second'))).toEqual(first);
  });

  test('further pages of the contact sheet stand beside the first, and go with their gallery', async () => {
    const many = {
      ...outcome,
      found: Array.from({ length: 17 }, (_, k) => foundOf(LOG_CABIN, k + 1, { code: `trial${k}` })),
    };
    await writeGallery(place, question, many);
    expect(await contents(place)).toContain('contact-sheet-2.png');
    await writeGallery(place, question, other);
    expect(await contents(place)).not.toContain('contact-sheet-2.png');
  });

  test('makes the folders above, and writes into an empty folder', async () => {
    await writeGallery(join(home, 'a', 'b'), question, other);
    await mkdir(place);
    await writeGallery(place, question, other);
    expect(await contents(place)).toEqual(await contents(join(home, 'a', 'b')));
  });

  test('replaces an old gallery, and carries over what a person has put there', async () => {
    await writeGallery(place, question, outcome);
    await writeFile(join(place, 'shortlist.json'), '{}');
    await writeFile(join(place, 'swatches', 'mine.png'), 'photo');
    await mkdir(join(place, 'notes', 'deep'), { recursive: true });
    await writeFile(join(place, 'notes', 'deep', 'warp.txt'), 'wound on Tuesday');
    await symlink('shortlist.json', join(place, 'kept'));
    await writeGallery(place, question, other);
    expect(await contents(place)).toEqual(
      [
        'cloths.csv',
        'contact-sheet.png',
        'gallery.json',
        'index.html',
        'kept',
        'notes/deep/warp.txt',
        'shortlist.json',
        'swatches/mine.png',
        `swatches/${other.found[0]!.code}.png`,
        `swatches/${other.found[0]!.code}-quarter.png`,
      ].sort(),
    );
    expect(await readFile(join(place, 'notes', 'deep', 'warp.txt'), 'utf8')).toBe('wound on Tuesday');
    expect(await readFile(join(place, 'kept'), 'utf8')).toBe('{}');
    expect(await readdir(home)).toEqual(['gallery']);
  });

  test('follows a link to the folder, and leaves the link', async () => {
    await mkdir(join(home, 'real'));
    await symlink(join(home, 'real'), place);
    expect((await writeGallery(place, question, other)).folder).toBe(join(home, 'real'));
    expect(await contents(place)).toContain('index.html');
  });
});

describe('a gallery’s folder', () => {
  const refusal = async (folder: string, found: Outcome = other): Promise<Error> => {
    const before = await bytesOf(home).catch(() => undefined);
    const error = await writeGallery(folder, question, found).then(
      () => undefined,
      (reason) => reason,
    );
    expect(await bytesOf(home).catch(() => undefined)).toEqual(before);
    return error;
  };

  test('is refused where it holds other things', async () => {
    await mkdir(place);
    await writeFile(join(place, 'letters.txt'), 'dear');
    const error = await refusal(place);
    expect(error).toBeInstanceOf(Problem);
    expect(error.message).toBe(
      `${place}: found a folder with other things in it (“letters.txt”); expected a gallery, or an empty or new folder`,
    );
  });

  test('is refused where its list is another’s or damaged', async () => {
    await mkdir(place);
    await writeFile(join(place, 'gallery.json'), '{"format": "photographs"}');
    expect((await refusal(place)).message).toMatch(/gallery\.json: found another kind of file/);
    await writeFile(join(place, 'gallery.json'), '{"format": "shedlight-gallery", "version": 1}');
    expect(await refusal(place)).toBeInstanceOf(Problem);
  });

  test('is refused where a file is in the way', async () => {
    await writeFile(place, 'a file');
    for (const folder of [place, join(place, 'inside')]) {
      const error = await refusal(folder);
      expect(error).toBeInstanceOf(Problem);
      expect(error.message).toBe(`${folder}: found a file in the way; expected a folder`);
    }
  });

  test('is refused where a person’s file has a name that the new gallery needs', async () => {
    await writeGallery(place, question, other);
    const needed = `swatches/${outcome.found[0]!.code}.png`;
    await writeFile(join(place, needed), 'mine');
    const error = await refusal(place, outcome);
    expect(error).toBeInstanceOf(Problem);
    expect(error.message).toContain(`${needed}: found a file that this version of shedlight did not write`);
  });

  test('is refused where a person has added a column to its table, or has put one of their own there', async () => {
    await writeGallery(place, question, other);
    const table = join(place, 'cloths.csv');
    const text = await readFile(table, 'utf8');
    for (const theirs of [text.replace('rank,code', 'rank,woven,code'), `${text}2,mine\r\n`, 'yarn,price\r\n']) {
      await writeFile(table, theirs);
      expect((await refusal(place, outcome)).message).toContain(
        'cloths.csv: found a file that this version of shedlight did not write',
      );
    }
    await writeFile(table, text);
    await writeGallery(place, question, outcome);
    expect((await readFile(table, 'utf8')).split('\r\n')).toHaveLength(outcome.found.length + 2);
  });

  test('keeps a sheet that a person has put beside its own, and refuses to write over it', async () => {
    await writeGallery(place, question, other);
    await writeFile(join(place, 'contact-sheet-2.png'), 'a photo');
    await writeGallery(place, question, outcome);
    expect(await readFile(join(place, 'contact-sheet-2.png'), 'utf8')).toBe('a photo');
    const many = {
      ...outcome,
      found: Array.from({ length: 17 }, (_, k) => foundOf(LOG_CABIN, k + 1, { code: `t${k}` })),
    };
    expect((await refusal(place, many)).message).toContain('contact-sheet-2.png: found a file that this version');
  });

  test('is refused where a person has put a photo in the place of a picture', async () => {
    await writeGallery(place, question, other);
    const swatches = `swatches/${other.found[0]!.code}.png`;
    await copyFile(join(place, 'contact-sheet.png'), join(place, swatches));
    expect((await refusal(place)).message).toContain(
      `${swatches}: found a file that this version of shedlight did not write`,
    );
  });

  test('is refused where one stands in it', async () => {
    expect((await refusal('.')).message).toMatch(/^\.: found the folder that you are in/);
    expect((await refusal('..')).message).toMatch(/^\.\.: found the folder that you are in/);
  });
});

describe('where writing fails', () => {
  const failure = async (): Promise<Error> =>
    writeGallery(place, question, other).then(
      () => Promise.reject(),
      (error) => error,
    );

  test.each([
    ['ENOSPC', 'the disk is full'],
    ['EACCES', 'you may not write there'],
    ['EROFS', 'the disk can only be read'],
    ['EIO', 'the disk failed'],
  ])('%s: one clear sentence, the old gallery as it was, nothing left beside it', async (code, words) => {
    await writeGallery(place, question, outcome);
    const before = await bytesOf(home);
    const swatches = `swatches/${other.found[0]!.code}.png`;
    for (const file of [swatches, 'contact-sheet.png', 'index.html', 'cloths.csv', 'gallery.json']) {
      disk.before = (call, path) => {
        if (call === 'openSync' && String(path).endsWith(file)) throw fault(code);
      };
      const error = await failure();
      expect(error).toBeInstanceOf(MachineFault);
      expect(error.message).toBe(`${join(place, file)}: could not be written: ${words}`);
      expect(await bytesOf(home)).toEqual(before);
      expect(await readdir(home)).toEqual(['gallery']);
    }
  });

  test('puts the old gallery back where the new one cannot be moved into its place', async () => {
    await writeGallery(place, question, outcome);
    const before = await bytesOf(home);
    disk.before = (call, from, to) => {
      if (call === 'renameSync' && String(from).includes('-new-') && to === place) throw fault('EIO');
    };
    expect(await failure()).toBeInstanceOf(MachineFault);
    expect(await bytesOf(home)).toEqual(before);
  });

  test('stops at a signal, at any picture, and leaves no trace', async () => {
    await writeGallery(place, question, other);
    const before = await bytesOf(home);
    for (let picture = 0; picture <= outcome.found.length; picture++) {
      const stop = new AbortController();
      const stopped = new Error('stopped by hand');
      if (picture === 0) stop.abort(stopped);
      const writing = writeGallery(
        place,
        question,
        outcome,
        ({ done }) => done === picture && stop.abort(stopped),
        stop.signal,
      );
      await expect(writing).rejects.toBe(stopped);
      expect(await bytesOf(home)).toEqual(before);
      expect(await readdir(home)).toEqual(['gallery']);
    }
  });

  test.skipIf(process.getuid?.() === 0)(
    'a folder that may not be written to (not for the superuser, who always may)',
    async () => {
      await chmod(home, 0o500);
      const error = await failure();
      await chmod(home, 0o700);
      expect(error).toBeInstanceOf(MachineFault);
    },
  );
});
