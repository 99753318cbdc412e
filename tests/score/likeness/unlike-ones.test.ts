import { describe, expect, test } from 'vitest';
import { clothDistance, descriptorOf } from '../../../src/score/likeness/descriptor.js';
import { mostUnlike, unlikeOnes } from '../../../src/score/likeness/unlike-ones.js';
import { explore } from '../../../src/search/explore.js';
import { QUESTION } from '../../search/question.js';

const { found } = await explore({ ...QUESTION, lengths: [2, 3, 4, 5, 6], show: 60 });
const cloths = found.map(({ draft }) => descriptorOf(draft));

/** As the definition says it, with no thought for speed. */
function plainly(least: number, most: number): number[] {
  const chosen: number[] = [];
  cloths.forEach((cloth, at) => {
    const isFar = chosen.every((one) => clothDistance(cloths[one]!, cloth) >= least);
    if (chosen.length < most && isFar) chosen.push(at);
  });
  return chosen;
}

describe('unlike cloths', () => {
  test.each([0, 0.1, 0.2, 0.3, 0.5])('at least %d apart, the best first', (least) => {
    expect(unlikeOnes(cloths, least)).toEqual(plainly(least, cloths.length));
    expect(unlikeOnes(cloths, least, 3)).toEqual(plainly(least, 3));
  });

  test.each([1, 4, 9, 16, 60, 99])('%d of them are as far apart as the list allows', (count) => {
    const chosen = mostUnlike(cloths, count);
    expect(chosen).toHaveLength(Math.min(count, cloths.length));
    const apart = chosen.flatMap((a, at) => chosen.slice(0, at).map((b) => clothDistance(cloths[a]!, cloths[b]!)));
    const least = Math.min(1, ...apart);
    // A twentieth further, and there would be too few.
    if (count > 1) expect(plainly(least + 0.05, count).length).toBeLessThan(count);
  });
});
