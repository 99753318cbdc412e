import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lightGatherer } from '../../../src/score/look/local-light.js';
import { tonesOf } from '../../../src/score/look/tones.js';
import { lightAt, meetings } from '../../faces.js';
import { runs } from '../../long.js';

test.each([2, 0.46])('where warps and wefts meet in turn, tones are those of every cell, over %d ends', (sigma) => {
  fc.assert(
    fc.property(meetings, fc.double({ min: 0, max: 0.6, noNaN: true }), ({ met, values }, below) => {
      const gather = lightGatherer(values, sigma, sigma);
      for (const cloth of met) {
        const light = gather(cloth);
        const { groups, words, dark, light: bright } = tonesOf(light, below, below + 0.2);
        const shown = (rows: Int32Array) =>
          Array.from({ length: light.ends * light.picks }, (_, at) => {
            const [i, j] = [at % light.ends, Math.floor(at / light.ends)];
            const bit = Math.floor(i / groups);
            return (rows[(j * groups + (i % groups)) * words + (bit >> 5)]! >>> (bit & 31)) & 1;
          });
        const cells = lightAt(light);
        expect(shown(dark)).toEqual(cells.map((cell) => Number(cell < below)));
        expect(shown(bright)).toEqual(cells.map((cell) => Number(cell > below + 0.2)));
      }
    }),
    { numRuns: runs(100) },
  );
});
