import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { colourAt, type Face, faceFromRows } from '../../../src/cloth/face.js';
import { blurredCloth, nearTwins } from '../../../src/score/likeness/near-twin.js';
import { cellsOf, faces } from '../../faces.js';
import { runs } from '../../long.js';
import { likeness, seen } from '../../plain/twin.js';

const VALUES = [0, 1, 0.3];
const ALL = { mirror: true, halfTurn: true, exchange: true };
const ways = fc.record({ mirror: fc.boolean(), halfTurn: fc.boolean(), exchange: fc.boolean() });
const squareness = fc.constantFrom(1, 0.8, 1.5);

/** A face seen from another side, shifted, its two colours perhaps exchanged, perhaps one cell of it changed. */
const altered = fc
  .record({
    face: faces,
    flipAcross: fc.boolean(),
    flipDown: fc.boolean(),
    x: fc.nat(7),
    y: fc.nat(7),
    exchanged: fc.boolean(),
    changed: fc.boolean(),
  })
  .map(({ face, flipAcross, flipDown, x, y, exchanged, changed }): [Face, Face] => {
    const { ends, picks } = face;
    const cells = Array.from({ length: picks }, (_, j) =>
      Array.from({ length: ends }, (_, i) => {
        const colour = colourAt(
          face,
          (flipDown ? 2 * picks - 1 - j : j + y) % picks,
          (flipAcross ? ends - 1 - i : i + x) % ends,
        );
        return exchanged && colour < 2 ? 1 - colour : colour;
      }),
    );
    if (changed) cells[0]![0] = (cells[0]![0]! + 1) % 2;
    return [face, faceFromRows(cells)];
  });

const verdicts = (a: Face, b: Face, square: number, how: typeof ALL) => {
  const fields = [a, b].map((face) =>
    seen(
      cellsOf(face).map((row) => row.map((colour) => VALUES[colour]!)),
      square,
    ),
  );
  return {
    fast: nearTwins(blurredCloth(a, VALUES, square), blurredCloth(b, VALUES, square), how),
    plain: likeness(fields[0]!, fields[1]!, how),
    isEven: fields.some((field) => field.flat().every((cell) => Math.abs(cell) < 1e-7)),
  };
};

describe('near twins by spectra are those cell by cell', () => {
  test.each([
    ['any two cloths', fc.tuple(faces, faces)],
    ['a cloth and itself, turned, shifted and changed', altered],
  ])('%s', (_, pairs) => {
    const seenVerdicts = new Set<boolean>();
    fc.assert(
      fc.property(pairs, squareness, ways, ([a, b], square, how) => {
        const { fast, plain, isEven } = verdicts(a, b, square, how);
        // On the threshold itself, and where nothing is left after blurring, rounding decides.
        fc.pre(!isEven && Math.abs(plain - 0.97) > 1e-5);
        seenVerdicts.add(fast);
        expect(fast, `correlation ${plain}`).toBe(plain > 0.97);
      }),
      { numRuns: runs(150, 4000) },
    );
    expect(seenVerdicts.size).toBe(2);
  });
});

describe('cloths that are even after blurring', () => {
  const plain = faceFromRows([[0]]);
  const stripes = faceFromRows([[0, 0, 0, 1, 1, 1]]);
  const gather = (face: Face) => blurredCloth(face, VALUES, 1);

  test('are near twins of one another and of nothing else', () => {
    expect(
      nearTwins(
        gather(plain),
        gather(
          faceFromRows([
            [1, 1],
            [1, 1],
          ]),
        ),
        ALL,
      ),
    ).toBe(true);
    expect(nearTwins(gather(plain), gather(stripes), ALL)).toBe(false);
    expect(nearTwins(gather(stripes), gather(plain), ALL)).toBe(false);
  });
});
