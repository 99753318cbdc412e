import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pickGroups, pickSheet, picksInRepeats } from '../../../src/plan/piece/lists.js';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { runs } from '../../long.js';
import { anyCloth, kept, needsOf } from '../cloths.js';

/** How many steps a line of the pick list says. */
function stepsSaid(line: string): number {
  const parts = [...line.matchAll(/(?:\(([^()]+)\)|([^\s()×]+))(?:×(\d+))?/g)];
  return parts.reduce(
    (sum, [, several, one, times]) => sum + (several ?? one)!.split(' ').length * Number(times ?? 1),
    0,
  );
}

describe('the pick list', () => {
  test('lists say every pick once', () => {
    fc.assert(
      fc.property(anyCloth, (made) => {
        const [warp] = planWarps([kept(made.name, made)], needsOf());
        const piece = warp!.pieces[0]!;
        const { lines, tabby } = pickSheet(piece);
        const picks = lines.reduce(
          (sum, line) => sum + (tabby === undefined ? line.to - line.from + 1 : (line.to - line.from) / 2 + 1),
          0,
        );
        expect(picks * (tabby === undefined ? 1 : 2)).toBe(piece.draft.weft.length);
        // `(1 2)×4 3` is nine steps: as many as the line has picks, and nothing is said to be done once.
        expect(lines.reduce((sum, line) => sum + stepsSaid(line.steps), 0)).toBe(picks);
        for (const line of lines) expect(line.steps).not.toMatch(/×1(?!\d)/);
      }),
      { numRuns: runs(60) },
    );
  });
});

/** The picks of one repeat as a list says them. */
function picksOf(steps: string): string[] {
  return [...steps.matchAll(/\(([^()]*)\)×(\d+)|([^/()]+)/g)].flatMap(([, block, times, one]) =>
    one !== undefined
      ? one.trim() === ''
        ? []
        : [one.trim()]
      : Array.from({ length: Number(times) }, () => block!.split(' / ')).flat(),
  );
}

test('a lift plan over nine shafts is read in one way: shafts with spaces, picks with strokes between them', () => {
  const base = kept('2/2 twill', { warp: 'D' });
  const lifts = Array.from({ length: 24 }, (_, j) => [1, 2, 10, 11, 12].filter((shaft) => (j + shaft) % 3 > 0));
  const ones = lifts.map(() => 1);
  const draft = {
    ...base.draft,
    threading: lifts.map((_, i) => [(i % 12) + 1]),
    tieUp: Array.from({ length: 12 }, (_, s) => [s + 1]),
    treadling: lifts,
    warp: ones.map(() => 0),
    weft: ones.map((_, j) => (j < 8 ? 0 : 1)),
    pickKinds: ones.map(() => base.draft.pickKinds[0]!),
    endUnits: ones,
    pickUnits: ones,
  };
  const [warp] = planWarps([{ ...base, draft }], needsOf({ loom: 'table' }));
  const { lines } = pickSheet(warp!.pieces[0]!);
  expect(lines.flatMap(({ steps }) => picksOf(steps))).toEqual(lifts.map((lift) => lift.join(' ')));
});

describe('picks in groups', () => {
  test('say treadle and yarn of every pick; steady tabby is left out', () => {
    fc.assert(
      fc.property(anyCloth, (made) => {
        const piece = planWarps([kept(made.name, made)], needsOf())[0]!.pieces[0]!;
        const groups = pickGroups(piece);
        if (groups === undefined) return;
        const { draft, tied } = piece;
        const { tabby } = pickSheet(piece);
        const said = groups.flatMap((line) => Array.from({ length: line.times }, () => line.ends).flat());
        const all = draft.weft.map((yarn, j) => `${tied.treadling[j]!.join('+')}${draft.yarns[yarn]!.letter}`);
        expect(said).toEqual(all.filter((_, j) => tabby === undefined || draft.pickKinds[j] !== 'tabby'));
      }),
      { numRuns: runs(60) },
    );
  });

  test('are not made of a lift plan, or where one yarn is on two shuttles without steady tabby', () => {
    const twill = kept('2/2 twill', { warp: 'DL' });
    expect(pickGroups(planWarps([twill], needsOf({ loom: 'table' }))[0]!.pieces[0]!)).toBeUndefined();
  });
});

test.each([
  [20, 60, '60 picks = 3 repeats of 20'],
  [20, 70, '70 picks = 3 ½ repeats of 20'],
  [20, 75, '75 picks = 3 ¾ repeats of 20'],
  [20, 72, '72 picks = 3 repeats of 20 + 12 picks'],
  [20, 21, '21 picks = 1 repeat of 20 + 1 pick'],
  [20, 10, '10 picks = ½ of a repeat of 20'],
  [116, 112, '112 picks of one repeat of 116'],
])('repeats of %i picks, counted in %i', (repeat, picks, said) => {
  const piece = planWarps([kept('2/2 twill', { warp: 'D' })], needsOf())[0]!.pieces[0]!;
  const weft = new Array<number>(repeat).fill(0);
  expect(picksInRepeats({ ...piece, picks, draft: { ...piece.draft, weft } })).toBe(said);
});

describe('tabby', () => {
  const sheet = (name: string, made = {}) =>
    pickSheet(planWarps([kept(name, { warp: 'D', weft: 'L', ...made })], needsOf())[0]!.pieces[0]!);

  test('that follows every pattern pick is said once, with its shuttle, its side and its two treadles', () => {
    const { tabby, lines } = sheet('summer and winter');
    expect(tabby!.steps).toBe('2 and 4');
    expect(['left', 'right']).toContain(tabby!.start);
    expect(lines.every(({ shuttle }) => shuttle !== tabby!.shuttle)).toBe(true);
  });

  test('is not said where there is none', () => {
    expect(sheet('2/2 twill').tabby).toBeUndefined();
    expect(sheet('plain weave').tabby).toBeUndefined();
  });
});
