import { join } from 'node:path';
import { writeWhole } from '../../files/whole.js';
import { reference } from './reference.js';
import { schemas } from './schemas.js';

const gallery = process.argv[2]!;
writeWhole(join(gallery, 'guide', 'reference.md'), reference());
for (const [name, text] of Object.entries(schemas())) writeWhole(join(gallery, 'schemas', name), text);
