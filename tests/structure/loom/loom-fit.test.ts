import { describe, expect, test } from 'vitest';
import { liftAt } from '../../../src/draft/draft.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { canBeTied, heddlesFor, type LoomKind, obstacles, tieUpOn } from '../../../src/structure/loom/loom-fit.js';

const weave = (name: string, profile: string) => weaveOf(findStructure(name), [...profile]);

describe('what a loom cannot weave', () => {
  // 100 units of four ends: 60 A and 40 B, or 80 A and 20 B, take two heddles of the block's shaft a unit.
  const heddles = [120, 120, 120, 70];
  test.each([
    ['AABAB', 400, ['needs 80 heddles on shaft 4, the loom has 70']],
    ['AAAAB', 400, ['needs 160 heddles on shaft 3, the loom has 120']],
    ['AABAB', 340, []],
  ])('summer and winter %s of %i ends', (profile, ends, why) => {
    expect(obstacles(weave('summer and winter', profile), { kind: 'rising', heddles, ends })).toEqual(why);
  });

  test('heddles of whole repeats and what is begun of another', () => {
    // 24 ends a repeat, 5 / 10 / 7 / 2; 400 are 16 repeats and 16 ends over (worked by hand).
    const crackle = weave('crackle', 'AABAB');
    expect(heddlesFor(crackle, 24)).toEqual([5, 10, 7, 2]);
    const over = crackle.threading.slice(0, 16).flat();
    expect(heddlesFor(crackle, 16)).toEqual([1, 2, 3, 4].map((shaft) => over.filter((each) => each === shaft).length));
    expect(heddlesFor(crackle, 400)).toEqual(
      [5, 10, 7, 2].map((count, at) => 16 * count + over.filter((shaft) => shaft === at + 1).length),
    );
  });

  test('treadles: one foot, then two, a lift plan on a table loom, one foot alone on a countermarch', () => {
    const bands = weave('turned twill on four shafts', 'AB');
    expect(canBeTied(bands, { kind: 'rising', treadles: 8 })).toBe(true);
    expect(canBeTied(bands, { kind: 'rising', treadles: 6 })).toBe(true);
    expect(canBeTied(bands, { kind: 'countermarch', treadles: 6 })).toBe(false);
    expect(canBeTied(bands, { kind: 'rising', treadles: 3 })).toBe(false);
    expect(canBeTied(bands, { kind: 'table', treadles: 3 })).toBe(true);
    expect(obstacles(bands, { kind: 'rising', treadles: 3, shafts: 3 })).toEqual([
      'needs 4 shafts, the loom has 3',
      'needs 8 treadles, the loom has 3, and two feet will not do it',
    ]);
  });
});

describe('what is tied up weaves the draft', () => {
  const kinds: LoomKind[] = ['rising', 'sinking', 'countermarch'];
  test.each(kinds)('%s, one foot and two', (kind) => {
    for (const [name, profile] of [
      ['turned twill on four shafts', 'AB'],
      ['overshot', 'AAABBBCCCDDD'],
      ['summer and winter', 'AABAB'],
    ] as const) {
      const woven = weave(name, profile);
      const all = [...new Set([...woven.threading, ...woven.tieUp].flat())];
      for (let treadles = 2; treadles <= 8; treadles++) {
        const { treadles: tied, treadling, manner } = tieUpOn(woven, { kind, treadles });
        if (manner === 'lift plan') continue;
        expect(tied.length).toBeLessThanOrEqual(treadles);
        treadling.forEach((pressed, j) => {
          const risen = pressed.flatMap((treadle) => tied[treadle - 1]!.rise);
          const sunk = pressed.flatMap((treadle) => tied[treadle - 1]!.sink);
          const up = kind === 'sinking' ? all.filter((shaft) => !sunk.includes(shaft)) : risen;
          expect(new Set(up)).toEqual(new Set(liftAt(woven, j)));
          // A countermarch moves every shaft, and none both ways.
          if (kind === 'countermarch') expect([...risen, ...sunk].sort()).toEqual([...all].sort());
        });
      }
    }
    const bands = weave('turned twill on four shafts', 'AB');
    expect(tieUpOn(bands, { kind, treadles: 6 }).manner).toBe(kind === 'countermarch' ? 'lift plan' : 'two feet');
  });
});
