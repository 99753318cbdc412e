import { describe, expect, test } from 'vitest';
import { figureLines } from '../../../src/cli/draw/words.js';
import { easeFigures, figuresOf } from '../../../src/gallery/html/page-figures.js';
import { scoreDraft } from '../../../src/score/score.js';
import { foundOf, HOUNDS_TOOTH, LOG_CABIN, trialQuestion } from '../trial.js';

describe('the figures of a cloth', () => {
  const valuesOf = (draft: typeof HOUNDS_TOOTH): Record<string, string> => {
    const found = foundOf(draft, 1);
    return Object.fromEntries([...figuresOf(found), ...easeFigures(found)].map(({ name, value }) => [name, value]));
  };

  test('have each a value and a meaning', () => {
    const all = [...figuresOf(foundOf(LOG_CABIN, 1)), ...easeFigures(foundOf(LOG_CABIN, 1))];
    for (const { value, meaning } of all) {
      expect(value).not.toBe('');
      expect(meaning).not.toBe('');
    }
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
    expect(valuesOf(HOUNDS_TOOTH)).toMatchObject({
      'Repeat easy to see up to': '2.3 m',
      Winding: expect.stringContaining('a separate chain per colour: no knots'),
    });
  });

  test('say where the longest float lies, and the floats of each kind of pick apart, in the words of `draw`', () => {
    // Shaft 1 of the twill is up in picks 1 and 4 of every four: its float runs on over the edge of the lifts.
    expect(valuesOf(HOUNDS_TOOTH)['Where it lies']).toBe(
      'end 1 floats over 2 picks on the face, from pick 4 on: 0.10 in as the threads lie',
    );
    expect(valuesOf(HOUNDS_TOOTH)).not.toHaveProperty('Ground weft');
    const kinds = HOUNDS_TOOTH.weft.map((_, j) => (j % 2 === 0 ? ('pattern' as const) : ('tabby' as const)));
    const woven = { ...HOUNDS_TOOTH, pickKinds: kinds };
    const values = valuesOf(woven);
    expect(values).toMatchObject({
      'Pattern weft': '2 on the face, 2 on the back',
      // These picks of a twill are no plain weave, and so no tabby.
      'Fine weft': '2 on the face, 2 on the back',
    });
    const scored = scoreDraft(woven, { weights: trialQuestion().rank, floatLimit: { threads: 7 }, classics: [] });
    const drawn = figureLines('cloth', woven, scored, { threads: 7 });
    const place = values['Where it lies']!;
    expect(drawn.some((line) => line.endsWith(`  ${place}`) && line.includes('longest float'))).toBe(true);
    expect(drawn.some((line) => /pattern weft +2 on the face, 2 on the back$/.test(line))).toBe(true);
  });
});
