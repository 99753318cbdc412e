import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { liftAt } from '../../../src/draft/draft.js';
import { planWarps } from '../../../src/plan/piece/warp-plan.js';
import { PRESETS } from '../../../src/score/rank/presets.js';
import { scoreDraft } from '../../../src/score/score.js';
import { runs } from '../../long.js';
import { columns, longest } from '../../plain/floats.js';
import { anyCloth, kept, needsOf, towel } from '../cloths.js';

describe('borders and mirrors', () => {
  const planned = (flags: Record<string, string>, cloth = towel()) => planWarps([cloth], needsOf(flags))[0]!;

  test('a mirrored treadling takes as many picks, and its cloth is the same from above and below', () => {
    const { pieces } = planned({ mirror: 'single', 'mirror weft': 'single' });
    const { draft, cloth } = pieces[0]!;
    expect(draft.weft).toHaveLength(38);
    expect(cloth.recipe).toBe('2/2 twill, DDLDL, 4 threads each, weft as warp; warp and weft mirrored, single turns');
    const { operations } = scoreDraft(draft, {
      weights: PRESETS.clear,
      floatLimit: { threads: 7 },
      classics: [],
    }).scores;
    expect(operations.map(({ op }) => op)).toEqual(expect.arrayContaining(['mirror-left-right', 'mirror-up-down']));
  });

  test('tabby goes on in turn where the pattern picks turn back', () => {
    const { draft } = planned({ 'mirror weft': 'single' }, kept('overshot', { warp: 'D', weft: 'L' })).pieces[0]!;
    const tabby = draft.treadling.filter((_, j) => draft.pickKinds[j] === 'tabby').map(String);
    expect(tabby.every((treadle, k) => treadle !== tabby[(k + 1) % tabby.length])).toBe(true);
    const pattern = draft.treadling.filter((_, j) => draft.pickKinds[j] === 'pattern').map(String);
    expect(pattern.slice(1)).toEqual(pattern.slice(1).toReversed());
  });

  test('floats are measured again, and a turn that lengthens them is told', () => {
    const { floats, cautions } = planned({ mirror: 'doubled', 'mirror weft': 'doubled' }).pieces[0]!;
    expect(floats.longest).toBe(4);
    expect(cautions).toContain('The turns lengthen the longest float from 2 to 4 threads, 0.2 in (5.1 mm).');
    expect(planned({}).pieces[0]!.cautions.join()).not.toContain('turns lengthen');
    fc.assert(
      fc.property(
        anyCloth,
        fc.constantFrom('single', 'doubled'),
        fc.constantFrom('no', 'single', 'doubled'),
        (made, warp, weft) => {
          const piece = planned({ mirror: warp, 'mirror weft': weft }, kept(made.name, made)).pieces[0]!;
          const { draft } = piece;
          const up = draft.treadling.map((_, j) =>
            draft.threading.map((on) => (on.some((shaft) => liftAt(draft, j).includes(shaft)) ? 1 : 0)),
          );
          const { warpFace, warpBack, weftFace, weftBack } = piece.floats;
          const ends = columns(up);
          expect([warpFace, warpBack]).toEqual([longest(ends, 1), longest(ends, 0)]);
          expect([weftFace, weftBack]).toEqual([longest(up, 0), longest(up, 1)]);
        },
      ),
      { numRuns: runs(25) },
    );
  });
});
