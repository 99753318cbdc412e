import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Bytes of the tarball: what a person waits for. */
const LARGEST = 950_000;

/** What JavaScript imports of the files beside it. */
const IMPORTS = /(?:from|import)\s*\(?\s*["'](\.[^"']+)["']/g;
/** Files that are started or read by name, not imported. */
const BY_NAME = ['dist/search/pool/worker.js', 'dist/page/page.js', 'dist/library/browser-worker.js'];

/** The package as a person gets it, and where it is laid open. */
let packed: { size: number; files: { path: string }[] };
let opened = '';
beforeAll(() => {
  opened = mkdtempSync(join(tmpdir(), 'shedlight-tarball-'));
  const file = execFileSync(process.execPath, ['dist/package/write-tarball.js', opened], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  execFileSync('tar', ['xzf', file.trim(), '-C', opened]);
  const paths = readdirSync(join(opened, 'package'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(join(opened, 'package'), join(entry.parentPath, entry.name)));
  packed = { size: statSync(file.trim()).size, files: paths.map((path) => ({ path })) };
}, 60_000);
afterAll(() => rmSync(opened, { recursive: true, force: true }));

function reached(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  for (const [, path] of readFileSync(join(ROOT, file), 'utf8').matchAll(IMPORTS)) {
    const other = join(dirname(file), path!);
    const real = file.endsWith('.d.ts') ? other.replace(/\.js$/, '.d.ts') : other;
    if (existsSync(join(ROOT, real))) reached(real, seen);
  }
  return seen;
}

describe('the tarball', () => {
  test('is small', () => expect(packed.size).toBeLessThan(LARGEST));

  test('holds what the command and the library load, and nothing else', () => {
    const loaded = new Set(
      [
        'dist/cli/main.js',
        'dist/library/library.js',
        'dist/library/browser.js',
        'dist/library/library.d.ts',
        ...BY_NAME,
      ].flatMap((file) => [...reached(file)]),
    );
    const files = packed.files.map(({ path }) => path).sort();
    const isCode = (file: string): boolean => file.startsWith('dist/') && /\.(js|d\.ts)$/.test(file);
    const lacking = [...loaded].filter((file) => !files.includes(file));
    expect(lacking).toEqual([]);
    // A source with nothing but types is built to a script with nothing in it.
    const isEmpty = (file: string): boolean =>
      readFileSync(join(ROOT, file), 'utf8')
        .replace(/\/\*.*?\*\//gs, '')
        .trim() === 'export {};';
    expect(files.filter((file) => isCode(file) && !loaded.has(file) && !isEmpty(file))).toEqual([]);
    const others = files.filter((file) => !isCode(file));
    expect(others.filter((file) => !/^gallery\/(schemas|guide)\//.test(file))).toEqual([
      'LICENSE',
      'README.md',
      'bin/shedlight.js',
      'dist/licences.txt',
      'dist/shedlight.1',
      'gallery/turned-twill.yaml',
      'package.json',
      'src/score/FIGURES.md',
    ]);
  });

  test('every file of the exports, and of the manual, is in it', () => {
    const { exports, man, bin } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
    const named = [JSON.stringify(exports), JSON.stringify(bin), `"${man}"`]
      .join()
      .matchAll(/"(?:\.\/)?([^"*]+\.[a-z0-9.]+)"/g);
    const paths = [...named].map(([, path]) => path!).filter((path) => path.includes('/'));
    expect(paths.length).toBeGreaterThan(4);
    for (const path of paths) expect(packed.files.map((file) => file.path)).toContain(path);
  });

  test('has no dead link in its pages, nor a heading linked that is not there', () => {
    const pages = packed.files.map(({ path }) => path).filter((path) => path.endsWith('.md'));
    expect(pages.length).toBeGreaterThan(8);
    const read = (page: string): string => readFileSync(join(opened, 'package', page), 'utf8');
    const headings = (page: string): string[] =>
      [...read(page).matchAll(/^#+ (.+)$/gm)].map(([, words]) =>
        words!
          .toLowerCase()
          .replace(/[^\p{L}\d -]/gu, '')
          .replaceAll(' ', '-'),
      );
    const links = pages.flatMap((page) =>
      [...read(page).matchAll(/\]\(([^)\s]+)\)/g)].map(([, link]) => [page, link!] as const),
    );
    for (const [page, link] of links.filter(([, each]) => !each.startsWith('https://'))) {
      const [path, heading] = link.split('#');
      const target = path === '' ? page : join(dirname(page), path!);
      expect([page, link, existsSync(join(opened, 'package', target))]).toEqual([page, link, true]);
      if (heading !== undefined)
        expect([page, link, headings(target)]).toEqual([page, link, expect.arrayContaining([heading])]);
    }
    expect(links.length).toBeGreaterThan(40);
  });

  test('passes on no code without its licence', () => {
    const text = readFileSync(join(ROOT, 'dist/licences.txt'), 'utf8');
    const heads = [...text.matchAll(/^(\S+) \d+\.\d+\.\d+$/gm)].map(([, name]) => name);
    expect(heads).toEqual(['@noble/hashes', 'culori', 'seedrandom', 'valibot', 'yaml']);
    for (const script of ['dist/page/page.js', 'dist/library/browser.js']) {
      const [banner] = readFileSync(join(ROOT, script), 'utf8').split('\n');
      expect(banner).toContain('licences.txt');
      for (const name of heads) expect(banner).toContain(name);
    }
    expect(text.match(/Permission (is hereby granted|to use, copy, modify)/g)).toHaveLength(heads.length);
  });
});

test('the changes begin with what is not yet released, or with the version of the package', () => {
  const read = (path: string): string => readFileSync(join(ROOT, path), 'utf8');
  const [, first] = /^## (.+)$/m.exec(read('gallery/guide/changes.md'))!;
  const { version } = JSON.parse(read('package.json'));
  expect(first === 'Not yet released' || first!.startsWith(version)).toBe(true);
});

describe('the manual', () => {
  const manual = join(ROOT, 'dist/shedlight.1');

  test('names every command, flag and exit code', async () => {
    const text = readFileSync(manual, 'utf8').replaceAll('\\-', '-');
    for (const command of ['explore', 'keep', 'plan', 'deal', 'draw', 'convert', 'completion'])
      expect(text).toContain(`.SH ${command.toUpperCase()}\n`);
    for (const flag of ['--structure', '--unlike-done', '--workers', '--gamp', '--wif', '--weavers'])
      expect(text).toContain(`\\fB${flag}\\fR`);
    expect(text).toMatch(/\\fB130\\fR\nended by Ctrl-C/);
    // A flag of an earlier version is refused, and so not told of.
    expect(text).not.toContain('--limit-float');
  });

  test('is read by man', (context) => {
    const { status, stdout, error } = spawnSync('man', ['-l', manual], {
      encoding: 'utf8',
      env: { ...process.env, MANWIDTH: '80', MANPAGER: 'cat', LC_ALL: 'C.UTF-8' },
    });
    if (error) return context.skip('man is not installed');
    expect(status).toBe(0);
    expect(stdout).toMatch(/NAME\n\s+shedlight - searches for/);
    expect(stdout).toMatch(/--limits list\n\s+what\s+is\s+too\s+much:\s+float\s+1\/2\s+in/);
  });
});
