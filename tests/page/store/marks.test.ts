import { describe, expect, test } from 'vitest';
import { parseShortlist } from '../../../src/formats/shortlist.js';
import { Marks } from '../../../src/page/store/marks.js';
import type { Shelf } from '../../../src/page/store/shelf.js';
import { trialOutcome } from '../../gallery/trial.js';

const [first, second, third] = trialOutcome().found;

/** A shelf in memory, as two tabs of one browser share it. */
function shelfOf(text?: string): Shelf & { text: string | undefined; set: string[]; refuses: string | undefined } {
  return {
    text,
    set: [],
    refuses: undefined,
    read() {
      return this.text;
    },
    write(to) {
      if (this.refuses === undefined) this.text = to;
      return this.refuses;
    },
    aside() {
      return this.set;
    },
    setAside(to) {
      if (this.refuses === undefined) this.set.push(to);
      return this.refuses;
    },
  };
}

const codes = (marks: Marks): string[] => marks.all.map(({ code }) => code);

describe('marks', () => {
  test('are saved as the commands read them, and read back', () => {
    const origin = 'shedlight 1.2.3: structure 2/2 twill; lengths 4';
    const marks = new Marks(undefined, { origin });
    marks.toggle(first!);
    marks.toggle(second!);
    marks.mark(first!.code, { stars: 4, note: 'for the <b>hall</b>' });
    const kept = parseShortlist(marks.text(), 'shortlist.json');
    expect(kept).toMatchObject([
      { code: first!.code, stars: 4, note: 'for the <b>hall</b>', origin },
      { code: second!.code, stars: 0, note: '', origin },
    ]);
    const again = new Marks();
    expect(again.read(marks.text(), 'shortlist.json')).toBe(2);
    expect(again.text()).toBe(marks.text());
  });

  test('of two tabs stand beside one another', () => {
    const shelf = shelfOf();
    const [here, there] = [new Marks(shelf), new Marks(shelf)];
    here.toggle(first!);
    there.toggle(second!);
    there.mark(second!.code, { note: 'bold' });
    here.mark(first!.code, { stars: 5 });
    here.toggle(third!);
    there.reload();
    expect(codes(there)).toEqual([first!.code, second!.code, third!.code]);
    expect(there.of(first!.code)!.stars).toBe(5);
    expect(here.of(second!.code)!.note).toBe('bold');
    // A cloth that is kept in both is kept once.
    const late = new Marks(shelfOf());
    late.toggle(first!);
    expect(codes(late)).toEqual([first!.code]);
  });

  test('are put back after Keep was pressed again, with stars and note, and without undoing another tab', () => {
    const shelf = shelfOf();
    const marks = new Marks(shelf);
    marks.toggle(first!);
    marks.mark(first!.code, { stars: 3, note: 'hall' });
    expect(marks.lost).toEqual([]);
    marks.toggle(first!);
    expect(marks.lost).toMatchObject([{ code: first!.code, stars: 3, note: 'hall' }]);
    new Marks(shelf).toggle(second!);
    marks.undo();
    expect(codes(marks).sort()).toEqual([first!.code, second!.code].sort());
    expect(marks.of(first!.code)).toMatchObject({ stars: 3, note: 'hall' });
    expect(marks.lost).toEqual([]);
  });

  test('that a file wrote over are put back', () => {
    const marks = new Marks();
    marks.toggle(first!);
    const file = marks.text();
    marks.mark(first!.code, { note: 'mine' });
    marks.read(file, 'shortlist.json');
    expect(marks.of(first!.code)!.note).toBe('');
    marks.undo();
    expect(marks.of(first!.code)!.note).toBe('mine');
  });

  test('that cannot be read are set aside before anything is written', () => {
    const newer = new Marks();
    newer.toggle(first!);
    for (const text of ['{"format":', newer.text().replace('"version": 1', '"version": 9')]) {
      const shelf = shelfOf(text);
      const marks = new Marks(shelf);
      expect([codes(marks), shelf.text]).toEqual([[], text]);
      marks.toggle(second!);
      expect(marks.aside).toContain(text);
      expect(codes(new Marks(shelf))).toEqual([second!.code]);
    }
  });

  test('that cannot be stored stay on the page, and the reason is said until they can', () => {
    const shelf = shelfOf();
    const marks = new Marks(shelf);
    marks.toggle(first!);
    shelf.refuses = 'full';
    marks.toggle(second!);
    marks.mark(first!.code, { stars: 2 });
    expect([codes(marks), marks.trouble]).toEqual([[first!.code, second!.code], 'full']);
    expect(marks.of(first!.code)!.stars).toBe(2);
    shelf.refuses = undefined;
    marks.toggle(third!);
    expect([codes(new Marks(shelf)).length, marks.trouble]).toEqual([3, undefined]);
  });
});
