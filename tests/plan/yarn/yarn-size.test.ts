import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseYarnSize } from '../../../src/plan/yarn/yarn-size.js';

test('no text breaks the reading of yarn sizes; it is a size or one sentence', () => {
  const label = fc.oneof(
    fc.string({ maxLength: 20 }),
    fc
      .tuple(
        fc.nat(99),
        fc.constantFrom('/', ' x ', '', ' '),
        fc.nat(9),
        fc.constantFrom('cotton', 'tex', 'silk', 'Nm', 'lea'),
      )
      .map(([a, sign, b, system]) => `${a}${sign}${b} ${system}`),
  );
  let read = 0;
  fc.assert(
    fc.property(label, (text) => {
      try {
        expect(parseYarnSize(text).tex).toBeGreaterThan(0);
        read++;
      } catch (error) {
        expect((error as Error).name).toBe('Problem');
      }
    }),
  );
  expect(read).toBeGreaterThan(5);
});
