import { describe, expect, test } from 'vitest';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { learntBy, learntWords } from '../../../src/plan/results/matching-results.js';
import { formEntries, readResults, resultsForm } from '../../../src/plan/results/results-form.js';
import { figures } from '../../../src/sheets/warp-sheet/sheet-figures.js';
import { INCH } from '../../../src/words/measure.js';
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

  test('warp used 61.6 in, off the loom 56.7, finished 51: take-up 8.0 %, shrinkage 10.0 %, and the beat', () => {
    const found = learnt(
      results('    warp used: 61.6 in\n    off the loom: 56.7 in\n    finished: 51 in\n    picks: 18\n'),
    );
    const { takeUp, shrinkage, picks } = found(twill);
    expect(takeUp!.value * 100).toBeCloseTo(8.0, 1);
    expect(shrinkage!.value * 100).toBeCloseTo(10.1, 1);
    expect(picks!.value).toBeCloseTo(0.9, 9);
    const [warp] = planWarps([twill], needsOf(), found);
    expect(warp!.pieces[0]!.draft.sett.picks).toBe(18);
    expect(warp!.length.offLoom / warp!.length.used).toBeCloseTo(56.7 / 61.6, 9);
    expect(warp!.length.finished / warp!.length.offLoom).toBeCloseTo(51 / 56.7, 9);
    expect(figures(warp!, warp!.pieces[0]!)).toContainEqual([
      'results',
      '18 picks per inch, 90 % of those planned, take-up 8 %, shrinkage 10.1 % (found in this cloth)',
    ]);
  });

  test('20 in in the reed, 18.4 in on the loom: draw-in 8 %, and the next plan of the cloth is that much narrower', () => {
    const found = learnt(results('    in the reed: 20 in\n    width: 18.4 in\n'));
    expect(found(twill).drawIn!.value).toBeCloseTo(0.08, 9);
    const pieces = planWarps([twill, summer], needsOf({ 'draw-in': '6 %' }), found).flatMap((warp) => warp.pieces);
    expect(pieces.map((piece) => 1 - piece.widthOnLoom / piece.inReed)).toEqual([
      expect.closeTo(0.08, 9),
      expect.closeTo(0.06, 9),
    ]);
    expect(learntWords(found(other), other, other.draft.sett)).toEqual([
      `draw-in 8 % (found in 2/2 twill: ${twill.code})`,
    ]);
  });

  test('a width filled in on the form of a plan is compared with the reed of that plan', () => {
    const [piece] = planWarps([twill], needsOf())[0]!.pieces;
    const form = resultsForm(formEntries([piece!]));
    const inReed = /in the reed: (\S+) in\n/.exec(form)![1]!;
    expect(Number(inReed) * INCH).toBeCloseTo(piece!.inReed, 1);
    const filled = form.replace('    width:', `    width: ${Number(inReed) * 0.9} in`);
    expect(learnt(readResults(filled, 'r.yaml'))(twill).drawIn!.value).toBeCloseTo(0.1, 9);
  });

  test('twill 18 and summer and winter 26: each plans its own structure, and an overshot at 40 stays at 40', () => {
    const read = [...results('    picks: 18\n'), ...results('    picks: 26\n    finished: 9 in\n', summer.code)];
    const found = learnt(read);
    const pieces = planWarps(list, needsOf(), found).flatMap((warp) => warp.pieces);
    const picksOf = (cloth: typeof twill) => pieces.find((piece) => piece.cloth.code === cloth.code)!.draft.sett.picks;
    expect(list.map(picksOf)).toEqual([18, 18, 26, 40]);
    expect(pieces.map(({ cloth, draft }) => learntWords(found(cloth), cloth, draft.sett))).toEqual([
      ['18 picks per inch, 90 % of those planned (found in this cloth)'],
      [`18 picks per inch, 90 % of those planned (found in 2/2 twill: ${twill.code})`],
      ['26 picks per inch, 130 % of those planned (found in this cloth)'],
      [],
    ]);
  });

  test('a result of the cloth itself comes before one of its structure, figure by figure', () => {
    const read = [
      ...results('    picks: 18\n    off the loom: 10 in\n    finished: 9 in\n'),
      ...results('    picks: 24\n', other.code),
    ];
    const warp = planWarps([other], needsOf(), learnt(read))[0]!;
    expect(Object.fromEntries(figures(warp, warp.pieces[0]!)).results).toBe(
      `24 picks per inch, 120 % of those planned (found in this cloth); shrinkage 10 % (found in 2/2 twill: ${twill.code})`,
    );
  });

  test('cloths that share a warp still share it, which is long enough for the one that takes most', () => {
    const weft = kept('2/2 twill', { warp: 'DDLDL', weft: 'L', times: 4 });
    const found = learnt(results('    picks: 18\n    off the loom: 10 in\n    finished: 7 in\n'), [twill]);
    const own = (cloth: { code: string; structure: string }) =>
      cloth.code === twill.code ? found(cloth) : { picks: { value: 1, codes: [weft.code], ofPlanned: false } };
    const [warp, ...more] = planWarps([twill, weft], needsOf(), own);
    expect(more).toEqual([]);
    expect(warp!.pieces.map(({ draft }) => draft.sett.picks)).toEqual([18, 25.4]);
    expect(warp!.length.finished / warp!.length.offLoom).toBeCloseTo(0.7, 9);
    expect(warp!.pieces[0]!.woven / INCH).toBeCloseTo(5 / 0.7, 9);
    expect(warp!.pieces[1]!.woven / INCH).toBeCloseTo(5 / 0.9, 9);
  });

  test('picks are read with their measure, and planned in that of the sett', () => {
    const metric = kept('2/2 twill', { warp: 'DDLDL', sett: { ends: 8, picks: 8, per: 'cm' } });
    const picksOf = (line: string, code = twill.code) =>
      planWarps([metric], needsOf(), learnt(results(line, code), [...list, metric]))[0]!.pieces[0]!.draft.sett.picks;
    // 18 of 20 per inch, and 7 per cm of 20 per inch, of the 8 per cm that are asked for.
    expect(picksOf('    picks: 18\n')).toBe(7.2);
    expect(picksOf('    picks: 7\n    per: cm\n')).toBe(7.11);
    expect(picksOf('    picks: 7 per cm\n    per: inch\n')).toBe(7.11);
    expect(picksOf('    picks planned: 18\n    picks: 7 per cm\n    per: inch\n')).toBe(7.9);
    expect(picksOf('    picks: 7\n', metric.code)).toBe(7);
  });

  test('picks count as a share of those planned on the form: 18 of 20 make 21.6 of 24', () => {
    const close = kept('2/2 twill', { warp: 'DDDLL', sett: { ends: 24, picks: 24, per: 'inch' } });
    const planned = planWarps([twill], needsOf({ sett: '20/25' }))[0]!.pieces;
    const form = resultsForm(formEntries(planned));
    expect(form).toContain('    picks planned: 25\n    picks:\n');
    const found = learnt(readResults(form.replace('    picks:', '    picks: 22.5'), 'r.yaml'), [twill, close]);
    const again = planWarps([twill, close], needsOf(), found).flatMap(({ pieces }) => pieces);
    expect(again.map(({ draft }) => draft.sett.picks)).toEqual([18, 21.6]);
    // The next form asks against what was planned at first: the same result again changes nothing.
    const next = resultsForm(formEntries(again));
    expect(next).toContain('    picks planned: 20\n');
    const same = learnt(readResults(next.replace('    picks:', '    picks: 18'), 'r.yaml'), [twill, close]);
    expect(planWarps([twill], needsOf(), same)[0]!.pieces[0]!.draft.sett.picks).toBe(18);
  });

  test('stars, changes and finish come back on the sheet of the same cloth', () => {
    const remarks = '    stars: 4\n    changed: a border of 8 ends\n    how finished: by hand, warm\n    weaver: Ida\n';
    const found = learnt([...results(`    picks: 18\n${remarks}`), ...results('    stars: 1\n')]);
    const last = 'Ida: 4 stars; changed: a border of 8 ends; finished by hand, warm – 1 star';
    const pieces = planWarps([twill, other], needsOf(), found).flatMap((warp) =>
      warp.pieces.map((piece) => ({ warp, piece })),
    );
    const rows = pieces.map(({ warp, piece }) => figures(warp, piece).filter(([what]) => what === 'last time'));
    expect(rows).toEqual([[['last time', last]], []]);
  });

  test('results of another list count for the structure that the form says', () => {
    const form = resultsForm(formEntries(planWarps([twill], needsOf())[0]!.pieces)).replace(
      '    picks:',
      '    picks: 18',
    );
    expect(form).toContain('    structure: "2/2 twill"\n    per: inch\n');
    const found = learnt(readResults(form, 'r.yaml'), [other, summer]);
    expect(found(other).picks!.codes).toEqual([twill.code]);
    expect(found(summer)).toEqual({});
    expect(() => learnt(readResults(form, 'r.yaml'), [summer])).toThrow(
      'r.yaml: found results for 2/2 twill alone; expected one for a structure of kept.json: summer and winter',
    );
  });
});
