import { EVEN_WIDTHS } from '../../draft/draft.js';
import type { Structure } from '../model/structure.js';
import { picks, shafts } from '../model/unit.js';

const turnedTwill: Structure = {
  name: 'turned twill',
  aliases: ['turned twill blocks', 'twill blocks', 'kypertdräll', 'dimity twill', 'false damask'],
  about:
    'Two blocks on eight shafts: one shows mostly weft (1/3), the other mostly warp (3/1), and they change places.',
  shafts: 8,
  blocks: ['A', 'B'],
  profile: ['A', 'B'],
  threading: { blocks: { A: { lay: shafts('1-2-3-4') }, B: { lay: shafts('5-6-7-8') } } },
  tieUp: {
    a: [1, 3, 5, 7],
    b: [2, 4, 6, 8],
    w1: [1, 5, 6, 7],
    w2: [2, 5, 6, 8],
    w3: [3, 5, 7, 8],
    w4: [4, 6, 7, 8],
    p1: [5, 1, 2, 3],
    p2: [6, 1, 2, 4],
    p3: [7, 1, 3, 4],
    p4: [8, 2, 3, 4],
    s1: [1, 6, 7, 8],
    s2: [2, 5, 7, 8],
    s3: [3, 5, 6, 8],
    s4: [4, 5, 6, 7],
    q1: [5, 2, 3, 4],
    q2: [6, 1, 3, 4],
    q3: [7, 1, 2, 4],
    q4: [8, 1, 2, 3],
  },
  tabby: ['a', 'b'],
  manners: [
    {
      name: 'clean cuts',
      about: 'The mostly-warp half runs the other way, so that no float crosses from block to block.',
      blocks: { A: { lay: picks('w1 w2 w3 w4') }, B: { lay: picks('p1 p2 p3 p4') } },
    },
    {
      name: 'broken order',
      about: 'Two-block false satin: no diagonal, clean cuts.',
      blocks: { A: { lay: picks('w1 w2 w4 w3') }, B: { lay: picks('p1 p2 p4 p3') } },
    },
    {
      name: 'same twill direction',
      about: 'The diagonal runs one way through both blocks; floats reach 4 at the joins.',
      blocks: { A: { lay: picks('s1 s2 s3 s4') }, B: { lay: picks('q1 q2 q3 q4') } },
    },
  ],
  widths: EVEN_WIDTHS,
  floatLaw: '3 on both faces in both systems, for every profile; 4 with the same twill direction',
  colour: 'Warp of one colour and weft of another for a damask look; or a stripe for each block, both ways.',
  scale: 'More units a block; the float stays the same.',
  source: 'articles on twill blocks (Petrini); joins computed',
};

const turnedTwillOnFour: Structure = {
  name: 'turned twill on four shafts',
  aliases: ['four-shaft turned twill', 'turned twill bands'],
  about: 'On four shafts the blocks run in the weft only: bands of 1/3 and of 3/1, right across, joined clean.',
  shafts: 4,
  blocks: ['A', 'B'],
  profile: ['A', 'B'],
  threading: { blocks: { A: { lay: shafts('1-2-3-4') }, B: { lay: shafts('1-2-3-4') } } },
  tieUp: {
    a: [1, 3],
    b: [2, 4],
    w1: [1],
    w2: [2],
    w3: [3],
    w4: [4],
    p1: [1, 2, 3],
    p2: [1, 2, 4],
    p3: [1, 3, 4],
    p4: [2, 3, 4],
  },
  tabby: ['a', 'b'],
  manners: [
    {
      name: 'clean cuts',
      about: 'The 3/1 band begins with the opposite of the pick before it and runs the other way.',
      blocks: { A: { lay: picks('w1 w2 w3 w4') }, B: { lay: picks('p1 p2 p3 p4') } },
    },
  ],
  widths: EVEN_WIDTHS,
  floatLaw: '3 on both faces in both systems',
  colour: 'The warp order gives the sideways division that the bands lack; the weft order goes with the bands.',
  scale: 'More units a band; the float stays the same.',
  source: 'articles on twill blocks (Booker, Petrini); joins computed',
};

const turnedTaquete: Structure = {
  name: 'turned taqueté',
  aliases: ['taqueté, turned', 'warp-faced taqueté'],
  about: 'A straight draw with two colours end about: odd ends and even ends take turns on the face. One fine shuttle.',
  shafts: 4,
  blocks: ['A', 'B'],
  profile: ['A', 'B'],
  threading: {
    blocks: {
      A: { lay: shafts('1-2-3-4'), companions: [0, 1, 0, 1] },
      B: { lay: shafts('1-2-3-4'), companions: [1, 0, 1, 0] },
    },
  },
  tieUp: { P: [1, 3], Q: [2, 4], t1: [1, 2], t2: [3, 4] },
  tabby: ['P', 'Q'],
  manners: [{ name: 'as drawn in', blocks: { A: { lay: picks('t1 P t2 P') }, B: { lay: picks('t1 Q t2 Q') } } }],
  widths: { warp: 1, ground: 1 / 3, pattern: 1 / 3, tabby: 1 / 3 },
  floatLaw: 'warp 3, weft 2, on both faces, for every profile',
  colour: 'The colour order is the block order: D L D L weaves block A, L D L D block B. The weft hardly shows.',
  scale: 'More units a block; the floats stay the same.',
  source: 'van der Hoogt (definition); floats and colours computed',
};

/** Weaves whose blocks turn: warp and weft, or two layers of warp, change places. */
export const TURNED: readonly Structure[] = [turnedTwill, turnedTwillOnFour, turnedTaquete];
