import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { deleteOtherTypes } from '../../src/package/needed-types.js';
import { inFolder } from '../cli/run.js';

test('declarations that the library leads to stay, in circles too; others go, and scripts stay', () =>
  inFolder(async (folder) => {
    mkdirSync(join(folder, 'a'));
    const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);
    write(
      'library.d.ts',
      "import type { A } from './a/a.js';\nexport { p } from \"./p.js\";\nimport * as v from 'valibot';\n",
    );
    write('a/a.d.ts', "export type B = import('./b.js').B;\n");
    write('a/b.d.ts', "import '../library.js';\n");
    write('p.d.ts', 'export {};\n');
    write('other.d.ts', 'export {};\n');
    write('other.js', 'export {};\n');
    deleteOtherTypes(folder, join(folder, 'library.d.ts'));
    expect((readdirSync(folder, { recursive: true }) as string[]).sort()).toEqual(
      ['a', 'a/a.d.ts', 'a/b.d.ts', 'library.d.ts', 'other.js', 'p.d.ts'].sort(),
    );
  }));
