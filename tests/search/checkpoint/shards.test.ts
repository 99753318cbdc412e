import { existsSync, readdirSync, readFileSync, readlinkSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { CheckpointFile } from '../../../src/search/checkpoint/checkpoint-file.js';
import { folderOfShard, openParts, shardFile, shardOf } from '../../../src/search/checkpoint/shards.js';
import { BOUNDED, checkpointFolder, headerOf, kept, LISTED } from './searches.js';

const folder = checkpointFolder();

describe('parts that do not make a whole are refused by name', () => {
  const place = (part: number, of: number, name = 'p'): string => shardFile(join(folder, name), { part, of });
  beforeAll(() => {
    for (const [part, of, name, question] of [
      [1, 3, 'p', BOUNDED],
      [2, 3, 'p', BOUNDED],
      [3, 3, 'p', BOUNDED],
      [1, 2, 'p', BOUNDED],
      [3, 3, 'other', LISTED],
    ] as const) {
      const checkpoint = kept(`${place(part, of, name)}.progress`, question, false, { part, of });
      checkpoint.finish(place(part, of, name));
    }
    const odd = { ...headerOf(LISTED, { part: 1, of: 1 }), question: { ...LISTED, times: ['BAD'] as never } };
    new CheckpointFile(`${place(1, 1, 'odd')}.progress`, odd, { resume: false, say: () => {} }).finish(
      place(1, 1, 'odd'),
    );
    writeFileSync(place(3, 3, 'torn'), readFileSync(place(3, 3)).subarray(0, -5));
    const checkpoint = kept(join(folder, 'p.progress'), BOUNDED, false);
    checkpoint.keep();
    checkpoint.close();
  });

  it.each([
    [() => [place(1, 3), place(3, 3)], '--merge: found no shard 2/3; expected all 3'],
    [() => [place(3, 3)], '--merge: found no shard 1/3, 2/3; expected all 3'],
    [
      () => [place(1, 3), place(2, 3), place(1, 3)],
      /p\.shard-1-of-3: found part 1 a second time, beside .*; expected each once/,
    ],
    [() => [place(1, 3), place(1, 2)], /p\.shard-1-of-2: found part 1 of 2; expected one of 3, as /],
    [
      () => [place(1, 3), place(3, 3, 'other')],
      /other\.shard-3-of-3: found a part of another search than .* \(different: lengths\)/,
    ],
    [
      () => [place(3, 3, 'torn')],
      /torn\.shard-3-of-3: found it damaged or unfinished; expected a whole part: run --shard 3\/3 again/,
    ],
    [() => [join(folder, 'p.progress')], /p\.progress: found the progress of a whole search; expected a shard’s part/],
    [
      () => [place(1, 1, 'odd')],
      /odd\.shard-1-of-1: found a question that nobody could ask; expected a part as --shard writes it/,
    ],
    [() => [place(1, 9)], /p\.shard-1-of-9: found no such file/],
  ])('%#', (files, message) => expect(() => openParts(files())).toThrow(message));

  it.skipIf(!existsSync('/proc/self/fd'))('and closed, as are those that are done with', () => {
    const open = (): number =>
      readdirSync('/proc/self/fd').filter((file) => {
        try {
          return readlinkSync(`/proc/self/fd/${file}`).includes('.shard-');
        } catch {
          return false;
        }
      }).length;
    expect(() => openParts([place(1, 3), place(2, 3)])).toThrow();
    expect(open()).toBe(0);
    const parts = openParts([1, 2, 3].map((part) => place(part, 3)));
    expect(open()).toBe(3);
    parts.close();
    expect(open()).toBe(0);
  });
});

describe('a shard', () => {
  it.skipIf(process.platform === 'win32')('is put where a link leads, which stays', () => {
    const [at, elsewhere] = [shardFile(join(folder, 'linked'), { part: 1, of: 1 }), join(folder, 'elsewhere')];
    symlinkSync(elsewhere, at);
    kept(`${at}.progress`, BOUNDED, false, { part: 1, of: 1 }).finish(at);
    expect(readlinkSync(at)).toBe(elsewhere);
    openParts([elsewhere]).close();
  });

  it.each([
    ['1/1', 1, 1],
    ['4/4', 4, 4],
    ['2/9999', 2, 9999],
  ])('%s', (text, part, of) => expect(shardOf(text)).toEqual({ part, of }));

  it.each(['0/4', '5/4', '2', '2/', '/4', '-1/4', '2/4/4', '1/10000', 'a/b', ''])('is not %j', (text) => {
    expect(() => shardOf(text)).toThrow(`expected a part and how many there are, such as 2/4`);
  });

  it('leaves a file beside the gallery, which is named in it', () => {
    expect(shardFile('gallery', { part: 2, of: 4 })).toBe('gallery.shard-2-of-4');
    expect(folderOfShard('a/gallery.shard-2-of-4')).toBe('a/gallery');
    expect(folderOfShard('a/gallery.progress')).toBeUndefined();
  });
});
