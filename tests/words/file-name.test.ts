import { expect, test } from 'vitest';
import { portableName } from '../../src/words/file-name.js';

test.each([
  ['/home/a/draft.yaml', 'draft.yaml'],
  ['/draft.yaml', 'draft.yaml'],
  ['/home/a/gallery/', 'gallery/'],
  ['/a\nb/c/draft.yaml', 'draft.yaml'],
  ['/odd/a\\b.yaml', 'a\\b.yaml'],
  ['C:\\Users\\a\\draft.wif', 'draft.wif'],
  ['c:/Users/draft.wif', 'draft.wif'],
  ['C:\\draft.wif', 'draft.wif'],
  ['\\\\server\\share\\draft.wif', 'draft.wif'],
])('a path from the root, by its last name: %j', (path, name) => expect(portableName(path)).toBe(name));

test.each(['draft.yaml', 'kept-wif/01bfseap.wif', '../group/draft.yaml', './a', 'a:b/c.yaml', 'C:draft.wif', '/', ''])(
  'as it was named: %j',
  (path) => expect(portableName(path)).toBe(path),
);
