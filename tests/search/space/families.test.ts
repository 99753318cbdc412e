import { describe, expect, test } from 'vitest';
import { formatOrder, nestedOrder, parseOrder } from '../../../src/order/order.js';
import { explore } from '../../../src/search/explore.js';
import type { Question } from '../../../src/search/question/question.js';
import { readQuestion, resolvedQuestion } from '../../../src/search/question/read-question.js';
import { type Candidate, draftOf, profileInLetters, recipesOf, weftOf } from '../../../src/search/space/candidate.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { parseProfile } from '../../../src/structure/catalogue/catalogue.js';
import { QUESTION } from '../question.js';

const noDraft = () => {
  throw new Error('no draft is asked for');
};
const ask = (flags: Record<string, string>): Question => readQuestion({ flags }, noDraft);

/** The one candidate of a question with a single order, from the first thread. */
function only(flags: Record<string, string>): { question: Question; candidate: Candidate } {
  const question = ask(flags);
  const [family] = familiesOf(question);
  const warp = question.orders[0]!;
  return { question, candidate: { family: family!, warp, weft: weftOf(question, warp), start: [0, 0] } };
}

function drawn(flags: Record<string, string>) {
  const { question, candidate } = only(flags);
  const draft = draftOf(candidate, question);
  const said = (strands: readonly number[]): string => formatOrder(strands, question.yarns);
  return { draft, warp: said(draft.warp), weft: said(draft.weft), recipe: recipesOf(candidate, question).recipe };
}

describe('by block the order is the profile too', () => {
  test('turned taqueté: D L D L weaves block A, L D L D block B, and one shuttle weaves both', () => {
    const { warp, weft, draft } = drawn({ structure: 'turned taqueté', profile: 'order', orders: 'DLDDL' });
    expect(warp).toBe('DLDL LDLD DLDL DLDL LDLD'.replaceAll(' ', ''));
    expect(draft.threading.flat().join('')).toBe('1234'.repeat(5));
    expect(new Set(weft)).toEqual(new Set('D'));
    const light = drawn({ structure: 'turned taqueté', profile: 'order', orders: 'DLDDL', weft: 'L' });
    expect([light.warp, new Set(light.weft)]).toEqual([warp, new Set('L')]);
  });

  test('summer and winter: units and their colours go together, pattern wefts by block', () => {
    const { warp, weft, draft } = drawn({ structure: 'summer and winter', by: 'block', orders: 'DLD', tabby: 'L' });
    expect(draft.threading.flat().join('')).toBe('132314241323');
    expect(warp).toBe('DDDDLLLLDDDD');
    expect(weft).toBe('DLDLLLLLDLDL');
  });

  test('three colours take a third block where a structure can have one, and are refused where it cannot', () => {
    const yarns = 'D #1f2a44, L #efe6d2, M #8a6f4d';
    const { draft } = drawn({ structure: 'summer and winter', by: 'block', orders: 'DLM', yarns });
    expect(draft.threading.flat().join('')).toBe('132314241525');
    expect(() => familiesOf(ask({ structure: 'turned taqueté', by: 'block', orders: 'DLM', yarns }))).toThrow(
      'by block: turned taqueté has 2 blocks, but the orders have 3 colours; expected no more colours than blocks',
    );
  });

  test('overshot takes opposite blocks, and on opposites those that are treadled: both colours are woven', () => {
    const flags = { structure: 'overshot', by: 'block', orders: 'DDLLLDD', tabby: 'L' };
    for (const treadling of ['on opposites', 'as drawn in']) {
      const { weft, draft } = drawn({ ...flags, treadling });
      expect(draft.tieUp).toEqual([
        [1, 3],
        [2, 4],
        [3, 4],
        [1, 2],
      ]);
      expect(new Set(weft.replace(/.(.)/g, '$1'))).toEqual(new Set('L'));
      // D and L once for each letter, in two rounds for the tabby.
      expect(weft.replace(/(.)./g, '$1')).toBe('DDLLLDD'.repeat(2));
    }
    const yarns = 'D #1f2a44, L #efe6d2, M #8a6f4d';
    const three = { ...flags, treadling: 'on opposites', orders: 'DLM', yarns };
    expect(() => familiesOf(ask(three))).toThrow('overshot has 2 blocks that “on opposites” treadles, but');
  });

  test('huck: orders whose groups do not alternate are counted as limits, not left out', async () => {
    const question = { ...QUESTION, structures: ['huck'], by: ['block'] as const, weft: { rule: 'same' } as const };
    const { counts, found } = await explore({ ...question, lengths: [2, 3, 4] });
    expect(found).toHaveLength(1);
    expect(counts.setAside.limits).toBe(counts.examined - 1);
  });
});

describe('order and profile against each other', () => {
  test('an order of five over two blocks comes back after ten units', () => {
    const { warp, draft } = drawn({ structure: 'turned twill', profile: 'A B', by: 'unit', orders: 'DLDDL' });
    expect(draft.threading.flat().join('')).toBe('12345678'.repeat(5));
    expect(warp).toBe('DLDDLDLDDL'.replace(/./g, '$&$&$&$&'));
  });
  test('order and profile of five stand in five ways beside each other', () => {
    const question = { ...QUESTION, structures: ['summer and winter'], profile: [...'AABAB'] };
    const { strata } = spaceOf({ ...question, by: ['unit'], weft: { rule: 'same' }, orders: [[0, 1, 0, 0, 1]] });
    expect(strata[0]!.starts).toHaveLength(25);
  });
  test('a treadling of its own', () => {
    const { draft, recipe } = drawn({
      structure: 'monk’s belt',
      profile: 'A A B',
      treadled: 'A B',
      by: 'unit',
      orders: 'D',
      weft: 'D',
    });
    expect([draft.threading.length, draft.treadling.length]).toEqual([6, 8]);
    expect(recipe).toBe('monk’s belt, blocks A A B, treadled in blocks A B, D, unit by unit, weft D');
  });
  test('wide blocks are said by their runs, as they are read back', () => {
    const profile = [...'AAABBBCCCDDDDCCCBBB'];
    expect(profileInLetters(profile)).toBe('A3 B3 C3 D4 C3 B3');
    expect(parseProfile(profileInLetters(profile), ['A', 'B', 'C', 'D'])).toEqual(profile);
    expect(profileInLetters(['A', 'A', 'B'])).toBe('A A B');
  });
});

describe('nest', () => {
  test('every element is the whole order, the light ones its exchange', () => {
    expect(nestedOrder(parseOrder('DLDDL', QUESTION.yarns), 2)).toEqual(
      parseOrder('DLDDL LDLLD DLDDL DLDDL LDLLD', QUESTION.yarns),
    );
    expect(drawn({ structure: 'plain', fill: 'nest', orders: 'DLL' }).warp).toBe('DLLLDDLDD'.repeat(2));
    const { warp, recipe } = drawn({ structure: '2/2 twill', fill: 'nest', by: 'unit', orders: 'DL' });
    expect(warp).toBe('DLLD'.replace(/./g, '$&$&$&$&'));
    expect(recipe).toBe('2/2 twill, DL, unit by unit, nested, weft as warp');
  });
  test('listed by every beginning, for each nests otherwise', () => {
    const question: Question = { ...QUESTION, fill: ['nest'], lengths: [3], weft: { rule: 'same' } };
    const { strata } = spaceOf(question);
    expect(
      strata.flatMap((stratum) => stratum.warps.map((order) => formatOrder(order, question.yarns))).sort(),
    ).toEqual(['D', 'L', 'DDL', 'DLD', 'LDD', 'DLL', 'LLD', 'LDL'].sort());
  });
});

describe('a warp of its own', () => {
  test('one colour in the warp, every order in the pattern weft, the tabby in a third', async () => {
    const yarns = 'D #1f2a44, L #efe6d2, M #8a6f4d';
    const question = ask({
      structure: 'crackle',
      warp: 'L',
      tabby: 'M',
      lengths: '2',
      by: 'unit',
      yarns,
      limits: 'float 3',
    });
    expect(question.weft).toEqual({ rule: 'own' });
    const { counts, found } = await explore(question);
    expect(counts.written).toBe(9);
    for (const { draft } of found) {
      expect(new Set(draft.warp)).toEqual(new Set([1]));
      expect(new Set(draft.weft.filter((_, j) => draft.pickKinds[j] === 'tabby'))).toEqual(new Set([2]));
    }
    expect(new Set(found.map(({ order }) => order.weft)).size).toBeGreaterThan(2);
  });
});

describe('name drafts', () => {
  test('INDIGO has four gaps and so sixteen drafts, all of which are tried', () => {
    const question = ask({ structure: 'overshot', 'name draft': 'INDIGO, all drafts', orders: 'L', weft: 'D' });
    const families = familiesOf(question);
    expect(families).toHaveLength(16);
    expect(new Set(families.map((family) => family.weave([0], [0]).threading.join())).size).toBe(16);
    const [family] = familiesOf(ask({ structure: 'overshot', 'name draft': 'INDIGO', orders: 'L', weft: 'D' }));
    expect(family!.weave([0], [0]).threading.flat().join('-')).toBe('1-2-1-4-1-2-3-2-3-2');
    expect(family!.called).toMatch(/^INDIGO, draft \d+ of 16$/);
  });
  test('mirrored, one draft by its number, a table of letters of its own', () => {
    const threading = (name: string): string => {
      const [family] = familiesOf(ask({ structure: 'overshot', 'name draft': name, orders: 'L', weft: 'D' }));
      return family!.weave([0], [0]).threading.flat().join('-');
    };
    expect(threading('INDIGO, mirrored')).toBe('1-2-1-4-1-2-3-2-3-2-3-2-3-2-1-4-1-2');
    expect(threading('INDIGO, draft 1')).toBe('1-2-1-4-1-2-3-2-3-2');
    const keyed = readQuestion(
      {
        text: 'structure: overshot\nname draft: { text: ANY, letters: { Y: 4 }, mirrored: yes, drafts: all }\n',
        flags: {},
      },
      noDraft,
    );
    expect(keyed.name).toEqual({ text: 'ANY', letters: { Y: 4 }, mirrored: true, drafts: 'all' });
  });
  test.each([
    [
      { structure: 'plain weave', 'name draft': 'INDIGO' },
      'found a name draft with plain weave; expected it with overshot',
    ],
    [
      { structure: 'crackle', 'name draft': 'INDIGO, all drafts' },
      'found a choice of drafts with crackle, where each letter names',
    ],
    [{ structure: 'overshot', 'name draft': 'INDIGO, draft 17' }, 'no draft 17; there are 16'],
    [
      { structure: 'overshot', 'name draft': 'INDIGO, twice' },
      'found “twice”; expected all drafts, draft 3 or mirrored',
    ],
    [{ structure: 'overshot', 'name draft': '123' }, 'name draft “123”: found no letter from A to Z'],
    [{ structure: 'overshot', 'name draft': 'INDIGO', profile: 'AB' }, 'found a name draft beside a profile'],
    [{ structure: 'overshot', 'name draft': 'MOMOMOMOMOMOMO ACEGACEG, all' }, 'drafts; expected a shorter one'],
  ])('refuses %j', (flags, message) => expect(() => ask(flags)).toThrow(message));
});

test('what is asked reads back as it was', () => {
  const flags = {
    structure: 'overshot',
    'name draft': 'INDIGO, all drafts, mirrored',
    treadled: 'A B C D',
    warp: 'L',
    fill: 'nest',
  };
  const question = ask(flags);
  const loom = { kind: 'table', shafts: 4, heddles: [120, 120, 120, 70] } as const;
  for (const asked of [question, { ...question, loom }]) {
    const text = JSON.stringify(resolvedQuestion(asked));
    expect(readQuestion({ text, flags: {} }, noDraft)).toEqual(asked);
  }
});
