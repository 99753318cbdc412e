import { describe, expect, it } from 'vitest';
import { drawdown, isUp } from '../../../src/cloth/drawdown.js';
import { type Draft, liftAt } from '../../../src/draft/draft.js';
import { readDraft } from '../../../src/draft/yaml/read-draft.js';
import { explore } from '../../../src/search/explore.js';
import type { Question } from '../../../src/search/question/question.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { waysCounted, waysInWords, waysTried } from '../../../src/search/question/treadlings-tried.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { everyTieUpOn } from '../../../src/structure/rethread/treadlings-on.js';
import { everyCloth } from '../../plain/on-the-loom.js';
import { sameCloth } from '../../plain/search.js';

/** A warp on the loom: its threading, and the tie-up and treadling of the file. */
const loom = (threading: string, more = 'tie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4') =>
  readDraft(`threading: ${threading}\n${more}`, 'loom.yaml');
const ask = (draft: ReturnType<typeof loom>, flags: Record<string, string> = {}): Question =>
  readQuestion({ flags: { 'on the loom': 'loom.yaml', ...flags } }, () => draft);
const wayCalled = (draft: ReturnType<typeof loom>, treadling: string) =>
  waysTried(ask(draft, { treadling })).map(({ weave }) => weave)[0]!;
const rowsOf = (draft: ReturnType<typeof loom>, treadling: string): string[] => {
  const cloth = drawdown(wayCalled(draft, treadling));
  return Array.from({ length: cloth.picks }, (_, j) =>
    Array.from({ length: cloth.ends }, (_, i) => (isUp(cloth, j, i) ? '#' : '.')).join(''),
  );
};

const cellsOf = (draft: Draft): number[][] => {
  const cloth = drawdown(draft);
  return draft.weft.map((weft, j) => draft.warp.map((warp, i) => (isUp(cloth, j, i) ? warp : weft)));
};

describe('other tie-ups and treadlings of a threading', () => {
  // Worked by hand from what the names mean to a weaver (common practice, no source).
  it.each([
    ['as plain weave', ['#.#.', '.#.#']],
    ['basket on tie-up 2/2', ['##..', '##..', '..##', '..##']],
    ['half basket on tie-up 2/2', ['##..', '..##']],
    ['straight on tie-up 3/1', ['###.', '.###', '#.##', '##.#']],
    ['reversed on tie-up 1/3', ['...#', '..#.', '.#..', '#...']],
    ['broken on tie-up 1/3', ['#...', '.#..', '...#', '..#.']],
    ['point on tie-up 2/2', ['##..', '.##.', '..##', '#..#', '..##', '.##.']],
    ['each pick twice on tie-up 1/3', ['#...', '#...', '.#..', '.#..', '..#.', '..#.', '...#', '...#']],
    ['point with tabby on tie-up 2/2', '##.. #.#. .##. .#.# ..## #.#. #..# .#.# ..## #.#. .##. .#.#'.split(' ')],
    ['straight on tie-up 1 2 4 3', ['#...', '.#..', '...#', '..#.']],
  ])('a straight draw, %s', (way, rows) => expect(rowsOf(loom('1-4'), way)).toEqual(rows));

  it.each([
    ['1-4, 3-2', 'as drawn in on tie-up 1/3', '1 2 3 4 3 2'],
    ['1-4, 3-2', 'rose on tie-up 1/3', '2 1 4 3 4 1'],
    ['1-4, 3-2', 'herringbone on tie-up 1/3', '1 2 3 4 1 2 3 4 2 1 4 3 2 1 4 3'],
    ['1-4, 3-2', 'rosepath on tie-up 1/3', '1 2 3 4 1 4 3 2'],
    ['1-8', 'in satin order on tie-up 1/7', '1 4 7 2 5 8 3 6'],
    ['1 3 5 7 9', 'in satin order on tie-up 1/4', '1 5 9 3 7'],
    ['1-8', 'herringbone on tie-up 1/7', '1-8, 1-8, 4-1, 8-5, 4-1, 8-5'],
  ])('threaded %s, %s: shafts %s', (threading, way, shafts) => {
    const weave = wayCalled(loom(threading), way);
    const lifts = weave.treadling.map((_, pick) => liftAt(weave, pick));
    expect(lifts).toEqual(loom(`${shafts}`).threading);
  });

  it('keeps the treadles that are tied where they have every shed', () => {
    const tied = loom('1-4', 'tie-up: [1 4, 3 4, 2 3, 1 2, 1 3]\ntreadling: 4 3 2 1');
    const point = wayCalled(tied, 'point on tie-up 2/2');
    expect([point.tieUp, point.treadling.flat()]).toEqual([tied.tieUp, [4, 3, 2, 1, 2, 3]]);
    expect(wayCalled(tied, 'as plain weave').tieUp).toEqual([
      [1, 3],
      [2, 4],
    ]);
    const feet = loom('1-4', 'tie-up: [1, 2, 3, 4]\ntreadling: 1+2 2+3 3+4 1+4');
    expect(wayCalled(feet, 'reversed on tie-up 2/2').treadling).toEqual([
      [1, 4],
      [3, 4],
      [2, 3],
      [1, 2],
    ]);
  });

  it('tries on the loom what is well known, each order of sheds once, and counts or names it', () => {
    const draft = loom('1-4');
    const question = ask(draft);
    const ways = waysTried(question);
    expect(ways[0]!.name).toBe('its own');
    expect(ways.map(({ name }) => name)).not.toContain('straight on tie-up 2/2');
    expect(ways.map(({ name }) => name)).not.toContain('as drawn in on tie-up 3/1');
    expect(waysCounted(question)).toBe(`as in the draft and in ${ways.length - 1} other ways`);
    expect(waysInWords(question)).toMatch(
      /^its own, broken, point, rosepath; on tie-ups plain weave, 2\/2, 1\/3, 3\/1: /,
    );
    expect(waysCounted(ask(draft, { treadling: 'point, its own' }))).toBe('as in the draft, point');
  });

  it('has every tie-up of four shafts, and says how many', () => {
    const question = ask(loom('1-4'), { treadling: 'every tie-up' });
    expect(waysInWords(question)).toMatch(/; straight on \d{4} other tie-ups$/);
    expect(() => ask(loom('1-8'), { treadling: 'every tie-up' })).toThrow(
      /^--treadling: found “every tie-up”; expected all, its own, as plain weave, .* … \(\d+ in all\)/,
    );
  });

  it('refuses what there is not, with the nearest', () => {
    expect(() => ask(loom('1-4'), { treadling: 'poynt on tie-up 2/2' })).toThrow('did you mean “point on tie-up 2/2”?');
    expect(() => ask(loom('1-4'), { treadling: 'as plain weave', treadled: 'A' })).toThrow('found “as plain weave”');
  });

  it('means every manner of a structure by its name', () => {
    const question = readQuestion(
      { flags: { structure: 'overshot, monk’s belt', treadling: 'all' } },
      expect.unreachable,
    );
    expect(familiesOf(question).map(({ structure, manner }) => `${structure} ${manner}`)).toEqual([
      'overshot as drawn in',
      'overshot rose',
      'overshot on opposites',
      'monk’s belt as drawn in',
    ]);
  });

  it('has none for ends on two shafts, or all on one', () => {
    for (const threading of ['1+2 3', '1']) {
      const draft = loom(threading, 'tie-up: [1, 3]\ntreadling: 1 2');
      expect(waysTried(ask(draft)).map(({ name }) => name)).toEqual(['its own']);
    }
  });
});

describe('every tie-up', () => {
  // Against the plain search of tests/plain/on-the-loom.ts: every order of sheds, every weft word, cell by cell.
  it.each([
    ['1-3', 'D D D L L L', 2],
    ['1-3', 'D D L L', 3],
    ['1 2 3 2', 'D D D L L L', 1],
    ['1 2 1 3 2 3', 'D L D L L L', 2],
  ])('on threading %s, warp %s, wefts of %d: these cloths, and no others', async (threading, warp, weft) => {
    const draft = loom(threading, `tie-up: [1, 2, 3]\ntreadling: 1-3\nwarp: ${warp}\nweft: L`);
    const treadling = everyTieUpOn(draft)
      .map(({ name }) => name)
      .join(', ');
    const question = ask(draft, { treadling, lengths: String(weft), show: '1000', limits: 'float 3' });
    const { counts, found } = await explore(question, { workers: 0 });
    const { written, setAside, cloths, equals, examined } = counts;
    expect(written).toBe(2 ** weft);
    expect(examined).toBe(cloths + equals + setAside.float + setAside.unsound + setAside.flat + setAside.limits);
    const plain = everyCloth({
      threading: draft.threading.flat(),
      shafts: 3,
      warp: draft.warp,
      picks: 3,
      weft,
      floatLimit: 3,
    });
    expect(plain.length).toBeGreaterThan(10);
    expect([found.length, cloths]).toEqual([plain.length, plain.length]);
    const faces = found.map(({ draft }) => cellsOf(draft));
    for (const cloth of plain) expect(faces.filter((face) => sameCloth(face, cloth))).toHaveLength(1);
  });
});
