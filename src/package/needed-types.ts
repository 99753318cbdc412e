import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** The declarations that a declaration imports, those included that its imports import. */
export function typesReached(from: string, reached = new Set<string>()): Set<string> {
  if (reached.has(from)) return reached;
  reached.add(from);
  for (const [, path] of readFileSync(from, 'utf8').matchAll(/(?:from|import)\s*\(?\s*["'](\.[^"']+)\.js["']/g)) {
    typesReached(join(dirname(from), `${path}.d.ts`), reached);
  }
  return reached;
}

/** Deletes every declaration in a folder that the library’s own does not lead to: nobody can import the rest. */
export function deleteOtherTypes(folder: string, library: string): void {
  const needed = typesReached(library);
  for (const file of readdirSync(folder, { recursive: true }) as string[]) {
    const path = join(folder, file);
    if (file.endsWith('.d.ts') && !needed.has(path)) rmSync(path);
  }
}
