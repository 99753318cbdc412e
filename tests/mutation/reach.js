import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parseSync } from 'oxc-parser';

/** Tests that draw, use a browser, take long or run the built program, which holds no mutant. */
const SET_ASIDE = /browser|golden|long|examples|essays|house|^tests\/(cli|page|gallery|mutation)\//;

/** The TypeScript files of a folder, at any depth. */
export function filesUnder(folder) {
  return readdirSync(folder, { recursive: true })
    .map((name) => path.posix.join(folder, name))
    .filter((name) => name.endsWith('.ts'))
    .sort();
}

/** The files of the project that a file imports to run, types apart. */
function importsOf(file) {
  const { module } = parseSync(file, readFileSync(file, 'utf8'));
  const imported = module.staticImports
    .filter(({ entries }) => entries.length === 0 || entries.some(({ isType }) => !isType))
    .map(({ moduleRequest }) => moduleRequest.value);
  const passedOn = module.staticExports.flatMap(({ entries }) => entries.map((entry) => entry.moduleRequest?.value));
  return [...imported, ...passedOn]
    .filter((name) => name?.startsWith('.'))
    .map((name) => path.posix.join(path.posix.dirname(file), name).replace(/\.js$/, '.ts'))
    .filter((name) => existsSync(name));
}

/** How near a test file stands to a source file: of its name and folder, of its folder, or elsewhere. */
function standing(test, source) {
  const [own, folder] = [source.replace(/^src/, 'tests').replace(/\.ts$/, '.test.ts'), path.posix.dirname(test)];
  if (test === own) return 0;
  return folder === path.posix.dirname(own) ? 1 : 2;
}

/**
 * `tests`: of every source file the test files that import it in their own process, its own first, then those of its
 * folder, then those that import it most directly. `imports`: of a test file, itself and all that it imports.
 */
export function testsByFile() {
  const imports = new Map();
  const known = (file) => {
    if (!imports.has(file)) imports.set(file, importsOf(file));
    return imports.get(file);
  };
  const [tests, distances] = [new Map(), new Map()];
  for (const test of filesUnder('tests').filter((name) => name.endsWith('.test.ts') && !SET_ASIDE.test(name))) {
    const distance = new Map([[test, 0]]);
    for (const [file, far] of distance) {
      for (const next of known(file)) if (!distance.has(next)) distance.set(next, far + 1);
    }
    distances.set(test, distance);
    for (const [file, far] of distance) {
      tests.set(file, [...(tests.get(file) ?? []), { test, far, stands: standing(test, file) }]);
    }
  }
  for (const reaching of tests.values()) {
    reaching.sort((a, b) => a.stands - b.stands || a.far - b.far || (a.test < b.test ? -1 : 1));
  }
  return { tests, imports: (test) => [...distances.get(test).keys()] };
}
