import { spawnSync } from 'node:child_process';
import { chmod, lstat, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { owner } from '../../src/files/hidden.js';
import { writeWhole } from '../../src/files/whole.js';
import { MachineFault, Problem } from '../../src/problem.js';
import { disk, fault, heal } from './disk.js';

// What other files of tests have loaded in this process has the disk as it is, and is loaded anew, and so it is after.
vi.hoisted(() => vi.resetModules());
vi.mock('node:fs', async (original) => (await import('./disk.js')).hooked(await original()));
afterAll(() => {
  vi.doUnmock('node:fs');
  vi.resetModules();
});

let home: string;
let place: string;
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'whole-'));
  place = join(home, 'list.json');
  await writeFile(place, 'what was there');
});
afterEach(async () => {
  heal();
  await rm(home, { recursive: true, force: true });
});

/** Why writing failed; what was there must stay, and nothing beside it. */
function failure(path = place): Promise<Error> {
  const before = disk.before;
  try {
    writeWhole(path, 'something else');
  } catch (error) {
    disk.before = undefined;
    return Promise.all([readFile(place, 'utf8'), readdir(home)]).then(([text, names]) => {
      disk.before = before;
      expect([text, names.filter((name) => name.startsWith('.'))]).toEqual(['what was there', []]);
      return error as Error;
    });
  }
  throw new Error('it was written');
}

describe('a file that is written whole', () => {
  test('has every byte, though the disk takes a few at a time', async () => {
    disk.most = 7;
    const bytes = Buffer.from(Array.from({ length: 300 }, (_, at) => at % 256));
    writeWhole(place, bytes);
    expect((await readFile(place)).equals(bytes)).toBe(true);
    writeWhole(place, 'naïve “text”');
    expect(await readFile(place, 'utf8')).toBe('naïve “text”');
    expect(await readdir(home)).toEqual(['list.json']);
  });

  test.each([
    ['openSync', 'EACCES', 'you may not write there'],
    ['writeSync', 'ENOSPC', 'the disk is full'],
    ['writeSync', 'EFBIG', 'it is larger than a file may be here'],
    ['fsyncSync', 'EIO', 'the disk failed'],
    ['fsyncSync', 'EDQUOT', 'your share of the disk is full'],
    ['renameSync', 'EROFS', 'the disk can only be read'],
  ] as const)('where %s ends in %s, what was there stays', async (call, code, words) => {
    let bytes = 0;
    disk.most = 5;
    disk.before = (called) => {
      if (called === call && (call !== 'writeSync' || bytes++ > 1)) throw fault(code);
    };
    const error = await failure();
    expect(error).toBeInstanceOf(MachineFault);
    expect(error.message).toBe(`${place}: could not be written: ${words}`);
  });

  test('where bytes are lost, or none are taken, what was there stays', async () => {
    const words = `${place}: could not be written: the disk did not take all of it`;
    disk.loses = true;
    expect((await failure()).message).toBe(words);
    heal();
    disk.most = 0;
    expect((await failure()).message).toBe(words);
  });

  test('is written to where a link leads, and the link stays a link', async () => {
    await symlink('list.json', join(home, 'link'));
    await chmod(place, 0o640);
    writeWhole(join(home, 'link'), 'through the link');
    expect((await lstat(join(home, 'link'))).isSymbolicLink()).toBe(true);
    expect(await readFile(place, 'utf8')).toBe('through the link');
    expect((await stat(place)).mode & 0o777).toBe(0o640);
    await symlink('not-yet.json', join(home, 'ahead'));
    writeWhole(join(home, 'ahead'), 'new');
    expect(await readFile(join(home, 'not-yet.json'), 'utf8')).toBe('new');
  });

  test('clears away what a dead run has left, and nothing else', async () => {
    const machine = owner().split('-')[1];
    const dead = spawnSync('true').pid;
    const left = `.list.json.shedlight-new-${dead}-${machine}`;
    const others = [
      `.list.json.shedlight-new-${process.ppid}-${machine}`,
      `.list.json.shedlight-new-${dead}-ffffff`,
      '.list.json.shedlight-new-mine',
      'list.json.1724000000',
    ];
    for (const name of [left, ...others]) await writeFile(join(home, name), '');
    writeWhole(place, 'new');
    expect(await readdir(home)).toEqual([...others, 'list.json'].sort());
  });
});

describe('no file can be', () => {
  test.each([
    ['', 'found a folder; expected the name of a file'],
    ['none/list.json', 'found no folder'],
    ['list.json/x', 'found a file in the way; expected a folder'],
    ['ring', 'found links that lead round in a ring'],
    ['/dev/null', 'found a device or a pipe; expected the name of a file'],
  ])('at %j', async (name, words) => {
    await symlink('ring', join(home, 'ring'));
    const error = await failure(name.startsWith('/') ? name : join(home, name));
    expect(error).toBeInstanceOf(Problem);
    expect(error.message).toContain(words);
  });
});
