/** Packs the project for those who install it: `npm run tarball FOLDER`. No link in its pages leads out of it. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, normalize, resolve } from 'node:path';
import { transformSync } from 'esbuild';
import { packedPage } from './packed-page.js';

const place = resolve(process.argv[2] ?? '.');
/** Without scripts: the build is there already. */
const pack = (cwd: string, ...more: string[]): string =>
  execFileSync('npm', ['pack', '--json', '--ignore-scripts', ...more], { cwd, encoding: 'utf8' });

const [packed] = JSON.parse(pack('.', '--dry-run')) as [{ files: { path: string }[] }];
const files = packed.files.map(({ path }) => path);
const copy = mkdtempSync(join(tmpdir(), 'shedlight-package-'));
try {
  for (const file of files) cpSync(file, join(copy, file));
  for (const page of files.filter((file) => file.endsWith('.md'))) {
    const isThere = (link: string): boolean => {
      const path = normalize(join(dirname(page), link));
      return files.some((file) => file === path || file.startsWith(`${path}/`));
    };
    writeFileSync(join(copy, page), packedPage(readFileSync(page, 'utf8'), isThere));
  }
  // The comments are for those who read the sources. Bundles, which begin with their licences, are small already.
  for (const script of files.filter((file) => file.startsWith('dist/') && file.endsWith('.js'))) {
    const text = readFileSync(script, 'utf8');
    if (text.startsWith('/*!')) continue;
    const { code } = transformSync(text, { minifyWhitespace: true, legalComments: 'inline', target: 'es2022' });
    writeFileSync(join(copy, script), code);
  }
  const [{ filename }] = JSON.parse(pack(copy, '--pack-destination', place)) as [{ filename: string }];
  console.log(join(place, filename));
} finally {
  rmSync(copy, { recursive: true });
}
