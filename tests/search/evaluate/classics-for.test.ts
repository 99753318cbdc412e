import { describe, expect, test } from 'vitest';
import { measuredClassics } from '../../../src/score/score.js';
import { classicsOf } from '../../../src/search/evaluate/classics-for.js';
import type { Question } from '../../../src/search/question/question.js';
import { familiesOf } from '../../../src/search/space/families.js';
import { structures } from '../../../src/structure/catalogue/catalogue.js';
import { QUESTION } from '../question.js';

describe('the classics that a cloth is compared with', () => {
  const chosen = (name: string): Question => ({ ...QUESTION, structures: [name], profile: 'order', by: ['block'] });

  test('lie on each block once, where the order chooses the blocks', () => {
    const question = chosen('summer and winter');
    const [family] = familiesOf(question);
    expect(classicsOf(question)(family!)).toEqual(measuredClassics(family!.weave([0, 1], [0, 1]), question.sett));
  });

  test('of every structure can be so laid, as many blocks as it has', () => {
    let laid = 0;
    for (const { name, blocks } of structures) {
      const yarns = Array.from({ length: Math.min(blocks.length, 4) }, (_, k) => ({
        ...QUESTION.yarns[0]!,
        letter: 'ABCD'[k]!,
      }));
      const question: Question = { ...chosen(name), yarns };
      for (const family of familiesOf(question)) {
        expect(classicsOf(question)(family).length).toBeGreaterThan(0);
        laid++;
      }
    }
    expect(laid).toBe(structures.length);
  });

  test('are measured once for one weave', () => {
    const question = { ...QUESTION, times: [1, 2] };
    const classicsFor = classicsOf(question);
    const [one, other] = familiesOf(question);
    expect(classicsFor(one!)).toBe(classicsFor(other!));
  });

  test('are those of each weave, also of some that differ in the tie-up alone', () => {
    const question: Question = { ...QUESTION, structures: ['1/3 twill', '2/2 twill', '3/1 twill'] };
    const classicsFor = classicsOf(question);
    for (const family of familiesOf(question)) {
      expect(classicsFor(family)).toEqual(measuredClassics(family.weave([0], [0]), question.sett));
    }
  });
});
