import { describe, expect, test } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { colourFace } from '../../../src/cloth/face.js';
import type { Draft } from '../../../src/draft/draft.js';
import { clothDistance, descriptorOf } from '../../../src/score/likeness/descriptor.js';
import { UNWEIGHED } from '../../../src/score/parts/parts.js';
import { codeOf } from '../../../src/score/symmetry/cloth-code.js';
import { differences } from '../../../src/search/checkpoint/checkpoint-format.js';
import { alreadyWoven } from '../../../src/search/evaluate/already-woven.js';
import { searchEvolved } from '../../../src/search/evolve/evolve-search.js';
import { explore } from '../../../src/search/explore.js';
import { workerPool } from '../../../src/search/pool/worker-pool.js';
import type { Question } from '../../../src/search/question/question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { Archive } from '../../../src/search/strategy/archive.js';
import type { Counts } from '../../../src/search/strategy/outcome.js';
import {
  type Search,
  type Searched,
  searchBounded,
  searchListed,
  settle,
} from '../../../src/search/strategy/strategies.js';
import { cellsOf } from '../../faces.js';
import { begunElsewhere } from '../../plain/portrait.js';
import { sameCloth } from '../../plain/symmetry.js';
import { kept } from '../../plan/cloths.js';
import { QUESTION } from '../question.js';

const ALL = 100_000;
const cells = (draft: Draft) => cellsOf(colourFace(drawdown(draft), draft.warp, draft.weft));
const drafts = (found: readonly { readonly draft: Draft }[]): Draft[] => found.map(({ draft }) => draft);
const done = (before: readonly Draft[], unlike?: number): Pick<Question, 'done'> => ({
  done: { files: ['kept.json'], drafts: before, ...(unlike !== undefined && { unlike }) },
});

/** What is left of a ranking, cloth by cloth, without a shortcut. */
function left(ranking: readonly Draft[], { same, yarns, done: asked }: Question): Draft[] {
  return ranking.filter((draft) =>
    asked!.drafts.every(
      (before) =>
        !sameCloth(cells(draft), cells(before), same, yarns.length) &&
        clothDistance(descriptorOf(draft, same), descriptorOf(before, same)) >= (asked!.unlike ?? 0),
    ),
  );
}

const total = ({ cloths, equals, setAside, cutOff }: Counts): number =>
  cloths + equals + cutOff + Object.values(setAside).reduce((sum, count) => sum + count, 0);

const QUESTIONS: [string, Partial<Question>, number | undefined][] = [
  ['the same cloths only', { lengths: [3, 6] }, undefined],
  ['and what is near', { lengths: [3, 6] }, 0.2],
  ['where nearly all is near', { lengths: [5], show: 8 }, 0.35],
  ['every kind of cloth', { lengths: [3, 6], oneOfEachKind: true, show: 1000 }, 0.15],
  ['only shifts are the same', { lengths: [3, 6], same: [] }, 0.1],
  ['quarter turns are the same too', { lengths: [3, 6], same: [...QUESTION.same, 'quarter-turn'] }, 0.15],
];

describe('what was done is left out, and the list filled with the best that is left', () => {
  test.each(QUESTIONS)('%s', async (_, change, least) => {
    const asked: Question = { ...QUESTION, show: 12, ...change };
    const whole = await explore({ ...asked, oneOfEachKind: undefined as never, show: ALL }, { workers: 1 });
    const all = drafts(whole.found);
    // What was done may have been begun on any thread.
    const before = [0, 2, 5, 9].map((at) => begunElsewhere(all[at]!, 3 * at + 1, at));
    const question: Question = { ...asked, ...done(before, least) };
    const { counts, found } = await explore(question, { workers: 1 });
    const wanted = left(all, question);
    const codes = (list: readonly Draft[]): string[] => list.map(codeOf);
    if (asked.oneOfEachKind) {
      const kinds = await explore({ ...asked, ...done(all.filter((draft) => !wanted.includes(draft))) });
      expect(codes(drafts(found))).toEqual(codes(drafts(kinds.found)));
    } else {
      expect(codes(drafts(found))).toEqual(codes(wanted.slice(0, asked.show)));
      const last = all.indexOf(wanted[asked.show - 1] ?? all.at(-1)!);
      const passed = whole.found.slice(0, last).filter(({ draft }) => !wanted.includes(draft));
      expect(counts.setAside.done).toBeGreaterThanOrEqual(passed.reduce((sum, { equals }) => sum + 1 + equals, 0));
    }
    expect(counts.examined).toBe(whole.counts.examined);
    expect(total(counts)).toBe(counts.examined);
    expect(counts.cloths + counts.equals + counts.setAside.done!).toBe(whole.counts.cloths + whole.counts.equals);
  });

  test('the same face under another draft, and in yarns of other letters or shades', async () => {
    const asked: Question = { ...QUESTION, structures: ['plain weave'], lengths: [2, 3], show: ALL };
    const all = await explore(asked, { workers: 1 });
    const made = kept('plain weave on four shafts', { warp: 'DDL', weft: 'DL' }).draft;
    const [navy, natural] = made.yarns;
    const palettes = [
      [navy!, natural!],
      [
        { ...navy!, letter: 'A' },
        { ...natural!, letter: 'B' },
      ],
      [
        { ...navy!, hex: '#5a1f1f' },
        { ...natural!, hex: '#f2f2f2' },
      ],
    ];
    for (const yarns of palettes) {
      const { counts } = await explore({ ...asked, ...done([{ ...made, yarns }]) }, { workers: 1 });
      expect(counts.cloths).toBe(all.counts.cloths - 1);
      expect(counts.setAside.done).toBeGreaterThan(0);
    }
    const stranger = { ...made, yarns: [navy!, { ...natural!, letter: 'R', hex: '#c0392b' }] };
    const { counts } = await explore({ ...asked, ...done([stranger]) }, { workers: 1 });
    expect(counts).toMatchObject({ cloths: all.counts.cloths, setAside: { done: 0 } });
  });
});

/** A search as the run sets it up. */
function searching(
  question: Question,
  numbers?: number,
): Search & { codeAt: (searched: Searched) => Promise<string[]> } {
  const space = spaceOf(question);
  const before = alreadyWoven(question);
  const newArchive: Search['newArchive'] = (at) =>
    new Archive(
      (a, b) => a - b,
      before && {
        isDone: before.isDone,
        isNear: (key, index) => before.isNear(key, () => draftOf(at(index), question)),
      },
    );
  return {
    question,
    space: numbers === undefined ? space : { ...space, numbers },
    pool: workerPool(question, 1),
    before,
    newArchive,
    progress: undefined,
    codeAt: async ({ archive, at }) => {
      await settle(archive, question, { progress: undefined });
      const code = (index: number): string => codeOf(draftOf(at(index), question));
      const kept = question.oneOfEachKind
        ? archive.bestAndOfNiches(question.show, code)
        : archive.best(question.show, code);
      return kept.map(({ index }) => code(index));
    },
  };
}

describe('the bounded search stays exact', () => {
  const asked: Question = { ...QUESTION, lengths: [2, 3, 4, 5, 6, 7], show: 10 };
  test.each([
    ['a few done', 5, undefined],
    ['the best hundreds done, more than are looked at first', 250, undefined],
    ['what is near left out too', 3, 0.2],
  ])('%s', async (_, count, least) => {
    const { found } = await explore({ ...asked, show: count }, { workers: 1 });
    const search = searching({ ...asked, ...done(drafts(found), least) });
    const listed = await searchListed(search);
    const bounded = await searchBounded(search);
    expect(await search.codeAt(bounded)).toHaveLength(10);
    expect(await search.codeAt(bounded)).toEqual(await search.codeAt(listed));
    expect(bounded.pruned).toBeGreaterThan(0);
    const eachKind = searching({ ...search.question, oneOfEachKind: true });
    const kinds = await eachKind.codeAt(await searchBounded(eachKind));
    expect(kinds.length).toBeGreaterThan(10);
    expect(kinds).toEqual(await eachKind.codeAt(await searchListed(eachKind)));
  });
});

test('a search by changes keeps nothing that is left out, and fills the list', async () => {
  const asked: Question = { ...QUESTION, lengths: [24], show: 10, rank: { ...UNWEIGHED, contrast: 3, balance: 1 } };
  const first = searching(asked, 700);
  const free = await searchEvolved(first);
  const before = free.archive.best(8, String).map(({ index }) => draftOf(free.at(index), asked));
  const question: Question = { ...asked, ...done(before, 0.15) };
  const search = searching(question, 700);
  const searched = await searchEvolved(search);
  await settle(searched.archive, question, { progress: undefined });
  const shown = searched.archive.best(10, String).map(({ index }) => draftOf(searched.at(index), question));
  expect(left(shown, question)).toEqual(shown);
  expect(shown).toHaveLength(10);
});

test('any number of threads finds the same, and what was done is a part of what is asked', async () => {
  const asked: Question = { ...QUESTION, lengths: [2, 3, 4, 5], show: 20 };
  const { found } = await explore(asked, { workers: 1 });
  const question = { ...asked, ...done(drafts(found).slice(0, 3), 0.2) };
  const one = JSON.stringify(await explore(question, { workers: 1 }));
  expect(JSON.stringify(await explore(question, { workers: 3 }))).toBe(one);
  const header = (of: Question) => ({
    program: '1',
    question: of,
    space: { way: 'scored' as const, written: 1, numbers: 1 },
  });
  expect(differences(header(question), header({ ...question, ...done(drafts(found).slice(0, 2), 0.2) }))).toEqual([
    'done',
  ]);
  expect(differences(header(question), header(structuredClone(question)))).toEqual([]);
});
