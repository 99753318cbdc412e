import { describe, expect, it } from 'vitest';
import { couldBeAsked } from '../../../src/search/question/could-be-asked.js';
import type { Question } from '../../../src/search/question/question.js';
import { ask, load } from './asked.js';

const PLAIN = ask('structure: plain');
const DRAFTED = ask('draft: units.yaml\nby: [thread, unit]\norders: [DL, D400 L3]\nlimits: { contrast: 0.01 }');

describe('a question from a file', () => {
  it.each([
    PLAIN,
    DRAFTED,
    ask('on the loom: units.yaml\nyarns: { D: black, L: white }\nlengths: 3'),
    ask('structure: overshot\nname draft: INDIGO, all drafts, mirrored\nloom: sinking, 4 shafts, 31 in'),
    ask('structure: turned twill\nprofile: search, mirrored\nshow: one of each kind'),
    { ...PLAIN, done: { files: ['kept.json'], drafts: [load('units')], unlike: 0.35 } },
  ])('could be asked: %#', (question) => {
    expect(couldBeAsked(question)).toBe(true);
    expect(couldBeAsked(structuredClone(question))).toBe(true);
  });

  it.each<[string, object]>([
    ['a size in letters', { times: ['BAD'] }],
    ['a size beyond all', { times: [1e9] }],
    ['no structure', { structures: ['none'] }],
    ['another key', { more: 1 }],
    ['a key too few', { seen: undefined }],
    ['an order of no yarn', { orders: [[0, 7]], lengths: [] }],
    ['an order of nothing', { orders: [[]], lengths: [] }],
    ['lengths beside orders', { orders: [[0, 1]] }],
    ['ends that no loom has', { sett: { ends: 1e6, picks: 20, per: 'inch' } }],
    ['what was done, but nothing in it', { done: { files: [''], drafts: [{}] } }],
  ])('could not: %s', (_, other) => expect(couldBeAsked({ ...PLAIN, ...other } as Question)).toBe(false));

  it('could not with a draft that is none', () => {
    const draft = { ...DRAFTED.draft!.draft, tieUp: [['x']] } as never;
    expect(couldBeAsked({ ...DRAFTED, draft: { file: 'units.yaml', draft } })).toBe(false);
    expect(couldBeAsked({ ...DRAFTED, draft: {} } as never)).toBe(false);
  });
});
