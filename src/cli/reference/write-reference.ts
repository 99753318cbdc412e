import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeWhole } from '../../files/whole.js';
import { type Lock, licences } from './licences.js';
import { reference } from './reference.js';
import { schemas } from './schemas.js';

const gallery = process.argv[2]!;
const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as Lock;
writeWhole(join(gallery, 'guide', 'reference.md'), reference());
writeWhole(join(gallery, 'guide', 'licences.md'), licences(lock));
for (const [name, text] of Object.entries(schemas())) writeWhole(join(gallery, 'schemas', name), text);
