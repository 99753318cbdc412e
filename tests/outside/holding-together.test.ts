// When a cloth hangs together: C. R. J. Clapham, Bull. London Math. Soc. 12 (1980) 161–164 (from memory); the worked
// examples and counts were computed once three ways (search for cuts, sums, strong components). Beside them the strong
// components of an independent library, graphology-components.
import fc from 'fast-check';
import { DirectedGraph } from 'graphology';
import { stronglyConnectedComponents } from 'graphology-components';
import { expect, test } from 'vitest';
import { type Drawdown, isUp } from '../../src/cloth/drawdown.js';
import { floatsOf } from '../../src/cloth/floats.js';
import { holdsTogether, layers } from '../../src/cloth/holds-together.js';
import { lifts, woven } from '../lifts.js';
import { runs } from '../long.js';
import { everyBlock, weaveOf } from './blocks.js';
import data from './data/hangs-together.json' with { type: 'json' };
import groups from './data/planegroups.json' with { type: 'json' };

const SETT = { ends: 8, picks: 8, per: 'cm' } as const;

/** An arrow from the upper to the lower strand at every crossing. */
function components(cloth: Drawdown): number {
  const graph = new DirectedGraph();
  for (let i = 0; i < cloth.ends; i++) graph.addNode(`end ${i}`);
  for (let j = 0; j < cloth.picks; j++) {
    graph.addNode(`pick ${j}`);
    for (let i = 0; i < cloth.ends; i++) {
      if (isUp(cloth, j, i)) graph.addEdge(`end ${i}`, `pick ${j}`);
      else graph.addEdge(`pick ${j}`, `end ${i}`);
    }
  }
  return stronglyConnectedComponents(graph).length;
}

const longer = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? null : Math.max(a, b);

test.each(data.examples)('$name', ({ block, layers: expected, warpFloat, weftFloat }) => {
  const cloth = weaveOf(block);
  expect(layers(cloth)).toBe(expected);
  expect(components(cloth)).toBe(expected);
  const floats = floatsOf(cloth, SETT);
  expect(longer(floats.warpFace, floats.warpBack)).toBe(warpFloat);
  expect(longer(floats.weftFace, floats.weftBack)).toBe(weftFloat);
});

test.each(groups.structures)('$name', ({ block, hangs, warpFloat, weftFloat }) => {
  expect(holdsTogether(weaveOf(block))).toBe(hangs);
  const floats = floatsOf(weaveOf(block), SETT);
  expect(longer(floats.warpFace, floats.warpBack)).toBe(warpFloat);
  expect(longer(floats.weftFace, floats.weftBack)).toBe(weftFloat);
});

test.each(data.counts)(
  'blocks of $size: $hang of $all hold together as one cloth',
  ({ size, hang, all, interlace }) => {
    const [picks, ends] = size.split('x').map(Number) as [number, number];
    const cloths = Array.from(everyBlock(picks, ends), woven);
    expect(cloths.length).toBe(all);
    expect(cloths.filter(holdsTogether).length).toBe(hang);
    // Every strand goes over and under somewhere: not enough from 4 × 4 on, where 144 blocks are two loose layers.
    if (interlace !== null) expect(cloths.filter((c) => floatsOf(c, SETT).longest !== null).length).toBe(interlace);
  },
);

test('as many layers as the library finds strong components', () => {
  fc.assert(
    fc.property(lifts, (cells) => {
      expect(layers(woven(cells))).toBe(components(woven(cells)));
    }),
    { numRuns: runs(500) },
  );
});
