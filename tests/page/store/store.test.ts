import { describe, expect, test } from 'vitest';
import { manifestOf, manifestText, parseManifest } from '../../../src/gallery/manifest/manifest.js';
import { Store } from '../../../src/page/store/store.js';
import { PRESET_NAMES, PRESETS } from '../../../src/score/rank/presets.js';
import { explore } from '../../../src/search/explore.js';
import { readQuestion } from '../../../src/search/question/read-question.js';

const RANKINGS = [...PRESET_NAMES, 'contrast 3, symmetry 2, float 1', 'ease 1.5, figure 0.25', 'newness 2, solid 1'];
const FLAGS = { structure: 'turned twill', lengths: '2-4', weft: 'own', by: 'thread,unit', times: '1,2' };

/** The page's store of a gallery as it lies on the disk, and the command's list. */
async function deskOf(flags: Record<string, string>): Promise<{ store: Store; listed: readonly string[] }> {
  const question = readQuestion({ flags: { ...FLAGS, ...flags } }, () => {
    throw new Error('no draft is asked for');
  });
  const outcome = await explore(question, { workers: 0 });
  const manifest = parseManifest(manifestText(manifestOf(question, outcome)), 'gallery.json');
  return {
    store: new Store(manifest, { read: () => '', write: () => {} }),
    listed: outcome.found.map(({ code }) => code),
  };
}

describe('a gallery opens in the order in which the command lists it', () => {
  test.each(RANKINGS)('ranked by %s', async (rank) => {
    const { store, listed } = await deskOf({ rank });
    expect(listed.length).toBeGreaterThan(20);
    expect(store.listed().map(({ found }) => found.code)).toEqual(listed);
    expect(store.listed().map((each) => each.rank)).toEqual(listed.map((_, at) => at + 1));
  });

  test('ranked by a word, the best of each kind', async () => {
    const { store, listed } = await deskOf({ rank: 'unexpected', show: 'one of each kind' });
    expect(store.listed().map(({ found }) => found.code)).toEqual(listed);
  });

  test('under a limit for floats in millimetres', async () => {
    const { store, listed } = await deskOf({ rank: 'easy', limits: 'float 9 mm' });
    expect(store.limit).toEqual({ mm: 9 });
    expect(store.listed().map(({ found }) => found.code)).toEqual(listed);
  });
});

describe('ranked again by other weights', () => {
  test('a cloth says why it stands where it does by the weights of now', async () => {
    const { store } = await deskOf({ rank: 'unexpected' });
    const [{ found }] = store.listed() as [ReturnType<Store['listed']>[number]];
    expect(store.why(found)).toBe(found.why);
    store.show({ weights: PRESETS.easy });
    const again = await deskOf({ rank: 'easy' });
    for (const { found: cloth } of store.listed()) {
      const asked = again.store.byCode.get(cloth.code);
      if (asked === undefined) continue;
      // What follows the first semicolon tells of the nearest classic, which only the first gallery looked for.
      expect(store.why(cloth).split('; ')[0]).toBe(asked.why.split('; ')[0]);
      expect(store.rescored(cloth).scores.score).toBeCloseTo(asked.scores.score, 12);
    }
    expect(store.asAsked).toBe(false);
    store.show({ weights: PRESETS.unexpected });
    expect(store.asAsked).toBe(true);
  });
});

test('a question with a ranking that nobody knows is refused', async () => {
  const question = readQuestion({ flags: FLAGS }, () => {
    throw new Error('no draft is asked for');
  });
  const text = manifestText(manifestOf(question, await explore(question, { workers: 0 })));
  const strange = text.replace('"rank":{"contrast":3,"symmetry":2,"float":1}', '"rank":"loud"');
  expect(strange).not.toBe(text);
  expect(() => parseManifest(strange, 'gallery.json')).toThrow(
    'gallery.json: question.rank: found “loud”; expected a ready-made ranking or weights',
  );
});
