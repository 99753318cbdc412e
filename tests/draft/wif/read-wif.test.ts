import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Draft, liftAt, shaftCount } from '../../../src/draft/draft.js';
import {
  keptMisfits,
  LARGEST_WIF,
  LONGEST_DRAFT,
  readWif,
  refuseLarge,
  writeWif,
} from '../../../src/draft/wif/read-wif.js';
import { Problem } from '../../../src/problem.js';
import { runs } from '../../long.js';
import { anyDraft } from '../wif-drafts.js';

const GOOD = new URL('../../fixtures/wif/good/', import.meta.url);
const BROKEN = new URL('../../fixtures/wif/broken/', import.meta.url);
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const good = (name: string): Uint8Array => readFileSync(new URL(`${name}.wif`, GOOD));
const lifts = (draft: Draft): string[] => draft.treadling.map((_, j) => liftAt(draft, j).join('+'));
const twill = ['1+2', '2+3', '3+4', '1+4'];

describe('a round trip', () => {
  it('keeps all that a draft holds', () => {
    fc.assert(
      fc.property(anyDraft, (draft) => {
        const read = readWif(bytes(writeWif(draft, { version: '1.0.0' })), { whole: true });
        expect(read.draft).toEqual(draft);
      }),
      { numRuns: runs(300) },
    );
  });

  it('writes the same bytes again, and ASCII alone', () => {
    fc.assert(
      fc.property(anyDraft, (draft) => {
        const text = writeWif(draft, { version: '1.0.0' });
        const { draft: read, kept } = readWif(bytes(text), { whole: true });
        expect(writeWif(read, { version: '1.0.0', kept })).toBe(text);
        expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
      }),
      { numRuns: runs(100) },
    );
  });

  it('keeps the lifts in a lift plan', () => {
    fc.assert(
      fc.property(anyDraft, (draft) => {
        const text = writeWif(draft, { version: '1.0.0', liftPlan: true });
        expect(text).not.toContain('[TIEUP]');
        expect(lifts(readWif(bytes(text), { whole: true }).draft)).toEqual(lifts(draft));
      }),
      { numRuns: runs(100) },
    );
  });

  it.each(readdirSync(GOOD))('keeps %s: what was read, written and read again is the same', (file) => {
    const first = readWif(readFileSync(new URL(file, GOOD)), { whole: true });
    const again = readWif(bytes(writeWif(first.draft, { version: '1.0.0', kept: first.kept })), { whole: true });
    expect(again.draft).toEqual(first.draft);
    expect([...again.kept.sections]).toEqual([...first.kept.sections]);
    expect(again.kept.colours).toEqual(first.kept.colours);
  });

  it('falls to a lift plan where there are more treadles than a file may have', () => {
    const base = readWif(good('01-smallest')).draft;
    const tieUp = Array.from({ length: 600 }, (_, t) => base.tieUp[t % 4]!);
    expect(lifts(readWif(bytes(writeWif({ ...base, tieUp }, { version: '1' }))).draft)).toEqual(twill);
  });
});

describe('our private section', () => {
  const draft = readWif(good('01-smallest')).draft;
  const text = writeWif({ ...draft, name: 'Drällväv', endUnits: [2, 2] }, { version: '1' });

  it('gives way to a title, a sett and colours that were changed elsewhere', () => {
    const changed = text
      .replace('Title=Drallvav', 'Title=Towel')
      .replace(/Spacing=0.05/g, 'Spacing=0.1')
      .replace(/Entries=2[\s\S]*?2=239,230,210/, (table) => table.replace('31,42,68', '0,0,0'));
    const read = readWif(bytes(changed)).draft;
    expect(read.name).toBe('Towel');
    expect(read.sett).toEqual({ ends: 10, picks: 10, per: 'inch' });
    expect(read.yarns[0]).toEqual({ letter: 'D', name: 'dark', hex: '#000000' });
    expect(readWif(bytes(text)).draft.name).toBe('Drällväv');
  });

  it('is left out, part by part, with a note, where it does not fit', () => {
    const { draft: read, notes } = readWif(bytes(text.replace('End Units 1=2,2', 'End Units 1=2,3')), { whole: true });
    expect(read.endUnits).toEqual([1, 1, 1, 1]);
    expect(notes.join()).toMatch(/units of ends does not fit/);
  });
});

describe('one repeat', () => {
  it('is taken of a whole warp, and said', () => {
    const { draft, notes } = readWif(good('23-whole-warp-of-repeats'));
    expect([draft.threading.length, draft.treadling.length]).toEqual([4, 4]);
    expect(notes).toContain('the 400 ends are 100 repeats of 4; one repeat is the draft');
    expect(readWif(good('23-whole-warp-of-repeats'), { whole: true }).draft.threading).toHaveLength(400);
  });

  it('leaves out the ends that balance', () => {
    const { draft, notes } = readWif(good('24-warp-with-balance'));
    expect(draft.threading.flat()).toEqual([1, 2, 3, 4, 3, 2]);
    expect(notes.join('\n')).toContain('10 repeats of 6 and 1 more to balance');
  });

  it('is never less than what recurs: unrolled it is the whole again', () => {
    fc.assert(
      fc.property(anyDraft, fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }), (draft, across, along) => {
        const { companions, ...one } = draft;
        const times = <T>(list: readonly T[], n: number): T[] => Array.from({ length: n }, () => list).flat();
        const whole: Draft = {
          ...one,
          threading: times(draft.threading, across),
          warp: times(draft.warp, across),
          endUnits: times(draft.endUnits, across),
          treadling: times(draft.treadling, along),
          weft: times(draft.weft, along),
          pickKinds: times(draft.pickKinds, along),
          pickUnits: times(draft.pickUnits, along),
        };
        const { draft: read } = readWif(bytes(writeWif(whole, { version: '1' })));
        expect(read.threading.length).toBeLessThanOrEqual(draft.threading.length);
        whole.threading.forEach((on, i) => {
          expect(on).toEqual(read.threading[i % read.threading.length]);
        });
        whole.weft.forEach((yarn, j) => {
          expect(yarn).toBe(read.weft[j % read.weft.length]);
        });
      }),
      { numRuns: runs(100) },
    );
  });
});

describe('what is kept', () => {
  it('is put back as it was, paths and all, and never opened', () => {
    const { draft, kept, notes } = readWif(good('22-symbols-private-and-notes'));
    const text = writeWif(draft, { version: '1', kept });
    for (const line of [
      'no equals sign here',
      'Shelf=3',
      'Shelf=4',
      '1=Sett close for a runner.',
      'Symbol=x',
      '2=#88',
    ]) {
      expect(text.split('\r\n')).toContain(line);
    }
    expect(text).toContain('1=../../elsewhere/picture.bmp');
    expect(text).toContain('PRIVATE HOUSE=true');
    expect(notes.join('\n')).toMatch(/kept as they are, private to other programs: PRIVATE HOUSE/);
  });

  it('is left out, and said, where it counts threads that are no longer there', () => {
    const file = `${new TextDecoder().decode(good('23-whole-warp-of-repeats'))}[WARP SPACING]\n1=0.05\n`;
    const { draft, kept } = readWif(bytes(file));
    expect(writeWif(draft, { version: '1', kept })).not.toContain('[WARP SPACING]');
    expect(keptMisfits(draft, kept)).toHaveLength(1);
    const whole = readWif(bytes(file), { whole: true });
    expect(writeWif(whole.draft, { version: '1', kept: whole.kept })).toContain('[WARP SPACING]');
    expect(keptMisfits(whole.draft, whole.kept)).toEqual([]);
  });

  it('reads back whatever its names are', () => {
    const names = ['[TEXT', 'A=B', '; X', 'PRIVATE A;B', '__proto__'];
    const sections = names.map((name) => `[${name}]\nkey=1\n`).join('');
    const { draft, kept } = readWif(bytes(`${new TextDecoder().decode(good('01-smallest'))}${sections}`));
    const again = readWif(bytes(writeWif(draft, { version: '1', kept })));
    expect([...again.kept.sections.keys()]).toEqual(names.map((name) => name.toUpperCase()));
  });

  it('is not believed where the weft is thousands of times as thick as the warp', () => {
    const thick = (system: string, size: string): [string, string] => [`[${system}]`, `[${system}]\nThickness=${size}`];
    const file = new TextDecoder()
      .decode(good('01-smallest'))
      .replace(...thick('WARP', '1e-15'))
      .replace(...thick('WEFT', '999999999'));
    const { draft, kept, notes } = readWif(bytes(file));
    expect(draft.widths.ground).toBe(1);
    expect(notes.join()).toContain('implausible');
    expect(readWif(bytes(writeWif(draft, { version: '1', kept }))).draft).toEqual(draft);
  });

  it('names a section that is none of the format, with the nearest that is', () => {
    const file = `${new TextDecoder().decode(good('01-smallest'))}[WARP COLOURS]\n1=1\n`;
    expect(readWif(bytes(file)).notes.join('\n')).toContain(
      '[WARP COLOURS] is not a section of WIF 1.1 (did you mean “WARP COLORS”?)',
    );
  });
});

describe('a file that is wrong', () => {
  it.each(readdirSync(BROKEN))('%s says so as its first line tells', (file) => {
    const data = readFileSync(new URL(file, BROKEN));
    const expected = new TextDecoder().decode(data).split('\n')[0]!.replace('; ', '');
    expect(() => readWif(data)).toThrow(new Problem(expected));
  });

  it('is refused by its size before it is read', () => {
    expect(() => readWif(new Uint8Array(LARGEST_WIF + 1))).toThrow('expected 4000000 at most');
  });

  it('is refused by its numbers before memory is taken', () => {
    const start = process.memoryUsage().heapUsed;
    const file = new TextDecoder().decode(good('01-smallest'));
    expect(() => readWif(bytes(file.replace('4=4', `20001=4`)))).toThrow('expected 1 to 4');
    expect(() => readWif(bytes(file.replace('1=1\n', `1=${'1,'.repeat(1e6)}\n`)))).toThrow('8000 at most');
    expect(process.memoryUsage().heapUsed - start).toBeLessThan(100e6);
  });

  it('is refused by its sections and keys before they are kept', () => {
    const many = (count: number, make: (n: number) => string): Uint8Array =>
      bytes(`[WIF]\nVersion=1.1\n[WARP]\n${Array.from({ length: count }, (_, n) => make(n)).join('\n')}`);
    expect(() => readWif(many(1001, (n) => `[X ${n}]`))).toThrow('found more than 1000 sections');
    expect(() => readWif(many(25_002, (n) => `x${n}=1`))).toThrow('found more than 25000 keys');
  });

  it('may be as large as the limits say, and no larger when it is written', () => {
    const lines = (count: number, make: (n: number) => string): string =>
      Array.from({ length: count }, (_, n) => `${n + 1}=${make(n)}`).join('\n');
    const file = `[WIF]\nVersion=1.1\n[WEAVING]\nShafts=256\nRising Shed=false\n[WARP]\nThreads=20000\n[WEFT]\nThreads=20000\n[THREADING]\n${lines(20_000, (n) => String((n % 256) + 1))}\n[LIFTPLAN]\n${lines(20_000, (n) => String((n % 255) + 1))}`;
    const { draft } = readWif(bytes(file), { whole: true });
    expect([draft.threading.length, draft.treadling.length, shaftCount(draft)]).toEqual([20_000, 20_000, 256]);
    expect(() => writeWif(draft, { version: '1', liftPlan: true })).toThrow('bytes as WIF; expected 4000000 at most');
    expect(writeWif(draft, { version: '1' }).length).toBeLessThan(LARGEST_WIF);
  });

  it('does not reach the prototype of all objects', () => {
    const file = `${new TextDecoder().decode(good('01-smallest'))}[__proto__]\nshafts=9\n[PRIVATE constructor]\n__proto__=1\n`;
    const { draft, kept } = readWif(bytes(file.replace('Profile=false', '__proto__=1')));
    writeWif(draft, { version: '1', kept });
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect(({} as Record<string, unknown>).shafts).toBeUndefined();
  });
});

it('a draft larger than can be searched is refused with its size', () => {
  const threads = Array.from({ length: LONGEST_DRAFT + 1 }, () => [1]);
  expect(() => refuseLarge({ threading: threads, treadling: [[1]] })).toThrow(
    'found a repeat of 2001 ends; expected 2000 at most',
  );
});
