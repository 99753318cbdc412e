import { describe, expect, test } from 'vitest';
import { laidAgain, motifScale, sizesOf } from '../../../src/page/store/sizes.js';
import { codeOf } from '../../../src/score/symmetry/cloth-code.js';
import { explore } from '../../../src/search/explore.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { HOUNDS_TOOTH } from '../../gallery/trial.js';

describe('every size of a motif', () => {
  test('lays the orders as the search does', async () => {
    const flags = {
      structure: 'summer and winter',
      lengths: '3',
      by: 'thread,unit',
      fill: 'solid,alternate,nest',
      times: '1,2,4',
      weft: 'own',
      limits: 'repeat 2000',
      show: '1000',
    };
    const question = readQuestion({ flags }, () => {
      throw new Error('no draft is asked for');
    });
    const { found } = await explore(question, { workers: 0 });
    expect(found.length).toBeGreaterThan(20);
    for (const each of found) expect(codeOf(laidAgain(each, each.order.times))).toBe(each.code);
    const sized = sizesOf(found[0]!);
    expect(sized.map(({ times }) => times)).toContain(found[0]!.order.times);
  });
});

describe('the scale of whole motifs', () => {
  const { sett } = HOUNDS_TOOTH;
  const thread = 25.4 / sett.ends;

  test('fits the longest repeat', () => expect(motifScale(100, 240, { sett })).toBeCloseTo(2.4, 12));
  test('shows no thread larger than can be counted with ease', () =>
    expect(motifScale(4 * thread, 240, { sett }) * thread).toBeCloseTo(10, 9));
  test('shows every thread as a point at least', () =>
    expect(motifScale(2000 * thread, 240, { sett }) * thread).toBeCloseTo(1, 9));
});
