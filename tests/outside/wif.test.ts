/**
 * Source: the published text of WIF (Weaving Information File), version 1.1 of 20 April 1997, from general knowledge
 * of it; each check names the section of the text that it is about. Files are read by us, and ours by `ini`, a reader
 * of INI files from the registry that knows nothing of weaving.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { parse } from 'ini';
import { describe, expect, it } from 'vitest';
import { liftAt } from '../../src/draft/draft.js';
import { readWif, writeWif } from '../../src/draft/wif/read-wif.js';
import { anyDraft } from '../draft/wif-drafts.js';
import { runs } from '../long.js';

const read = (name: string) =>
  readWif(readFileSync(new URL(`../fixtures/wif/good/${name}.wif`, import.meta.url)), { whole: true });
const draft = (name: string) => read(name).draft;
const lifts = (name: string): string =>
  draft(name)
    .treadling.map((_, j) => liftAt(draft(name), j).join('+') || '-')
    .join(' ');
const TWILL = '1+2 2+3 3+4 1+4';

describe('structure of the file: sections and keys', () => {
  it.each([
    '01-smallest',
    '02-sections-in-any-order',
    '03-case-and-spaces',
    '04-comments-and-crlf',
    '26-lone-carriage-returns',
  ])('%s: in any order, whatever the case, with comments', (name) => {
    expect(draft(name).threading.flat()).toEqual([1, 2, 3, 4]);
    expect(lifts(name)).toBe(TWILL);
  });
});

describe('[CONTENTS] and booleans', () => {
  it('true, on, yes, 1 and false, off, no, 0', () => {
    expect(lifts('05-contents-words')).toBe(TWILL);
    expect(read('05-contents-words').notes.join()).not.toContain('CONTENTS');
  });
});

describe('[TEXT]', () => {
  it('holds the title, in UTF-8 or Latin-1', () => {
    expect(draft('06-latin-1-title').name).toBe('Rosengång för löpare');
    expect(draft('07-utf-8-with-mark').name).toBe('Rosengång’s kin');
    expect(draft('27-utf-16').name).toBe('Drällväv');
  });
});

describe('[THREADING]', () => {
  it('may put an end on several shafts, or on none', () => {
    expect(draft('08-several-shafts-an-end').threading).toEqual([[1], [2, 3], [3], [4, 1], [], []]);
  });
  it('leaves out ends that are on no shaft', () => {
    expect(draft('21-lists-with-gaps').threading).toEqual([[1], [], [3], [], [], [4]]);
  });
});

describe('[TIEUP], [TREADLING], [LIFTPLAN]', () => {
  it('a lift plan alone', () => {
    expect(lifts('09-lift-plan-only')).toBe('1+2 3+4 1+2 - 2+3 2+3');
  });
  it('both', () => expect(lifts('10-tie-up-and-lift-plan')).toBe(TWILL));
  it('two treadles at a pick', () => expect(lifts('13-two-feet')).toBe(TWILL));
  it('picks and treadles that are left out', () => expect(lifts('21-lists-with-gaps')).toBe('1+3 2+4 - - 1+3'));
});

describe('[WEAVING] Rising Shed', () => {
  it('false: what is tied goes down', () => expect(lifts('11-sinking-shed')).toBe(TWILL));
  // Two feet on a sinking shed: 1 and 2 go down, so 3 and 4 stay up, and so on.
  it('false, with two feet', () => expect(lifts('12-sinking-shed-two-feet')).toBe('3+4 1+4 1+2 2+3'));
});

describe('[COLOR PALETTE] Range and [COLOR TABLE]', () => {
  it.each([
    ['14-colours-0-to-255', ['#000000', '#ffffff']],
    // 500 of 999 is 127.6 of 255.
    ['15-colours-0-to-999', ['#000000', '#ffff80']],
    // 32768 of 65535 is 127.5 of 255.
    ['16-colours-0-to-65535', ['#000080', '#ff0000']],
  ])('%s', (name, hex) => {
    expect(draft(name).yarns.map((yarn) => yarn.hex)).toEqual(hex);
  });
  it('threads without a colour of their own have their system’s', () => {
    expect(draft('17-colours-default-and-gaps').warp).toEqual([0, 1, 0, 0]);
    expect(draft('17-colours-default-and-gaps').weft).toEqual([1, 1, 0, 1]);
  });
});

describe('[WARP] and [WEFT] Units, Spacing, Thickness', () => {
  it('inches, centimeters, decipoints (720 in an inch)', () => {
    expect(draft('18-spacing-in-inches').sett).toEqual({ ends: 20, picks: 16, per: 'inch' });
    expect(draft('18-spacing-in-inches').widths.ground).toBe(2);
    expect(draft('19-spacing-in-centimetres').sett).toEqual({ ends: 8, picks: 5, per: 'cm' });
    expect(draft('20-spacing-in-decipoints').sett).toEqual({ ends: 20, picks: 24, per: 'inch' });
  });
  it('spacing thread by thread, without a usual one, makes the mean sett', () => {
    expect(draft('28-spacing-thread-by-thread').sett.ends).toBe(8);
  });
});

describe('what we write, read by a general reader of INI files', () => {
  const byNumber = (section: Record<string, string> | undefined): string[] =>
    Object.entries(section ?? {})
      .sort(([a], [b]) => Number(a) - Number(b))
      .map(([, value]) => value);

  it('has the head, the contents and every list in full', () => {
    fc.assert(
      fc.property(anyDraft, (given) => {
        const file = parse(writeWif(given, { version: '2.3.4' })) as Record<string, Record<string, string>>;
        expect(file.WIF).toMatchObject({ Version: '1.1', 'Source Program': 'shedlight', 'Source Version': '2.3.4' });
        expect(Object.keys(file.CONTENTS!).sort()).toEqual(
          Object.keys(file)
            .filter((name) => name !== 'WIF' && name !== 'CONTENTS')
            .sort(),
        );
        expect(file.WEAVING).toMatchObject({ Treadles: String(given.tieUp.length), 'Rising Shed': true });
        expect(file.WARP!.Threads).toBe(String(given.warp.length));
        expect(file.WEFT!.Threads).toBe(String(given.weft.length));
        expect(byNumber(file.THREADING)).toEqual(given.threading.map(String));
        expect(byNumber(file.TIEUP)).toEqual(given.tieUp.map((shafts) => String(shafts) || '0'));
        expect(byNumber(file.TREADLING)).toEqual(given.treadling.map((treadles) => String(treadles) || '0'));
        const colour = (system: 'WARP' | 'WEFT', threads: readonly number[]): string[] => {
          const list = byNumber(file[`${system} COLORS`]);
          return list.length > 0 ? list : threads.map(() => file[system]!.Color!);
        };
        expect(colour('WARP', given.warp)).toEqual(given.warp.map((yarn) => String(yarn + 1)));
        expect(colour('WEFT', given.weft)).toEqual(given.weft.map((yarn) => String(yarn + 1)));
        const table = byNumber(file['COLOR TABLE']).map(
          (rgb) =>
            `#${rgb
              .split(',')
              .map((part) => Number(part).toString(16).padStart(2, '0'))
              .join('')}`,
        );
        expect(table).toEqual(given.yarns.map((yarn) => yarn.hex));
        expect(file.WARP!.Units).toBe(given.sett.per === 'cm' ? 'centimeters' : 'inches');
        expect(1 / Number(file.WARP!.Spacing)).toBeCloseTo(given.sett.ends, 5);
        expect(1 / Number(file.WEFT!.Spacing)).toBeCloseTo(given.sett.picks, 5);
      }),
      { numRuns: runs(200) },
    );
  });
});
