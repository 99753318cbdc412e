import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Drawdown, drawdown, isUp } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { holdsTogether } from '../../../src/cloth/holds-together.js';
import { findStructure, structures, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { tabbySheds } from '../../../src/structure/loom/lifts.js';
import { letters, type Structure } from '../../../src/structure/model/structure.js';
import { runs } from '../../long.js';
import { BLOCK_RULES, blockCells } from '../../plain/block-cells.js';
import { columns, layers, longest } from '../../plain/floats.js';

const SETT = { ends: 10, picks: 10, per: 'cm' } as const;

/** Cloths of two to eight blocks: a block order of the ends, and for each unit of picks the blocks that show. */
const cloths = fc.integer({ min: 2, max: 8 }).chain((count) =>
  fc.tuple(
    fc.constant(count),
    fc.array(fc.constantFrom(...letters(count)), { minLength: 2, maxLength: 9 }),
    fc.array(
      fc.subarray(letters(count)).map((shown) => shown.join('+') || '.'),
      { minLength: 1, maxLength: 6 },
    ),
  ),
);

const rowsOf = (cloth: Drawdown): number[][] =>
  Array.from({ length: cloth.picks }, (_, j) =>
    Array.from({ length: cloth.ends }, (__, i) => (isUp(cloth, j, i) ? 1 : 0)),
  );

describe.each(Object.entries(BLOCK_RULES))('%s', (called, rule) => {
  const [name, manner] = called.split(/, (?=[^,]*$)/) as [string, string];
  // Two blocks of halvdräll have a draft of their own, on four shafts.
  const least = name.startsWith('halvdräll') ? 3 : 2;
  const structure = findStructure(name);

  test('any blocks together, cell by cell, with the floats and the layers counted plainly', () => {
    fc.assert(
      fc.property(cloths, ([count, threaded, treadled]) => {
        const weave = weaveOf(structure.withBlocks!(Math.max(count, least)), threaded, { manner, treadled });
        const cloth = drawdown(weave);
        const rows = blockCells(rule, threaded, treadled);
        expect(rowsOf(cloth)).toEqual(rows);
        const { warpFace, warpBack, weftFace, weftBack } = floatsOf(cloth, SETT);
        const plain = [longest(columns(rows), 1), longest(columns(rows), 0), longest(rows, 0), longest(rows, 1)];
        expect([warpFace, warpBack, weftFace, weftBack]).toEqual(plain);
        if (cloth.ends + cloth.picks < 60) expect(holdsTogether(cloth)).toBe(layers(rows) === 1);
      }),
      { numRuns: runs(40) },
    );
  });
});

/** Longest floats, warp and weft, whatever blocks show together. */
const LAWS: Readonly<Record<string, readonly [warp: number, weft: number]>> = {
  'turned twill': [3, 3],
  'turned twill of three': [2, 2],
  'turned satin': [4, 4],
  'turned taqueté by shafts': [3, 2],
  'summer and winter': [3, 3],
  halvdräll: [3, 3],
  'halvdräll, float of five': [3, 5],
  'halvdräll, float of seven': [3, 7],
  'M’s and O’s with tabby': [2, 4],
  'Bronson lace': [5, 5],
};

test.each(Object.entries(LAWS))('%s: no float is longer for any blocks together, and the cloth holds', (name, law) => {
  const structure = findStructure(name);
  fc.assert(
    fc.property(cloths, ([count, threaded, treadled]) => {
      const cloth = drawdown(weaveOf(structure.withBlocks!(count), threaded, { treadled }));
      const { warpFace, warpBack, weftFace, weftBack } = floatsOf(cloth, SETT);
      expect(Math.max(warpFace!, warpBack!)).toBeLessThanOrEqual(law[0]);
      expect(Math.max(weftFace!, weftBack!)).toBeLessThanOrEqual(law[1]);
      expect(holdsTogether(cloth)).toBe(true);
    }),
    { numRuns: runs(40) },
  );
});

const sized: readonly (readonly [string, number, Structure])[] = structures.flatMap((structure) =>
  structure.withBlocks === undefined
    ? []
    : [3, 4, 5, 8].map((count) => [structure.name, count, structure.withBlocks!(count)] as const),
);

describe.each(sized)('%s with %i blocks', (_, count, structure) => {
  test('has shafts for its blocks, each with ends of its own', () => {
    expect(structure.blocks.length).toBeGreaterThanOrEqual(count);
    const threaded = new Set(weaveOf(structure, structure.profile).threading.flat());
    expect(Math.max(...threaded)).toBe(structure.shafts);
    expect(threaded.size).toBe(structure.shafts);
    for (const raised of Object.values(structure.tieUp)) {
      expect(raised.every((shaft) => shaft >= 1 && shaft <= structure.shafts)).toBe(true);
    }
  });

  test('its tabby is the plain weave of its threading', () => {
    const sheds = tabbySheds(weaveOf(structure, structure.profile).threading);
    const inOrder = (each: readonly (readonly number[])[] | undefined) => each?.map((shed) => shed.join(' ')).sort();
    if (structure.tabby === undefined) expect(sheds === undefined || structure.shafts % 2 === 0).toBe(true);
    else expect(inOrder(structure.tabby.map((treadle) => structure.tieUp[treadle]!))).toEqual(inOrder(sheds));
  });

  test('may be asked for again, and is the same', () => {
    const { withBlocks, ...data } = structure;
    const { withBlocks: _, ...again } = withBlocks!(count);
    expect(again).toEqual(data);
  });
});

describe('treadles of blocks together', () => {
  const tieUp = (name: string, count: number, together: string[]) =>
    findStructure(name).withBlocks!(count, together).tieUp;

  test('are named by their blocks; one that makes a shed already tied is not tied again', () => {
    const summer = tieUp('summer and winter', 3, ['A+C', '.', 'A+B+C']);
    expect(summer.AC1).toEqual([1, 4]);
    expect(summer['.1']).toEqual([1, 3, 4, 5]);
    expect(summer.ABC2).toEqual([2]);
    const lace = tieUp('Bronson lace', 2, ['A+B', '.']);
    expect(lace.lAB).toEqual([2]);
    // No block of lace is tabby.
    expect(Object.keys(lace)).toEqual(['a', 'b', 'lA', 'lB', 'lAB']);
  });

  test('plain units of lace weave plain right through', () => {
    const weave = weaveOf(findStructure('Bronson lace'), ['A', '.', 'B', '.'], { treadled: ['A', '.', 'A+B'] });
    const rows = rowsOf(drawdown(weave));
    for (const row of rows) {
      row.slice(6, 11).forEach((cell, i) => {
        expect(cell).toBe(1 - row[i + 7]!);
      });
    }
    const { warpFace, warpBack, weftFace, weftBack } = floatsOf(drawdown(weave), SETT);
    expect([warpFace, warpBack, weftFace, weftBack]).toEqual([1, 5, 5, 1]);
  });
});
