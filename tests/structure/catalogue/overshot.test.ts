import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown, isUp } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { holdsTogether } from '../../../src/cloth/holds-together.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { tabbySheds } from '../../../src/structure/loom/lifts.js';
import { letters } from '../../../src/structure/model/structure.js';
import { runs } from '../../long.js';
import { columns, layers, longest } from '../../plain/floats.js';
import { overshotEnds, ringCells } from '../../plain/ring-cells.js';

const SETT = { ends: 10, picks: 10, per: 'cm' } as const;
const overshot = findStructure('overshot');

/** Length of the longest run of a block, around the ring. */
const run = (ring: readonly string[], block: string): number =>
  longest([ring.map((each) => (each === block ? 1 : 0))], 1) ?? Number.POSITIVE_INFINITY;

describe.each([
  [4, 4],
  [5, 6],
  [6, 6],
  [8, 8],
  [12, 12],
])('overshot with %i blocks, on %i shafts', (count, size) => {
  const structure = overshot.withBlocks!(count);
  const blocks = letters(size);
  const runsOf = fc
    .array(fc.tuple(fc.constantFrom(...blocks), fc.integer({ min: 1, max: 4 })), { minLength: 2, maxLength: 6 })
    .map((list) => list.flatMap(([block, times]) => new Array<string>(times).fill(block)))
    .filter((profile) => new Set(profile).size > 1);

  test('is threaded and woven as a plain program does it, and holds together', () => {
    expect(structure.shafts).toBe(size);
    fc.assert(
      fc.property(runsOf, runsOf, (profile, treadled) => {
        const weave = weaveOf(structure, profile, { treadled });
        const ends = weave.threading.map(([shaft]) => shaft!);
        const plain = overshotEnds(profile, size);
        expect(ends).toHaveLength(plain.length);
        expect(`${plain.join(' ')} ${plain.join(' ')} `).toContain(`${ends.join(' ')} `);
        const cloth = drawdown(weave);
        const rows = Array.from({ length: cloth.picks }, (_, j) => ends.map((__, i) => (isUp(cloth, j, i) ? 1 : 0)));
        const all = treadled.length % 2 === 0 ? treadled : [...treadled, ...treadled];
        const cells = ringCells(ends, all, size);
        expect(rows).toEqual(cells);
        expect(tabbySheds(weave.threading)).toBeDefined();
        if (cloth.ends + cloth.picks < 80) expect(layers(cells)).toBe(1);
        expect(holdsTogether(cloth)).toBe(true);
      }),
      { numRuns: runs(40) },
    );
  });

  test('floats over the steps of the block that shows and one end more, under as many of the block two further', () => {
    fc.assert(
      fc.property(runsOf, runsOf, (profile, treadled) => {
        const { threading, treadling, tieUp } = weaveOf(structure, profile, { treadled });
        const ends = threading.map(([shaft]) => shaft!);
        // The block of each step, between an end and the next.
        const steps = ends.map((shaft, i) => {
          const next = ends[(i + 1) % ends.length]!;
          return blocks[(next - shaft + size) % size === 1 ? shaft - 1 : next - 1]!;
        });
        const over = (block: string): number => run(steps, block) + 1;
        const [face, back] = [0, 2].map((up) =>
          Math.max(...treadled.map((block) => over(blocks[(blocks.indexOf(block) + up) % size]!))),
        );
        const lifts = treadling.map(([treadle]) => new Set(tieUp[treadle! - 1]));
        const rows = lifts.map((lift) => ends.map((shaft) => (lift.has(shaft) ? 1 : 0)));
        expect([longest(rows, 0), longest(rows, 1)]).toEqual([face, back]);
        expect(Math.max(longest(columns(rows), 0)!, longest(columns(rows), 1)!)).toBeLessThanOrEqual(3);
      }),
      { numRuns: runs(40) },
    );
  });

  test.each(overshot.manners.map(({ name }) => name))('%s: its usual block order is woven within seven', (manner) => {
    const cloth = drawdown(weaveOf(structure, structure.profile, { manner }));
    expect(floatsOf(cloth, SETT).longest).toBeLessThanOrEqual(7);
    expect(holdsTogether(cloth)).toBe(true);
  });
});

// Each block three steps, which leads once round the ring: worked by hand.
test('six blocks on six shafts', () => {
  const { threading } = weaveOf(overshot.withBlocks!(6), [...'AAABBBCCCDDDEEEFFF']);
  expect(threading.flat().join('')).toBe('212323434545656161');
});
