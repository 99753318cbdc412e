import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { liftAt } from '../../../src/draft/draft.js';
import { adviseSett } from '../../../src/plan/yarn/sett.js';
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
});
