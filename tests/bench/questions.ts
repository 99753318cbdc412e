// Whole questions, as a weaver asks them: user time of each over all structures, and of the largest that stay exact; and of
// some by either way of searching.
import { PRESETS } from '../../src/score/rank/presets.js';
import { answer } from '../../src/search/answer.js';
import { explore } from '../../src/search/explore.js';
import { inThisThread } from '../../src/search/pool/pool.js';
import type { Question } from '../../src/search/question/question.js';
import { type Space, spaceOf } from '../../src/search/space/space.js';
import { structures } from '../../src/structure/catalogue/catalogue.js';
import { QUESTION } from '../search/question.js';
import { MEASURED } from '../search/space/measured-ways.js';
import { userSeconds } from './measure.js';

export const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, k) => from + k);
export const THREE = [...QUESTION.yarns, { letter: 'R', name: 'madder', hex: '#a0522d' }];

/** Structures that take longer than this are named. */
const LONG = 8;

const EACH: readonly (readonly [name: string, change: Partial<Question>])[] = [
  ['own orders of 2 to 6', { lengths: range(2, 6) }],
  ['own orders of 2 to 8', { lengths: range(2, 8) }],
  ['own orders of 2 to 8, the unexpected', { lengths: range(2, 8), rank: PRESETS.unexpected }],
  [
    'weft as warp, 2 to 6, thread and unit, at three sizes',
    { lengths: range(2, 6), weft: { rule: 'same' }, by: ['thread', 'unit'], times: [1, 2, 4] },
  ],
  ['three yarns, own orders of 2 to 5', { yarns: THREE, tabby: 2, lengths: range(2, 5) }],
];

const LARGE: readonly (readonly [name: string, change: Partial<Question>])[] = [
  ['2/2 twill, own orders of 2 to 12', { lengths: range(2, 12) }],
  ['2/2 twill, own orders of 2 to 12, the unexpected', { lengths: range(2, 12), rank: PRESETS.unexpected }],
  ['2/2 twill, own orders of 2 to 14, the unexpected', { lengths: range(2, 14), rank: PRESETS.unexpected }],
  ['2/2 twill, own orders of 2 to 14, one of each kind', { lengths: range(2, 14), oneOfEachKind: true }],
  ['2/2 twill, three yarns, own orders of 2 to 8', { yarns: THREE, tabby: 2, lengths: range(2, 8) }],
  [
    'turned twill by block, own orders of 2 to 10',
    { structures: ['turned twill'], profile: 'order', lengths: range(2, 10) },
  ],
];

interface Asked {
  readonly seconds: number;
  readonly user: number;
  readonly way: Space['way'];
}

/** Seconds and user seconds of one question, and the way in which it was searched. */
async function asked(change: Partial<Question>): Promise<Asked> {
  const [from, began] = [userSeconds(), process.hrtime.bigint()];
  let way: Space['way'] = 'evolved';
  await explore(
    { ...QUESTION, ...change },
    {
      onSpace: (space) => {
        way = space.way;
      },
    },
  );
  const seconds = Number(process.hrtime.bigint() - began) / 1e9;
  return { seconds, user: userSeconds() - from, way };
}

const WAYS: Readonly<Record<Space['way'], string>> = {
  scored: 'each scored',
  bounded: 'by bounds',
  evolved: 'not exact',
};

/** The rows of the table: what was asked, its time, what is beside it. */
export async function* questionRows(quick: boolean): AsyncGenerator<readonly [string, string, string]> {
  for (const [name, change] of quick ? EACH.slice(0, 1) : EACH) {
    const times: (Asked & { readonly name: string })[] = [];
    for (const structure of structures) {
      times.push({ name: structure.name, ...(await asked({ ...change, structures: [structure.name] })) });
    }
    times.sort((a, b) => b.user - a.user);
    const mean = times.reduce((sum, { user }) => sum + user, 0) / times.length;
    const long = times.filter(({ user }) => user > LONG).map((each) => each.name);
    const most = `${times[0]!.name} ${times[0]!.user.toFixed(1)} s of user time`;
    const ways = Object.entries(WAYS).map(([way, said]) => [times.filter((each) => each.way === way).length, said]);
    const said = ways.filter(([many]) => many !== 0).map((words) => words.join(' '));
    yield [
      `${times.length} structures, ${name}: mean`,
      `${mean.toFixed(1)} s`,
      `most: ${most}; over ${LONG} s: ${long.join(', ') || 'none'}; ${said.join(', ')}`,
    ];
  }
  for (const [name, change] of quick ? [] : LARGE) {
    const { seconds, user, way } = await asked(change);
    yield [name, `${seconds.toFixed(1)} s`, `${user.toFixed(1)} s of user time, ${WAYS[way]}`];
  }
}

/** User seconds of a question in this thread by one way, the less of two times. */
async function secondsBy(question: Question, space: Space, way: Space['way']): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 2; round++) {
    const from = userSeconds();
    await answer(question, { ...space, way }, { pool: () => inThisThread(question) });
    least = Math.min(least, userSeconds() - from);
  }
  return least;
}

/** Rows of questions on either side of where bounds begin to pay: the way that is chosen, and beside it the other. */
export async function* wayRows(): AsyncGenerator<readonly [string, string, string]> {
  for (const { name, question } of MEASURED) {
    const space = spaceOf(question);
    const other = space.way === 'scored' ? 'bounded' : 'scored';
    const [chosen, beside] = [await secondsBy(question, space, space.way), await secondsBy(question, space, other)];
    const estimated = `estimated ${space.seconds.toFixed(1)} s`;
    yield [name, `${chosen.toFixed(1)} s`, `${WAYS[space.way]}, ${estimated}; ${WAYS[other]}: ${beside.toFixed(1)} s`];
  }
}
