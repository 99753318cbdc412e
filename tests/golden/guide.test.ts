import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { GUIDE_PAGES, linksOf, README } from '../guide-pages.js';
import { HELD, hold } from './golden.js';
import { GUIDE } from './guide-pictures.js';

const ROOT = join(import.meta.dirname, '../..');
const FOLDER = join(ROOT, 'gallery/guide');
const LARGEST = 315_000;

describe('the pictures of the guide', () => {
  test.each(Object.entries(GUIDE))('%s is as it is drawn now (npm run pictures draws it anew)', async (name, draw) => {
    await hold(name, await draw(), { ...HELD, folder: FOLDER });
  });

  test('are those there are, small enough for a page, and the README or a page of the guide shows each', () => {
    const files = readdirSync(FOLDER).filter((file) => file.endsWith('.png'));
    expect(files.toSorted()).toEqual(
      Object.keys(GUIDE)
        .map((name) => `${name}.png`)
        .toSorted(),
    );
    const shown = [README, ...GUIDE_PAGES].flatMap(linksOf);
    for (const file of files) {
      expect(statSync(join(FOLDER, file)).size, file).toBeLessThan(LARGEST);
      expect(shown).toContain(`gallery/guide/${file}`);
    }
  });
});
