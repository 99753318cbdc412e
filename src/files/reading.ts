import { createHash } from 'node:crypto';
import { closeSync, fstatSync, openSync, readSync, statSync } from 'node:fs';

/** Bytes that are read at a time. */
const CHUNK = 65_536;

/**
 * The bytes of a file, or of what comes through a pipe. Of a file over the limit only slightly more than the limit is
 * read, whatever size it claims.
 */
export function bytesUpTo(path: string, largest: number): Buffer | 'folder' | 'large' {
  const file = openSync(path, 'r');
  try {
    const stats = fstatSync(file);
    if (stats.isDirectory()) return 'folder';
    if (stats.size > largest) return 'large';
    const chunks: Buffer[] = [];
    let size = 0;
    for (const chunk of chunksOf(file)) {
      chunks.push(chunk);
      size += chunk.length;
      if (size > largest) return 'large';
    }
    return Buffer.concat(chunks);
  } finally {
    closeSync(file);
  }
}

/** The text of a plain file in UTF-8; undefined if it is none, or larger than the limit. */
export function textUpTo(path: string, largest: number): string | undefined {
  if (!statSync(path).isFile()) return undefined;
  const bytes = bytesUpTo(path, largest);
  return Buffer.isBuffer(bytes) ? bytes.toString('utf8') : undefined;
}

/** The SHA-256 of a file of any size, in hexadecimal digits. */
export function hashOfFile(path: string): string {
  const file = openSync(path, 'r');
  try {
    const hash = createHash('sha256');
    for (const chunk of chunksOf(file)) hash.update(chunk);
    return hash.digest('hex');
  } finally {
    closeSync(file);
  }
}

function* chunksOf(file: number): Generator<Buffer> {
  for (;;) {
    const chunk = Buffer.alloc(CHUNK);
    const count = readSync(file, chunk);
    if (count === 0) return;
    yield chunk.subarray(0, count);
  }
}
