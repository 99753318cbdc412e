import { lstatSync, mkdtempSync, realpathSync, rmdirSync, statSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { Problem } from '../problem.js';
import { explained } from './faults.js';

/**
 * The real path of a folder, existing or not: links are followed.
 *
 * @throws Problem if it cannot be replaced: a file, a broken link, or a folder that holds the working folder
 */
export function placeOfFolder(folder: string): string {
  const place = followed(folder);
  if (statSync(place, { throwIfNoEntry: false })?.isDirectory() === false) {
    throw new Problem(`${folder}: found a file in the way; expected a folder`);
  }
  const within = relative(place, process.cwd());
  const outside = within === '..' || within.startsWith(`..${sep}`) || isAbsolute(within);
  if (!outside) {
    throw new Problem(`${folder}: found the folder that you are in; expected one inside it or beside it`);
  }
  return place;
}

function followed(folder: string): string {
  try {
    return realpathSync(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
  const place = resolve(folder);
  for (let above = place; above !== dirname(above); above = dirname(above)) {
    const there = lstatSync(above, { throwIfNoEntry: false });
    if (there?.isSymbolicLink() && statSync(above, { throwIfNoEntry: false }) === undefined) {
      throw new Problem(`${folder}: found a link that leads nowhere; expected a folder, or nothing yet`);
    }
  }
  return place;
}

/** Checks that something can be made at a place, whose parent folders may be missing; leaves nothing behind. */
export function checkWritable(place: string): void {
  try {
    let above = dirname(resolve(place));
    while (statSync(above, { throwIfNoEntry: false }) === undefined) above = dirname(above);
    rmdirSync(mkdtempSync(join(above, '.shedlight-')));
  } catch (error) {
    throw explained(error, place);
  }
}
