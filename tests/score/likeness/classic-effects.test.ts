import { describe, expect, it, test } from 'vitest';
import { parseOrder } from '../../../src/order/order.js';
import { classicName, isLogCabin } from '../../../src/score/likeness/classic-effects.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { HOUNDS_TOOTH } from '../../gallery/trial.js';

test.each([
  ['(DL)4 (LD)4', true],
  ['(DL)24 (LD)24', true],
  // Begun elsewhere, and twice over.
  ['L (DL)3 (LD)4 D', true],
  ['L D L D L L D L D L D D', true],
  ['D L L D', false],
  ['(DL)4 (LD)3', false],
  ['D L', false],
  ['D4 L4', false],
  ['(DL)4 D D (LD)3 L L', false],
])('whether %s is a log cabin: %s', (order, is) => {
  expect(isLogCabin(parseOrder(order, HOUNDS_TOOTH.yarns))).toBe(is);
});

describe('a cloth is called by its classic name', () => {
  const woven = (structure: string, warp: string, weft = warp) => {
    const weave = weaveOf(findStructure(structure), ['A']);
    const strands = (order: string) =>
      Array.from({ length: order.length * weave.threading.length }, (_, at) =>
        'DLM'.indexOf(order[at % order.length]!),
      );
    const times = <T>(list: readonly T[], count: number): T[] => Array.from({ length: count }, () => list).flat();
    return {
      ...weave,
      threading: times(weave.threading, warp.length),
      treadling: times(weave.treadling, weft.length),
      warp: strands(warp),
      weft: strands(weft),
    };
  };

  // Names after Bell and glossaries of the trade, as in classic-effects.ts; pinwheel is common practice. Hairlines of
  // three colours on 2/1 twill: from memory.
  it.each([
    ['plain weave', 'DL', 'LD', 'hairline'],
    ['plain weave', 'DL', 'DL', 'tricot'],
    ['2/1 twill', 'DLM', 'MDL', 'hairline'],
    ['1/3 twill', 'DL', 'DL', 'tricot'],
    ['basket', 'DDLL', 'LLDD', undefined],
    ['plain weave', 'D', 'D', undefined],
    ['plain weave', 'DLLD', 'LLDD', 'pinwheel'],
    ['plain weave', 'DLDLDLLDLDLD', 'DLDLDLLDLDLD', 'log cabin'],
    ['2/2 twill', 'LD', 'DL', 'step'],
    ['2/2 twill', 'DDLLLLDD', 'DDDDLLLL', 'hound’s tooth'],
    ['2/2 twill', 'DDLL', 'DDLL', undefined],
    ['1/3 twill', 'DDDDLLLL', 'DDDDLLLL', undefined],
    ['plain weave', 'DL', 'DDLL', undefined],
  ])('%s, warp %s, weft %s: %s', (structure, warp, weft, name) => {
    expect(classicName(woven(structure, warp, weft))).toBe(name);
  });
});
