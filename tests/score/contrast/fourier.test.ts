import fc from 'fast-check';
import { expect, test } from 'vitest';
import { transform } from '../../../src/score/contrast/fourier.js';
import { runs } from '../../long.js';

test('the transform is the sum that defines it, for sides with large and small prime factors', () => {
  const side = fc.integer({ min: 1, max: 14 });
  const sized = fc.tuple(side, side).chain(([rows, columns]) => {
    const cells = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: rows * columns, maxLength: rows * columns });
    return fc.record({ rows: fc.constant(rows), columns: fc.constant(columns), re: cells, im: cells });
  });
  fc.assert(
    fc.property(sized, fc.nat(), fc.nat(), ({ rows, columns, re, im }, down, across) => {
      const [l, k] = [down % rows, across % columns];
      const field = { re: Float64Array.from(re), im: Float64Array.from(im) };
      const found = transform(field, rows, columns);
      let [sumRe, sumIm] = [0, 0];
      for (let at = 0; at < re.length; at++) {
        const turn = -2 * Math.PI * ((Math.floor(at / columns) * l) / rows + ((at % columns) * k) / columns);
        sumRe += re[at]! * Math.cos(turn) - im[at]! * Math.sin(turn);
        sumIm += re[at]! * Math.sin(turn) + im[at]! * Math.cos(turn);
      }
      expect(found.re[l * columns + k]).toBeCloseTo(sumRe, 9);
      expect(found.im[l * columns + k]).toBeCloseTo(sumIm, 9);
      expect([...field.re], 'the field is left as it is').toEqual(re);
    }),
    { numRuns: runs(500) },
  );
});
