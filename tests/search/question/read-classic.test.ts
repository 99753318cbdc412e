import { describe, expect, test } from 'vitest';
import { orderOf, structureOf } from '../../../src/search/question/read-classic.js';
import { QUESTION } from '../question.js';

const YARNS = QUESTION.yarns;

describe('the name of a classic order', () => {
  test('is told by its letters where an order is asked for', () => {
    expect(() => orderOf('log cabin', YARNS)).toThrow(
      '“log cabin” is a colour order, (DL)4 (LD)4 on plain weave; expected its letters',
    );
    expect(() => orderOf('D X', YARNS)).toThrow('order “D X”, place 3: found “X”');
    expect(orderOf('(DL)4 (LD)4', YARNS)).toEqual([0, 1, 0, 1, 0, 1, 0, 1, 1, 0, 1, 0, 1, 0, 1, 0]);
  });

  test('is told by its letters where a structure is asked for', () => {
    expect(() => structureOf('shepherd’s check')).toThrow(
      '“shepherd’s check” is a colour order, D6 L6 on 2/2 twill; expected a structure, with it among the orders',
    );
    expect(() => structureOf('velvet')).toThrow('no structure “velvet”');
    expect(structureOf('“turned twill”').name).toBe('turned twill');
  });

  test('is an order where its letters are those of yarns', () => {
    const yarns = ['S', 'T', 'E', 'P'].map((letter) => ({ ...YARNS[0]!, letter }));
    expect(orderOf('STEP', yarns)).toEqual([0, 1, 2, 3]);
    expect(() => orderOf('STEP', YARNS)).toThrow('“STEP” is a colour order, D L on 2/2 twill');
  });
});
