import { expect, test } from 'vitest';
import { seen } from '../../src/words/seen.js';

test.each([
  ['a\u001b[2Jb', 'a [2Jb'],
  ['one\r\ntwo\u2028three', 'one two three'],
  ['\u202egnol\u202c \u2067x', ' gnol   x'],
  ['c1 \u009b31m', 'c1  31m'],
  ['שלום, سلام, 織 🧶', 'שלום, سلام, 織 🧶'],
  ['', ''],
])('%j is seen as %j', (text, shown) => expect(seen(text)).toBe(shown));
