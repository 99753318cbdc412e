import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { liftAt } from '../../../src/draft/draft.js';
import { adviseSett, closestSett, diametersPerInch, HANDS } from '../../../src/plan/yarn/sett.js';
import { runs } from '../../long.js';
import { kept } from '../cloths.js';

describe('the sett that a weave bears', () => {
  test('intersections, cell by cell', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('plain weave', '2/2 twill', '1/3 twill', 'huck', 'crackle', 'summer and winter', "M's and O's"),
        (name) => {
          const { draft } = kept(name, { warp: 'DDLDL', weft: 'DL' });
          const cells = (j: number): boolean[] =>
            draft.threading.map((on) => on.some((s) => liftAt(draft, j).includes(s)));
          const ground = draft.pickKinds.flatMap((kind, j) => (kind === 'pattern' ? [] : [cells(j)]));
          const changes = ground.map((row) => row.filter((up, i) => up !== row[(i + 1) % row.length]).length);
          const plain = changes.reduce((a, b) => a + b, 0) / changes.length / draft.threading.length;
          const { ends, intersections } = adviseSett(draft, 1, 'general');
          expect(intersections / ends).toBeCloseTo(plain, 12);
        },
      ),
      { numRuns: runs(7) },
    );
  });

  // Figures usual among handweavers (see the source file), on a yarn of 3600 yards to the pound, whose root is 60.
  test.each([
    ['cotton', 55.2],
    ['silk', 55.2],
    ['linen', 55.2],
    ['worsted', 54],
    ['woollen', 51],
  ] as const)('%s lies %d threads to the inch', (fibre, diameters) => {
    expect(diametersPerInch(453_592.37 / (3600 * 0.9144), fibre)).toBeCloseTo(diameters, 9);
  });

  test('plain weave bears half the diameters, 2/2 twill two thirds; of that general cloth 80 %, drape 70 %', () => {
    expect([closestSett(60, 2, 2), closestSett(60, 4, 2)]).toEqual([30, 40]);
    expect(HANDS).toEqual({ general: 0.8, drape: 0.7 });
    const { draft } = kept('2/2 twill', { warp: 'DDLDL' });
    expect(adviseSett(draft, 60, 'drape')).toEqual({
      diameters: 60,
      ends: 4,
      intersections: 2,
      closest: 40,
      share: 0.7,
      advised: 28,
    });
    expect(adviseSett(draft, 60, 'general').advised).toBe(32);
  });
});
