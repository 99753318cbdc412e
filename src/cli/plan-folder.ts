import { existsSync, readdirSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { MachineFault, Problem } from '../problem.js';
import { isFolder } from './kept-file.js';
import { writeWhole } from './whole-file.js';

/** What a person fills in; it is written once and never touched again. */
const FORM = 'results.yaml';

/**
 * Writes the files of a plan into a folder. A folder that holds an earlier plan is brought up to date; the form that the
 * person fills in is left as it is.
 *
 * @param own the file by which an earlier plan is known
 * @returns whether the form was there already
 * @throws Problem where the folder holds other things than a plan
 */
export async function writePlanFolder(
  folder: string,
  own: string,
  files: Readonly<Record<string, string | Buffer>>,
): Promise<{ formKept: boolean }> {
  if (existsSync(folder) && !isFolder(folder)) throw new Problem(`${folder}: found a file; expected a folder`);
  const there = isFolder(folder) ? readdirSync(folder) : [];
  const stranger = there.includes(own) ? undefined : there.find((name) => name !== FORM);
  if (stranger !== undefined) {
    throw new Problem(`${folder}: found other things in it (“${stranger}”); expected an empty or new folder (--out)`);
  }
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw new MachineFault(`${folder}: could not be made (${(error as NodeJS.ErrnoException).code})`, { cause: error });
  }
  const formKept = there.includes(FORM);
  // The file by which the plan is known comes first, so that what is half written can be written again.
  const names = [own, ...Object.keys(files).filter((name) => name !== own && !(name === FORM && formKept))];
  for (const name of names) await writeWhole(join(folder, name), files[name]!);
  return { formKept };
}
