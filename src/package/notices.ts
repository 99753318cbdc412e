import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What esbuild tells of a bundle: the files in it. */
export interface Bundle {
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly outputs: Readonly<Record<string, unknown>>;
}

/** The packages whose code is in some bundles, by name. */
export function packagesIn(bundles: readonly Pick<Bundle, 'inputs'>[]): string[] {
  const files = bundles.flatMap(({ inputs }) => Object.keys(inputs));
  const found = files.flatMap((file) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(file)?.[1] ?? []);
  return [...new Set(found)].sort();
}

/** The licence of each package in full, as each asks of those who pass its code on. */
export function notices(packages: readonly string[], modules: string): string {
  return packages
    .map((name) => {
      const folder = join(modules, name);
      const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { version: string };
      return `${name} ${version}\n\n${licenceIn(folder).trim()}\n`;
    })
    .join(`\n${'-'.repeat(78)}\n\n`);
}

/** The text of the licence: a file of its own, or the part of the README under that heading. */
function licenceIn(folder: string): string {
  const files = readdirSync(folder);
  const own = files.find((file) => /^licen[cs]e/i.test(file));
  if (own !== undefined) return readFileSync(join(folder, own), 'utf8');
  const readme = files.find((file) => /^readme/i.test(file));
  const [, text] =
    /^(?:#+ *)?LICEN[CS]E\b[^\n]*\n(?:[-=]+\n)?(.+)/ims.exec(
      readme === undefined ? '' : readFileSync(join(folder, readme), 'utf8'),
    ) ?? [];
  if (text === undefined) throw new Error(`${folder}: found no licence`);
  return text;
}
