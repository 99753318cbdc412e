import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { structures } from '../../../src/structure/catalogue/catalogue.js';

const FOLDER = join(import.meta.dirname, '../../../gallery/structures');

test('the page has every structure with its sheet and its draft, and both are there', () => {
  const page = readFileSync(join(FOLDER, 'index.html'), 'utf8');
  const files = [...page.matchAll(/<img[^>]* src="([^"]+)"/g)].map(([, file]) => file!);
  expect(files.filter((file) => file.endsWith('-draft.svg'))).toHaveLength(structures.length);
  expect(new Set(files).size).toBe(2 * structures.length);
  for (const file of files) expect(existsSync(join(FOLDER, file)), file).toBe(true);
});
