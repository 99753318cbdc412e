import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
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

/**
 * Deletes from a build what nobody can import: declarations that the library’s own does not lead to, and whatever an
 * earlier build made of sources that are gone.
 *
 * @param bundles scripts made of several sources, as paths in `dist`
 */
export function deleteNeedless(dist: string, src: string, bundles: readonly string[]): void {
  const needed = typesReached(join(dist, 'library', 'library.d.ts'));
  for (const file of readdirSync(dist, { recursive: true }) as string[]) {
    const [, name, ending] = /^(.*?)(\.d\.ts|\.js)$/.exec(file) ?? [];
    if (name === undefined || bundles.includes(file)) continue;
    const isStale = !existsSync(join(src, `${name}.ts`));
    if (isStale || (ending === '.d.ts' && !needed.has(join(dist, file)))) rmSync(join(dist, file));
  }
}
