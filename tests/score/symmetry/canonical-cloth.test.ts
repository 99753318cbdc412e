import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Face, faceFromRows } from '../../../src/cloth/face.js';
import { analyse, analyser } from '../../../src/score/symmetry/analysis.js';
import { clothKey, clothKeys, type Sameness } from '../../../src/score/symmetry/canonical-cloth.js';
import { hashWords } from '../../../src/score/symmetry/hash.js';
import { symmetryOf, symmetryShare } from '../../../src/score/symmetry/symmetry.js';
import { cellsOf, faces } from '../../faces.js';
import { runs } from '../../long.js';
import { sameCloth } from '../../plain/symmetry.js';

const SAMENESS: readonly Sameness[] = ['mirror', 'half-turn', 'quarter-turn', 'exchange'];

/** A face made from another: turned, mirrored, shifted, colours exchanged, written twice, or one cell changed. */
const change = fc.record({
  turn: fc.boolean(),
  mirror: fc.boolean(),
  upsideDown: fc.boolean(),
  exchange: fc.boolean(),
  x: fc.nat(7),
  y: fc.nat(7),
  twiceAcross: fc.boolean(),
  twiceAlong: fc.boolean(),
  spoil: fc.option(fc.nat(63), { freq: 3, nil: undefined }),
});

function changed(face: Face, by: typeof change extends fc.Arbitrary<infer T> ? T : never): Face {
  let cells = cellsOf(face);
  if (by.turn) cells = cells[0]!.map((_, i) => cells.map((row) => row[i]!));
  if (by.mirror) cells = cells.map((row) => row.toReversed());
  if (by.upsideDown) cells = cells.toReversed();
  const colours = [...new Set(cells.flat())];
  if (by.exchange && colours.length <= 2) {
    const pair = colours.length === 2 ? colours : [0, 1];
    cells = cells.map((row) => row.map((c) => (c === pair[0] ? pair[1]! : pair[0]!)));
  }
  cells = cells.map((_, j) => {
    const row = cells[(j + by.y) % cells.length]!;
    return row.map((__, i) => row[(i + by.x) % row.length]!);
  });
  if (by.twiceAcross) cells = cells.map((row) => [...row, ...row]);
  if (by.twiceAlong) cells = [...cells, ...cells.map((row) => [...row])];
  if (by.spoil !== undefined) {
    const row = cells[by.spoil % cells.length]!;
    row[by.spoil % row.length] = (row[by.spoil % row.length]! + 1) % 3;
  }
  return faceFromRows(cells);
}

const key = (face: Face, same: readonly Sameness[], colours: number): string => clothKey(face, same, colours).join(' ');

describe('two faces share a key exactly when they are the same cloth', () => {
  const check = (a: Face, b: Face, same: readonly Sameness[], colours: number): void => {
    const equal = key(a, same, colours) === key(b, same, colours);
    expect(equal).toBe(sameCloth(cellsOf(a), cellsOf(b), same, colours));
  };
  const palette = (a: Face, b: Face, extra: number): number => 1 + extra + Math.max(...a.colour, ...b.colour);

  test('a face and one made from it', () => {
    fc.assert(
      fc.property(faces, change, fc.subarray([...SAMENESS]), fc.nat(1), (a, by, same, extra) => {
        const b = changed(a, by);
        check(a, b, same, palette(a, b, extra));
      }),
      { numRuns: runs(1000, 30_000) },
    );
  });

  test('two small faces that have nothing to do with one another', () => {
    const small = fc
      .array(fc.array(fc.nat(1), { minLength: 3, maxLength: 3 }), { minLength: 2, maxLength: 3 })
      .map(faceFromRows);
    fc.assert(
      fc.property(small, small, fc.subarray([...SAMENESS]), fc.nat(1), (a, b, same, extra) => {
        check(a, b, same, palette(a, b, extra));
      }),
      { numRuns: runs(500, 15_000) },
    );
  });

  test('an analysis made before gives the same key', () => {
    fc.assert(
      fc.property(faces, fc.subarray([...SAMENESS]), (face, same) => {
        expect(clothKey(face, same, 3, analyse(face))).toEqual(clothKey(face, same, 3));
      }),
    );
  });
});

test('an analysis and a key written over those of other faces are the same', () => {
  const analyseNext = analyser();
  const same: readonly Sameness[] = ['mirror', 'exchange'];
  const keyOf = clothKeys(same, 3);
  fc.assert(
    fc.property(faces, fc.boolean(), (face, square) => {
      const analysis = analyseNext(face);
      expect(symmetryShare(analysis, square)).toBe(symmetryOf(face, square).symmetry);
      expect(keyOf(analysis)).toEqual(clothKey(face, same, 3));
    }),
    { numRuns: runs(500) },
  );
});

describe('exchange by the palette', () => {
  const dark = faceFromRows([[0]]);
  const light = faceFromRows([[1]]);
  test('all dark and all light are one cloth in a palette of two, and two in a palette of three', () => {
    expect(key(dark, ['exchange'], 2)).toBe(key(light, ['exchange'], 2));
    expect(key(dark, ['exchange'], 3)).not.toBe(key(light, ['exchange'], 3));
    expect(key(dark, [], 2)).not.toBe(key(light, [], 2));
  });
  test('two of three yarns change places with one another, not with the third', () => {
    const rows = (a: number, b: number): Face => faceFromRows([[a, a, b]]);
    expect(key(rows(0, 1), ['exchange'], 3)).toBe(key(rows(1, 0), ['exchange'], 3));
    expect(key(rows(0, 1), ['exchange'], 3)).not.toBe(key(rows(0, 2), ['exchange'], 3));
  });
});

test('a list of words that differs in one bit has another hash in every word', () => {
  fc.assert(
    fc.property(fc.array(fc.integer(), { minLength: 1, maxLength: 40 }), fc.nat(39), fc.nat(31), (list, at, bit) => {
      const words = Int32Array.from(list);
      const [before, after] = [new Uint32Array(4), new Uint32Array(4)];
      hashWords(words, before);
      words[at % words.length]! ^= 1 << bit;
      hashWords(words, after);
      expect(Array.from(before, (word, lane) => word === after[lane]).some((equal) => equal)).toBe(false);
    }),
    { numRuns: runs(700, 20_000) },
  );
});
