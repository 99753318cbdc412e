import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { besideFile } from '../../../src/cli/shell/files.js';
import { AT_THE_LOOM } from '../../../src/draft/point-of-view.js';
import { UNWEIGHED } from '../../../src/score/parts/parts.js';
import type { Question } from '../../../src/search/question/question.js';
import { readQuestion, resolvedQuestion } from '../../../src/search/question/read-question.js';
import { runs } from '../../long.js';
import { ask, load, loaded, wrong } from './asked.js';

const flagged = (flags: Record<string, string>, text?: string): Question =>
  readQuestion({ flags, ...(text !== undefined && { text, file: 'q.yaml' }) }, load);

describe('a question', () => {
  it('takes names of structures with commas between them, and those with a comma in the name', () => {
    const named = (structure: string): readonly string[] => flagged({ structure }).structures;
    expect(named('plain weave, overshot')).toEqual(['plain weave', 'overshot']);
    expect(named('plain weave, halvdräll, float of five,huck')).toEqual([
      'plain weave',
      'halvdräll, float of five',
      'huck',
    ]);
    expect(wrong(() => named('plain weave, halvdräll, float of six'))).toContain('no structure “float of six”');
  });

  it('has an answer to everything that is not asked', () => {
    expect(ask('structure: 2/2 twill')).toEqual({
      structures: ['2/2 twill'],
      treadlings: [],
      profile: [],
      treadled: [],
      yarns: [
        { letter: 'D', name: 'dark', hex: '#1f2a44' },
        { letter: 'L', name: 'light', hex: '#efe6d2' },
      ],
      lengths: [2, 3, 4, 5, 6],
      orders: [],
      weft: { rule: 'same' },
      tabby: 1,
      by: ['thread'],
      fill: ['solid'],
      times: [1],
      starts: 'all',
      sett: { ends: 20, picks: 20, per: 'inch' },
      limits: { float: { threads: 7 }, repeat: 400 },
      rank: { ...UNWEIGHED, contrast: 3, symmetry: 2, float: 1 },
      same: ['mirror', 'half-turn', 'exchange'],
      show: 60,
      seen: AT_THE_LOOM,
      seed: 'shedlight',
      tries: 1,
    });
  });

  it('is read in full', () => {
    const question = ask(`
structure: [Turned Twill, monks belt]
profile: A A B
yarns: { D: "#1f2a44", L: "#efe6d2", R: { colour: red, name: madder, tex: 74 } }
orders: [D L D D L, (DL)2 R]
weft: D3 L
tabby: D
by: [thread, unit]
fill: solid, alternate
times: [1, 2, 4]
starts: first
sett: { ends: 24, picks: 20, per: inch }
limits: { float: 1/2 in, repeat: 80, warp changes: 40, weft changes: 0, shuttles: 2, treadles: 10, shafts: 8 }
rank: { contrast: 3, ease: 0.5 }
same: [quarter-turn, mirror]
show: 12
seed: sampler-1
tries: 3
`);
    expect(question).toMatchObject({
      structures: ['turned twill', 'monk’s belt'],
      profile: ['A', 'A', 'B'],
      lengths: [],
      orders: [
        [0, 1, 0, 0, 1],
        [0, 1, 0, 1, 2],
      ],
      weft: { rule: 'fixed', order: [0, 0, 0, 1] },
      tabby: 0,
      by: ['thread', 'unit'],
      fill: ['solid', 'alternate'],
      times: [1, 2, 4],
      starts: 'first',
      sett: { ends: 24, picks: 20, per: 'inch' },
      limits: { repeat: 80, warpChanges: 40, weftChanges: 0, shuttles: 2, treadles: 10, shafts: 8 },
      rank: { contrast: 3, symmetry: 0, float: 0, figure: 0, ease: 0.5, novelty: 0 },
      same: ['quarter-turn', 'mirror'],
      show: 12,
      seed: 'sampler-1',
      tries: 3,
    });
    expect(question.limits.float).toEqual({ mm: 12.7 });
    expect(question.yarns[2]).toEqual({ letter: 'R', name: 'madder', hex: '#ff0000', tex: 74 });
  });

  it.each([
    ['5', [5]],
    ['2-6', [2, 3, 4, 5, 6]],
    ['2,3,5', [2, 3, 5]],
    ['[5, 2-3, 3]', [2, 3, 5]],
  ])('reads lengths %s', (text, lengths) =>
    expect(ask(`structure: crackle\nlengths: ${text}`).lengths).toEqual(lengths),
  );

  it.each([
    ['7', { threads: 7 }],
    ['1/2 in', { mm: 12.7 }],
    ['1 1/2 in', { mm: 38.1 }],
    ['0.5 in', { mm: 12.7 }],
    ['3/8in', { mm: 9.525 }],
    ['10 mm', { mm: 10 }],
    ['1.5 cm', { mm: 15 }],
  ])('reads a float of %s', (text, float) => {
    const read = ask(`structure: crackle\nlimits: { float: ${text} }`).limits.float;
    if ('threads' in float) expect(read).toEqual(float);
    else expect(read).toEqual({ mm: expect.closeTo(float.mm!, 9) });
  });

  it.each([
    ['own', { rule: 'own' }],
    ['exchange', { rule: 'exchange' }],
    ['L', { rule: 'fixed', order: [1] }],
    ['D L L', { rule: 'fixed', order: [0, 1, 1] }],
  ])('reads a weft of %s', (text, weft) => expect(ask(`structure: crackle\nweft: ${text}`).weft).toEqual(weft));

  it('takes nothing but shifts as the same cloth where asked', () => {
    expect(ask('structure: crackle\nsame: shift').same).toEqual([]);
  });

  it('takes names with commas, and several names with commas between', () => {
    expect(flagged({ structure: 'halvdräll, float of five' }).structures).toEqual(['halvdräll, float of five']);
    expect(flagged({ structure: 'plain weave, 2/2 twill, plain' }).structures).toEqual(['plain weave', '2/2 twill']);
  });

  it('finds a manner of treadling and a profile that the colours choose', () => {
    const question = ask('structure: crackle\ntreadling: Italian manner\nprofile: order');
    expect([question.treadlings, question.profile]).toEqual([['Italian manner'], 'order']);
  });

  it('drafts a name by shafts, with a table of the weaver’s own, or by blocks', () => {
    expect(ask('structure: overshot\nname draft: { text: INDIGO, letters: { Y: 4 } }').name).toEqual({
      text: 'INDIGO',
      drafts: 'usual',
      mirrored: false,
      letters: { Y: 4 },
    });
    expect(ask('structure: summer and winter\nname draft: "ABBA, mirrored"').name).toEqual({
      text: 'ABBA',
      drafts: 'usual',
      mirrored: true,
      letters: {},
    });
    expect(ask('structure: overshot\nname draft: INDIGO, draft 16').name?.drafts).toBe(16);
    expect(ask('structure: overshot\nname draft: INDIGO, all drafts').name?.drafts).toBe('all');
  });
  it('looks for a draft beside the question, and takes its yarns and sett', () => {
    loaded.length = 0;
    const question = readQuestion(
      { text: 'draft: units.yaml\nby: unit', file: 'work/q.yaml', flags: {}, beside: besideFile },
      load,
    );
    expect(loaded).toEqual(['work/units.yaml']);
    expect(question.draft?.file).toBe('units.yaml');
    expect(question.sett).toEqual({ ends: 8, picks: 8, per: 'cm' });
    expect(question.structures).toEqual([]);
  });
});

describe('what was done before', () => {
  const asked = (text: string, flags: Record<string, string> = {}) => {
    const paths: string[] = [];
    const question = readQuestion(
      { text: `structure: plain weave\n${text}`, file: 'work/q.yaml', flags, beside: besideFile },
      load,
      (files) => {
        paths.push(...files);
        return [load('units.yaml')];
      },
    );
    return { question, paths };
  };

  it('is read from files beside the question, or as a flag says from here', () => {
    const { question, paths } = asked('done: [results.yaml, ../last/kept.json]\nunlike done: 0.35\n');
    expect(paths).toEqual(['work/results.yaml', 'last/kept.json']);
    expect(question.done).toEqual({
      files: ['results.yaml', '../last/kept.json'],
      drafts: [load('units.yaml')],
      unlike: 0.35,
    });
    const again = readQuestion(
      { text: stringify(resolvedQuestion(question)), flags: {} },
      load,
      () => question.done!.drafts,
    );
    expect(again).toEqual(question);
    expect(asked('done: a.json\n', { done: 'b.json, c' }).paths).toEqual(['b.json', 'c']);
    expect(asked('').question.done).toBeUndefined();
  });

  it.each([
    ['unlike done: 0.3\n', 'work/q.yaml:2:1: found it alone; expected done too: the files that say what was'],
    [
      'done: a.json\nunlike done: 1\n',
      'work/q.yaml:3:14: found “1”; expected how unlike what was done, above 0 and below 1',
    ],
    [
      'done: a.json\nunlike done: 0\n',
      'work/q.yaml:3:14: found “0”; expected how unlike what was done, above 0 and below 1',
    ],
    ['done: []\n', 'work/q.yaml:2:7: found'],
  ])('%j is refused', (text, said) => {
    expect(() => asked(text)).toThrow(said);
  });
});

describe('flags', () => {
  it('win over what the file says, one limit at a time', () => {
    const question = flagged(
      {
        lengths: '5',
        limits: 'float 3',
        rank: 'symmetry 1',
        sett: '10/9 per cm',
        yarns: 'A red, B #fff',
        times: '1,2',
      },
      'structure: crackle\norders: [DL]\nlimits: { float: 9, repeat: 50 }\n',
    );
    expect(question).toMatchObject({
      lengths: [5],
      orders: [],
      limits: { float: { threads: 3 }, repeat: 50 },
      rank: { contrast: 0, symmetry: 1 },
      sett: { ends: 10, picks: 9, per: 'cm' },
      times: [1, 2],
    });
    expect(question.yarns.map((yarn) => yarn.letter + yarn.hex)).toEqual(['A#ff0000', 'B#ffffff']);
  });

  it('put a structure in place of a draft, and a draft in place of a structure', () => {
    expect(flagged({ structure: 'plain' }, 'draft: a.yaml').draft).toBeUndefined();
    loaded.length = 0;
    expect(flagged({ draft: 'a.yaml' }, 'structure: crackle\nprofile: A B').structures).toEqual([]);
    expect(loaded).toEqual(['a.yaml']);
  });

  it('take several orders', () => {
    expect(flagged({ structure: 'plain', orders: 'D L D D L, DL' }).orders).toEqual([
      [0, 1, 0, 0, 1],
      [0, 1],
    ]);
  });
});

describe('what is wrong with a question is said in one sentence', () => {
  it.each([
    [
      'lengths: 5',
      /^q\.yaml:1:1: found neither structure nor draft; expected a structure, such as plain weave, .* or a draft$/,
    ],
    [
      'structure: 2/2 twil',
      /^q\.yaml:1:12: no structure “2\/2 twil”; the nearest are “2\/2 twill”, .* \(“shedlight structures” lists all\)$/,
    ],
    ['structure: [plain, crakle]', /^q\.yaml:1:20: no structure “crakle”; the nearest are “crackle”, /],
    ['structure: plain\ndraft: a.yaml', 'q.yaml:2:1: found a structure and a draft; expected one or the other'],
    [
      'structure: plain\nlenght: 5',
      /^q\.yaml:2:1: found the unknown key “lenght”; expected a key; the nearest is “lengths” \(the reference lists all\)$/,
    ],
    ['structure: plain\nlengths: 0', 'q.yaml:2:10: found “0”; expected lengths from 1 to 64, as 5, 2-6 or 2,3,5'],
    ['structure: plain\nlengths: 6-2', 'q.yaml:2:10: found “6-2”; expected lengths from 1 to 64, as 5, 2-6 or 2,3,5'],
    [
      'structure: plain\nlengths: [2, five]',
      'q.yaml:2:14: found “five”; expected lengths from 1 to 64, as 5, 2-6 or 2,3,5',
    ],
    ['structure: plain\nlengths: 2\norders: [DL]', 'q.yaml:3:1: found lengths and orders; expected one or the other'],
    [
      'structure: plain\norders: [DL, DX]',
      'q.yaml:2:14: order “DX”, place 2: found “X”, expected a yarn (D L), a bracket or a count',
    ],
    [
      'structure: plain\nweft: sam',
      'q.yaml:2:7: found “sam”; expected same, exchange, own, a letter or an order (did you mean “same”?)',
    ],
    [
      'structure: plain\nby: threads',
      'q.yaml:2:5: found “threads”; expected thread, unit or block (did you mean “thread”?)',
    ],
    ['structure: plain\nby: []', 'q.yaml:2:5: found an empty list; expected thread, unit or block'],
    ['structure: plain\nfill: [solid, dotted]', 'q.yaml:2:15: found “dotted”; expected solid, alternate or nest'],
    ['structure: plain\ntimes: 1.5', 'q.yaml:2:8: found “1.5”; expected factors from 1 to 100, as 1, 2, 4'],
    ['structure: plain\nstarts: some', 'q.yaml:2:9: found “some”; expected all, first or weft'],
    ['structure: plain\nyarns: { D: black }', 'q.yaml:2:8: found one yarn; expected at least two'],
    ['structure: plain\ntabby: X', 'q.yaml:2:8: found “X”; expected the letter of a yarn, D or L'],
    [
      'structure: turned taqueté\nprofile: A E',
      'q.yaml:2:10: profile “A E”: found “E”; expected blocks A, B, counts or brackets',
    ],
    [
      'structure: turned twill\nblocks: 5\nloom: rising, 16 shafts',
      'q.yaml:2:9: found 5 blocks of turned twill, which take 20 shafts; the loom has 16, enough for 4 blocks',
    ],
    [
      'structure: [turned twill, turned satin]\nprofile: A B C\nlimits: { shafts: 8 }',
      'q.yaml:2:10: found 3 blocks of turned twill, which take 12 shafts; the loom has 8, enough for 2 blocks',
    ],
    [
      'structure: turned twill\ntreadled: A B I',
      'q.yaml:2:11: found 9 blocks of turned twill, which take 36 shafts; expected 8 at most, on 32 shafts',
    ],
    [
      'structure: crackle\nprofile: A B Z',
      'q.yaml:2:10: found block Z without C, D or E; expected no letter left out, or “blocks: 26” beside it',
    ],
    [
      'structure: crackle\nprofile: A B\ntreadled: A F',
      'q.yaml:3:11: found block F without C, D or E; expected no letter left out, or “blocks: 6” beside it',
    ],
    ['structure: [huck, basket]\nblocks: 3', 'q.yaml:2:9: found 3 blocks of basket, which has one alone; expected 1'],
    [
      'structure: turned taqueté\nblocks: 3',
      'q.yaml:2:9: found 3 blocks of turned taqueté, which has 2 and no more; expected 2 at most',
    ],
    [
      'structure: monks belt\nblocks: 2\nloom: rising, 3 shafts',
      'q.yaml:2:9: found 2 blocks of monk’s belt, which take 4 shafts; the loom has 3, enough for 1 block',
    ],
    ['structure: plain\nsett: 0', 'q.yaml:2:7: found “0”; expected threads from 0.1 to 400'],
    [
      'structure: plain\nlimits: 7',
      'q.yaml:2:9: found “7”; expected limits such as float 1/2 in, repeat 200, warp changes 40',
    ],
    [
      'structure: plain\nlimits: { float: 1 yard }',
      'q.yaml:2:18: found “1 yard”; expected a float such as 7 (threads), 1/2 in or 10 mm',
    ],
    [
      'structure: plain\nlimits: { float: 1/0 in }',
      'q.yaml:2:18: found “1/0 in”; expected a float such as 7 (threads), 1/2 in or 10 mm',
    ],
    [
      'structure: plain\nlimits: { warp-changes: 4 }',
      'q.yaml:2:11: found the unknown key “warp-changes”; expected float, repeat, contrast, warp changes, weft changes, shuttles, treadles or shafts (did you mean “warp changes”?)',
    ],
    ['structure: plain\nlimits: { shuttles: many }', 'q.yaml:2:21: found “many”; expected shuttles from 1 to 26'],
    [
      'structure: plain\nrank: { contrst: 3 }',
      'q.yaml:2:9: found “contrst”; expected a figure; the nearest is “contrast” (the reference lists all)',
    ],
    ['structure: plain\nrank: { contrast: -1 }', 'q.yaml:2:19: found “-1”; expected a weight from 0 to 100'],
    [
      'structure: plain\nrank: contrast 0',
      'q.yaml:2:7: found no weight above 0; expected what to rank by, as contrast 3, symmetry 2, or one word: clear, balanced, calm, lively, unexpected, fine or easy',
    ],
    [
      'structure: plain\nsame: [shift, mirror]',
      'q.yaml:2:7: found “shift” beside others; expected it alone, for nothing but shifts',
    ],
    ['structure: plain\nshow: all', 'q.yaml:2:7: found “all”; expected cloths, from 1 to 1000, or one of each kind'],
    ['structure: plain\nseed:', 'q.yaml:2:1: found nothing; expected any word'],
    ['structure: plain\ntries: 0', 'q.yaml:2:8: found “0”; expected independent random runs from 1 to 1000'],
    [
      'structure: overshot\nblocks: 6\nname draft: INDIGO, all drafts',
      'q.yaml:3:13: found a choice of drafts with overshot, where each letter names a block; expected it with overshot on four shafts or a twill',
    ],
    [
      'structure: plain\nname draft: INDIGO',
      'q.yaml:2:13: found a name draft with plain weave; expected it with overshot, a straight twill on four shafts, or a structure of several blocks',
    ],
    [
      'structure: overshot\nblocks: 6\nname draft: { text: INDIGO, letters: { Y: 4 } }',
      'q.yaml:3:13: found letters with shafts with overshot, where each letter names a block; expected it with overshot on four shafts or a twill',
    ],
    [
      'structure: overshot\nname draft: { text: INDIGO, letters: { Y: 5 } }',
      'q.yaml:2:43: found “5”; expected a shaft from 1 to 4',
    ],
    [
      'structure: overshot\nname draft: { text: INDIGO, letters: 4 }',
      'q.yaml:2:38: found “4”; expected letters with shafts, as { Y: 4, Z: 4 }',
    ],
    [
      'structure: overshot\nname draft: INDIGO, backwards',
      'q.yaml:2:13: found “backwards”; expected all drafts, draft 3 or mirrored',
    ],
    [
      'structure: overshot\nname draft: INDIGO, draft 0',
      'q.yaml:2:13: found “0”; expected the number of a draft, from 1',
    ],
    [
      'structure: overshot\nname draft: INDIGO, draft 17',
      'q.yaml:2:13: name draft “INDIGO”: no draft 17; there are 16',
    ],
    [
      'structure: overshot\nname draft: INDIGO\nprofile: ABAB',
      'q.yaml:2:13: found a name draft beside a profile; expected one or the other',
    ],
    [
      'structure: overshot\nname draft: INDIGO\nby: block',
      'q.yaml:2:13: found a name draft beside “by: block”; expected by thread or unit',
    ],
    [
      'structure: turned twill\nname draft: ABA\nprofile: search',
      'q.yaml:3:10: found search beside a name draft; expected one or the other',
    ],
    [
      'structure: turned twill\nprofile: order\nprofile lengths: 2-4',
      'q.yaml:3:1: found lengths of profiles, but none is searched; expected profile: search',
    ],
    [
      'structure: turned twill\nprofile: search\nprofile lengths: 1',
      'q.yaml:3:18: found profiles of one element, which have one block; expected lengths from 2',
    ],
    [
      'structure: summer and winter\nblocks: 1\nprofile: search',
      'q.yaml:3:10: found search with one block of summer and winter; expected two blocks or more',
    ],
    [
      'structure: turned twill\ntreadled: search\nprofile: order',
      'q.yaml:2:11: found search beside profile: order; expected a profile, or search for both',
    ],
    [
      'draft: a.yaml\nname draft: INDIGO',
      'q.yaml:2:1: found a name draft beside a draft, which has its own threading; expected it with a structure',
    ],
    [
      'draft: a.yaml\nby: unit',
      'q.yaml:2:5: found “unit” with a draft that has no units; expected “units: 4” or the like in the draft (convert --units finds some)',
    ],
    ['draft: a.yaml\nprofile: B', 'q.yaml:2:10: profile “B”: found “B”; expected blocks A, counts or brackets'],
    ['structure: crackle\ntreadling: backwards', /^q\.yaml:2:12: crackle has no treadling “backwards”/],
  ])('%j', (text, message) => {
    const said = wrong(() => ask(text));
    if (typeof message === 'string') expect(said).toBe(message);
    else expect(said).toMatch(message);
  });

  it.each([
    [{}, /^question: found neither structure nor draft/],
    [{ structure: 'plain', lengths: 'x' }, '--lengths: found “x”; expected lengths from 1 to 64, as 5, 2-6 or 2,3,5'],
    [{ structure: 'plain', limits: 'warp changes few' }, '--limits: found “few”; expected changes from 0 to 2000'],
    [{ structure: 'plain', yarns: 'black' }, /^--yarns: found “black”; expected letters with colours/],
    [{ structure: 'plain', yarns: 'D blakc, L white' }, /^--yarns: found “blakc”, which is no colour/],
    [{ structure: 'plain', yarns: 'D /1f2a44, L white' }, /^--yarns: found “\/1f2a44”, which is no colour/],
    [{ structure: 'plain', yarns: 'D color(, L white' }, /^--yarns: found “color\(”, which is no colour/],
    [
      { structure: 'plain', rank: 'contrst' },
      '--rank: found “contrst”; expected what to rank by, as contrast 3, symmetry 2, or one word: clear, balanced, calm, lively, unexpected, fine or easy (did you mean “contrast”?)',
    ],
    [
      { structure: 'plain', orders: 'D4,L4' },
      '--orders: found D4 and L4, orders of one yarn each; expected orders of two: without the comma, D4 L4 is one',
    ],
    [
      { structure: 'plain', orders: '2a D' },
      '--orders: order “2a D”, place 2: found “a” after the count 2, expected a yarn (D L), a bracket or a count',
    ],
    [
      { structure: 'plain', weft: 'other' },
      '--weft: found “other”; expected same, exchange, own, a letter or an order',
    ],
    [
      { structure: 'plain', limits: 'float 0,5 in' },
      '--limits: found “float 0,5 in”; expected a point, as in 0.5: a comma stands between two',
    ],
  ])('flags %j', (flags, message) => {
    const said = wrong(() => flagged(flags as Record<string, string>));
    if (typeof message === 'string') expect(said).toBe(message);
    else expect(said).toMatch(message);
  });

  it('never by anything but a Problem, whatever is written', () => {
    const base =
      'structure: plain\nlengths: 2-6\nweft: own\nlimits: { float: 1/2 in }\nrank: contrast 3\nyarns: { D: red, L: "#fff" }\n';
    const part = fc.oneof(
      fc.constantFrom('', ' ', ',', '-', '/', '2', '9', 'D', 'L'),
      fc.string({ unit: 'binary', maxLength: 3 }),
    );
    const edits = fc.array(fc.tuple(fc.nat(), fc.nat(2), part), { minLength: 1, maxLength: 2 });
    const edited = (text: string, changes: readonly [number, number, string][]): string =>
      changes.reduce((so, [place, cut, put]) => {
        const at = place % (so.length + 1);
        return so.slice(0, at) + put + so.slice(at + cut);
      }, text);
    let read = 0;
    const survives = (question: () => Question): void => {
      if (wrong(question) === 'nothing was wrong') read++;
    };
    fc.assert(
      fc.property(edits, (changes) => survives(() => ask(edited(base, changes)))),
      { numRuns: runs(800) },
    );
    // What is changed and still a question is among them, or nothing but refusals would have been tried.
    expect(read).toBeGreaterThan(runs(800) / 40);
    read = 0;
    const flags = fc.constantFrom<[string, string]>(
      ['structure', 'plain'],
      ['lengths', '2-6'],
      ['orders', 'DLDDL'],
      ['weft', 'own'],
      ['yarns', 'D #1f2a44, L #efe6d2'],
      ['sett', '20/20 per inch'],
      ['limits.float', '1/2 in'],
      ['rank', 'contrast 3'],
    );
    fc.assert(
      fc.property(flags, edits, ([key, value], changes) =>
        survives(() => flagged({ structure: 'plain', [key]: edited(value, changes) })),
      ),
      { numRuns: runs(500) },
    );
    expect(read).toBeGreaterThan(runs(500) / 20);
  });

  it('keeps the prototype of everything as it is', () => {
    expect(wrong(() => ask('structure: plain\n__proto__: { show: 3 }'))).toMatch(/found the unknown key “__proto__”/);
    expect(wrong(() => ask('structure: plain\nlimits: { __proto__: 3 }'))).toMatch(/found the unknown key “__proto__”/);
    expect(wrong(() => ask('structure: plain\nrank: { __proto__: 3 }'))).toMatch(/found “__proto__”/);
    expect(({} as { show?: unknown }).show).toBeUndefined();
  });
});

describe('what weavers write otherwise is understood', () => {
  it.each([
    [{ lengths: '2 to 4' }, { lengths: '2-4' }],
    [{ lengths: '2–4' }, { lengths: '2-4' }],
    [{ sett: '20 epi' }, { sett: '20' }],
    [{ sett: '20x18' }, { sett: '20/18' }],
    [{ sett: '8/cm' }, { sett: '8 per cm' }],
    [{ sett: '8,5/8 per cm' }, { sett: '8.5/8 per cm' }],
    [{ limits: 'float ½ in' }, { limits: 'float 1/2 in' }],
    [{ limits: 'float 1⅛"' }, { limits: 'float 1 1/8 in' }],
    [{ limits: 'float: 5, repeat: 80' }, { limits: 'float 5, repeat 80' }],
    [{ rank: 'contrast, symmetry 2' }, { rank: 'contrast 1, symmetry 2' }],
    [{ loom: '4 shafts 6 treadles' }, { loom: '4 shafts, 6 treadles' }],
    [{ loom: '8 harness' }, { loom: '8 shafts' }],
    [{ orders: 'D L, (DL)x4 LD' }, { orders: 'D L, (DL)4 LD' }],
    [
      { orders: 'D;L', weft: 'own' },
      { orders: 'D, L', weft: 'own' },
    ],
  ] as Record<string, string>[][])('%j as %j', (written, usual) => {
    const read = (flags: Record<string, string> | undefined) => flagged({ structure: 'plain', ...flags });
    expect(read(written)).toEqual(read(usual));
  });
});
