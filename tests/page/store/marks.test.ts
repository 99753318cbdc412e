import { describe, expect, test } from 'vitest';
import { parseShortlist } from '../../../src/formats/shortlist.js';
import { Marks } from '../../../src/page/store/marks.js';
import { trialOutcome } from '../../gallery/trial.js';

describe('marks', () => {
  test('are saved as the commands read them, and read back', () => {
    const [first, second] = trialOutcome().found;
    const marks = new Marks();
    marks.toggle(first!);
    marks.toggle(second!);
    marks.mark(first!.code, { stars: 4, note: 'for the <b>hall</b>' });
    const kept = parseShortlist(marks.text(), 'shortlist.json');
    expect(kept).toMatchObject([
      { code: first!.code, stars: 4, note: 'for the <b>hall</b>' },
      { code: second!.code, stars: 0, note: '' },
    ]);
    const again = new Marks();
    expect(again.read(marks.text(), 'shortlist.json')).toBe(2);
    expect(again.text()).toBe(marks.text());
  });
});
