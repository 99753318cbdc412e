import { expect, test } from 'vitest';
import { overlaid } from '../../src/input/flags.js';
import { namedParts, nested, optional, table, withDefault } from '../../src/input/key.js';
import { text, whole } from '../../src/input/kinds.js';
import { parseSource, readSource } from '../../src/input/source.js';

const box = table({
  height: withDefault(whole('centimetres', 1, 9), '5', { about: 'how high', example: '3' }),
  'inner width': optional(whole('centimetres', 1, 9), { about: 'how wide', example: '3' }),
});
const all = table({
  box: withDefault(
    nested(box, 'a box', (given) => namedParts(given, box, 'a box')),
    {},
    { about: '', example: '' },
  ),
  lid: optional(text('a lid'), { about: 'its lid', example: 'round' }),
});
const read = (file: string, flags: Record<string, string>) =>
  readSource(all, overlaid(all, parseSource(file, 'a.yaml'), flags, { nothing: 'a.yaml' }));

test('flags win, key by key where a value has keys, whichever way these are written', () => {
  const flags = { box: 'inner width 4', lid: 'flat' };
  const told = { box: { height: 7, 'inner width': 4 }, lid: 'flat' };
  expect(read('box: { height: 7, inner width: 2 }\nlid: round\n', flags)).toEqual(told);
  expect(read('box: height 7, inner width 2\n', flags)).toEqual(told);
  expect(read('lid: round\n', {})).toEqual({ box: { height: 5 }, lid: 'round' });
});

test('a fault has the place of whichever gave the value', () => {
  const file = 'box: { height: 70 }\n';
  expect(() => read(file, { box: 'inner width 4' })).toThrow(
    'a.yaml:1:16: found “70”; expected centimetres from 1 to 9',
  );
  expect(() => read(file, { box: 'height 80' })).toThrow('--box: found “80”');
  expect(() => read('box: height 70\n', {})).toThrow('a.yaml:1:6: found “70”');
  expect(() => read(file, { box: 'inner widht 4' })).toThrow(
    '--box: found “inner widht 4”; expected a box (did you mean “inner width”?)',
  );
  expect(() => read('box: deep 4\n', { box: 'height 4' })).toThrow('a.yaml:1:6: found “deep 4”; expected a box');
});
