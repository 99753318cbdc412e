import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../src/cloth/drawdown.js';
import { colourAt, colourFace } from '../../src/cloth/face.js';
import { PARTS, UNWEIGHED } from '../../src/score/parts/parts.js';
import { PRESET_NAMES, PRESETS } from '../../src/score/rank/presets.js';
import { codeOf } from '../../src/score/symmetry/cloth-code.js';
import { answer, searched } from '../../src/search/answer.js';
import { classicsOf } from '../../src/search/evaluate/classics-for.js';
import { inThisThread } from '../../src/search/pool/pool.js';
import type { Question } from '../../src/search/question/question.js';
import { draftOf } from '../../src/search/space/candidate.js';
import { type Space, spaceOf } from '../../src/search/space/space.js';
import type { Outcome } from '../../src/search/strategy/outcome.js';
import { runs } from '../long.js';
import { nameOf, ranked } from '../plain/ranking.js';
import { QUESTION } from './question.js';

const YARNS: Question['yarns'] = [
  ...QUESTION.yarns,
  { letter: 'M', name: 'moss', hex: '#6a7a4c' },
  { letter: 'R', name: 'rust', hex: '#a8502e' },
];

/** Rankings: those that have names, the default, and weights over any parts. */
const ranking = fc.oneof(
  fc.constant(QUESTION.rank),
  fc.constantFrom(...PRESET_NAMES.map((name) => PRESETS[name])),
  fc
    .dictionary(fc.constantFrom(...PARTS), fc.integer({ min: 1, max: 4 }), { minKeys: 1, maxKeys: 4 })
    .map((weights) => ({ ...UNWEIGHED, ...weights })),
);

const some = <T>(...all: readonly T[]): fc.Arbitrary<T[]> => fc.subarray([...all], { minLength: 1 });

/** Small questions of every kind whose weaves the orders do not change. */
const question: fc.Arbitrary<Question> = fc
  .record({
    structures: fc.oneof(
      {
        weight: 4,
        arbitrary: fc
          .constantFrom(
            'plain weave',
            '2/2 twill',
            '1/3 twill',
            '2/1 twill',
            'basket',
            'M’s and O’s',
            'summer and winter',
          )
          .map((name) => [name]),
      },
      fc.constant(['2/2 twill', 'plain weave', '2/2 basket']),
      fc.constant(['basket', 'plain weave', '1/2 twill']),
    ),
    colours: fc.oneof({ weight: 3, arbitrary: fc.constant(2) }, fc.constantFrom(3, 4)),
    lengths: fc.constantFrom([2], [2, 3], [3], [1, 2, 4]),
    weft: fc.constantFrom<Question['weft']>(
      { rule: 'own' },
      { rule: 'same' },
      { rule: 'exchange' },
      { rule: 'fixed', order: [0, 1, 1] },
    ),
    by: some<Question['by'][number]>('thread', 'unit'),
    fill: some<Question['fill'][number]>('solid', 'alternate'),
    times: fc.constantFrom([1], [2], [1, 2]),
    starts: fc.constantFrom<Question['starts']>('all', 'first'),
    sett: fc.constantFrom<Question['sett']>(QUESTION.sett, { ends: 20, picks: 30, per: 'inch' }),
    rank: ranking,
    same: fc.subarray<Question['same'][number]>(['mirror', 'half-turn', 'quarter-turn', 'exchange']),
    show: fc.constantFrom(1, 3, 10),
    limits: fc.constantFrom<Question['limits']>(
      QUESTION.limits,
      { float: { threads: 3 }, repeat: 12 },
      { ...QUESTION.limits, warpChanges: 4, weftChanges: 6 },
      { ...QUESTION.limits, shuttles: 1 },
    ),
  })
  .map(({ colours, ...rest }) => ({ ...QUESTION, ...rest, yarns: YARNS.slice(0, colours) }));

/** The same, and such as the plain version does not know: block orders searched, warps given, starts of the weft alone. */
const anyQuestion: fc.Arbitrary<Question> = fc.oneof(
  { weight: 3, arbitrary: question },
  fc
    .record({
      asked: question,
      structures: fc.constantFrom(['turned twill'], ['summer and winter'], ['M’s and O’s']),
      threaded: fc.option(fc.record({ mirrored: fc.boolean() }), { nil: undefined }),
      treadled: fc.record({ mirrored: fc.boolean(), together: fc.constant(false) }),
      lengths: fc.constantFrom([2], [3], [2, 3]),
    })
    .map(({ asked, structures, threaded, treadled, lengths }) => ({
      ...asked,
      structures,
      lengths: [2],
      profiles: { lengths, ...(threaded ? { threaded } : { treadled }) },
    })),
  question.map((asked): Question => ({ ...asked, starts: 'weft' })),
  fc.record({ asked: question, warp: fc.constantFrom([0, 0, 1], [0, 1, 1, 0, 1]) }).map(({ asked, warp }) => ({
    ...asked,
    warp,
    weft: asked.weft.rule === 'fixed' ? asked.weft : ({ rule: 'own' } as const),
  })),
);

/** Candidates that the plain version can try in a moment. */
const small = (asked: Question, most: number): boolean => {
  const { numbers, way } = spaceOf(asked);
  return way !== 'evolved' && numbers <= most;
};

async function answered(asked: Question, way: Space['way']): Promise<Outcome> {
  return answer(asked, { ...spaceOf(asked), way }, { pool: () => inThisThread(asked) });
}

/** The best and the best of each niche, of which those that look unlike are shown. */
async function ofEachNiche(asked: Question, way: Space['way']): Promise<unknown> {
  const space = { ...spaceOf(asked), way };
  const { archive, at } = await searched(asked, space, { pool: () => inThisThread(asked) });
  return archive.bestAndOfNiches(asked.show, (index) => codeOf(draftOf(at(index), asked)));
}

/** What must be alike in every way of searching. */
function told({ counts, found }: Outcome) {
  const { float, unsound, limits } = counts.setAside;
  return {
    written: counts.written,
    examined: counts.examined,
    setAside: { float, unsound, limits },
    exhaustive: counts.exhaustive,
    shown: found.map(({ code, scores, equals, nearTwin }) => ({ code, score: scores.score, equals, nearTwin })),
  };
}

describe('every way of searching answers alike', () => {
  test('bounds find what listing finds, with the same counts', async () => {
    await fc.assert(
      fc.asyncProperty(anyQuestion, fc.boolean(), async (any, eachKind) => {
        const asked: Question = { ...any, ...(eachKind && { oneOfEachKind: true }) };
        fc.pre(small(asked, 4000));
        if (eachKind) expect(await ofEachNiche(asked, 'bounded')).toEqual(await ofEachNiche(asked, 'scored'));
        const listed = await answered(asked, 'scored');
        const bounded = await answered(asked, 'bounded');
        expect(told(bounded)).toEqual(told(listed));
        const { counts } = bounded;
        const { float, unsound, flat, limits } = counts.setAside;
        expect(counts.cloths + counts.equals + counts.cutOff + float + unsound + flat + limits).toBe(counts.examined);
        expect(listed.counts.cutOff).toBe(0);
      }),
      { numRuns: runs(25, 600) },
    );
  });

  test('listing finds what trying every cell of every word finds', async () => {
    await fc.assert(
      fc.asyncProperty(question, async (asked) => {
        fc.pre(small(asked, 40));
        const classics = classicsOf(asked);
        const families = spaceOf(asked).families;
        const plain = ranked(asked, (name) => classics(families.find(({ structure }) => structure === name)!));
        const { counts, found } = await answered({ ...asked, show: 10_000 }, 'scored');
        expect(counts.cloths).toBe(plain.length);
        const scores = new Map(plain.map(({ name, score }) => [name, score]));
        found.forEach(({ draft, scores: { score } }, place) => {
          expect(score).toBeCloseTo(plain[place]!.score, 6);
          const face = colourFace(drawdown(draft), draft.warp, draft.weft);
          const cells = draft.weft.map((_, j) => draft.warp.map((__, i) => colourAt(face, j, i)));
          expect(score).toBeCloseTo(scores.get(nameOf(cells, asked))!, 6);
        });
      }),
      { numRuns: runs(15) },
    );
  });
});

test('a cloth that another structure weaves with longer floats is counted with its equals', async () => {
  const asked: Question = {
    ...QUESTION,
    structures: ['M’s and O’s', '2/2 twill', 'basket', 'plain weave'],
    lengths: [2, 3, 4],
    by: ['thread', 'unit'],
    times: [1, 2],
    rank: { ...UNWEIGHED, float: 3, symmetry: 1, contrast: 1 },
    show: 12,
  };
  const [listed, bounded] = [await answered(asked, 'scored'), await answered(asked, 'bounded')];
  expect(told(bounded)).toEqual(told(listed));
  expect(bounded.counts.cutOff).toBeGreaterThan(0);
  expect(bounded.found.some(({ equals }) => equals > 0)).toBe(true);
});

test('another thread is started where the search is long enough to pay for it', async () => {
  const threads = async (change: Partial<Question>): Promise<number | undefined> => {
    const asked: Question = { ...QUESTION, ...change };
    let most: number | undefined;
    const pool = (worth: number): never => {
      most = worth;
      throw new Error('seen');
    };
    await expect(answer(asked, spaceOf(asked), { pool })).rejects.toThrow('seen');
    return most;
  };
  const lengths = (longest: number): number[] => Array.from({ length: longest - 1 }, (_, k) => k + 2);
  expect(await threads({ lengths: lengths(6) })).toBe(1);
  expect(await threads({ lengths: lengths(12) })).toBe(1);
  expect(await threads({ lengths: lengths(13), rank: PRESETS.unexpected })).toBe(2);
  // One restart of a search by changes takes a few seconds; many take long.
  expect(await threads({ lengths: [24] })).toBe(1);
  expect(await threads({ lengths: [24], tries: 8 })).toBe(3);
});
