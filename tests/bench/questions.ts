// Whole questions, as a weaver asks them: user time of each over all structures, and of the largest that stay exact.
import { PRESETS } from '../../src/score/rank/presets.js';
import { explore } from '../../src/search/explore.js';
import type { Question } from '../../src/search/question/question.js';
import { structures } from '../../src/structure/catalogue/catalogue.js';
import { QUESTION } from '../search/question.js';
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

/** Seconds and user seconds of one question. */
async function asked(change: Partial<Question>): Promise<{ seconds: number; user: number; exact: boolean }> {
  const [from, began] = [userSeconds(), process.hrtime.bigint()];
  const { counts } = await explore({ ...QUESTION, ...change });
  const seconds = Number(process.hrtime.bigint() - began) / 1e9;
  return { seconds, user: userSeconds() - from, exact: counts.exhaustive };
}

/** The rows of the table: what was asked, its time, what is beside it. */
export async function* questionRows(quick: boolean): AsyncGenerator<readonly [string, string, string]> {
  for (const [name, change] of quick ? EACH.slice(0, 1) : EACH) {
    const times: { name: string; user: number }[] = [];
    for (const structure of structures) {
      times.push({ name: structure.name, user: (await asked({ ...change, structures: [structure.name] })).user });
    }
    times.sort((a, b) => b.user - a.user);
    const mean = times.reduce((sum, { user }) => sum + user, 0) / times.length;
    const long = times.filter(({ user }) => user > LONG).length;
    const most = `${times[0]!.name} ${times[0]!.user.toFixed(1)} s of user time`;
    yield [
      `${times.length} structures, ${name}: mean`,
      `${mean.toFixed(1)} s`,
      `most: ${most}; over ${LONG} s: ${long}`,
    ];
  }
  for (const [name, change] of quick ? [] : LARGE) {
    const { seconds, user, exact } = await asked(change);
    yield [name, `${seconds.toFixed(1)} s`, `${user.toFixed(1)} s of user time, ${exact ? 'exact' : 'not exact'}`];
  }
}
