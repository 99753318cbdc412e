import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
/** Files that a folder can hold before nobody knows what is in it. */
const MOST_FILES = 14;
/** Names that say what a file is in its folder; every other name stands once. */
const SHARED_NAMES = ['command.ts', 'run.ts', 'words.ts'];

/** Folders of tests that are sorted by another rule: DEVELOPERS.md says which. */
const OTHER_RULE = /^tests\/(outside|plain|bench|fuzz|faults|golden)\//;
/** Test files without a source file of their name, and why. */
const NO_SOURCE: Record<string, string> = {
  'tests/house.test.ts': 'tests where files lie',
  'tests/essays.test.ts': 'tests the pages in capitals',
  'tests/corpus.test.ts': 'opens the files of earlier days',
  'tests/examples.test.ts': 'runs what README and help show',
  'tests/cli/hard-inputs.test.ts': 'gives every command what it must refuse',
  'tests/cli/elsewhere.test.ts': 'gives every command paths from the root, in two folders',
  'tests/cli/shell/out-first.test.ts': 'gives every command a place that cannot be written to',
  'tests/cli/explore/long-runs.test.ts': 'kills and interrupts whole processes',
  'tests/cli/explore/second-round.test.ts': 'follows a weaver through explore, keep, plan and explore again',
  'tests/files/full-disk.test.ts': 'runs commands on a disk that is full',
  'tests/gallery/browser.test.ts': 'opens a whole gallery in a browser, without its script',
  'tests/page/browser.test.ts': 'opens a whole gallery in a browser, with its script',
  'tests/page/journey.test.ts': 'follows a person who has a browser and the page, and no command until the plan',
  'tests/page/firefox.test.ts': 'drives the page in another browser',
  'tests/search/evaluate/in-turn.test.ts': 'scores the candidates of any question one after the other',
};

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

test('a test file has the folder and the name of the source file it tests', () => {
  const tests = (readdirSync(join(ROOT, 'tests'), { recursive: true }) as string[])
    .map((file) => join('tests', file))
    .filter((file) => file.endsWith('.test.ts') && !OTHER_RULE.test(file));
  const strays = tests.filter((file) => !files.includes(file.replace(/^tests/, 'src').replace('.test.ts', '.ts')));
  expect(strays.sort()).toEqual(Object.keys(NO_SOURCE).sort());
  expect(tests.length).toBeGreaterThan(100);
});
