/** Makes what a package needs beside the program: its manual, its types, the licences of the code that it passes on. */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { programOf } from '../cli/main.js';
import { programVersion } from '../files/program-version.js';
import { writeWhole } from '../files/whole.js';
import { manPage } from './man-page.js';
import { deleteOtherTypes } from './needed-types.js';
import { type Bundle, notices, packagesIn } from './notices.js';

const dist = process.argv[2]!;
const reports = ['page.json', 'library.json'].map((name) => join(dist, name));
const bundles = reports.map((file) => JSON.parse(readFileSync(file, 'utf8')) as Bundle);

writeWhole(
  join(dist, 'shedlight.1'),
  manPage(
    programOf(process, () => {}, true),
    programVersion(),
  ),
);
writeWhole(join(dist, 'licences.txt'), notices(packagesIn(bundles), 'node_modules'));
deleteOtherTypes(dist, join(dist, 'library', 'library.d.ts'));
for (const file of reports) rmSync(file);
