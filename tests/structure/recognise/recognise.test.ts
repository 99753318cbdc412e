import fc from 'fast-check';
import seedrandom from 'seedrandom';
import { describe, expect, it } from 'vitest';
import { drawdown, isUp } from '../../../src/cloth/drawdown.js';
import type { Draft, Weave } from '../../../src/draft/draft.js';
import { Problem } from '../../../src/problem.js';
import {
  drawn,
  findStructure,
  type Structure,
  structures,
  weaveOf,
} from '../../../src/structure/catalogue/catalogue.js';
import { runLengths } from '../../../src/structure/recognise/block-runs.js';
import { recognise, understood } from '../../../src/structure/recognise/recognise.js';
import { bareWeave } from '../../bare.js';
import { runs } from '../../long.js';

const turn = <T>(list: readonly T[], by: number): T[] => [...list.slice(by), ...list.slice(0, by)];

/** Begun at another end and pick, with other numbers of shafts and treadles: the same cloth. */
function disguised(weave: Weave, end: number, pick: number, shaftOf: (shaft: number) => number): Weave {
  const at = (number: number, size: number): number => number % size;
  return {
    ...weave,
    threading: turn(weave.threading, at(end, weave.threading.length)).map((on) => on.map(shaftOf)),
    tieUp: [...weave.tieUp].reverse().map((shafts) => shafts.map(shaftOf)),
    treadling: turn(weave.treadling, at(pick, weave.treadling.length)).map((on) =>
      on.map((treadle) => weave.tieUp.length + 1 - treadle),
    ),
  };
}

const woven = fc
  .constantFrom(...structures.flatMap((s) => s.manners.map((manner) => ({ s, manner: manner.name }))))
  .chain(({ s, manner }) =>
    fc.record({
      structure: fc.constant(s),
      manner: fc.constant(manner),
      profile: fc.array(fc.constantFrom(...s.blocks), { minLength: 1, maxLength: 9 }),
    }),
  )
  // Some blocks cannot stand side by side (huck); every weave that is tried can be woven.
  .filter(({ structure, manner, profile }) => {
    try {
      return weaveOf(structure, profile, { manner }).threading.length > 0;
    } catch (error) {
      if (error instanceof Problem) return false;
      throw error;
    }
  });

describe('every structure, in every manner, from bare numbers', () => {
  it.each(structures.flatMap((s) => s.manners.map((manner) => [s.name, manner.name] as const)))(
    '%s, %s',
    (name, manner) => {
      const structure = findStructure(name);
      const { weave, ends, picks } = drawn(structure, structure.profile, { manner });
      const found = recognise(bareWeave(weave));
      expect([found.structure!.name, ...found.others]).toContain(name);
      expect(found.manner).toBeDefined();
      expect(found.ends).toMatchObject({ from: 0, units: weave.endUnits });
      expect(found.ends.blocks!.length).toBe(1 + ends.at(-1)!.unit);
      expect(found.pickKinds).toEqual(weave.pickKinds);
      expect(found.picks.units.reduce((a, b) => a + b, 0)).toBe(picks.length);
      // Huck and huck lace are one threading and one set of treadlings under two names.
      expect(found.confidence).toBe(/^huck( lace)?$/.test(name) ? 'likely' : 'certain');
    },
  );
});

describe('in disguise', () => {
  it('some structure accounts for every pick, however shafts are numbered and wherever the draft begins', () => {
    fc.assert(
      fc.property(woven, fc.nat(40), fc.nat(40), fc.boolean(), ({ structure, manner, profile }, end, pick, mirror) => {
        const weave = weaveOf(structure, profile, { manner });
        const shafts = structure.shafts;
        const found = recognise(disguised(bareWeave(weave), end, pick, (s) => (mirror ? shafts + 1 - s : s)));
        expect(found.structure).toBeDefined();
        // Few blocks on renumbered shafts may be another structure's threading and sheds too (a rosepath, a point twill):
        // that one is named, as likely, and its units are evidence.
        if (found.manner === undefined) {
          expect(['likely', 'possible']).toContain(found.confidence);
          expect(mirror || structure.name === 'overshot').toBe(true);
        }
        expect(found.ends.units.reduce((a, b) => a + b, 0)).toBe(weave.threading.length);
      }),
      { numRuns: runs(150) },
    );
  });

  it('crackle keeps its units and blocks', () => {
    const structure = findStructure('crackle');
    const weave = weaveOf(structure, [...'AABDDC']);
    const found = recognise(disguised(bareWeave(weave), 7, 3, (s) => ({ 1: 3, 2: 1, 3: 4, 4: 2 })[s]!));
    expect(found.structure!.name).toBe('crackle');
    expect(found.renumbered).toBeDefined();
    expect([...found.ends.units].sort()).toEqual([...weave.endUnits].sort());
  });

  it('summer and winter on many shafts, with its ties at the back', () => {
    const blocks = Array.from({ length: 120 }, (_, unit) => (unit * 7 + (unit % 5)) % 22);
    const threading = blocks.flatMap((block) => [[23], [block + 1], [24], [block + 1]]);
    const found = recognise({ ...bareWeave(weaveOf(findStructure('plain'), ['A'])), threading });
    expect(found.structure!.name).toBe('summer and winter');
    expect(found.renumbered!.get(1)! + found.renumbered!.get(2)!).toBe(47);
    expect(found.ends.units).toEqual(new Array(120).fill(4));
    const letters = new Map<number, string>();
    blocks.forEach((block, unit) => {
      const letter = letters.get(block) ?? found.ends.blocks![unit]!;
      letters.set(block, letter);
      expect(found.ends.blocks![unit]).toBe(letter);
    });
    expect(new Set(letters.values()).size).toBe(new Set(blocks).size);
  });

  it('summer and winter in an order of sheds of its own, which renumbered would be crackle', () => {
    const threading = [...'132314241323'].map((shaft) => [Number(shaft)]);
    const tieUp = [
      [1, 2],
      [3, 4],
      [1, 4],
      [2, 4],
      [1, 3],
      [2, 3],
    ];
    const treadling = [...'313241425152616231324142'].map((treadle) => [Number(treadle)]);
    const found = recognise({ ...bareWeave(weaveOf(findStructure('plain'), ['A'])), threading, tieUp, treadling });
    expect([found.structure!.name, found.confidence, found.renumbered]).toEqual([
      'summer and winter',
      'likely',
      undefined,
    ]);
    expect(found.ends.blocks).toEqual(['A', 'B', 'A']);
    expect(found.pickKinds!.slice(0, 4)).toEqual(['pattern', 'tabby', 'pattern', 'tabby']);
    expect([found.picks.from, found.picks.units]).toEqual([0, new Array(12).fill(2)]);
    const other = [...'345612'].map((treadle) => [Number(treadle)]);
    const untied = { ...bareWeave(weaveOf(findStructure('plain'), ['A'])), threading, tieUp, treadling: other };
    expect(recognise(untied).pickKinds).toBeUndefined();
  });

  it('summer and winter has a letter for each of 26 blocks, and no more', () => {
    const on = (blocks: number): Weave => ({
      ...bareWeave(weaveOf(findStructure('plain'), ['A'])),
      threading: Array.from({ length: blocks }, (_, block) => [[1], [block + 3], [2], [block + 3]]).flat(),
    });
    expect(recognise(on(26)).structure!.name).toBe('summer and winter');
    expect(recognise(on(26)).ends.blocks!.join('')).toBe('ABCDEFGHIJKLMNOPQRSTUVWXYZ');
    expect(recognise(on(27)).structure).toBeUndefined();
  });

  it('where the first unit begins is said, if it is not the first end', () => {
    const weave = bareWeave(weaveOf(findStructure('turned twill'), ['A', 'B']));
    expect(recognise(weave).words[1]).toMatch(/^2 units of 4; blocks A B; 2 units of picks of 4\.$/);
    const later = recognise(disguised(weave, 3, 0, (s) => s));
    expect(later.ends.from).toBe(1);
    expect(later.words[1]).toMatch(/^2 units of 4, the first beginning at end 2; blocks B A; /);
  });

  it('a cloth woven face down says so', () => {
    const turnedOver = (name: string, profile: string): Weave => {
      const weave = bareWeave(weaveOf(findStructure(name), [...profile]));
      const all = [1, 2, 3, 4];
      return { ...weave, tieUp: weave.tieUp.map((up) => all.filter((shaft) => !up.includes(shaft))) };
    };
    // Overshot has the same sheds on both faces.
    const overshot = recognise(turnedOver('overshot', 'AAABBBCCCDDD'));
    expect([overshot.structure!.name, overshot.confidence, overshot.turned]).toEqual(['overshot', 'certain', false]);
    const bronson = recognise(turnedOver('spot Bronson', 'AABB'));
    expect([bronson.structure!.name, bronson.confidence, bronson.turned]).toEqual(['spot Bronson', 'certain', true]);
    expect(bronson.words[0]).toMatch(/^It is spot Bronson, “as drawn in”, woven face down \(certain\)/);
  });
});

/**
 * Structures that share drafts: nothing in the numbers tells them apart, and either name is right. One block of a twill
 * broken at its blocks is a straight draw; how long the runs are between breaks is what broken twill and herringbone
 * differ in; a mostly-weft twill face down is mostly warp; one block of a turned twill is that twill; huck and lace share
 * their groups; ties that stay on one shaft make summer and winter of a half dräll; and renumbered, two blocks of summer
 * and winter without tabby are a rosepath.
 */
const ALIKE = [
  /^(1.3|3.1|2.2) (broken twill|herringbone|twill)$|^turned twill/,
  /^(2.1|1.2) twill$/,
  /^(1.3|3.1) point twill$/,
  /^(1.3|3.1) rosepath$/,
  /^(1.3|3.1) rosepath on ten ends$/,
  /^(1.3|3.1) undulating twill$/,
  /^huck|^Swedish lace$/,
  /^halvdräll with even ties$|^summer and winter$/,
  /^summer and winter$|^2.2 rosepath$/,
];

/** How the picks may follow one another, as weavers write them. */
const TREADLED = {
  'in a manner': (weave: Weave) => weave,
  'three pattern picks a block, with tabby': (_: Weave, s: Structure, profile: readonly string[]) =>
    patternPicks(s, profile, 3, true),
  'five pattern picks a block, with tabby': (_: Weave, s: Structure, profile: readonly string[]) =>
    patternPicks(s, profile, 5, true),
  'pattern picks alone': (_: Weave, s: Structure, profile: readonly string[]) => patternPicks(s, profile, 4, false),
};

/** A weave with so many pattern picks for each block; undefined for a structure without. */
function patternPicks(s: Structure, profile: readonly string[], count: number, tabby: boolean): Weave | undefined {
  const [manner] = s.manners;
  if (manner!.kinds === undefined) return undefined;
  const pattern = profile.flatMap((block) => {
    const own = manner!.blocks[block]!.lay.filter((_, at) => manner!.kinds![at % manner!.kinds!.length] === 'pattern');
    return Array.from({ length: count }, (_, at) => own[at % own.length]!);
  });
  const even = pattern.length % 2 === 0 ? pattern : [...pattern, ...pattern];
  const names = tabby ? even.flatMap((name, at) => [name, s.tabby![at % 2]!]) : pattern;
  const treadles = Object.keys(s.tieUp);
  return {
    ...weaveOf(s, profile),
    tieUp: Object.values(s.tieUp),
    treadling: names.map((name) => [treadles.indexOf(name) + 1]),
  };
}

describe('the share of drafts that are named rightly', () => {
  const random = seedrandom('shares');
  const below = (most: number): number => Math.floor(random() * most);
  const shuffled = (most: number): number[] =>
    Array.from({ length: most }, (_, at) => ({ shaft: at + 1, key: random() }))
      .sort((a, b) => a.key - b.key)
      .map(({ shaft }) => shaft);

  /** Profiles of at least two blocks, where there are; of overshot all four blocks, in several steps each. */
  const profilesOf = (s: Structure): (readonly string[])[] => {
    const some = Array.from({ length: runs(2, 20) }, () =>
      Array.from({ length: 2 + below(7) }, () => s.blocks[below(s.blocks.length)]!).flatMap((block) =>
        new Array<string>(s.name === 'overshot' ? 2 + below(4) : 1).fill(block),
      ),
    );
    return [
      s.profile,
      ...some.filter((profile) => new Set(profile).size >= (s.name === 'overshot' ? 4 : Math.min(s.blocks.length, 2))),
    ];
  };

  it.each(Object.entries(TREADLED))('%s', (how, treadled) => {
    const wrong: string[] = [];
    let named = 0;
    for (const s of structures) {
      for (const profile of profilesOf(s)) {
        for (const { name } of how === 'in a manner' ? s.manners : s.manners.slice(0, 1)) {
          const weave = treadled(orRefused(() => weaveOf(s, profile, { manner: name })) ?? NONE, s, profile);
          if (weave === undefined || weave.threading.length === 0) continue;
          for (const numbers of [shuffled(s.shafts), Array.from({ length: s.shafts }, (_, at) => at + 1)]) {
            const shown = disguised(bareWeave(weave), below(40), below(40), (shaft) => numbers[shaft - 1]!);
            const found = recognise(shown);
            const names = [found.structure?.name ?? 'none', ...found.others];
            named++;
            // A variant without joins of its own is the structure that it varies; with shafts renumbered, up may be down.
            const varied = s.variantOf === undefined ? undefined : weaveOf(findStructure(s.variantOf), profile);
            const isBoth = varied?.threading.join() === weave.threading.join() || numbers.some((n, at) => n !== at + 1);
            if (isBoth && (found.structure?.variantOf ?? names[0]) === (s.variantOf ?? s.name)) continue;
            if (names.includes(s.name) || ALIKE.some((kin) => kin.test(s.name) && kin.test(names[0]!))) continue;
            wrong.push(`${s.name}, ${name}, ${profile.join('')}, shafts ${numbers.join('')}: ${names.join(', ')}`);
          }
        }
      }
    }
    console.log(`${how}: ${named - wrong.length} of ${named} drafts named rightly`);
    expect(wrong).toEqual([]);
  });

  const NONE = { ...bareWeave(weaveOf(findStructure('plain'), ['A'])), threading: [] };
  function orRefused<T>(make: () => T): T | undefined {
    try {
      return make();
    } catch (error) {
      if (error instanceof Problem) return undefined;
      throw error;
    }
  }
});

describe('look-alikes', () => {
  const monks = [...'12123434'].map((shaft) => [Number(shaft)]);
  const on = (sheds: readonly string[]): Weave => {
    const different = [...new Set(sheds)];
    return bareWeave({
      threading: monks,
      tieUp: different.map((shed) => [...shed].map(Number)),
      treadling: sheds.map((shed) => [different.indexOf(shed) + 1]),
    });
  };

  it.each([3, 5])('monk’s belt with %i pattern picks a block is no M’s and O’s, which is threaded alike', (count) => {
    const block = (shed: string, odd: number): string[] =>
      Array.from({ length: count }, (_, at) => [shed, (at + odd) % 2 === 0 ? '13' : '24']).flat();
    const found = recognise(on([...block('34', 0), ...block('12', 1)]));
    expect([found.structure!.name, found.confidence]).toEqual(['monk’s belt', 'likely']);
    expect(found.ends.units).toEqual([2, 2, 2, 2]);
    expect(found.pickKinds!.slice(0, 2)).toEqual(['pattern', 'tabby']);
  });

  it('M’s and O’s on that threading is M’s and O’s, by the order of the same four sheds', () => {
    const found = recognise(on([...new Array(4).fill(['13', '24']), ...new Array(4).fill(['12', '34'])].flat()));
    expect([found.structure!.name, found.ends.units]).toEqual(['M’s and O’s', [8]]);
  });

  it('pattern picks alone are understood, and what they leave out is said', () => {
    const found = recognise(on(['34', '34', '34', '12', '12', '12']));
    expect([found.structure!.name, found.pickKinds]).toEqual(['monk’s belt', new Array(6).fill('pattern')]);
    expect(found.words.join(' ')).toContain('leaves out the plain-weave picks between its pattern picks');
  });

  it('sheds of the structure are not called others’ because another structure fits as well', () => {
    const found = recognise(
      bareWeave({ ...on(['14', '24', '13', '23', '14', '23']), threading: [...'13231424'].map((s) => [Number(s)]) }),
    );
    expect(found.words[0]).not.toContain('others than that structure has');
  });
});

describe('what is not a known structure', () => {
  const threadingOf = (text: string): Weave['threading'] => [...text].map((digit) => [Number(digit)]);
  const plain = { tieUp: [[1], [2, 3]], treadling: [[1], [2]] };

  it('has its straight runs for units', () => {
    expect(runLengths([1, 2, 3, 4, 4, 3, 2, 1])).toEqual([0, [4, 4]]);
    expect(runLengths([3, 5, 1, 2, 4, 5, 1, 2])).toEqual([1, [3, 5]]);
    expect(runLengths([1, 2, 3, 4, 5, 6])).toEqual([0, [6]]);
    expect(runLengths([1, 2, 1, 2])).toEqual([0, [1, 1, 1, 1]]);
    const found = recognise(
      bareWeave({ ...bareOf(plain), threading: threadingOf('12345678345678125678123478123456') }),
    );
    expect([found.structure, found.confidence]).toEqual([undefined, 'possible']);
    expect(found.ends.units.reduce((a, b) => a + b, 0)).toBe(32);
  });

  it('has the units of its ends for picks where these follow the ends, whatever the treadles are called', () => {
    const threading = threadingOf('1234432143214321');
    const called = (on: readonly number[]): number[] => [[3, 1, 4, 2][on[0]! - 1]!];
    const tieUp = [
      [2, 3],
      [4, 1],
      [1, 2],
      [3, 4],
    ];
    const found = recognise(bareWeave({ threading, tieUp, treadling: threading.map(called) }));
    expect([found.structure, found.ends]).toEqual([undefined, { from: 0, units: [4, 4, 4, 4] }]);
    expect(found.picks).toEqual(found.ends);
  });

  it('takes a draw of straight and pointed runs for no overshot where it is treadled as a twill', () => {
    const threading = threadingOf('1234123412341234123432123432');
    const found = recognise({ ...bareWeave(weaveOf(findStructure('2/2 twill'), ['A'])), threading });
    expect([found.structure, found.confidence]).toEqual([undefined, 'possible']);
    expect(found.ends.units).toEqual([4, 4, 4, 4, 3, 3, 3, 3]);
  });

  it('keeps a threading apart from sheds that are another’s', () => {
    const found = recognise(
      bareWeave({ ...bareOf({ tieUp: [[1, 2, 3], [4]], treadling: [[1], [2]] }), threading: threadingOf('12341432') }),
    );
    expect(found.structure!.name).toMatch(/rosepath/);
    expect(found.manner).toBeUndefined();
    expect(found.confidence).toBe('possible');
  });

  it('an end on two shafts has no structure here', () => {
    const found = recognise(bareWeave({ ...bareOf(plain), threading: [[1, 2], [3]] }));
    expect(found.structure).toBeUndefined();
  });

  it('too long a repeat is refused', () => {
    const long = { ...bareOf(plain), threading: Array.from({ length: 2001 }, (_, i) => [(i % 3) + 1]) };
    expect(() => recognise(bareWeave(long))).toThrow('expected 2000 at most');
  });

  function bareOf(part: Pick<Weave, 'tieUp' | 'treadling'>): Weave {
    return bareWeave({ ...part, threading: [[1]] });
  }
});

describe('plain weave, repeat, as drawn in', () => {
  // STRUCTURES, facts that hold everywhere, 1: computed sheds of the table.
  it.each([
    ['overshot', '1 3|2 4'],
    ['summer and winter', '1 2|3 4'],
    ['spot Bronson', '1|2 3 4'],
    ['M’s and O’s', undefined],
  ])('%s has tabby %s', (name, sheds) => {
    const found = recognise(bareWeave(weaveOf(findStructure(name), findStructure(name).profile)));
    expect(
      found.tabby
        ?.map((lift) => lift.join(' '))
        .sort()
        .join('|'),
    ).toBe(sheds);
  });

  it('says what the weave repeats after, whatever is written out', () => {
    const weave = weaveOf(findStructure('2/2 twill'), ['A', 'A', 'A']);
    expect(recognise(bareWeave(weave)).repeat).toEqual({ ends: 4, picks: 4 });
  });

  it.each([
    ['2/2 point twill', 'as drawn in', 'thread'],
    ['plain weave', 'as drawn in', 'thread'],
    ['overshot', 'as drawn in', 'unit'],
    ['summer and winter', 'singles', 'unit'],
    ['2/2 rosepath', 'straight', 'no'],
  ])('%s, %s: %s', (name, manner, expected) => {
    const structure = findStructure(name);
    expect(recognise(bareWeave(weaveOf(structure, structure.profile, { manner }))).asDrawnIn).toBe(expected);
  });

  it('is said in words', () => {
    const { words } = recognise(bareWeave(weaveOf(findStructure('crackle'), [...'AABBCCDD'])));
    expect(words[0]).toBe('It is crackle, “overshot manner” (certain): threading, sheds and their order fit.');
    expect(words[1]).toContain('blocks 2A 2B 2C 2D');
    expect(words.join(' ')).toContain('Plain weave: shafts 1 3 against 2 4.');
  });
});

describe('a draft understood', () => {
  const winter = weaveOf(findStructure('summer and winter'), [...'AABAB']);
  const bare: Draft = {
    ...bareWeave(winter),
    yarns: [{ letter: 'D', name: 'D', hex: '#000000' }],
    warp: winter.threading.map(() => 0),
    weft: winter.treadling.map(() => 0),
    sett: { ends: 20, picks: 20, per: 'inch' },
  };

  it('has kinds of picks and widths of its structure, unless it states its own', () => {
    const found = recognise(bare);
    const after = understood(bare, found);
    expect(after.pickKinds).toEqual(winter.pickKinds);
    expect(after.widths).toEqual(winter.widths);
    const widths = { warp: 1, ground: 1, pattern: 3, tabby: 1 };
    const stated = { ...bare, pickKinds: winter.pickKinds, widths };
    expect(understood(stated, recognise(stated))).toMatchObject({ pickKinds: winter.pickKinds, widths });
    const unknown = { ...bare, widths, threading: [[1, 2], [3]], tieUp: [[1], [2, 3]], treadling: [[1], [2]] };
    const own = { ...unknown, warp: [0, 0], weft: [0, 0], pickKinds: ['ground' as const, 'ground' as const] };
    expect(recognise(own).pickKinds).toBeUndefined();
    expect(understood(own, recognise(own)).widths).toEqual(widths);
  });

  it('is the same cloth begun elsewhere, with units', () => {
    fc.assert(
      fc.property(woven, fc.nat(40), fc.nat(40), ({ structure, manner, profile }, end, pick) => {
        const weave = disguised(bareWeave(weaveOf(structure, profile, { manner })), end, pick, (s) => s);
        const draft: Draft = {
          ...weave,
          yarns: [
            { letter: 'D', name: 'D', hex: '#000000' },
            { letter: 'L', name: 'L', hex: '#ffffff' },
          ],
          warp: weave.threading.map((_, i) => i % 2),
          weft: weave.treadling.map(() => 1),
          sett: { ends: 20, picks: 20, per: 'inch' },
        };
        const found = recognise(draft);
        const after = understood(draft, found);
        const [before, now] = [drawdown(draft), drawdown(after)];
        for (let j = 0; j < now.picks; j++) {
          for (let i = 0; i < now.ends; i++) {
            const there = [(j + found.picks.from) % now.picks, (i + found.ends.from) % now.ends] as const;
            expect(isUp(now, j, i)).toBe(isUp(before, ...there));
          }
        }
        expect(after.warp[0]).toBe(draft.warp[found.ends.from]);
        expect(after.endUnits.reduce((a, b) => a + b, 0)).toBe(now.ends);
        expect(after.pickUnits.reduce((a, b) => a + b, 0)).toBe(now.picks);
      }),
      { numRuns: runs(60) },
    );
  });
});

it('answers for the longest threadings, whatever is on them', () => {
  const scattered = (shafts: number): number[][] => {
    let state = 12345;
    return Array.from({ length: 2000 }, () => {
      state = (state * 1103515245 + 12345) % 2147483648;
      return [(state % shafts) + 1];
    });
  };
  const walk = Array.from({ length: 1998 }, (_, i) => [[1, 2, 3, 4, 3, 2, 1, 4, 3][i % 9]!]);
  walk[1000] = [2];
  for (const threading of [scattered(4), scattered(8), scattered(28), scattered(256), walk]) {
    const { ends } = recognise(bareWeave({ ...weaveOf(findStructure('plain'), ['A']), threading }));
    expect(ends.units.reduce((a, b) => a + b, 0)).toBe(threading.length);
  }
});
