import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { deleteNeedless } from '../../src/package/needless.js';
import { inFolder } from '../cli/run.js';

test('declarations that the library leads to stay, in circles too; others go, and so does what has no source any more', () =>
  inFolder(async (folder) => {
    const write = (name: string, text = 'export {};\n'): void => {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    };
    const sources = ['library/library', 'a/a', 'a/b', 'p', 'other'];
    for (const name of sources) {
      write(`src/${name}.ts`);
      write(`dist/${name}.js`);
    }
    write(
      'dist/library/library.d.ts',
      "import type { A } from '../a/a.js';\nexport { p } from \"../p.js\";\nimport * as v from 'valibot';\n",
    );
    write('dist/a/a.d.ts', "export type B = import('./b.js').B;\n");
    write('dist/a/b.d.ts', "import '../library/library.js';\n");
    for (const name of ['p', 'other', 'gone']) write(`dist/${name}.d.ts`);
    for (const name of ['gone.js', 'bundle.js', 'manual.1']) write(`dist/${name}`);
    deleteNeedless(join(folder, 'dist'), join(folder, 'src'), ['bundle.js']);
    const left = (readdirSync(join(folder, 'dist'), { recursive: true }) as string[]).filter((name) =>
      name.includes('.'),
    );
    expect(left.sort()).toEqual(
      [
        ...sources.map((name) => `${name}.js`),
        ...['library/library', 'a/a', 'a/b', 'p'].map((name) => `${name}.d.ts`),
        'bundle.js',
        'manual.1',
      ].sort(),
    );
  }));
