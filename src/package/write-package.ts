/** Makes what a package needs beside the program, its manual and the licences of code that it passes on; deletes the rest. */
import { readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { programOf } from '../cli/main.js';
import { programVersion } from '../files/program-version.js';
import { writeWhole } from '../files/whole.js';
import { manPage } from './man-page.js';
import { deleteNeedless } from './needless.js';
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
const scripts = bundles.flatMap(({ outputs }) => Object.keys(outputs)).map((file) => relative(dist, file));
deleteNeedless(dist, 'src', scripts);
for (const file of reports) rmSync(file);
