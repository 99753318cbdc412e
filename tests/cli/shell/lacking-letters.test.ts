import { expect, test } from 'vitest';
import { lackingLines } from '../../../src/cli/shell/lacking-letters.js';

test('the letters that no type has are named with their name, and nothing else is said', () => {
  const named = [
    { what: 'project', name: undefined },
    { what: 'weaver 1,', name: '織子 of the 織 room' },
    ...['Ōhara', 'İpek', 'Ирина', 'Καλλιόπη', 'سلمى', 'סלה'].map((name) => ({ what: 'weaver 2,', name })),
  ];
  expect(lackingLines(named)).toEqual([
    'weaver 1, 織子 of the 織 room: no type for 織 子; the sheets have boxes to write in by hand',
  ]);
});
