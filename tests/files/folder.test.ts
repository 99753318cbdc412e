import { writeFileSync } from 'node:fs';
import {
  chmod,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rename,
  rm,
  stat,
  symlink,
  utimes,
  writeFile,
} from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type FolderKind, judgeFolder, replaceFolder } from '../../src/files/folder.js';
import { standing } from '../../src/files/standing.js';
import { namesIn } from '../../src/files/strangers.js';
import { MachineFault, Problem } from '../../src/problem.js';
import { disk, fault, heal } from './disk.js';

// What other files of tests have loaded in this process has the disk as it is, and is loaded anew, and so it is after.
vi.hoisted(() => vi.resetModules());
vi.mock('node:fs', async (original) => (await import('./disk.js')).hooked(await original()));
afterAll(() => {
  vi.doUnmock('node:fs');
  vi.resetModules();
});

/** A box: `list` names what is in it, and `form` is filled in. */
const BOX: FolderKind = {
  called: 'a box',
  folders: ['in'],
  always: ['list', 'form'],
  yields: ['form'],
  ownFiles: (place) => {
    if (!namesIn(place).includes('list')) return undefined;
    const named = new Set(['list', 'in/a', 'in/b']);
    return { named, unchanged: named };
  },
};

let home: string;
let place: string;
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'folder-'));
  place = join(home, 'box');
});
afterEach(async () => {
  heal();
  await rm(home, { recursive: true, force: true });
});

/** Writes a box whose files all say the same. */
const put = (words: string, inner = 'in/a') =>
  replaceFolder(place, BOX, async (write) => {
    for (const name of [inner, 'list', 'form']) write(name, words);
  });

/** All files below a folder with what they say. */
async function said(folder: string): Promise<Record<string, string>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  const texts = await Promise.all(
    files.sort().map(async (path) => [relative(folder, path), await readFile(path, 'utf8')] as const),
  );
  return Object.fromEntries(texts);
}

const THEIRS = { form: 'filled in', 'in/theirs': 'photo', 'notes/warp.txt': 'wound on Tuesday' };
const OLD = { 'in/a': 'old', list: 'old', ...THEIRS };
const NEW = { 'in/b': 'new', list: 'new', ...THEIRS };

async function oldBox(): Promise<void> {
  await put('old');
  await mkdir(join(place, 'notes'));
  for (const [name, words] of Object.entries(THEIRS)) await writeFile(join(place, name), words);
}

/** A lock that was killed while it was made counts for a few seconds: lets them pass. */
async function later(): Promise<void> {
  const then = new Date(Date.now() - 10_000);
  await utimes(join(home, '.box.shedlight-lock'), then, then).catch(() => undefined);
}

/** Runs a new box into the old one, killed at one change; whether it came to its end before. */
async function killedAt(change: number): Promise<boolean> {
  await rm(home, { recursive: true });
  await mkdir(home);
  await oldBox();
  Object.assign(disk, { changes: 0, killedAt: change });
  const ended = await put('new', 'in/b').then(
    () => true,
    () => false,
  );
  heal();
  return ended;
}

describe('a folder that is replaced', () => {
  test('is new, with what a person put there, and nothing beside it', async () => {
    await oldBox();
    await chmod(place, 0o700);
    expect(await put('new', 'in/b')).toEqual({ place, bytes: 9, left: ['form'] });
    expect(await said(home)).toEqual(Object.fromEntries(Object.entries(NEW).map(([name, it]) => [`box/${name}`, it])));
    expect(await readdir(home)).toEqual(['box']);
    expect((await stat(place)).mode & 0o777).toBe(0o700);
  });

  test('wherever a run is killed: old or new, never half, and the next run leaves nothing of it', async () => {
    let [change, olds, moved] = [1, 0, 0];
    for (; !(await killedAt(change)); change++) {
      const found = await said(standing(place));
      if (standing(place) !== place) moved++;
      const isOld = found.list === 'old';
      expect([change, found]).toEqual([change, isOld ? OLD : NEW]);
      expect(await said(standing(join(place, 'notes')))).toEqual({ 'warp.txt': 'wound on Tuesday' });
      await later();
      await judgeFolder(place, BOX);
      expect([change, await said(place)]).toEqual([change, isOld ? OLD : NEW]);
      expect([change, await readdir(home)]).toEqual([change, ['box']]);
      await put('new', 'in/b');
      expect([change, await said(place)]).toEqual([change, NEW]);
      if (isOld) olds++;
    }
    expect(moved).toBe(1);
    expect(olds).toBeGreaterThan(20);
    expect(change - olds).toBeGreaterThan(5);
  });

  test('wherever a first run is killed, the next one is not locked out', async () => {
    for (let change = 1, ended = false; !ended; change++) {
      Object.assign(disk, { changes: 0, killedAt: change });
      ended = await put('new').then(
        () => true,
        () => false,
      );
      heal();
      await later();
      await judgeFolder(place, BOX);
      expect(await readdir(home)).toEqual((await readdir(home)).includes('box') ? ['box'] : []);
      if (!ended) await rm(place, { recursive: true, force: true });
    }
    expect(await said(place)).toEqual({ form: 'new', 'in/a': 'new', list: 'new' });
  });

  test('a file that a person saves while the old folder goes is saved', async () => {
    await oldBox();
    disk.before = (call, from, to) => {
      if (call !== 'renameSync' || from !== place || !String(to).endsWith('old')) return;
      disk.before = undefined;
      writeFileSync(join(place, 'form'), 'filled in to the end');
    };
    await put('new', 'in/b');
    expect(await said(place)).toEqual({ ...NEW, form: 'filled in to the end' });
  });

  test('what only an earlier one has is neither lost nor hidden', async () => {
    await oldBox();
    await rename(place, join(home, '.box.shedlight-old'));
    await mkdir(join(place, 'in'), { recursive: true });
    await writeFile(join(place, 'list'), 'another');
    const judged = judgeFolder(place, BOX);
    await expect(judged).rejects.toBeInstanceOf(Problem);
    await expect(judged).rejects.toThrow(/found an earlier one in .*\.box\.shedlight-old, .*\(“form”\)/);
    expect(await said(join(home, '.box.shedlight-old'))).toEqual(OLD);
  });

  test('what version 0.1.0 moved aside comes back', async () => {
    await oldBox();
    await mkdir(join(home, '.box-a1B2c3', 'new'), { recursive: true });
    await rename(place, join(home, '.box-a1B2c3', 'old'));
    await judgeFolder(place, BOX);
    expect(await said(place)).toEqual(OLD);
  });

  test('what is not ours beside it stays', async () => {
    const others = ['.box.shedlight-new-me', '.box.shedlight-news', '.box-a1B2c3', '.other.shedlight-new-1-abcdef'];
    for (const name of others) await mkdir(join(home, name));
    await put('new');
    expect(await readdir(home)).toEqual([...others, 'box'].sort());
  });
});

describe('a folder that cannot be replaced is refused before there is anything to write', () => {
  const refused = async (folder: string): Promise<Error> => {
    const before = await readdir(home, { recursive: true });
    const error = await judgeFolder(folder, BOX).then(
      () => Promise.reject(new Error('was not refused')),
      (reason: Error) => reason,
    );
    expect(await readdir(home, { recursive: true })).toEqual(before);
    return error;
  };

  test('a link that leads nowhere, which stays', async () => {
    await symlink(join(home, 'nowhere'), place);
    for (const folder of [place, join(place, 'inside')]) {
      expect((await refused(folder)).message).toBe(
        `${folder}: found a link that leads nowhere; expected a folder, or nothing yet`,
      );
    }
  });

  test('a file, a folder with other things, a folder with a changed file', async () => {
    await writeFile(place, '');
    expect((await refused(place)).message).toBe(`${place}: found a file in the way; expected a folder`);
    await rm(place);
    await mkdir(join(place, 'letters'), { recursive: true });
    expect((await refused(place)).message).toBe(
      `${place}: found a folder with other things in it (“letters”); expected a box, or an empty or new folder`,
    );
    await writeFile(join(place, 'list'), '');
    await writeFile(join(place, 'in'), 'a file of theirs');
    expect((await refused(place)).message).toMatch(
      /box\/in: found a file that this version of shedlight did not write/,
    );
  });

  test('where nothing can be made, near or far', async () => {
    disk.before = (call) => {
      if (call === 'openSync' || call === 'mkdtempSync') throw fault('EROFS');
    };
    for (const folder of [place, join(home, 'a', 'b')]) {
      const error = await refused(folder);
      expect(error).toBeInstanceOf(MachineFault);
      expect(error.message).toMatch(/: could not be written: the disk can only be read$/);
    }
  });

  test.skipIf(process.platform !== 'linux')('where the system makes no folders', async () => {
    expect(await refused('/proc/self/plan')).toBeInstanceOf(MachineFault);
  });

  test('a name that is too long for what stands beside it meanwhile', async () => {
    expect((await refused(join(home, 'x'.repeat(235)))).message).toMatch(/found a name too long/);
  });
});
