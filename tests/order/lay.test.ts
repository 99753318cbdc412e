import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EVEN_WIDTHS, type Weave } from '../../src/draft/draft.js';
import { colours, endStrands, type Laying, layout, pickStrands, startCount, wholeRepeat } from '../../src/order/lay.js';
import { lcm } from '../../src/order/necklace.js';
import { smallestPeriod } from '../../src/order/order.js';

const weave = (ends: number, units: number[], kinds: Weave['pickKinds'], pickUnits: number[]): Weave => ({
  threading: Array.from({ length: ends }, (_, i) => [(i % 4) + 1]),
  tieUp: [
    [1, 2],
    [2, 3],
    [3, 4],
    [1, 4],
  ],
  treadling: kinds.map((_, j) => [(j % 4) + 1]),
  pickKinds: kinds,
  endUnits: units,
  pickUnits,
  widths: EVEN_WIDTHS,
});
const twill = weave(4, [4], ['ground', 'ground', 'ground', 'ground'], [4]);
const letters = (laid: ArrayLike<number>): string => Array.from(laid, (c) => 'DLT'[c]).join('');
const lay = (w: Weave, word: string, laying: Partial<Laying>): string => {
  const order = [...word].map((letter) => 'DLT'.indexOf(letter));
  const whole: Laying = { by: 'thread', fill: 'solid', times: 1, start: 0, ...laying };
  return letters(colours(layout(endStrands(w), order.length, whole), order, 2, 1));
};

describe('an order laid on the ends of a four-end unit', () => {
  // 5 → 20 → 40 → 80: common practice, no source.
  test('by thread it runs on until it is in step with the weave: 20 ends', () => {
    expect(lay(twill, 'DLDDL', {})).toBe('DLDDL'.repeat(4));
  });
  test('by thread stretched', () => expect(lay(twill, 'DL', { times: 4 })).toBe('DDDDLLLL'));
  test('by unit an element covers whole units: 20, 40, 80 ends', () => {
    expect(lay(twill, 'DLDDL', { by: 'unit' })).toBe('DDDDLLLLDDDDDDDDLLLL');
    expect(lay(twill, 'DLDDL', { by: 'unit', times: 2 })).toHaveLength(40);
    expect(lay(twill, 'DLDDL', { by: 'unit', times: 4 })).toHaveLength(80);
  });
  test('alternate: an order of two is a log cabin', () => {
    expect(lay(twill, 'DL', { by: 'unit', fill: 'alternate', times: 2 })).toBe('DLDLDLDLLDLDLDLD');
  });
  test('alternate: one yarn is one yarn', () => {
    expect(lay(twill, 'D', { by: 'unit', fill: 'alternate', times: 2 })).toBe('DDDDDDDD');
  });
  test('alternate in units of odd length begins each element with its own colour', () => {
    const five = weave(10, [5, 5], ['ground'], [1]);
    expect(lay(five, 'DL', { by: 'unit', fill: 'alternate' })).toBe('DLDLDLDLDL');
  });
  test('a start moves the order along the threads', () => {
    expect(lay(twill, 'DDLL', { start: 1 })).toBe('LDDL');
    expect(lay(twill, 'DL', { by: 'unit', start: 1 })).toBe('LLLLDDDD');
  });
  test('one yarn begins nowhere else; an order, at as many threads as it is out of step with the weave', () => {
    const starts = (length: number, times: number): number =>
      startCount(endStrands(twill), length, { by: 'thread', times });
    expect([starts(1, 4), starts(2, 1), starts(2, 2), starts(5, 1), starts(6, 1)]).toEqual([1, 2, 4, 1, 2]);
  });
  test('units of unequal length: an order of n runs over lcm(n, U) units', () => {
    expect(lay(weave(6, [4, 2], ['ground'], [1]), 'DLL', { by: 'unit' })).toBe('DDDDLLLLLLDDLLLLLL');
  });
});

/**
 * The same laid by hand: units (threads) are dealt to the elements in turn, `times` each, and colour and companion take
 * turns from the first thread of each element on.
 */
function laidByHand(
  units: readonly number[],
  length: number,
  laying: Laying,
): { element: number[]; companion: number[] } {
  const { by, fill, times, start } = laying;
  const pieces = by === 'unit' ? units : units.flatMap((size) => new Array<number>(size).fill(1));
  const count = lcm(pieces.length, length * times);
  const dealt = Array.from({ length: count }, (_, piece) => {
    const place = (piece + 4 * length * times - start) % (length * times);
    return { size: pieces[piece % pieces.length]!, element: Math.floor(place / times), isFirst: place % times === 0 };
  });
  // An element that began before the first thread is cut there, and goes on counting.
  const first = dealt.findIndex(({ isFirst }) => isFirst);
  const turned = [...dealt.slice(first), ...dealt.slice(0, first)];
  // One element is one yarn.
  const alternates = fill === 'alternate' && length > 1;
  let since = 0;
  const threads = turned.map(({ size, element, isFirst }) => {
    if (isFirst) since = 0;
    return Array.from({ length: size }, () => ({ element, companion: alternates ? since++ % 2 : 0 }));
  });
  const whole = [...threads.slice(count - first), ...threads.slice(0, count - first)].flat();
  return { element: whole.map((thread) => thread.element), companion: whole.map((thread) => thread.companion) };
}

test('whatever the units, an order is laid as by hand', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 4 }),
      fc.integer({ min: 1, max: 5 }),
      fc.record({
        by: fc.constantFrom('thread' as const, 'unit' as const),
        fill: fc.constantFrom('solid' as const, 'alternate' as const),
        times: fc.integer({ min: 1, max: 4 }),
        start: fc.nat(3),
      }),
      (units, length, laying) => {
        const ends = units.reduce((a, b) => a + b, 0);
        const { element, companion } = layout(endStrands(weave(ends, units, ['ground'], [1])), length, laying);
        expect({ element: [...element], companion: [...companion] }).toEqual(laidByHand(units, length, laying));
      },
    ),
  );
});

describe('an order laid on picks', () => {
  const tabby = weave(4, [4], ['pattern', 'tabby', 'pattern', 'tabby'], [4]);
  test('runs over the pattern picks; tabby keeps its colour', () => {
    const plan = layout(pickStrands(tabby), 3, { by: 'thread', fill: 'solid', times: 1, start: 0 });
    expect(letters(colours(plan, [0, 0, 1], 2, 1))).toBe('DLDLLLDLDLLL');
  });
});

describe('whole repeats', () => {
  const words = fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 1, maxLength: 7 });
  test('hold lcm(threading, colours) ends, and starts beyond gcd(order, weave) only shift the cloth', () => {
    fc.assert(
      fc.property(
        words,
        fc.constantFrom('thread', 'unit' as const),
        fc.integer({ min: 1, max: 3 }),
        (word, by, times) => {
          const strands = endStrands(twill);
          const laid = (start: number): Uint8Array =>
            colours(layout(strands, word.length, { by, fill: 'solid', times, start }), word, 2, 1);
          const whole = wholeRepeat(twill, laid(0), [0]);
          expect(whole.warp.length).toBe(lcm(4, smallestPeriod(laid(0))));
          expect(whole.threading.length).toBe(whole.warp.length);
          expect(whole.endUnits.reduce((a, b) => a + b, 0)).toBe(whole.warp.length);
          const starts = startCount(strands, word.length, { by, times });
          const shift = by === 'unit' ? 4 * starts : starts;
          const first = laid(0);
          const later = laid(starts);
          const n = lcm(first.length, 4);
          // Some shift by whole weave repeats carries one on the other.
          const matches = Array.from({ length: n / 4 }, (_, k) => k * 4).some((s) =>
            Array.from({ length: n }, (_, i) => i).every(
              (i) => later[i % later.length] === first[(i + s) % first.length],
            ),
          );
          expect(shift).toBeGreaterThan(0);
          expect(matches).toBe(true);
        },
      ),
    );
  });
});
