import { describe, expect, test } from 'vitest';
import { ranked } from '../../../src/gallery/manifest/ranking.js';
import { passes } from '../../../src/page/store/filters.js';
import { type Part, UNWEIGHED, type Weights } from '../../../src/score/parts/parts.js';
import { PRESET_NAMES, PRESETS } from '../../../src/score/rank/presets.js';
import { exceedsFloat } from '../../../src/score/rank/rank.js';
import { explore } from '../../../src/search/explore.js';
import { readQuestion } from '../../../src/search/question/read-question.js';

const asked = { lengths: '2-4', by: 'thread,unit', times: '1,2', show: '1000' };
const said = (weights: Weights): string =>
  Object.entries(weights)
    .filter(([, weight]) => weight > 0)
    .map(([part, weight]) => `${part} ${weight}`)
    .join(', ');

/** What the command finds, ranked by it. */
async function found(flags: Record<string, string>) {
  const question = readQuestion({ flags: { ...asked, ...flags } }, () => {
    throw new Error('no draft is asked for');
  });
  return (await explore(question, { workers: 0 })).found;
}

const only = (weighed: Partial<Record<Part, number>>): Weights => ({ ...UNWEIGHED, ...weighed });

describe.each(['2/2 twill', 'turned twill', 'summer and winter'])('ranking by the page: %s', (structure) => {
  const rank = 'contrast 3, symmetry 2, float 1, novelty 0.001';
  const all = found({ structure, rank });
  /** As a ranking without contrast finds them. */
  const withFine = found({ structure, rank, limits: 'contrast 0' });

  test.each([
    ...PRESET_NAMES.map((name) => [name, PRESETS[name]] as const),
    ['ease and figure', only({ ease: 1.5, figure: 0.25 })] as const,
    ['solid alone', only({ solid: 1 })] as const,
    ['sharp and unlike', only({ sharp: 1, unlike: 2 })] as const,
  ])('is the command’s: %s', async (_, weights) => {
    const limit = { threads: 7 };
    const page = ranked(await (weights.contrast > 0 ? all : withFine), weights, limit);
    const command = await found({ structure, rank: said(weights) });
    expect(page.map((each) => each.found.code)).toEqual(command.map((each) => each.code));
    page.forEach((each, at) => {
      expect(each.score).toBeCloseTo(command[at]!.scores.score, 12);
    });
  });

  test('is the command’s under another limit for floats', async () => {
    const weights = only({ contrast: 1, float: 2 });
    const limit = { mm: 4 };
    const within = (await all).filter(({ scores }) => !exceedsFloat(scores.floats, limit));
    const command = await found({ structure, rank: said(weights), limits: 'float 4 mm' });
    expect(ranked(within, weights, limit).map((each) => each.found.code)).toEqual(command.map(({ code }) => code));
  });

  test('is the command’s under limits for changes, shuttles and repeat', async () => {
    const weights = only({ contrast: 3, symmetry: 2, float: 1 });
    const within = (await all).filter((each) => passes(each, { knots: 6, shuttles: 2, repeat: 16 }));
    const command = await found({
      structure,
      rank: said(weights),
      limits: 'warp changes 6, shuttles 2, repeat 16',
    });
    expect(ranked(within, weights, { threads: 7 }).map((each) => each.found.code)).toEqual(
      command.map(({ code }) => code),
    );
  });
});
