// Where colour repeat and weave repeat share no factor, the dark share of the face is exactly u·a + (1 − u)·b: u the
// share of warp on the face, a and b the dark shares of warp and weft (common practice, no source; it follows from
// every thread meeting every other once in each standing).
import { describe, expect, test } from 'vitest';
import { drawdown } from '../../src/cloth/drawdown.js';
import { colourFace } from '../../src/cloth/face.js';
import { gcd, lcm } from '../../src/order/necklace.js';
import { contrastMeter } from '../../src/score/contrast/contrast.js';
import { findStructure, weaveOf } from '../../src/structure/catalogue/catalogue.js';

const spread = (word: string, length: number): number[] =>
  Array.from({ length }, (_, s) => (word[s % word.length] === 'D' ? 0 : 1));
const darkIn = (word: string): number => [...word].filter((letter) => letter === 'D').length / word.length;

describe('dark share of the face', () => {
  test.each([
    ['2/2 twill', 'DLDDL', 'DLDDL', 0.6],
    ['3/1 twill', 'DLDDL', 'LLDLD', 0.55],
    ['2/2 twill', 'DDDDL', 'DDDDL', 0.8],
    ['1/3 twill', 'DDL', 'DLLLLLL', undefined],
    ['basket', 'DLL', 'DDDLL', undefined],
    ['turned twill', 'DLDDL', 'DDL', undefined],
  ])('%s, warp %s, weft %s', (name, warp, weft, stated) => {
    const structure = findStructure(name);
    const cloth = drawdown(weaveOf(structure, structure.profile));
    expect(gcd(cloth.ends, warp.length)).toBe(1);
    expect(gcd(cloth.picks, weft.length)).toBe(1);
    const ends = lcm(cloth.ends, warp.length);
    const picks = lcm(cloth.picks, weft.length);
    const face = colourFace(cloth, spread(warp, ends), spread(weft, picks));
    let up = 0;
    for (let j = 0; j < cloth.picks; j++) {
      for (let i = 0; i < cloth.ends; i++) up += cloth.up[cloth.pickKind[j]! * cloth.endKinds + cloth.endKind[i]!]!;
    }
    const u = up / (cloth.ends * cloth.picks);
    const share = contrastMeter(1).measure(face, Float64Array.of(0, 1)).darkShare;
    expect(share).toBeCloseTo(u * darkIn(warp) + (1 - u) * darkIn(weft), 12);
    if (stated !== undefined) expect(share).toBeCloseTo(stated, 12);
  });
});
