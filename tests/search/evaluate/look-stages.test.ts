import fc from 'fast-check';
import { expect, test } from 'vitest';
import { faceMaker } from '../../../src/cloth/face.js';
import { contrastMeter } from '../../../src/score/contrast/contrast.js';
import { Eye } from '../../../src/score/look/look.js';
import { LOOK_FIGURES, lookOf, ofEachLook } from '../../../src/score/parts/look-figures.js';
import { analyse } from '../../../src/score/symmetry/analysis.js';
import { lookStages } from '../../../src/search/evaluate/look-stages.js';
import { wovenCloths } from '../../faces.js';
import { runs } from '../../long.js';
import { QUESTION } from '../question.js';

const values = Float64Array.of(0, 0.25, 1);
const keys = LOOK_FIGURES.map(({ key }) => key);

test('of the look what is wanted is measured, and nothing else', () => {
  expect(new Set(keys).size).toBe(keys.length);
  fc.assert(
    fc.property(wovenCloths, fc.subarray(keys), (cloth, wanted) => {
      const face = faceMaker()(cloth);
      const seen = new Eye(QUESTION.sett, values, (_, face) => contrastMeter(1).variance(face, values)).turnTo(
        cloth,
        face,
        analyse(face),
      );
      const all = lookOf(seen);
      const look = ofEachLook(() => Number.NaN);
      expect(lookStages(new Set(wanted))(seen, look, undefined)).toBe(true);
      expect(look).toEqual(ofEachLook(({ key }) => (wanted.includes(key as never) ? all[key as never] : Number.NaN)));
    }),
    { numRuns: runs(60) },
  );
});
