import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { caughtEnds, pickList, type ShuttleSide, shuttlesOf, startingSides } from '../../../src/plan/warp/pick-list.js';
import { runs } from '../../long.js';
import { anyCloth, kept } from '../cloths.js';

describe('a warp', () => {
  test('shuttles start where most edges are caught: no other way of starting them catches more', () => {
    fc.assert(
      fc.property(anyCloth, fc.integer({ min: 20, max: 60 }), fc.nat(9), (made, ends, border) => {
        const { draft } = kept(made.name, made);
        const n = draft.threading.length;
        const [first, last] = [(n * 9 - border) % n, (n * 9 - border + ends - 1) % n];
        const count = shuttlesOf(draft).length;
        const caught = Array.from({ length: 2 ** count }, (_, way) => {
          const sides = Array.from({ length: count }, (__, s) => ((way >> s) & 1 ? 'right' : 'left') as ShuttleSide);
          const edges = caughtEnds(draft, 4 * draft.weft.length, sides, first, last);
          return { sides, caught: edges, count: edges.left.caught + edges.right.caught };
        });
        const most = caught.reduce((best, way) => (way.count > best.count ? way : best));
        expect(startingSides(draft, ends, border)).toMatchObject({ sides: most.sides, caught: most.caught });
      }),
      { numRuns: runs(30) },
    );
  });
});

test('a shuttle is a yarn as one kind of weft, and says its kind where there are several', () => {
  fc.assert(
    fc.property(anyCloth, (made) => {
      const { draft } = kept(made.name, made);
      const letters = draft.weft.map((yarn) => draft.yarns[yarn]!.letter);
      const kinds = new Set(draft.pickKinds);
      const names = letters.map((letter, pick) => (kinds.size === 1 ? letter : `${letter} ${draft.pickKinds[pick]}`));
      expect(shuttlesOf(draft).map(({ name }) => name)).toEqual([...new Set(names)]);
    }),
    { numRuns: runs(40) },
  );
});

test('shuttles go to and fro, and are carried past the picks between two of their throws', () => {
  fc.assert(
    fc.property(anyCloth, fc.integer({ min: 1, max: 50 }), (made, picks) => {
      const { draft } = kept(made.name, made);
      const sides = shuttlesOf(draft).map((_, shuttle): ShuttleSide => (shuttle % 2 === 0 ? 'left' : 'right'));
      const list = pickList(draft, picks, sides);
      expect(list.map(({ pick }) => pick)).toEqual(Array.from({ length: picks }, (_, at) => at + 1));
      sides.forEach((side, shuttle) => {
        const thrown = list.filter((each) => each.shuttle === shuttle);
        thrown.forEach(({ from, to, carry, pick }, at) => {
          expect(from).toBe(at % 2 === 0 ? side : side === 'left' ? 'right' : 'left');
          expect(to).not.toBe(from);
          expect(carry).toBe(at === 0 ? 0 : pick - thrown[at - 1]!.pick - 1);
        });
      });
    }),
    { numRuns: runs(40) },
  );
});
