import { expect, test } from 'vitest';
import { valueGroups, valueWarnings } from '../../src/colour/lightness.js';

test('yarns part into a dark and a light group at the widest gap', () => {
  const yarn = (letter: string, hex: string) => ({ letter, name: letter, hex });
  const groups = valueGroups([yarn('A', '#ffffff'), yarn('B', '#000000'), yarn('C', '#eeeeee'), yarn('E', '#222222')]);
  expect(groups.dark.map((y) => y.letter)).toEqual(['B', 'E']);
  expect(groups.light.map((y) => y.letter)).toEqual(['C', 'A']);
  expect(groups.gap).toBeGreaterThan(70);
  const greys = [yarn('A', '#707070'), yarn('B', '#888888'), yarn('C', '#9c9c9c')];
  expect(valueWarnings(greys)).toContainEqual(
    expect.stringMatching(/^no step in lightness parts .*: the widest is 9\.\d L\*$/),
  );
  expect(valueWarnings([...greys.slice(0, 2), yarn('C', '#f4f4f4')]).join()).not.toContain('no step');
});
