import { describe, expect, it } from 'vitest';
import { drawdown } from '../../../src/cloth/drawdown.js';
import { colourFace } from '../../../src/cloth/face.js';
import type { Draft, Weave } from '../../../src/draft/draft.js';
import { DEFAULT_SETT, DEFAULT_YARNS } from '../../../src/draft/yaml/read-draft.js';
import { Problem } from '../../../src/problem.js';
import { clothKey } from '../../../src/score/symmetry/canonical-cloth.js';
import type { Question } from '../../../src/search/question/question.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { bareWeave } from '../../bare.js';

const draft = (weave: Pick<Weave, 'threading' | 'tieUp' | 'treadling'>): Draft => ({
  ...bareWeave(weave),
  yarns: DEFAULT_YARNS,
  warp: weave.threading.map(() => 0),
  weft: weave.treadling.map(() => 1),
  sett: DEFAULT_SETT,
});

/** A structure in bare numbers: begun two ends on, the treadles from the last, the shafts numbered otherwise. */
function bare(name: string, profile: string, manner: string, shaftOf: (shaft: number) => number): Draft {
  const { threading, tieUp, treadling } = weaveOf(findStructure(name), [...profile], { manner });
  return draft({
    threading: [...threading.slice(2), ...threading.slice(0, 2)].map((on) => on.map(shaftOf)),
    tieUp: tieUp.toReversed().map((shafts) => shafts.map(shaftOf)),
    treadling: treadling.map((on) => on.map((treadle) => tieUp.length + 1 - treadle)),
  });
}

const ask = (flags: Record<string, string>, own?: Draft): Question =>
  readQuestion({ flags }, () => own ?? expect.unreachable());

/** What the candidates of a question look like, and what they are woven with; cloths that cannot be laid left out. */
function woven(question: Question): { faces: string[]; drafts: Draft[] } {
  const space = spaceOf(question);
  const drafts = Array.from({ length: space.numbers }, (_, at) => at).flatMap((at) => {
    try {
      return [draftOf(space.at(at), question)];
    } catch (error) {
      // Blocks that cannot stand side by side, as in huck.
      if (!(error instanceof Problem)) throw error;
      return [];
    }
  });
  const faces = drafts.map((each) => {
    const face = colourFace(drawdown(each), each.warp, each.weft);
    return `${each.pickKinds} ${clothKey(face, question.same, question.yarns.length).join()}`;
  });
  return { faces, drafts };
}

const STRUCTURES = [
  ['overshot', 'AAABBBCCCDDD', 'rose'],
  ['crackle', 'ABCD', 'overshot manner'],
  ['summer and winter', 'AAB', 'pairs X'],
  ['monk’s belt', 'AABAB', 'as drawn in'],
  ['turned twill', 'ABB', 'broken order'],
  ['huck', 'AB', 'lace'],
] as const;
const NUMBERINGS = {
  'as it is': (shaft: number) => shaft,
  'from the back': (shaft: number) => 9 - shaft,
  mixed: (shaft: number) => ({ 1: 3, 2: 1, 3: 4, 4: 2 })[shaft] ?? shaft,
};
const CASES = STRUCTURES.flatMap((each) => Object.keys(NUMBERINGS).map((way) => [...each, way] as const));

describe('by block on a draft of bare numbers', () => {
  it.each(CASES)(
    'weaves what the structure by its name weaves: %s, %s, %s, shafts %s',
    (name, profile, manner, way) => {
      const own = bare(name, profile, manner, NUMBERINGS[way as keyof typeof NUMBERINGS]);
      for (const [laying, cloths, ofHuck] of [
        [{ weft: 'same', lengths: '2-5' }, 14, 1],
        [{ weft: 'own', lengths: '3', times: '2' }, 16, 0],
      ] as const) {
        const flags = { by: 'block', ...laying };
        const found = woven(ask({ draft: 'own.wif', ...flags }, own));
        const named = woven(ask({ structure: name, treadling: manner, ...flags }));
        expect(found.faces).toEqual(named.faces);
        // Two groups of huck of a kind cannot stand side by side: A and B in turn is all that can be laid.
        expect(found.faces.length).toBe(name === 'huck' ? ofHuck : cloths);
        const shafts = new Set(own.threading.flat());
        for (const each of found.drafts) {
          for (const shaft of each.threading.flat()) expect(shafts).toContain(shaft);
          expect(each.tieUp).toEqual(own.tieUp);
        }
      }
    },
  );

  it('ties another treadle where a block asks for a shed that the draft has not', () => {
    const own = bare('summer and winter', 'AB', 'pairs X', (shaft) => shaft);
    const yarns = 'D #1f2a44, L #efe6d2, M #8a6f4d';
    const question = ask({ draft: 'own.wif', by: 'block', orders: 'DLM', yarns }, own);
    const named = ask({ structure: 'summer and winter', treadling: 'pairs X', by: 'block', orders: 'DLM', yarns });
    expect(woven(question).faces).toEqual(woven(named).faces);
    expect(woven(question).drafts[0]!.threading.flat()).toContain(5);
  });

  it('lays a block order that is asked for, threaded and treadled, and other manners', () => {
    const own = bare('crackle', 'ABCD', 'overshot manner', NUMBERINGS.mixed);
    const treadling = findStructure('crackle').manners.at(-1)!.name;
    const asked = { profile: 'AABC', treadled: 'A B', treadling, lengths: '3', by: 'unit' };
    expect(woven(ask({ draft: 'own.wif', ...asked }, own)).faces).toEqual(
      woven(ask({ structure: 'crackle', ...asked })).faces,
    );
  });
});

describe('where the structure of a draft is not known', () => {
  const other = draft({
    threading: [[1], [3], [1], [4], [2]],
    tieUp: [[1, 2], [3], [2, 4]],
    treadling: [[1], [2], [3], [1], [3]],
  });
  const rosepath = draft({
    threading: [1, 2, 3, 4, 1, 4, 3, 2].map((shaft) => [shaft]),
    tieUp: [[1, 2, 3], [4]],
    treadling: [[1], [2]],
  });

  it.each([
    [
      { by: 'block' },
      other,
      '--by: found “block” with own.wif, which is no structure known here and so has no blocks; expected a draft of one (see: structures), or a structure by its name',
    ],
    [
      { profile: 'A B' },
      rosepath,
      '--profile: found a profile with own.wif, which might be threaded as 1/3 rosepath or 3/1 rosepath (possible), but is treadled otherwise and so has no blocks; expected its tie-up and treadling (see: structures), or structure: 1/3 rosepath',
    ],
  ])('says what was found and what would help: %j', (flags, own, message) => {
    expect(() => ask({ draft: 'own.wif', ...flags }, own)).toThrow(message);
  });
});
