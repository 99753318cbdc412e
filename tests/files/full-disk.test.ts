import { spawnSync } from 'node:child_process';
import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { shortlistText } from '../../src/formats/shortlist.js';
import { inFolder, run } from '../cli/run.js';
import { kept, twelve } from '../plan/cloths.js';

const BIN = fileURLToPath(new URL('../../bin/shedlight.js', import.meta.url));

/** Runs the command where no file may be larger than so many blocks of 512 bytes, as on a disk that fills up. */
function onSmallDisk(blocks: number, folder: string, ...words: string[]): { code: number | null; err: string } {
  const script = `ulimit -f ${blocks}; exec "$0" "$@"`;
  const { status, stderr } = spawnSync('sh', ['-c', script, process.execPath, BIN, ...words], { cwd: folder });
  return { code: status, err: stderr.toString('utf8') };
}

describe.skipIf(process.platform === 'win32')('where the disk takes a part of a file', () => {
  it('keep leaves the shortlist as it was, and says why', () =>
    inFolder(async (folder) => {
      const before = shortlistText([kept('2/2 twill', { warp: 'DDLDL' })]);
      writeFileSync(join(folder, 'kept.json'), before);
      writeFileSync(join(folder, 'saved.json'), shortlistText(twelve()));
      expect(onSmallDisk(9, folder, 'keep', 'saved.json')).toEqual({
        code: 3,
        err: 'shedlight: kept.json: could not be written: it is larger than a file may be here\n',
      });
      expect(readFileSync(join(folder, 'kept.json'), 'utf8')).toBe(before);
      expect(readdirSync(folder).sort()).toEqual(['kept.json', 'saved.json']);
    }));

  it('plan leaves the old plan as it was, all of it', () =>
    inFolder(async (folder) => {
      const saved = join(folder, 'saved.json');
      writeFileSync(saved, shortlistText([kept('2/2 twill', { warp: 'DDLDL' })]));
      expect((await run('plan', saved, '--width', '6 in')).code).toBe(0);
      cpSync(join(folder, 'saved-plan'), join(folder, 'before'), { recursive: true });
      const { code, err } = onSmallDisk(40, folder, 'plan', 'saved.json', '--width', '8 in');
      expect(code).toBe(3);
      expect(err).toMatch(/^shedlight: saved-plan\/\w+\.(json|pdf): could not be written: it is larger than/);
      for (const name of readdirSync(join(folder, 'before'))) {
        const now = readFileSync(join(folder, 'saved-plan', name));
        expect([name, now.equals(readFileSync(join(folder, 'before', name)))]).toEqual([name, true]);
      }
      expect(readdirSync(folder).sort()).toEqual(['before', 'saved-plan', 'saved.json']);
    }));
});
