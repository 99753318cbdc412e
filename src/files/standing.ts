import { existsSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { hidden } from './hidden.js';

/**
 * The path at which something can be read. If a run was killed while it exchanged folders, this is a path in the old
 * folder, which the next run puts back.
 */
export function standing(path: string): string {
  if (existsSync(path)) return path;
  const folder = hidden(resolve(path), 'old');
  if (existsSync(folder)) return folder;
  const inner = join(hidden(dirname(resolve(path)), 'old'), basename(path));
  return existsSync(inner) ? inner : path;
}
