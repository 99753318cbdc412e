import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { colourFace, type Face, faceFromRows } from '../../../src/cloth/face.js';
import { values } from '../../../src/colour/yarn.js';
import type { Draft } from '../../../src/draft/draft.js';
import { clothDistance, descriptorOf, isNearer } from '../../../src/score/likeness/descriptor.js';
import { clothKey, type Sameness, standingFace } from '../../../src/score/symmetry/canonical-cloth.js';
import { cellsOf, faces } from '../../faces.js';
import { runs } from '../../long.js';
import { begunElsewhere, unlikeness as plainly, type Seen } from '../../plain/portrait.js';
import { kept, twelve } from '../../plan/cloths.js';

const SAME: readonly Sameness[] = ['mirror', 'half-turn', 'exchange'];
const faceOf = (draft: Draft): Face => colourFace(drawdown(draft), draft.warp, draft.weft);

/** Two colours exchanged; the cells as they are where there are not two. */
const exchanged = (cells: readonly (readonly number[])[]): number[][] => {
  const [a, b, ...more] = new Set(cells.flat());
  const swap = (colour: number): number => (colour === a ? b! : a!);
  return cells.map((row) => (b === undefined || more.length > 0 ? [...row] : row.map(swap)));
};

test('a face stands as all that are the same cloth do, but that two colours may have changed places', () => {
  const change = fc.record({
    x: fc.nat(7),
    y: fc.nat(7),
    mirror: fc.boolean(),
    down: fc.boolean(),
    swap: fc.boolean(),
  });
  fc.assert(
    fc.property(faces, change, fc.subarray([...SAME, 'quarter-turn' as const]), (face, by, same) => {
      const cells = cellsOf(face);
      const shifted = cells.map((_, j) =>
        cells[(j + by.y) % cells.length]!.map((__, i, row) => row[(i + by.x) % row.length]!),
      );
      const mirrored = by.mirror ? shifted.map((row) => row.toReversed()) : shifted;
      const turned = by.down ? mirrored.toReversed() : mirrored;
      const other = faceFromRows(by.swap ? exchanged(turned) : turned);
      const isSame = clothKey(face, same, 3).join() === clothKey(other, same, 3).join();
      const [a, b] = [cellsOf(standingFace(face, same)), cellsOf(standingFace(other, same))];
      const alike = JSON.stringify(a) === JSON.stringify(b) || JSON.stringify(a) === JSON.stringify(exchanged(b));
      if (isSame) expect(alike).toBe(true);
      expect(clothKey(standingFace(face, same), same, 3)).toEqual(clothKey(face, same, 3));
    }),
    { numRuns: runs(1000) },
  );
});

const drafts = fc
  .record({
    name: fc.constantFrom('plain weave', '2/2 twill', '1/3 twill', 'summer and winter', 'huck'),
    warp: fc.constantFrom('D', 'DL', 'DDL', 'DDLDL', 'DDDLL', 'DLLDDL', 'DDDDLLLL'),
    weft: fc.constantFrom('L', 'DL', 'DDL', 'DDLDL', 'DDDDLLLL'),
    times: fc.constantFrom(1, 2, 3),
  })
  .map(({ name, ...made }) => kept(name, made).draft);

describe('how unlike two cloths are', () => {
  const seen = (draft: Draft): Seen => ({
    cells: cellsOf(standingFace(faceOf(draft), SAME)),
    values: [...values(draft.yarns)],
  });

  const few = fc
    .record({
      name: fc.constantFrom('plain weave', '2/2 twill', '1/3 twill'),
      warp: fc.constantFrom('D', 'DL', 'DDL', 'DLLDDL', 'DDDDLLLL'),
      weft: fc.constantFrom('L', 'DL', 'DDL'),
    })
    .map(({ name, ...made }) => kept(name, made).draft);

  test('is what it is square by square', () => {
    fc.assert(
      fc.property(few, few, (a, b) => {
        expect(clothDistance(descriptorOf(a), descriptorOf(b))).toBeCloseTo(plainly(seen(a), seen(b)), 6);
      }),
      { numRuns: runs(12) },
    );
  });

  test('is 0 of a cloth and itself, from whichever thread it begins, and the same both ways', () => {
    fc.assert(
      fc.property(drafts, drafts, fc.nat(50), fc.nat(50), (a, b, x, y) => {
        const [one, other, elsewhere] = [a, b, begunElsewhere(a, x, y)].map((draft) => descriptorOf(draft));
        expect(clothDistance(one!, elsewhere!)).toBeCloseTo(0, 9);
        expect(clothDistance(other!, elsewhere!)).toBeCloseTo(clothDistance(one!, other!), 9);
        expect(clothDistance(one!, other!)).toBeCloseTo(clothDistance(other!, one!), 12);
      }),
      { numRuns: runs(60) },
    );
  });

  test('is less than a distance exactly where the quicker answer says so', () => {
    fc.assert(
      fc.property(drafts, drafts, fc.double({ min: 0.01, max: 0.8, noNaN: true }), (a, b, least) => {
        const [one, other] = [descriptorOf(a), descriptorOf(b)];
        expect(isNearer(one, other, least)).toBe(clothDistance(one, other) < least);
      }),
      { numRuns: runs(60) },
    );
  });
});

describe('dealing', () => {
  test('unlikeness: 0 with itself, the same both ways', () => {
    const portraits = twelve().map(({ draft }) => descriptorOf(draft));
    for (const a of portraits) {
      expect(clothDistance(a, a)).toBeCloseTo(0, 9);
      for (const b of portraits) expect(clothDistance(a, b)).toBeCloseTo(clothDistance(b, a), 12);
    }
  });
});
