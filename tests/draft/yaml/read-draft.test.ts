import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawdown, isUp } from '../../../src/cloth/drawdown.js';
import type { Draft } from '../../../src/draft/draft.js';
import { readDraft, writeDraft } from '../../../src/draft/yaml/read-draft.js';
import { wholeRepeat } from '../../../src/order/lay.js';
import { Problem } from '../../../src/problem.js';
import { runs } from '../../long.js';

const TWILL = 'threading: 1 2 3 4\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 1 2 3 4\n';

const picture = (draft: Draft): string[] => {
  const cloth = drawdown(draft);
  return Array.from({ length: cloth.picks }, (_, j) =>
    Array.from({ length: cloth.ends }, (_, i) => (isUp(cloth, j, i) ? '#' : '.')).join(''),
  );
};

const wrong = (text: string): string => {
  try {
    readDraft(text, 'a.yaml');
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
    return (error as Problem).message;
  }
  return 'nothing was wrong';
};

describe('a draft that a person wrote', () => {
  it('is brought to one whole repeat of weave and colours', () => {
    const draft = readDraft(`${TWILL}warp: D L D D L\nweft: DL\nunits: 4\nsett: 24/20\n`, 'a.yaml');
    expect([draft.warp.length, draft.weft.length]).toEqual([20, 4]);
    expect(draft.endUnits).toEqual([4, 4, 4, 4, 4]);
    expect(draft.pickUnits).toEqual([1, 1, 1, 1]);
    expect(draft.sett).toEqual({ ends: 24, picks: 20, per: 'inch' });
  });

  it('has a dark warp, a light weft and 20 threads an inch where nothing is said', () => {
    const draft = readDraft(TWILL, 'a.yaml');
    expect(draft.yarns.map((yarn) => `${yarn.letter} ${yarn.hex}`)).toEqual(['D #1f2a44', 'L #efe6d2']);
    expect([draft.warp, draft.weft]).toEqual([
      [0, 0, 0, 0],
      [1, 1, 1, 1],
    ]);
    expect(draft.sett).toEqual({ ends: 20, picks: 20, per: 'inch' });
  });

  // STRUCTURES section 4: the 2/2 point twill with its drawdown.
  it('weaves the 2/2 point twill of the handbooks', () => {
    const draft = readDraft('threading: 1-2-3-4-3-2\ntie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4, 3, 2\n', 'a.yaml');
    expect(picture(draft)).toEqual(['##...#', '.##.##', '..###.', '#..#..', '..###.', '.##.##']);
  });

  it('takes shafts that are run together for a slip, where they are threaded one by one and not together', () => {
    const draft = (ties: string, threading = '1-4') => `threading: ${threading}\ntie-up: [${ties}]\ntreadling: 1-4\n`;
    expect(wrong(draft('12, 23, 34, 41'))).toBe(
      'a.yaml:2:10: found shaft 12, which no end is on; expected shafts that are threaded (did you mean 1 2?)',
    );
    expect(wrong(draft('1 2, 2 3, 3 4, 124'))).toContain('found shaft 124');
    expect(wrong(draft('1 2, 2 3, 3 4, 41'))).toMatch(/^a\.yaml:2:25: found shaft 41, .*did you mean 4 1\?\)$/);
    expect(wrong('threading: 1-4\nsinking: true\nlift plan: [12, 23, 34, 41]\n')).toContain(
      'a.yaml:3:13: found shaft 12',
    );
    expect(wrong(draft('12, 2 3, 3 4, 4 1', '1-12'))).toBe('nothing was wrong');
    expect(wrong(draft('1 2, 15, 3 4, 4 1'))).toBe('nothing was wrong');
    expect(wrong(draft('1 2 12, 2 3, 3 4, 4 1'))).toBe('nothing was wrong');
  });

  it('weaves the same from a tie-up, its sinking twin, a lift plan and two feet', () => {
    const raised = readDraft(TWILL, 'a.yaml');
    for (const other of [
      'threading: 1-4\nsinking: true\ntie-up: [3 4, 4 1, 1 2, 2 3]\ntreadling: [1, 2, 3, 4]\n',
      'threading: [1, 2, 3, 4]\nlift plan: [1 2, [2, 3], 3-4, 4 1]\n',
      'threading: [1-2, 3 4]\ntie-up: [1, 2, 3, 4]\ntreadling: [[1, 2], 2+3, 3+4, [4, 1]]\n',
      'threading: |\n  1 2\n  3 4\ntie-up:\n  - 1 2\n  - 2 3\n  - [3, 4]\n  - 4, 1\ntreadling: >\n  1 2\n  3 4\n',
    ]) {
      expect(picture(readDraft(other, 'a.yaml'))).toEqual(picture(raised));
    }
  });

  it('lets a treadle raise nothing', () => {
    expect(readDraft('threading: 1\ntie-up: [1, 0, []]\ntreadling: 1-3', 'a').tieUp).toEqual([[1], [], []]);
    const idle = readDraft('threading: 1 0 2\ntie-up: [1, 2]\ntreadling: 1 0 2', 'a');
    expect([idle.threading, idle.treadling]).toEqual([
      [[1], [], [2]],
      [[1], [], [2]],
    ]);
  });

  it('numbers each different lift of a lift plan once', () => {
    const draft = readDraft('threading: 1 2\nlift plan: [1, 2, 1, 1]\n', 'a');
    expect(draft.tieUp).toEqual([[1], [2]]);
    expect(draft.treadling).toEqual([[1], [2], [1], [1]]);
  });

  it('takes yarns with name and size, kinds of pick and thicker wefts', () => {
    const draft = readDraft(
      `${TWILL}name: Tide line\nnotes: any words\nyarns:\n  A: navy\n  B: { colour: "#fff", name: chalk, tex: 74 }\npick kinds: pattern tabby\nwidths: { pattern: 2 }\n`,
      'a.yaml',
    );
    expect(draft.name).toBe('Tide line');
    expect(draft.yarns).toEqual([
      { letter: 'A', name: 'A', hex: '#000080' },
      { letter: 'B', name: 'chalk', hex: '#ffffff', tex: 74 },
    ]);
    expect(draft.pickKinds).toEqual(['pattern', 'tabby', 'pattern', 'tabby']);
    expect(draft.widths).toEqual({ warp: 1, ground: 1, pattern: 2, tabby: 1 });
  });
});

describe('what is wrong with a draft is said in one sentence', () => {
  it.each([
    ['', 'a.yaml: found nothing; expected keys with values, one a line'],
    ['just words', 'a.yaml:1:1: found “just words”; expected keys with values, one a line'],
    ['- 1\n- 2', 'a.yaml:1:1: found a list; expected keys with values, one a line'],
    ['threading:\n\t- 1', 'a.yaml:2:1: found a tab before a key; expected spaces'],
    ['threading: "1 2', 'a.yaml:1:16: found a quotation mark or bracket that is not closed; expected its partner'],
    ['threading: 1\nthreading: 2', 'a.yaml:2:1: found “threading” twice; expected it once'],
    ['threading: &x 1\nwarp: *x', 'a.yaml:2:7: found an alias (“*”); expected the value written out'],
    ['? [1]\n: 2', 'a.yaml:1:1: found a list as a key; expected a word'],
    ['threading: 1\n---\nthreading: 2', 'a.yaml:2:1: found a second part after ---; expected one list of keys'],
    [
      `${TWILL}warpp: D`,
      'a.yaml:4:1: found the unknown key “warpp”; expected a key; the nearest is “warp” (the reference lists all)',
    ],
    ['threading: 1 2\ntreadling: 1', 'a.yaml:1:1: found no “tie-up”; expected tie-up and treadling, or a lift plan'],
    ['tie-up: [1]', 'a.yaml:1:1: found no “threading”; expected it among the keys'],
    ['threading: 1 2 q 4', 'a.yaml:1:16: found “q”; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)'],
    ['threading: "1 2 70"', 'a.yaml:1:17: found shaft 70; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)'],
    ['threading: [1, 2, x]', 'a.yaml:1:19: found “x”; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)'],
    ['threading: [[1, 1]]', 'a.yaml:1:13: found 1 twice; expected each number once'],
    ['threading: 3000x1', 'a.yaml:1:17: found more than 2000 elements; expected 2000 at most'],
    ['threading:', 'a.yaml:1:1: found nothing; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)'],
    [
      'threading: {a: 1}',
      'a.yaml:1:12: found keys with values; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)',
    ],
    [
      'threading: 1\ntie-up: 1 2',
      'a.yaml:2:9: found “1 2”; expected a list of the shafts of each, as [1 2, 2 3, 3 4, 4 1]',
    ],
    [
      'threading: 1 2\ntie-up:\n  - 1\n  - 2 x\ntreadling: 1',
      'a.yaml:4:7: found “x”; expected shafts from 1 to 64, as 1 2 3, 1-4 or 4x(1 2)',
    ],
    [
      'threading: 1 2\ntie-up: [1, 2]\ntreadling: 1 3',
      'a.yaml:3:12: found treadle 3 at pick 2; expected 1 to 2, as many as the tie-up has',
    ],
    [
      'threading: 1\nlift plan: [1]\ntreadling: 1',
      'a.yaml:2:1: found a lift plan beside a tie-up or treadling; expected one or the other',
    ],
    [`${TWILL}warp: D L X`, 'a.yaml:4:11: found “X”; expected letters of yarns (D L), as D L, D4 L4 or (DL)4'],
    [`${TWILL}sinking: perhaps`, 'a.yaml:4:10: found “perhaps”; expected yes, no, true or false'],
    [
      `${TWILL}pick kinds: patern tabby`,
      'a.yaml:4:13: found “patern”; expected ground, pattern or tabby (did you mean “pattern”?)',
    ],
    [`${TWILL}units: 3`, 'a.yaml:4:8: found units of 3, together 3; expected them to fill 4 ends'],
    [
      'threading: 1 2 1 2\ntie-up: [1, 2]\ntreadling: 1 2\nunits: 4\n',
      'a.yaml:4:8: found units of 4; expected units that fill the 2 ends after which all comes again',
    ],
    [`${TWILL}units: 0`, 'a.yaml:4:8: found “0”; expected threads in a unit, from 1 to 2000'],
    [
      `${TWILL}warp: D1999 L`.replace('1 2 3 4\nt', '1 2 3\nt'),
      'a.yaml:4:7: found colours that come again after 2000 ends on a weave that does after 3, together 6000; expected 2000 at most',
    ],
    [`${TWILL}yarns: { d: red }`, 'a.yaml:4:10: found the yarn “d”; expected one capital letter (did you mean “D”?)'],
    [
      `${TWILL}yarns: { D: rde }`,
      'a.yaml:4:13: found “rde”, which is no colour; expected a colour in quotation marks, as "#1f2a44"',
    ],
    [
      `${TWILL}yarns:\n  D: #1f2a44`,
      'a.yaml:5:3: found nothing; expected a colour in quotation marks, as "#1f2a44" (without them, # begins a remark)',
    ],
    [
      `${TWILL}yarns: { D: #1f2a44 }`,
      'a.yaml:4:22: found #1f2a44 without quotation marks; expected "#1f2a44", since # begins a remark',
    ],
    [
      `${TWILL}yarns: { D: { color: red } }`,
      'a.yaml:4:15: found the unknown key “color”; expected colour, name or tex (did you mean “colour”?)',
    ],
    [
      `${TWILL}yarns: { D: { colour: red, tex: thick } }`,
      'a.yaml:4:33: found “thick”; expected grams per 1000 m from 0.1 to 100000',
    ],
    [`${TWILL}sett: { ends: 0 }`, 'a.yaml:4:15: found “0”; expected threads from 0.1 to 400'],
    [
      `${TWILL}sett: { ends: 20, per: inches }`,
      'a.yaml:4:24: found “inches”; expected inch or cm (did you mean “inch”?)',
    ],
    [
      `${TWILL}sett: twenty`,
      'a.yaml:4:7: found “twenty”; expected a sett such as 20, 20/18 per cm or { ends: 20, picks: 18, per: inch }',
    ],
    [
      `${TWILL}widths: { weft: 2 }`,
      'a.yaml:4:11: found the unknown key “weft”; expected warp, ground, pattern or tabby',
    ],
  ])('%j', (text, message) => expect(wrong(text)).toBe(message));
});

describe('a hostile text', () => {
  it('cannot reach the prototype of anything', () => {
    expect(wrong('threading: 1\n__proto__: { polluted: yes }')).toMatch(
      /^a\.yaml:2:1: found the unknown key “__proto__”/,
    );
    expect(wrong(`${TWILL}yarns: { __proto__: red }`)).toMatch(/^a\.yaml:4:10: found the yarn “__proto__”/);
    expect(wrong(`${TWILL}sett: { constructor: 1 }`)).toMatch(/^a\.yaml:4:9: found the unknown key “constructor”/);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  it.each([
    ['brackets', `a: ${'['.repeat(900_000)}`],
    ['braces', '{'.repeat(900_000)],
    ['list marks', '- '.repeat(400_000)],
    ['key marks', '? '.repeat(400_000)],
    ['aliases', `a: &a x\nb: [${'*a, '.repeat(50_000)}*a]`],
    ['keys', Array.from({ length: 60_000 }, (_, k) => `k${k}: 1`).join('\n')],
    ['a long word', `threading: ${'x'.repeat(900_000)}`],
    ['a long list', `threading: [${'1, '.repeat(200_000)}1]`],
    ['more than a megabyte', ' '.repeat(1_000_001)],
  ])('of %s is refused', (_, text) => {
    expect(wrong(text)).toMatch(/expected|deep/);
  });

  it('never brings anything but a Problem', () => {
    const pieces = fc.constantFrom(
      ...TWILL,
      ...'[]{}():,-#&*!|>"\'%@`?\n\t 0x9+',
      'warp: D L\n',
      'yarns: ',
      'lift plan:',
    );
    const edit = fc.tuple(fc.nat(90), fc.nat(4), fc.oneof(pieces, fc.string({ unit: 'binary', maxLength: 3 })));
    let read = 0;
    const survives = (text: string): void => {
      try {
        readDraft(text, 'a.yaml');
        read++;
      } catch (error) {
        expect(error).toBeInstanceOf(Problem);
        expect((error as Problem).message).toMatch(/^a\.yaml/);
      }
    };
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 80 }), survives), { numRuns: runs(300) });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) =>
        survives(edits.reduce((text, [at, cut, put]) => text.slice(0, at) + put + text.slice(at + cut), TWILL)),
      ),
      { numRuns: runs(1500) },
    );
    // Edits that leave a draft a draft are among them, or nothing but refusals would have been tried.
    expect(read).toBeGreaterThan(20);
  });
});

describe('a draft that is written', () => {
  const strands = (most: number) =>
    fc.array(fc.uniqueArray(fc.integer({ min: 1, max: most }), { maxLength: 2 }), {
      minLength: 1,
      maxLength: 12,
    });
  const size = fc.integer({ min: 1, max: 400 }).map((tenths) => tenths / 10);
  const words = fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 12 })
    .filter((text) => text.trim() === text && text !== '');
  const drafts = fc
    .record({
      name: fc.option(words, { nil: undefined }),
      threading: strands(8),
      tieUp: fc.array(fc.uniqueArray(fc.integer({ min: 1, max: 8 }), { maxLength: 4 }), { minLength: 6, maxLength: 6 }),
      treadling: strands(6),
      kinds: fc.array(fc.constantFrom('ground' as const, 'pattern' as const, 'tabby' as const), {
        minLength: 1,
        maxLength: 3,
      }),
      warp: fc.array(fc.nat(1), { minLength: 1, maxLength: 9 }),
      weft: fc.array(fc.nat(1), { minLength: 1, maxLength: 9 }),
      names: fc.tuple(words, words),
      tex: fc.option(size, { nil: undefined }),
      sett: fc.record({ ends: size, picks: size, per: fc.constantFrom('inch' as const, 'cm' as const) }),
      width: fc.constantFrom(1, 2, 0.5),
      unit: fc.constantFrom(1, 'whole' as const),
    })
    .map(({ name, kinds, warp, weft, names, tex, sett, width, unit, ...weave }): Draft => {
      const picks = weave.treadling.length * kinds.length;
      const whole = {
        threading: weave.threading,
        tieUp: weave.tieUp,
        treadling: Array.from({ length: picks }, (_, j) => weave.treadling[j % weave.treadling.length]!),
        pickKinds: Array.from({ length: picks }, (_, j) => kinds[j % kinds.length]!),
        endUnits: weave.threading.map(() => 1),
        pickUnits: new Array<number>(picks).fill(1),
        widths: { warp: 1, ground: 1, pattern: width, tabby: 1 },
      };
      const repeat = wholeRepeat(whole, warp, weft);
      return {
        ...(name !== undefined && { name }),
        ...repeat,
        ...(unit === 'whole' && { endUnits: [repeat.warp.length], pickUnits: [repeat.weft.length] }),
        yarns: [
          { letter: 'D', name: names[0], hex: '#1f2a44', ...(tex !== undefined && { tex }) },
          { letter: 'L', name: names[1], hex: '#efe6d2' },
        ],
        sett,
      };
    })
    .filter((draft) => draft.warp.length <= 2000 && draft.weft.length <= 2000);

  it('reads back as it was', () => {
    fc.assert(
      fc.property(drafts, (draft) => {
        expect(readDraft(writeDraft(draft), 'a.yaml')).toEqual(draft);
      }),
      { numRuns: runs(300) },
    );
  });

  it('is short: what comes again is written once', () => {
    const draft = readDraft(`${TWILL}warp: D L D D L\nunits: 4\n`, 'a.yaml');
    expect(writeDraft(draft)).toBe(
      [
        'version: 1',
        'threading: 1 2 3 4',
        'tie-up: [1 2, 2 3, 3 4, 4 1]',
        'treadling: 1 2 3 4',
        'units: 4',
        'warp: D L D D L',
        'weft: L',
        'yarns:',
        '  D: { colour: "#1f2a44", name: "dark" }',
        '  L: { colour: "#efe6d2", name: "light" }',
        'sett: { ends: 20, picks: 20, per: inch }',
        '',
      ].join('\n'),
    );
  });
});
