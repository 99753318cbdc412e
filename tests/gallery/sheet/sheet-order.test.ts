import { expect, test } from 'vitest';
import { sheetOrder } from '../../../src/gallery/sheet/sheet-order.js';
import { clothDistance, descriptorOf } from '../../../src/score/likeness/descriptor.js';
import { explore } from '../../../src/search/explore.js';
import { QUESTION } from '../../search/question.js';

test('the first sheet has the best that look unlike, the others the rest, each by rank', async () => {
  const { found } = await explore({ ...QUESTION, lengths: [2, 3, 4, 5], show: 24 });
  const ordered = sheetOrder(found, 4);
  expect(ordered.toSorted((a, b) => a.rank - b.rank)).toEqual(found);
  const nearest = (codes: typeof found): number => {
    const looks = codes.map(({ draft }) => descriptorOf(draft));
    return Math.min(...looks.flatMap((a, at) => looks.slice(0, at).map((b) => clothDistance(a, b))));
  };
  const [first, rest] = [ordered.slice(0, 4), ordered.slice(4)];
  expect(first[0]).toBe(found[0]);
  expect(nearest(first)).toBeGreaterThan(2 * nearest(found.slice(0, 4)));
  for (const part of [first, rest])
    expect(part.map(({ rank }) => rank)).toEqual(part.map(({ rank }) => rank).sort((a, b) => a - b));
  expect(sheetOrder(found, 24)).toEqual(found);
});

test('no cloth of the first sheet is another one enlarged, where there are enough without', async () => {
  const { found } = await explore({ ...QUESTION, lengths: [2, 3, 4, 5], times: [1, 2, 4], show: 60 });
  const motifs = (cloths: typeof found): number =>
    new Set(cloths.map(({ order: { warp, weft, by, fill, start } }) => JSON.stringify([warp, weft, by, fill, start])))
      .size;
  expect(motifs(found.slice(0, 12))).toBeLessThan(12);
  const ordered = sheetOrder(found, 12);
  expect(motifs(ordered.slice(0, 12))).toBe(12);
  expect(ordered.toSorted((a, b) => a.rank - b.rank)).toEqual(found);
  // Where there are not, the rest of the sheet is filled with what looks least alike.
  expect(new Set(sheetOrder(found, motifs(found) + 1))).toEqual(new Set(found));
});
