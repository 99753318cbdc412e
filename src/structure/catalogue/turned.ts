import { EVEN_WIDTHS } from '../../draft/draft.js';
import { type BlockWeave, blockWeave } from '../model/block-weave.js';
import type { Structure } from '../model/structure.js';
import { picks, shafts } from '../model/unit.js';

/**
 * The sheds of a weave of one end up (or down) at a pick, in blocks of `own` shafts. The other blocks run the opposite
 * way, so that no float crosses from block to block; the sheds whose names begin with s run the same way.
 */
function turnedSheds(own: number): BlockWeave['sheds'] {
  const shafts = [...'pqrstuvw'].slice(0, own);
  const allBut = (at: number): string => shafts.filter((_, shaft) => shaft !== at).join(' ');
  return Object.fromEntries([
    ...shafts.map((shaft, at) => [`*${at + 1}`, [shaft, allBut(own - 1 - at)]]),
    ...shafts.map((shaft, at) => [`s*${at + 1}`, [shaft, allBut(at)]]),
  ]);
}

const TURNED_COLOUR =
  'Warp of one colour and weft of another for a damask look; or a stripe for each block, both ways.';
const TURNED_SCALE = 'More units a block; the float stays the same.';

const turnedTwill: BlockWeave = {
  name: 'turned twill',
  aliases: ['turned twill blocks', 'twill blocks', 'kypertdräll', 'dimity twill', 'false damask'],
  about:
    'Four shafts a block: some blocks show mostly weft (1/3), the others mostly warp (3/1), and they change places. Any blocks may show together.',
  blocks: 2,
  shared: 0,
  own: 4,
  unit: 'p-q-r-s',
  sheds: { a: 'p r', b: 'q s', ...turnedSheds(4) },
  tabby: ['a', 'b'],
  manners: [
    {
      name: 'clean cuts',
      about: 'The mostly-warp half runs the other way, so that no float crosses from block to block.',
      lay: '*1 *2 *3 *4',
    },
    {
      name: 'broken order',
      about: 'Two-block false satin: no diagonal, clean cuts.',
      lay: '*1 *2 *4 *3',
    },
    {
      name: 'same twill direction',
      about: 'The diagonal runs one way through all blocks; floats reach 4 at the joins.',
      lay: 's*1 s*2 s*3 s*4',
    },
  ],
  widths: EVEN_WIDTHS,
  floatLaw:
    '3 on both faces in both systems, for every profile and any number of blocks; 4 with the same twill direction',
  colour: TURNED_COLOUR,
  scale: TURNED_SCALE,
  source: 'articles on twill blocks (Petrini); joins computed',
};

const turnedTwillOfThree: BlockWeave = {
  name: 'turned twill of three',
  aliases: ['three-shaft turned twill', 'turned jean', '1/2 and 2/1 turned twill'],
  about:
    'Three shafts a block: 1/2 twill against 2/1. More blocks on the same shafts than turned twill, in a closer cloth; no tabby.',
  blocks: 2,
  shared: 0,
  own: 3,
  unit: 'p-q-r',
  sheds: turnedSheds(3),
  manners: [
    {
      name: 'clean cuts',
      about: 'The mostly-warp half runs the other way, so that no float crosses from block to block.',
      lay: '*1 *2 *3',
    },
    {
      name: 'same twill direction',
      about: 'The diagonal runs one way through all blocks; floats reach 3 at the joins.',
      lay: 's*1 s*2 s*3',
    },
  ],
  widths: EVEN_WIDTHS,
  floatLaw:
    '2 on both faces in both systems, for every profile and any number of blocks; 3 with the same twill direction',
  colour: TURNED_COLOUR,
  scale: TURNED_SCALE,
  source: 'common practice, no source; joins computed',
};

const turnedSatin: BlockWeave = {
  name: 'turned satin',
  aliases: ['satin blocks', 'five-end turned satin', 'five-shaft damask blocks'],
  about: 'Five shafts a block: weft satin of five against warp satin of five, as in damask. No diagonal; no tabby.',
  blocks: 2,
  shared: 0,
  own: 5,
  unit: 'p-q-r-s-t',
  sheds: turnedSheds(5),
  manners: [{ name: 'clean cuts', about: 'No float crosses from block to block.', lay: '*4 *1 *3 *5 *2' }],
  widths: EVEN_WIDTHS,
  floatLaw: '4 on both faces in both systems, for every profile and any number of blocks',
  colour: TURNED_COLOUR,
  scale: TURNED_SCALE,
  source: 'satin of five, from memory; joins computed',
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
  tieUp: { P: [1, 3], Q: [2, 4], t1: [1, 2], t2: [3, 4], t3: [1, 4], t4: [2, 3] },
  tabby: ['P', 'Q'],
  manners: [
    { name: 'as drawn in', blocks: { A: { lay: picks('t1 P t2 P') }, B: { lay: picks('t1 Q t2 Q') } } },
    {
      name: 'the other ties',
      about: 'The tie picks raise 1 and 4, then 2 and 3.',
      blocks: { A: { lay: picks('t3 P t4 P') }, B: { lay: picks('t3 Q t4 Q') } },
    },
  ],
  widths: { warp: 1, ground: 1 / 3, pattern: 1 / 3, tabby: 1 / 3 },
  floatLaw: 'warp 3, weft 2, on both faces, for every profile',
  colour: 'The colour order is the block order: D L D L weaves block A, L D L D block B. The weft hardly shows.',
  scale: 'More units a block; the floats stay the same.',
  source: 'van der Hoogt (definition); floats and colours computed',
};

const turnedTaqueteByShafts: BlockWeave = {
  name: 'turned taqueté by shafts',
  aliases: ['taqueté, turned, by shafts', 'turned taqueté on more shafts'],
  about:
    'Turned taqueté with four shafts a block: dark and light ends take turns right across, and the shafts make the blocks. Any blocks may show together. One fine shuttle.',
  blocks: 2,
  shared: 0,
  own: 4,
  unit: 'p-q-r-s',
  companions: [0, 1, 0, 1],
  sheds: { P: 'p r', Q: 'q s', t1: 'p q', t2: 'r s', '*': ['p r', 'q s'] },
  tabby: ['P', 'Q'],
  manners: [{ name: 'as drawn in', lay: 't1 * t2 *' }],
  widths: turnedTaquete.widths,
  floatLaw: 'warp 3, weft 2, on both faces, for every profile and any number of blocks',
  colour:
    'Dark and light end about, right across: the blocks that show are of the first colour, the others of the second.',
  scale: 'More units a block; the floats stay the same.',
  source: 'van der Hoogt (definition); floats computed',
};

/** Weaves whose blocks turn: warp and weft, or two layers of warp, change places. */
export const TURNED: readonly Structure[] = [
  blockWeave(turnedTwill),
  turnedTwillOnFour,
  blockWeave(turnedTwillOfThree),
  blockWeave(turnedSatin),
  turnedTaquete,
  blockWeave(turnedTaqueteByShafts),
];
