import { describe, expect, test } from 'vitest';
import { manifestDraft, manifestOf, manifestText, parseManifest } from '../../../src/gallery/manifest/manifest.js';
import { draftWith, foundOf, HOUNDS_TOOTH, LOG_CABIN, TWILL, trialOutcome, trialQuestion } from '../trial.js';

const manifest = manifestOf(trialQuestion(), trialOutcome());
const text = manifestText(manifest);

/** The text of the trial gallery after a change to its values. */
function changed(change: (gallery: ReturnType<typeof JSON.parse>) => void): string {
  const gallery = JSON.parse(text);
  change(gallery);
  return JSON.stringify(gallery);
}

describe('gallery.json', () => {
  test('has the keys of the format in their order', () => {
    const gallery = JSON.parse(text);
    expect(Object.keys(gallery)).toEqual(['format', 'version', 'question', 'palette', 'counts', 'candidates']);
    expect([gallery.format, gallery.version]).toEqual(['shedlight-gallery', 1]);
    expect(gallery.palette[0]).toEqual({ letter: 'D', name: 'night blue', hex: '#1f2a44' });
    expect(gallery.counts).toMatchObject({ written: 1024, examined: 48, cloths: 24, exhaustive: true });
    expect(gallery.question).toMatchObject({ sett: { ends: 20, picks: 20, per: 'inch' }, rank: { contrast: 3 } });
    expect(Object.keys(gallery.candidates[0])).toEqual(
      'rank code recipe shortRecipe why structure redraw draft repeat order scores ease equals nearTwin swatch'.split(
        ' ',
      ),
    );
    expect(Object.keys(gallery.candidates[0].draft)).toEqual(
      'threading tieUp treadling pickKinds warp weft'.split(' '),
    );
  });

  test('writes one shaft an end as a plain number, and the colours of one whole repeat in letters', () => {
    const { draft, repeat, swatch, code } = JSON.parse(text).candidates[1];
    expect(draft.threading).toEqual([1, 2, 3, 4, 1, 2, 3, 4]);
    expect(draft.tieUp).toEqual(TWILL);
    expect(draft.warp).toBe('DDDDLLLL');
    expect(repeat).toEqual({ ends: 8, picks: 8 });
    expect(swatch).toBe(`swatches/${code}.png`);
  });

  test('does not round', () => {
    const { scores } = trialOutcome().found[0]!;
    expect(JSON.parse(text).candidates[0].scores.contrast).toBe(scores.contrast);
    expect(JSON.parse(text).candidates[0].scores.floats).toEqual(scores.floats);
  });

  test('reads back to what was written, and to the drafts of the search', () => {
    const read = parseManifest(text, 'gallery.json');
    expect(read).toEqual(manifest);
    expect(manifestText(read)).toBe(text);
    expect(manifestDraft(read.candidates[0]!, read)).toEqual(LOG_CABIN);
    expect(manifestDraft(read.candidates[1]!, read)).toEqual(HOUNDS_TOOTH);
  });

  test('reads a gallery made before areas, outlines and shapes were measured', () => {
    const older = changed((g) => {
      for (const { scores } of g.candidates)
        for (const name of ['solid', 'sharp', 'bits', 'shapes', 'unlike']) delete scores[name];
    });
    expect(parseManifest(older, 'gallery.json').candidates[0]!.scores).toMatchObject({ solid: 0, shapes: 0 });
  });

  test('keeps ends on two shafts, two feet on a pick, units and uneven threads', () => {
    const draft = draftWith([[1], [2], [1, 2]], 'DDLL', 'DLDL', {
      threading: [[1], [2], [1, 2], [2]],
      treadling: [[1], [2], [3], [1, 2]],
      pickKinds: ['pattern', 'tabby', 'pattern', 'tabby'],
      endUnits: [4],
      pickUnits: [2, 2],
      widths: { warp: 1, ground: 1, pattern: 2, tabby: 1 },
    });
    const found = foundOf(draft, 1);
    const written = manifestText(manifestOf(trialQuestion(), { ...trialOutcome(), found: [found] }));
    const read = parseManifest(written, 'gallery.json');
    expect(read.candidates[0]!.draft.threading).toEqual([1, 2, [1, 2], 2]);
    expect(manifestDraft(read.candidates[0]!, read)).toEqual(draft);
  });

  test.each([
    ['{', /^g\.json: found text that is not whole JSON; expected /],
    ['{"format":"notes"}', /^g\.json: found another kind of file; expected format "shedlight-gallery"$/],
    ['{"format":"shedlight-gallery","version":2}', /^g\.json: found version 2 .* expected version 1/],
    [changed((g) => delete g.counts.cloths), /^g\.json: counts\.cloths: found nothing; expected a value$/],
    [changed((g) => (g.candidates[0].rank = 'one')), /^g\.json: candidates\.0\.rank: found “one”; expected a number$/],
    [
      changed((g) => (g.candidates[0].code = '../etc')),
      /^g\.json: candidates\.0\.code: found “\.\.\/etc”; expected a code of small letters and digits$/,
    ],
    [changed((g) => (g.candidates[1].swatch = '../notes')), /^g\.json: candidates\.1\.swatch: found “\.\.\/notes”/],
    [changed((g) => (g.question.limits.float = '5')), /limits\.float: found “5”; expected a length such as 12\.7 mm$/],
    [changed((g) => (g.candidates[0].draft.warp = 'DXLDLDLDLDLDLDLD')), /warp: found “X”, expected letters .*D L/],
    [changed((g) => g.candidates[0].draft.threading.pop()), /threading: found 15 threads, expected the repeat’s 16$/],
    [changed((g) => (g.candidates[0].draft.treadling[3] = 9)), /found treadle 9, expected at most 2/],
    [changed((g) => (g.candidates[0].draft.threading[0] = 1e9)), /candidates\.0\.draft\.threading\.0: found /],
    [changed((g) => (g.palette[1].letter = 'D')), /^g\.json: palette: found the letter D twice/],
  ])('refuses damage with its place: %#', (damaged, sentence) => {
    expect(() => parseManifest(damaged, 'g.json')).toThrow(sentence);
  });

  test('takes nothing from a text that tries to reach into every object', () => {
    const sly = text.replace('{', '{"__proto__": {"stolen": true}, ');
    expect(parseManifest(sly, 'g.json')).toEqual(manifest);
    expect(({} as Record<string, unknown>).stolen).toBeUndefined();
  });
});
