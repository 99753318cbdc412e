import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { draftLoader } from '../../../src/cli/shell/files.js';
import { drawdown, isUp } from '../../../src/cloth/drawdown.js';
import { readDraft, writeDraft } from '../../../src/draft/yaml/read-draft.js';
import { parseShortlist } from '../../../src/formats/shortlist.js';
import { storedDraft } from '../../../src/formats/stored-draft.js';
import { readQuestion, resolvedQuestion } from '../../../src/search/question/read-question.js';
import { redrawOf } from '../../../src/search/report/redraw.js';
import { draftOf, recipesOf } from '../../../src/search/space/candidate.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { inFolder, run } from '../../cli/run.js';

const POINT = [
  'threading: 1-4, 3-2',
  'tie-up: [1 2, 2 3, 3 4, 1 4]',
  'treadling: 1-4',
  'warp: D D L D L L',
  'weft: L',
  'yarns: { D: "#1f2a44", L: "#efe6d2" }',
  'units: 6',
].join('\n');

const load = (): ReturnType<typeof readDraft> => readDraft(POINT, 'loom.yaml');
const asked = (text: string, flags = {}) => readQuestion({ text, flags, file: 'q.yaml' }, load);

describe('a warp on the loom', () => {
  it('keeps threading and warp order in every candidate', () => {
    const question = asked('on the loom: loom.yaml\nlengths: 2-4');
    const space = spaceOf(question);
    expect(space.numbers).toBeGreaterThan(10);
    for (let at = 0; at < space.numbers; at++) {
      const { family, warp, weft, start } = space.at(at);
      expect(warp).toEqual([0, 0, 1, 0, 1, 1]);
      expect(start[0]).toBe(0);
      expect(family.weave(warp, weft).threading).toEqual(load().threading);
    }
  });

  it('tries every weft order from every pick: as many as all words of both colours lay', () => {
    const question = asked('on the loom: loom.yaml\ntreadling: its own\nlengths: 4');
    const space = spaceOf(question);
    const wefts = Array.from({ length: space.numbers }, (_, at) => {
      const { weft, start } = space.at(at);
      return Array.from({ length: 4 }, (_, pick) => weft[(pick - start[1] + 8) % weft.length]).join('');
    });
    expect(new Set(wefts).size).toBe(2 ** 4);
    expect(wefts).toHaveLength(2 ** 4);
  });

  it('says whether the tie-up may stay', () => {
    const said = (treadling: string): string => {
      const question = asked('on the loom: loom.yaml\nlengths: 2', { treadling });
      return recipesOf(spaceOf(question).at(0), question).recipe;
    };
    expect(said('its own')).toBe('loom.yaml, warp and tie-up on the loom, thread by thread, weft D');
    expect(said('rosepath')).toBe('loom.yaml treadled rosepath, warp and tie-up on the loom, thread by thread, weft D');
    expect(said('point on tie-up 1/3')).toBe(
      'loom.yaml treadled point on tie-up 1/3, warp on the loom with a new tie-up, thread by thread, weft D',
    );
  });

  it('reads back as it is resolved', () => {
    const question = asked('on the loom: loom.yaml');
    expect(asked(JSON.stringify(resolvedQuestion(question)))).toEqual(question);
  });

  it('tries the other manners of treadling of its structure on the very same threading', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'loom.yaml');
      const structure = findStructure('summer and winter');
      const weave = weaveOf(structure, ['A', 'A', 'B']);
      const { yarns, sett } = load();
      const warp = weave.threading.map(() => 0);
      const weft = weave.treadling.map(() => 1);
      writeFileSync(file, writeDraft({ ...weave, yarns, sett, warp, weft }));
      let question = readQuestion({ flags: { 'on the loom': file, lengths: '2' } }, draftLoader(expect.unreachable));
      const others = structure.manners.slice(1).map(({ name }) => name);
      expect(question.treadlings).toEqual(['all']);
      const tried = spaceOf(question).families.map((family) => family.manner);
      expect(tried.slice(0, others.length + 1)).toEqual(['', ...others]);
      expect(tried[others.length + 1]).toBe('as plain weave');
      question = readQuestion(
        { flags: { 'on the loom': file, lengths: '2', treadling: others.join(',') } },
        draftLoader(expect.unreachable),
      );
      const space = spaceOf(question);
      const candidate = space.at(space.numbers - 1);
      const draft = draftOf(candidate, question);
      const other = weaveOf(structure, ['A', 'A', 'B'], { manner: candidate.family.manner });
      const cloth = drawdown(draft);
      const expected = drawdown(other);
      expect(draft.threading).toEqual(other.threading);
      for (let j = 0; j < expected.picks; j++) {
        for (let i = 0; i < expected.ends; i++) expect(isUp(cloth, j, i)).toBe(isUp(expected, j, i));
      }
      const flags = redrawOf(candidate, question).filter(([flag]) => flag !== 'draft');
      const { out } = await run('draw', file, '--json', ...flags.flatMap(([flag, value]) => [`--${flag}`, value]));
      expect(JSON.parse(out).draft.treadling).toEqual(draft.treadling);
    }));

  it('treadles its own blocks in another order', () => {
    const { threading, tieUp, treadling } = weaveOf(findStructure('monk’s belt'), ['A', 'A', 'B']);
    const weave = {
      ...load(),
      threading,
      tieUp,
      treadling,
      warp: threading.map(() => 0),
      weft: treadling.map(() => 1),
    };
    const bare = { ...weave, endUnits: threading.map(() => 1), pickUnits: treadling.map(() => 1) };
    const draft = { ...bare, pickKinds: treadling.map(() => 'ground' as const) };
    const text = 'on the loom: belt.yaml\ntreadled: B B A B\nlengths: 2';
    const question = readQuestion({ text, flags: {}, file: 'q.yaml' }, () => draft);
    const space = spaceOf(question);
    const other = weaveOf(findStructure('monk’s belt'), ['A', 'A', 'B'], { treadled: ['B', 'B', 'A', 'B'] });
    const woven = space.families.map((family) => family.weave([0], [1]));
    expect(woven.map((each) => [each.threading, each.tieUp, each.treadling])).toEqual([
      [threading, other.tieUp, other.treadling],
    ]);
  });

  it.each([
    ['profile: A B', 'q.yaml:2:1: found a profile beside a warp on the loom, which has its own'],
    ['treadled: B A', 'q.yaml:2:11: profile “B A”: found “B”; expected blocks A, counts or brackets'],
    ['by: unit', 'q.yaml:2:5: found “unit” with a warp on the loom, whose threads lie as they do; expected thread'],
    ['times: 2', 'q.yaml:2:8: found “2” with a warp on the loom, whose threads lie as they do; expected 1'],
    ['warp: DL', 'q.yaml:2:1: found a warp beside a warp on the loom, which has its own; expected one or the other'],
    ['yarns: "D #000000, R #ff0000"', 'found D, R; expected yarn L among them, which is wound on the loom'],
  ])('refuses %s', (line, message) => expect(() => asked(`on the loom: loom.yaml\n${line}`)).toThrow(message));

  it('is one flag, says what is kept and tried, and every cloth of the gallery is on that warp', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'loom.yaml');
      writeFileSync(file, POINT);
      const out = join(folder, 'gallery');
      const flags = ['--lengths', '2-3', '--show', '2', '--workers', '1', '--quiet', '--out', out];
      const { code, err } = await run('explore', '--on-the-loom', file, ...flags);
      expect(code).toBe(0);
      expect(err).toContain(
        'is on the loom, so its threading and warp colours stay; tried: weft orders of 2, 3 picks, treadled as in the draft and in ',
      );
      const { candidates } = JSON.parse(readFileSync(join(out, 'gallery.json'), 'utf8'));
      expect(candidates.length).toBeGreaterThan(0);
      for (const { code, recipe } of candidates) {
        expect(recipe).toMatch(
          /loom\.yaml[\w /]*, warp (and tie-up on the loom|on the loom with a new tie-up), thread by thread, weft [DL]+/,
        );
        const kept = join(folder, `${code}.json`);
        await run('keep', out, code, '--out', kept);
        const [cloth] = parseShortlist(readFileSync(kept, 'utf8'), kept);
        expect(cloth!.draft.threading).toEqual(load().threading);
        expect(cloth!.draft.warp).toEqual(load().warp);
      }
    }));

  it.each(['its own', 'as drawn in', 'point with tabby on tie-up 2/2', 'straight on tie-up 1+2 1+3 3 2+4'])(
    'draws a cloth again from what its card says: treadled %s',
    (treadling) =>
      inFolder(async (folder) => {
        const file = join(folder, 'loom.yaml');
        writeFileSync(file, POINT);
        const question = asked('on the loom: loom.yaml\nlengths: 4', { treadling });
        const candidate = spaceOf(question).at(spaceOf(question).numbers - 1);
        expect(candidate.start[1]).toBeGreaterThan(0);
        const flags = redrawOf(candidate, question).filter(([flag]) => flag !== 'draft');
        const { out } = await run('draw', file, '--json', ...flags.flatMap(([flag, value]) => [`--${flag}`, value]));
        const draft = draftOf(candidate, question);
        const { warp, weft } = storedDraft(draft);
        const { threading, tieUp, treadling: pressed } = draft;
        expect(JSON.parse(out).draft).toMatchObject({ warp, weft, threading, tieUp, treadling: pressed });
      }),
  );
});
