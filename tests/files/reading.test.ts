import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { bytesUpTo, hashOfFile, textUpTo } from '../../src/files/reading.js';
import { inFolder } from '../cli/run.js';

const BYTES = Buffer.alloc(200_000, 'warp');

test.each([
  [200_000, 200_000],
  [199_999, 'large'],
  [1e9, 200_000],
])('a file of 200,000 bytes, of which %d may be read', (largest, found) =>
  inFolder(async (folder) => {
    const path = join(folder, 'file');
    writeFileSync(path, BYTES);
    const bytes = bytesUpTo(path, largest);
    expect(Buffer.isBuffer(bytes) ? bytes.length : bytes).toBe(found);
    expect(textUpTo(path, largest)).toBe(found === 'large' ? undefined : BYTES.toString());
  }),
);

test('a folder has neither bytes nor text', () =>
  inFolder(async (folder) => {
    expect(bytesUpTo(folder, 10)).toBe('folder');
    expect(textUpTo(folder, 10)).toBeUndefined();
  }));

test.skipIf(process.platform === 'win32')('what says that it has no size is read no further than the limit', () => {
  expect(bytesUpTo('/dev/zero', 1000)).toBe('large');
});

test('a hash is that of all bytes', () =>
  inFolder(async (folder) => {
    writeFileSync(join(folder, 'file'), BYTES);
    expect(hashOfFile(join(folder, 'file'))).toBe(createHash('sha256').update(BYTES).digest('hex'));
  }));
