import { describe, expect, test } from 'vitest';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { doneCloths } from '../../../src/plan/results/done.js';
import { learntBy } from '../../../src/plan/results/matching-results.js';
import {
  formEntries,
  grownForm,
  isFilledIn,
  readResults,
  resultsForm,
} from '../../../src/plan/results/results-form.js';
import { kept, needsOf, towel } from '../cloths.js';

describe('what was learnt', () => {
  const twill = towel();
  const other = kept('2/2 twill', { warp: 'DDDLL' });
  const summer = kept('summer and winter', { warp: 'DLDDL', by: 'unit' });
  const overshot = kept('overshot', { warp: 'D', weft: 'L', sett: { ends: 20, picks: 40, per: 'inch' } });
  const list = [twill, other, summer, overshot];
  /** What lines below the code of a cloth are read as. */
  const results = (lines: string, code = twill.code) => readResults(`results:\n  - code: ${code}\n${lines}`, 'r.yaml');
  const learnt = (read: ReturnType<typeof results>, from = list) => learntBy(read, from, 'r.yaml', 'kept.json');

  test('a form with nothing filled in is refused, and so is a code that is nowhere', () => {
    const form = resultsForm(formEntries(planWarps([twill], needsOf())[0]!.pieces));
    expect(readResults(form, 'r.yaml')).toEqual([
      { code: twill.code, structure: '2/2 twill', per: 'inch', inReed: expect.closeTo(508, 0), planned: 20 },
    ]);
    const nothing =
      /^r\.yaml: found nothing filled in that a plan can use; expected picks, width with in the reed, warp used with off/;
    expect(() => learnt(readResults(form, 'r.yaml'))).toThrow(nothing);
    expect(() => learnt(results('    stars: 4\n'))).toThrow(nothing);
    expect(() => learnt(results('    picks: 18\n', 'zzz'))).toThrow(
      /^r\.yaml: found zzz, which is not in kept\.json.*; expected a code of that list, or the structure beside it$/,
    );
    expect(() => learnt(results('    picks: 18\n    structure: "2/2 twill"\n', 'zzz'))).toThrow(
      'r.yaml: zzz: found 18 picks; expected their measure too, as 18 per inch',
    );
  });

  test('a form that is begun keeps every word, and gets blanks for the cloths it lacks', () => {
    const entries = (cloths: typeof list) => formEntries(planWarps(cloths, needsOf()).flatMap(({ pieces }) => pieces));
    const begun = `${resultsForm(entries([twill])).replace('    stars:', '    stars: 4   # soft')}# washed on Monday`;
    const grown = grownForm(begun, entries([twill, other, summer]))!;
    expect(grown.startsWith(begun)).toBe(true);
    const read = readResults(grown, 'r.yaml');
    expect(read.map(({ code, stars }) => [code, stars])).toEqual([
      [twill.code, 4],
      [other.code, undefined],
      [summer.code, undefined],
    ]);
    expect(grownForm(grown, entries([twill, other, summer]))).toBeUndefined();
    expect(grownForm(`results: [{ code: ${twill.code}, stars: 3 }]\n`, entries(list))).toBeUndefined();
    expect(grownForm('no form', entries(list))).toBeUndefined();
  });

  test('a deal’s form names the weavers; a gamp’s has its squares, each once', () => {
    const pieces = planWarps([twill, summer], needsOf()).flatMap((warp) => warp.pieces);
    const dealt = readResults(resultsForm(formEntries(pieces, ['Ida: “B”', 'H'])), 'r.yaml');
    expect(dealt.map(({ weaver }) => weaver)).toEqual(['Ida: “B”', 'H']);
    expect(dealt.map(isFilledIn)).toEqual([false, false]);
    const form = resultsForm(formEntries(pieces.slice(0, 1), undefined, [other, summer, other]));
    const read = readResults(form.replace(/stars:/g, 'stars: 3'), 'r.yaml');
    expect(read.map(({ code, squares }) => [code, squares])).toEqual([
      [twill.code, 3],
      [other.code, undefined],
      [summer.code, undefined],
    ]);
    // The gamp itself is no cloth that was woven; of its squares those are that were liked or not.
    const squares = [{ file: 'squares.json', items: [other, summer] }];
    expect(doneCloths([{ file: 'r.yaml', items: read }], squares)).toEqual([
      { file: 'r.yaml', items: [other, summer] },
    ]);
  });

  test.each([
    ['    off the loom: 51 in\n    finished: 56 in\n', '4:15: found 56 in (142.2 cm) finished, and 51 in'],
    ['    in the reed: 18 in\n    width: 19 in\n', '4:12: found 19 in (48.3 cm) on the loom, and 18 in'],
    ['    warp used: 51 in\n    off the loom: 5.1 in\n', '4:19: found 5.1 in (13 cm) off the loom, and 51 in'],
    ['    warp used: 0 in\n', '3:16: found “0 in”; expected a length of more than nothing'],
    ['    picks: 0\n', '3:12: found “0”; expected picks from 1 to 400'],
    ['    picks: 18 per yard\n', '3:12: found “18 per yard”; expected picks from 1 to 400'],
    ['    stars: 7\n', '3:12: found “7”; expected stars from 0 to 5'],
  ])('what cannot be is refused: %j', (lines, said) => {
    expect(() => results(lines)).toThrow(`r.yaml:${said}`);
  });
});
