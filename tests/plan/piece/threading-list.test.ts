import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { type GroupLine, threadingLines, threadingParts } from '../../../src/plan/piece/threading-list.js';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { runs } from '../../long.js';
import { anyCloth, kept, needsOf } from '../cloths.js';

const flags = fc.record({
  border: fc.constantFrom('6 D', '9 L', '20 D', 'even D'),
  mirror: fc.constantFrom('no', 'single', 'doubled'),
  balance: fc.constantFrom('auto', 'yes', 'no'),
});
const unfolded = (lines: readonly GroupLine[]): string[] =>
  lines.flatMap((line) => Array.from({ length: line.times }, () => line.ends).flat());

test('the list of one repeat says every end once, numbered', () => {
  fc.assert(
    fc.property(anyCloth, (made) => {
      const [warp] = planWarps([kept(made.name, made)], needsOf());
      const { draft } = warp!.pieces[0]!;
      const lines = threadingLines(warp!);
      expect(unfolded(lines)).toEqual(
        draft.threading.map((shafts, i) => shafts.join('+') + draft.yarns[draft.warp[i]!]!.letter),
      );
      let from = 1;
      for (const line of lines) {
        expect([line.from, line.to]).toEqual([from, from + line.ends.length * line.times - 1]);
        from = line.to + 1;
      }
    }),
    { numRuns: runs(60) },
  );
});

test('border, repeats, balance, border: in this order they are the whole warp, end by end', () => {
  fc.assert(
    fc.property(anyCloth, flags, (made, given) => {
      const [warp] = planWarps([kept(made.name, made)], needsOf(given));
      const parts = threadingParts(warp!);
      const said = parts.flatMap(({ times, lines }) => Array.from({ length: times }, () => unfolded(lines)).flat());
      expect(said).toEqual(warp!.ends.map(({ shafts, yarn }) => shafts.join('+') + warp!.yarns[yarn]!.letter));
      expect(parts.reduce((sum, { ends }) => sum + ends, 0)).toBe(warp!.ends.length);
      const order = ['first border', 'repeats', 'balance', 'last border'];
      expect(parts.map(({ what }) => what)).toEqual(order.filter((what) => what !== 'balance' || warp!.balance > 0));
    }),
    { numRuns: runs(60) },
  );
});
