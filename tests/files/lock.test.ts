import { mkdtemp, readdir, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { alone } from '../../src/files/lock.js';

let home: string;
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'lock-'));
});
afterEach(() => rm(home, { recursive: true, force: true }));

test('works on one place go one after the other, also where one fails', async () => {
  const place = join(home, 'list.json');
  let [under, most, done] = [0, 0, 0];
  const works = Array.from({ length: 5 }, (_, at) =>
    alone(place, async () => {
      most = Math.max(most, ++under);
      await setTimeout(5);
      under--;
      done++;
      if (at === 1) throw new Error('failed');
    }).catch(() => undefined),
  );
  await Promise.all(works);
  expect([most, done]).toEqual([1, 5]);
  expect(await readdir(home)).toEqual([]);
});

test('a lock that was left half made, by a clock that has been set back since, is taken away', async () => {
  const [place, lock] = [join(home, 'list.json'), join(home, '.list.json.shedlight-lock')];
  await writeFile(lock, '');
  const later = new Date(Date.now() + 3_600_000);
  await utimes(lock, later, later);
  expect(await alone(place, () => 'done')).toBe('done');
  expect(await readdir(home)).toEqual([]);
});
