import { describe, expect, test } from 'vitest';
import { type Drawdown, drawdown, isUp } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import { holdsTogether } from '../../../src/cloth/holds-together.js';
import type { Weave } from '../../../src/draft/draft.js';
import type { Order } from '../../../src/order/order.js';
import { Problem } from '../../../src/problem.js';
import { Sides } from '../../../src/search/evaluate/sides.js';
import { bySides } from '../../../src/search/space/block-family.js';
import { structures, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { QUESTION } from '../question.js';

const ORDERS: readonly Order[] = [[0], [1], [0, 1], [0, 0, 1], [0, 1, 1], [0, 1, 2], [0, 2, 1, 1]];
const LETTERS = ['A', 'B', 'C'];

const cells = (cloth: Drawdown): string =>
  Array.from({ length: cloth.picks }, (_, j) =>
    Array.from({ length: cloth.ends }, (__, i) => (isUp(cloth, j, i) ? 1 : 0)).join(''),
  ).join('/');

describe('threading and treadling drawn once for each order make the weaves that pairs of orders make', () => {
  const many = structures.filter(({ blocks, withBlocks }) => blocks.length > 2 || withBlocks);
  test.each(many.map(({ name }) => name))('%s', (name) => {
    const structure = structures.find((one) => one.name === name)!;
    const blocks = (order: Order): string[] => order.map((colour) => LETTERS[colour]!);
    const drawn = (warp: Order, weft: Order): Weave => weaveOf(structure, blocks(warp), { treadled: blocks(weft) });
    const joined = bySides(drawn);
    const sides = new Sides();
    let woven = 0;
    for (const warp of ORDERS) {
      for (const weft of ORDERS.toReversed()) {
        let whole: Weave;
        try {
          whole = drawn(warp, weft);
        } catch (problem) {
          // Blocks that cannot be neighbours. What is known of either order alone may say so too, or not.
          if (!(problem instanceof Problem)) throw problem;
          continue;
        }
        const weave = joined(warp, weft);
        expect(weave).toEqual(whole);
        const [{ cloth, floats, holdsTogether: holds }, plainly] = [sides.interlacement(weave), drawdown(whole)];
        expect(cells(cloth)).toBe(cells(plainly));
        expect(floats(QUESTION.sett)).toEqual(floatsOf(plainly, QUESTION.sett));
        expect(holds()).toBe(holdsTogether(plainly));
        woven++;
      }
    }
    // Huck refuses most: no block may stand beside itself.
    expect(woven).toBeGreaterThan(0);
  });
});
