import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
/** Files that a folder can hold before nobody knows what is in it. */
const MOST_FILES = 14;
/** Names that say what a file is in its folder; every other name stands once. */
const SHARED_NAMES = ['command.ts', 'run.ts', 'words.ts'];

/** The folders as DEVELOPERS.md draws them, from the roof down. */
const drawn = [...readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8').matchAll(/^(src\S*) {2,}\S/gm)].map(
  ([, at]) => at!,
);
const files = (readdirSync(join(ROOT, 'src'), { recursive: true }) as string[])
  .filter((file) => file.endsWith('.ts'))
  .map((file) => join('src', file));

/** What a file imports of ours. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(ROOT, file), 'utf8');
  const said = text.matchAll(/(?:from|import)\s*\(?'(\.[^']+)'/g);
  return [...said].map(([, path]) => join(dirname(file), path!).replace(/\.js$/, '.ts'));
}

test('every folder is drawn once, and every folder that is drawn is there', () => {
  expect(new Set(drawn).size).toBe(drawn.length);
  expect(drawn.toSorted()).toEqual([...new Set(files.map(dirname))].sort());
});

test('a file imports only from its own folder and from folders further down', () => {
  const upward = files.flatMap((file) =>
    importsOf(file)
      .filter((other) => dirname(other) !== dirname(file))
      .filter((other) => drawn.indexOf(dirname(other)) <= drawn.indexOf(dirname(file)))
      .map((other) => `${file} → ${other}`),
  );
  expect(upward).toEqual([]);
  expect(files.flatMap(importsOf).length).toBeGreaterThan(500);
});

test('a folder can be held in mind, and no two files have one name', () => {
  for (const folder of drawn) {
    expect(files.filter((file) => dirname(file) === folder).length, folder).toBeLessThanOrEqual(MOST_FILES);
  }
  const names = files.map((file) => basename(file)).filter((name) => !SHARED_NAMES.includes(name));
  expect(names.filter((name, at) => names.indexOf(name) < at)).toEqual([]);
});
