import { describe, expect, test } from 'vitest';
import { doneCloths } from '../../../src/plan/results/done.js';
import { towel, twelve } from '../cloths.js';

describe('what was learnt', () => {
  test('what was done: of results what was filled in, and every list that no result is from', () => {
    const [chosen, others] = [twelve(), [towel()]];
    const files = [
      { file: 'kept.json', items: chosen },
      { file: 'gallery', items: others },
    ];
    const form = [{ code: chosen[0]!.code, stars: 3 }, { code: chosen[1]!.code }];
    expect(doneCloths([{ file: 'results.yaml', items: form }], files)).toEqual([
      { file: 'results.yaml', items: [chosen[0]] },
      { file: 'gallery', items: others },
    ]);
    expect(doneCloths([], files)).toEqual(files);
    expect(() => doneCloths([{ file: 'results.yaml', items: [{ code: 'abc', stars: 1 }] }], files)).toThrow(
      'results.yaml: found abc, which no list given with it has; expected the shortlist or gallery that it is from as well',
    );
  });
});
