import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { floatsOf } from '../../../src/cloth/floats.js';
import type { Weave } from '../../../src/draft/draft.js';
import { drawn, findStructure, structures, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { layClosed, type Units } from '../../../src/structure/model/unit.js';
import { runs } from '../../long.js';

const shaftsOf = (name: string, profile: string): string =>
  weaveOf(findStructure(name), [...profile])
    .threading.flat()
    .join('');

describe('closing a repeat', () => {
  test('groups whose outer shaft alternates take two rounds where their number is odd', () => {
    expect(shaftsOf('huck with M’s and O’s', 'Y')).toBe('4343412121');
    expect(shaftsOf('huck with M’s and O’s', 'YXY')).toBe('434341313143434121214242412121');
    expect(shaftsOf('huck with M’s and O’s', 'YX')).toBe('4343413131');
  });

  test('tabby takes turns across blocks, so an odd number of pattern picks takes two rounds', () => {
    const { weave, treadles } = drawn(findStructure('overshot'), [...'ABCD'], { treadled: [...'AAB'] });
    const names = weave.treadling.map(([treadle]) => treadles[treadle! - 1]);
    expect(names.join(' ')).toBe('PA a PA b PB a PA b PA a PB b');
    expect(weave.pickKinds.slice(0, 2)).toEqual(['pattern', 'tabby']);
    expect(weave.pickUnits).toEqual([2, 2, 2, 2, 2, 2]);
  });

  test('what the seam needs is laid at the end, in the unit that it follows', () => {
    const { weave, ends } = drawn(findStructure('swedish lace'), [...'AA']);
    expect(weave.threading.flat().join('')).toBe('121214121214');
    expect(weave.endUnits).toEqual([6, 6]);
    expect(ends.map((end) => (end.incidental ? 'i' : '-')).join('')).toBe('-----i-----i');
  });

  test('of several starts the one that closes soonest is taken', () => {
    // Steps of 3-2-1-2-3-4-3-4: only from shaft 4 do they need no shaft between.
    expect(shaftsOf('overshot', 'CBAABCCC')).toBe('32123434');
  });

  test('a list of alternatives chooses for each place of the profile', () => {
    const lay = (alternative: number | number[]): string =>
      weaveOf(findStructure('crackle'), [...'ACAC'], { alternative })
        .threading.flat()
        .join(' ');
    const [plainA, plainC] = ['1 2 3 2', '3 4 1 4'];
    expect(lay(0)).toBe(`${plainA} 1 2 ${plainC} 3 4 ${plainA} 1 2 ${plainC} 3 4`);
    expect(lay(1)).toBe(`${plainA} 1 4 ${plainC} 3 2 ${plainA} 1 4 ${plainC} 3 2`);
    // The place before the first element is the seam.
    expect(lay([1, 0, 0, 1])).toBe(`${plainA} 1 2 ${plainC} 3 4 ${plainA} 1 4 ${plainC} 3 2`);
  });

  test('the threading is the same ring wherever the profile begins, and so are its floats', () => {
    for (const structure of structures) {
      // Groups of huck alternate, so its profiles are taken by pairs.
      const pairs = structure.name.startsWith('huck');
      const elements = !pairs ? structure.blocks : structure.blocks[0] === 'A' ? ['AB'] : ['XX', 'XY', 'YX', 'YY'];
      fc.assert(
        fc.property(fc.array(fc.constantFrom(...elements), { minLength: 1, maxLength: 7 }), fc.nat(6), (pieces, by) => {
          const profile = [...pieces.join('')];
          const from = (pairs ? 2 * by : by) % profile.length;
          const turned = [...profile.slice(from), ...profile.slice(0, from)];
          const [here, there] = [weaveOf(structure, profile), weaveOf(structure, turned)];
          expect(there.threading).toHaveLength(here.threading.length);
          // Overshot on opposites passes through B or through D, by where it begins.
          if (structure.name !== 'overshot') expect(necklace(there.threading)).toBe(necklace(here.threading));
          const [was, is] = [floats(here), floats(there)];
          expect([is.weftFace, is.weftBack]).toEqual([was.weftFace, was.weftBack]);
          // Begun an odd number of pattern picks later, the other tabby goes with each of them.
          if (!here.pickKinds.includes('tabby')) expect(is).toEqual(was);
        }),
        { numRuns: runs(25) },
      );
    }
  });

  test('two rounds weave what one weaves: the seam is a join like any other', () => {
    for (const structure of structures) {
      const twice = [...structure.profile, ...structure.profile];
      expect(floats(weaveOf(structure, twice)), structure.name).toEqual(floats(weaveOf(structure, structure.profile)));
    }
  });
});

/** The smallest of a threading's rotations: equal for two that are one ring. */
const necklace = (threading: Weave['threading']): string =>
  threading.map((_, i) => [...threading.slice(i), ...threading.slice(0, i)].join('-')).sort()[0]!;

const floats = (weave: ReturnType<typeof weaveOf>) =>
  floatsOf(drawdown(weave), { ends: 10, picks: 10, per: 'cm' as const });

describe('a block that may not stand there', () => {
  test('inside the profile: which, where, why, and what would mend it', () => {
    expect(() => shaftsOf('huck', 'ABBA')).toThrow(
      'profile A B B A: block B cannot follow block B at elements 2 and 3: two ends on shaft 4 would lie side by side; put A between them',
    );
  });
  test('at the seam', () => {
    expect(() => shaftsOf('huck', 'ABA')).toThrow(
      'block A cannot follow block A at the seam, where the profile begins again: two ends on shaft 1 would lie side by side; put B between them',
    );
  });
  test('in the treadling', () => {
    expect(() => weaveOf(findStructure('huck'), ['A', 'B'], { treadled: ['A'] })).toThrow(
      'two picks of tabby a would follow',
    );
  });
  test('where nothing would mend it, nothing is offered', () => {
    const alone: Units<number> = { blocks: { A: { lay: [1], after: { 1: { never: 'shaft 1 twice' } } } } };
    expect(() => layClosed(alone, ['A'])).toThrow(/shaft 1 twice$/);
  });
});

describe('what cannot be woven is refused', () => {
  test('an unknown block, an empty profile, an unknown manner, no treadled block', () => {
    expect(() => weaveOf(findStructure('turned taqueté'), ['A', 'C'])).toThrow(
      'turned taqueté has no block C; its blocks are A, B',
    );
    expect(() => weaveOf(findStructure('crackle'), ['A', 'C'], { treadled: ['A+C'] })).toThrow(
      'crackle cannot weave A+C together: they share their shafts, and every shed shows two of them as it is; its blocks are A, B, C, D',
    );
    expect(() => weaveOf(findStructure('turned twill'), ['A', '.'])).toThrow(
      'turned twill has no unit of no block (“.”) in the threading',
    );
    expect(() => weaveOf(findStructure('turned twill'), ['A+B'])).toThrow('turned twill has no end of both A and B');
    expect(() => weaveOf(findStructure('monks belt'), [])).toThrow('the profile is empty');
    expect(() => weaveOf(findStructure('overshot'), ['A'], { manner: 'roses' })).toThrow('did you mean “rose”');
    expect(() => weaveOf(findStructure('overshot'), ['B'], { manner: 'on opposites' })).toThrow(
      'no block of B is treadled',
    );
  });
  test('weaves of any number of blocks grow with the profile', () => {
    const { tieUp, threading } = weaveOf(findStructure('summer & winter'), [...'ABCDE'], { treadled: ['E'] });
    expect(threading.slice(-4)).toEqual([[1], [7], [2], [7]]);
    expect(tieUp).toEqual([
      [1, 2],
      [3, 4, 5, 6, 7],
      [1, 3, 4, 5, 6],
      [2, 3, 4, 5, 6],
    ]);
    expect(() => weaveOf(findStructure('bronson lace'), ['1'])).toThrow('has no block 1');
  });
});
