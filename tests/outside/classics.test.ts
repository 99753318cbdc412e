// Classic effects are recognised from any start, in either colour, and however the cloth is turned. Recipes: hound's
// tooth, step and log cabin as read in handbooks and dictionaries of the trade; the others are common practice.

import { describe, expect, test } from 'vitest';
import { type Draft, EVEN_WIDTHS } from '../../src/draft/draft.js';
import { lcm } from '../../src/order/necklace.js';
import { UNWEIGHED } from '../../src/score/parts/parts.js';
import { measuredClassics, scoreDraft } from '../../src/score/score.js';

const SETT = { ends: 20, picks: 20, per: 'inch' } as const;
const YARNS = [
  { letter: 'D', name: 'dark', hex: '#1f2a44' },
  { letter: 'L', name: 'light', hex: '#efe6d2' },
];
const PLAIN = ['#.', '.#'];
const TWILL = ['##..', '.##.', '..##', '#..#'];

/** A cloth by its cells: `up` rows of 1 where the warp is up, and the colours of its threads. */
interface Woven {
  readonly up: readonly (readonly number[])[];
  readonly warp: readonly number[];
  readonly weft: readonly number[];
}

/** The same order both ways, begun on any end and pick, over a length that holds weave and order. */
function woven(weave: readonly string[], order: string, warpStart: number, weftStart: number): Woven {
  const length = lcm(order.length, weave.length);
  const colour = (start: number) => (_: unknown, s: number) => (order[(s + start) % order.length] === 'D' ? 0 : 1);
  return {
    up: Array.from({ length }, (_, j) =>
      Array.from({ length }, (__, i) => (weave[j % weave.length]![i % weave.length] === '#' ? 1 : 0)),
    ),
    warp: Array.from({ length }, colour(warpStart)),
    weft: Array.from({ length }, colour(weftStart)),
  };
}

const exchanged = ({ up, warp, weft }: Woven): Woven => ({
  up,
  warp: warp.map((c) => 1 - c),
  weft: weft.map((c) => 1 - c),
});
const mirrored = ({ up, warp, weft }: Woven): Woven => ({
  up: up.map((row) => row.toReversed()),
  warp: warp.toReversed(),
  weft,
});
/** A quarter turn: warp becomes weft, so what was up is down. */
const turned = ({ up, warp, weft }: Woven): Woven => ({
  up: up.map((_, j) => up.map((row) => 1 - row[j]!)).toReversed(),
  warp: weft,
  weft: warp.toReversed(),
});

const draftOf = ({ up, warp, weft }: Woven): Draft => ({
  threading: warp.map((_, i) => [i + 1]),
  tieUp: up.map((row) => row.flatMap((cell, i) => (cell === 1 ? [i + 1] : []))),
  treadling: weft.map((_, j) => [j + 1]),
  pickKinds: weft.map(() => 'ground'),
  endUnits: warp.map(() => 1),
  pickUnits: weft.map(() => 1),
  widths: EVEN_WIDTHS,
  yarns: YARNS,
  sett: SETT,
  warp,
  weft,
});

/** One repeat of the weave alone, as a search has it. */
const weaveOf = (cloth: Woven, repeat: number): Draft =>
  draftOf({
    up: cloth.up.slice(0, repeat).map((row) => row.slice(0, repeat)),
    warp: cloth.warp.slice(0, repeat),
    weft: cloth.weft.slice(0, repeat),
  });

const EFFECTS: readonly [name: string, weave: readonly string[], order: string][] = [
  ['hound’s tooth', TWILL, 'DDDDLLLL'],
  ['step', TWILL, 'DL'],
  ['shepherd’s check', TWILL, 'DDDDDDLLLLLL'],
  ['shepherd’s check', TWILL, 'DDDDDDDDLLLLLLLL'],
  ['pinwheel', PLAIN, 'DDLL'],
  ['gingham', PLAIN, 'DDDDLLLL'],
  ['log cabin', PLAIN, 'DLDLDLDLLDLDLDLD'],
];

describe('is recognised from any start, colour or turn', () => {
  test.each(EFFECTS)('%s', (name, weave, order) => {
    const ways: readonly (readonly ((cloth: Woven) => Woven)[])[] = [
      [],
      [exchanged],
      [mirrored],
      [turned],
      [turned, turned],
      [turned, turned, turned],
      [mirrored, turned],
      [exchanged, turned],
    ];
    for (const way of ways) {
      const made = (a: number, b: number): Woven => way.reduce((cloth, turn) => turn(cloth), woven(weave, order, a, b));
      const classics = measuredClassics(weaveOf(made(0, 0), weave.length), SETT);
      for (let a = 0; a < order.length; a++) {
        for (let b = 0; b < Math.min(order.length, weave.length); b++) {
          const ranking = { weights: UNWEIGHED, floatLimit: { threads: 7 }, classics };
          const { scores } = scoreDraft(draftOf(made(a, b)), ranking);
          expect(scores.nearest).toBe(name);
          expect(scores.novelty).toBeCloseTo(0, 9);
        }
      }
    }
  });
});

// Bell, Jacquard Weaving and Designing: hair line and tricot line; which of them stands is common practice.
test.each([
  [0, 0],
  [0, 1],
  [1, 0],
  [1, 1],
])(
  'one and one in plain weave from end %d and pick %d: a line that stands is hairline, one that lies tricot',
  (a, b) => {
    const cloth = woven(PLAIN, 'DL', a, b);
    const classics = measuredClassics(weaveOf(cloth, 2), SETT);
    const { scores } = scoreDraft(draftOf(cloth), { weights: UNWEIGHED, floatLimit: { threads: 7 }, classics });
    const { up, warp, weft } = cloth;
    const shown = up.map((row, j) => row.map((end, i) => (end ? warp[i] : weft[j])));
    const stands = shown.every((row) => row.join() === shown[0]!.join());
    expect(scores.nearest).toBe(stands ? 'hairline' : 'tricot');
  },
);

test('an order of five is no classic, and its nearest is named all the same', () => {
  const cloth = woven(TWILL, 'DDLDL', 0, 0);
  const classics = measuredClassics(weaveOf(cloth, 4), SETT);
  const { scores } = scoreDraft(draftOf(cloth), { weights: UNWEIGHED, floatLimit: { threads: 7 }, classics });
  expect(scores.novelty).toBeGreaterThan(0.02);
  expect(classics.map(({ name }) => name)).toContain(scores.nearest);
});
