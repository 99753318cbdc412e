import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { laidOnce, layer } from '../../../src/search/evaluate/laid.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { runs } from '../../long.js';
import { QUESTION } from '../question.js';

const LAYERS = familiesOf({ ...QUESTION, structures: ['2/2 twill', 'overshot'], by: ['thread', 'unit'] }).map(
  (family) => {
    const weave = family.weave([0], [0]);
    return layer(family, weave, drawdown(weave).endKind, 'ends', QUESTION);
  },
);

test('what is remembered of an order is what it is when laid anew, whichever others have had its place', () => {
  const remember = laidOnce();
  const remembered = LAYERS.map((lay) => remember(lay, 2));
  const order = fc.array(fc.nat(1), { minLength: 1, maxLength: 9 });
  fc.assert(
    fc.property(fc.nat(LAYERS.length - 1), order, fc.nat(1), (which, word, start) => {
      const { rooms, ...laid } = remembered[which]!(word, start);
      expect(laid).toEqual(LAYERS[which]!(word, start));
      expect(remembered[which]!([...word], start).kind).toBe(laid.kind);
    }),
    { numRuns: runs(4000) },
  );
});
