import { expect, test } from 'vitest';
import { readDraft } from '../../../src/draft/yaml/read-draft.js';
import { withUnits } from '../../../src/structure/recognise/with-units.js';

/** A draft of bare numbers, and what is told of it. */
function understood(more: string) {
  const told: string[] = [];
  const draft = readDraft(`${more}\n`, 'own.yaml');
  return { draft, told, found: withUnits('own.yaml', draft, (note) => told.push(note)) };
}

test('a threading that is known gets the units of its structure, and a note', () => {
  const { found, told } = understood('threading: 1-4\ntie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4');
  expect([found.endUnits, found.pickUnits]).toEqual([[4], [4]]);
  expect(told).toEqual(['own.yaml: threading understood as 2/2 twill (certain), 1 unit']);
});

test.each([
  ['no structure known here', 'threading: 1 3 1 4 2\ntie-up: [1 2, 3, 2 4]\ntreadling: 1 2 3 1 3'],
  ['units of its own', 'threading: 1-4\ntie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4\nunits: 2'],
])('one with %s stays as it is', (_, text) => {
  const { draft, found, told } = understood(text);
  expect(found).toBe(draft);
  expect(told).toEqual([]);
});
