import { expect, test } from 'vitest';
import { shapesOf } from '../../../src/score/look/shapes.js';
import { lightOf } from '../../faces.js';

// Dark is below 0.4, light above 0.6 (common practice).
test.each([
  [[0.4, 0.4, 0.4, 0.4], { closed: 0, endless: 0 }],
  [[0.6, 0.6, 0.6, 0.6], { closed: 0, endless: 0 }],
  [[0.39, 0.5, 0.5, 0.5], { closed: 1, endless: 0 }],
  [[0.61, 0.5, 0.5, 0.5], { closed: 1, endless: 0 }],
  [[0.4, 0.3, 0.6, 0.7], { closed: 2, endless: 0 }],
])('two ends by two picks of %j', (light, shapes) => expect(shapesOf(lightOf(light, 2))).toEqual(shapes));

const counted = (rows: readonly string[], enough?: number): number =>
  shapesOf(
    lightOf(
      rows.flatMap((row) => [...row].map((cell) => ({ '#': 0, '-': 0.5, o: 1 })[cell]!)),
      rows[0]!.length,
    ),
    enough,
  ).closed;

test('shapes that differ by a shift alone are one, mirrored ones are two, and so are dark and light ones', () => {
  expect(counted(['#--#--', '##-##-', '------'])).toBe(1);
  expect(counted(['#---#-', '##-##-', '------'])).toBe(2);
  expect(counted(['#--o--', '##-oo-', '------'])).toBe(2);
  expect(counted(['##-#--', '---#--', '------'])).toBe(2);
  // Over the edge of the repeat.
  expect(counted(['#----#', '------', '-##---', '------'])).toBe(1);
});

test('where a few shapes are enough, those that go on over the edge are not yet counted half way', () => {
  const [some, none] = ['#-'.repeat(12), '--'.repeat(12)];
  expect(counted([some, none, some, some, none, none, none, some], 2)).toBe(1);
  expect(counted([some, none, some, none, some, some, none, some], 1)).toBe(1);
  expect(counted([some, none, some, none, some, some, none, some], 9)).toBe(2);
});
