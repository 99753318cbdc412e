import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs';
import { unread } from '../../files/faults.js';
import { MachineFault, Problem } from '../../problem.js';
import { type Bytes, type FoundCheckpoint, readCheckpoint } from './checkpoint-format.js';

/** A checkpoint that lies open on the disk, to be read. */
export interface OpenCheckpoint extends FoundCheckpoint {
  readonly bytes: Bytes;
  readonly close: () => void;
}

/**
 * Opens a checkpoint to read from it.
 *
 * @throws Problem where the file is none, or not there
 */
export function openCheckpoint(path: string): OpenCheckpoint {
  let file: number;
  try {
    // Without this, opening a pipe would wait for somebody to write into it.
    file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  } catch (error) {
    throw unread(error, path, 'the progress of a search');
  }
  try {
    const bytes = bytesOf(file);
    return { ...readCheckpoint(bytes), bytes, close: () => closeSync(file) };
  } catch (error) {
    closeSync(file);
    throw error instanceof Problem ? error.inFile(path) : error;
  }
}

function bytesOf(file: number): Bytes {
  const stats = fstatSync(file);
  if (!stats.isFile()) throw new Problem('found no file; expected the progress of a search');
  const { size } = stats;
  return {
    size,
    read: (from, length) => {
      const buffer = Buffer.alloc(length);
      for (let at = 0; at < length; ) {
        const read = readSync(file, buffer, at, length - at, from + at);
        if (read === 0) throw new MachineFault('a file became shorter while it was read');
        at += read;
      }
      return buffer;
    },
  };
}
