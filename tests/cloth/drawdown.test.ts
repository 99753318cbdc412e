import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawdown, fromCells } from '../../src/cloth/drawdown.js';
import { EVEN_WIDTHS, type Weave } from '../../src/draft/draft.js';
import { runs } from '../long.js';

/** Weaves on four shafts and five treadles: ends on several shafts, picks with several treadles, some tied alike. */
const shafts = fc.uniqueArray(fc.integer({ min: 1, max: 4 }), { maxLength: 3 });
const weaves = fc
  .record({
    threading: fc.array(shafts, { minLength: 1, maxLength: 10 }),
    tieUp: fc.array(shafts, { minLength: 5, maxLength: 5 }),
    treadling: fc.array(fc.uniqueArray(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 2 }), {
      minLength: 1,
      maxLength: 10,
    }),
  })
  .map(
    (weave): Weave => ({
      ...weave,
      pickKinds: weave.treadling.map(() => 'ground' as const),
      endUnits: weave.threading.map(() => 1),
      pickUnits: weave.treadling.map(() => 1),
      widths: EVEN_WIDTHS,
    }),
  );

test('an end is up where one of its shafts is tied to one of the treadles pressed, kinds numbered as they appear', () => {
  fc.assert(
    fc.property(weaves, (weave) => {
      const { threading, tieUp, treadling } = weave;
      const isUp = (pick: number, end: number): boolean =>
        treadling[pick]!.some((treadle) => tieUp[treadle - 1]!.some((shaft) => threading[end]!.includes(shaft)));
      expect(drawdown(weave)).toEqual(fromCells(threading.length, treadling.length, isUp));
    }),
    { numRuns: runs(500) },
  );
});
