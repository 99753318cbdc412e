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

const verdicts = (a: Face, b: Face, square: number, how: typeof ALL, values = VALUES) => {
  const fields = [a, b].map((face) =>
    seen(
      cellsOf(face).map((row) => row.map((colour) => values[colour]!)),
      square,
    ),
  );
  return {
    fast: nearTwins(blurredCloth(a, values, square), blurredCloth(b, values, square), how),
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

test('the faintest change that makes two cloths unlike is seen as such, and what is fainter still is not', () => {
  const width = fc.integer({ min: 12, max: 20 });
  const cell = fc.record({ at: fc.nat(), by: fc.nat() });
  let tried = 0;
  fc.assert(
    fc.property(width, width, fc.array(cell, { minLength: 3, maxLength: 12 }), ways, (ends, picks, cells, how) => {
      const rows = Array.from({ length: picks }, (_, j) =>
        Array.from({ length: ends }, (__, i) => ((i >> 2) + (j >> 2) + (i % 3 === 0 ? 1 : 0)) % 2),
      );
      const face = faceFromRows(rows);
      for (const { at, by } of cells) for (let i = 0; i <= by % 4; i++) rows[at % picks]![(at + i) % ends] = 2;
      const changed = faceFromRows(rows);
      const at = (value: number) => verdicts(face, changed, 1, how, [0, 1, value]);
      // From cells of half tone to lighter ones than all others, the cloths grow more unlike.
      let [near, far] = [0.5, 4];
      if (at(near).plain < 0.97 || at(far).plain > 0.97) return;
      while (far - near > 1e-4) {
        const middle = (near + far) / 2;
        if (at(middle).plain > 0.97) near = middle;
        else far = middle;
      }
      tried++;
      for (const value of [near - 1e-3, near, far, far + 1e-3]) {
        const { fast, plain } = at(value);
        if (Math.abs(plain - 0.97) > 1e-7) expect(fast, `correlation ${plain}`).toBe(plain > 0.97);
      }
    }),
    { numRuns: runs(12, 200) },
  );
  expect(tried).toBeGreaterThan(2);
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
