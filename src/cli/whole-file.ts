import { dirname } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { MachineFault, Problem } from '../problem.js';

/** Writes a file whole or not at all. */
export async function writeWhole(path: string, data: string | Buffer): Promise<void> {
  try {
    await writeFileAtomic(path, data);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') throw new Problem(`${path}: found no folder ${dirname(path)}; expected one that is there`);
    if (code === 'EISDIR') throw new Problem(`${path}: found a folder; expected the name of a file`);
    throw new MachineFault(`${path}: could not be written (${code})`, { cause: error });
  }
}
