import { EVEN_WIDTHS } from '../../draft/draft.js';
import { letters, type Manner, type Structure } from '../model/structure.js';
import { perBlock, picks, shafts } from '../model/unit.js';

const SIDE_BY_SIDE = (shaft: number): { never: string } => ({
  never: `two ends on shaft ${shaft} would lie side by side`,
});
const SAME_TABBY = (treadle: string): { never: string } => ({ never: `two picks of tabby ${treadle} would follow` });

/** Huck groups begin and end on tabby a (block A) or on tabby b (block B), and must alternate. */
function huckManner(name: string, about: string, a: string, b: string): Manner {
  const ofA = picks(a);
  const ofB = picks(b);
  return {
    name,
    about,
    blocks: {
      A: { lay: ofA, after: { [ofA[0]!]: SAME_TABBY(ofA[0]!) } },
      B: { lay: ofB, after: { [ofB[0]!]: SAME_TABBY(ofB[0]!) } },
    },
  };
}

const HUCK_TEXTURE = huckManner(
  'texture',
  'Weft spots in one block, plain weave in the other, and the other way about.',
  'a pA a pA a',
  'b pB b pB b',
);
const HUCK_WARP_SPOTS = huckManner(
  'warp spots',
  'As texture, with the ends floating on the face.',
  'b wA b wA b',
  'a wB a wB a',
);
const HUCK_LACE = huckManner('lace', 'Every square floats, in warp and weft by turns.', 'a d a d a', 'b c b c b');

const huck: Structure = {
  name: 'huck',
  aliases: ['huck texture', 'huckaback', 'huck weave'],
  about: 'Groups of five ends, two blocks that must alternate: raised spots on plain weave.',
  shafts: 4,
  blocks: ['A', 'B'],
  profile: ['A', 'B'],
  threading: {
    blocks: {
      A: { lay: shafts('1-2-1-2-1'), after: { 1: SIDE_BY_SIDE(1) } },
      B: { lay: shafts('4-3-4-3-4'), after: { 4: SIDE_BY_SIDE(4) } },
    },
  },
  tieUp: { a: [1, 3], b: [2, 4], pA: [4], pB: [1], wA: [1, 2, 3], wB: [2, 3, 4], c: [1, 2], d: [3, 4] },
  tabby: ['a', 'b'],
  manners: [HUCK_TEXTURE, HUCK_WARP_SPOTS, HUCK_LACE],
  widths: EVEN_WIDTHS,
  floatLaw: '5 ends in a weft spot, 5 picks in a warp spot, each on one face; lace 5 on all four counts',
  colour: 'Warp of one colour and weft of another; five and five; outer shafts of one colour, inner of the other.',
  scale: 'Not by repeating a block: with a tie end between it becomes Swedish lace.',
  source: 'articles on lace weaves; floats computed',
};

const huckLace: Structure = {
  ...huck,
  name: 'huck lace',
  aliases: ['huckaback lace', 'all-over huck lace'],
  about: 'Huck with every square floating, an openwork of five-thread groups.',
  manners: [HUCK_LACE, HUCK_TEXTURE, HUCK_WARP_SPOTS],
};

const msAndOs: Structure = {
  name: 'M’s and O’s',
  aliases: ['Ms and Os weave', 'sålldräll'],
  about: 'Two blocks of eight ends: while one weaves plain the other weaves ribs, and they pull each other round.',
  shafts: 4,
  blocks: ['A', 'B'],
  profile: ['A', 'B'],
  threading: { blocks: { A: { lay: shafts('1-2-1-2-3-4-3-4') }, B: { lay: shafts('1-3-1-3-2-4-2-4') } } },
  tieUp: { a: [1, 3], b: [2, 4], c: [1, 2], d: [3, 4] },
  manners: [
    { name: 'as drawn in', blocks: { A: { lay: picks('a b a b a b a b') }, B: { lay: picks('c d c d c d c d') } } },
  ],
  widths: EVEN_WIDTHS,
  floatLaw: 'weft 4, warp 2, on both faces; no plain weave right across',
  colour: 'One colour each way, with fine outlines between units; or four and four by half units.',
  scale: 'More units a block; the floats stay.',
  source: 'Davison; van der Hoogt; floats computed',
};

/** The outer shaft of the groups of five alternates 4, 1, whatever the block; so does the first pick of a group. */
const COMBINED_MANNERS: readonly Manner[] = [
  {
    name: 'M’s and O’s',
    about: 'Four treadles: one kind of group weaves ribs while the other weaves plain.',
    blocks: {
      X: { lay: picks('a b a b a'), after: { a: { lay: picks('b a b a b') } } },
      Y: { lay: picks('c d c d c'), after: { c: { lay: picks('d c d c d') } } },
    },
  },
  {
    name: 'huck lace',
    about: 'The same four treadles: lace in every group.',
    blocks: perBlock(['X', 'Y'], () => ({ lay: picks('a d a d a'), after: { a: { lay: picks('b c b c b') } } })),
  },
  {
    name: 'M’s and O’s with spots',
    about: 'Eight treadles in all: X as M’s and O’s, Y with weft spots in the huck groups.',
    blocks: {
      X: { lay: picks('a b a b a'), after: { a: { lay: picks('b a b a b') } } },
      Y: { lay: picks('a pA a pA a'), after: { a: { lay: picks('b pB b pB b') } } },
    },
  },
];

const huckWithMsAndOs: Structure = {
  name: 'huck with M’s and O’s',
  aliases: ['huck and M’s and O’s', 'huck combined with M’s and O’s', 'M’s and O’s with huck'],
  about:
    'Groups of five whose outer shaft alternates 4 and 1; X groups are M’s and O’s, Y groups huck. An odd number of groups takes two rounds to close.',
  shafts: 4,
  blocks: ['X', 'Y'],
  profile: ['X', 'X', 'X', 'Y', 'Y', 'Y'],
  threading: {
    starts: [1],
    blocks: {
      X: { lay: shafts('4-2-4-2-4'), after: { 4: { lay: shafts('1-3-1-3-1') } } },
      Y: { lay: shafts('4-3-4-3-4'), after: { 4: { lay: shafts('1-2-1-2-1') } } },
    },
  },
  tieUp: { a: [1, 3], b: [2, 4], c: [1, 2], d: [3, 4], pA: [4], pB: [1] },
  manners: COMBINED_MANNERS,
  widths: EVEN_WIDTHS,
  floatLaw:
    'weft 5; warp 2 woven as M’s and O’s, 5 woven as huck or with spots; no plain weave right across where X and Y meet',
  colour: 'One colour each way; five and five by group; fifteen and fifteen by section.',
  scale: 'Any number of groups, in any order; the floats stay.',
  source: 'one published towel threading; the rule and floats computed',
};

const spotBronson: Structure = {
  name: 'spot Bronson',
  aliases: ['barleycorn', 'Bronson spot', 'spot weave'],
  about: 'Shaft 1 carries every other end; three blocks of weft spots on plain weave.',
  shafts: 4,
  blocks: ['A', 'B', 'C'],
  profile: ['A', 'A', 'B', 'B', 'C', 'C'],
  threading: { blocks: perBlock(['A', 'B', 'C'], (_, index) => ({ lay: [1, index + 2] })) },
  tieUp: { a: [1], b: [2, 3, 4], sA: [3, 4], sB: [2, 4], sC: [2, 3] },
  tabby: ['a', 'b'],
  manners: [{ name: 'as drawn in', blocks: perBlock(['A', 'B', 'C'], (block) => ({ lay: ['a', `s${block}`] })) }],
  widths: EVEN_WIDTHS,
  floatLaw:
    'weft on the face 2r + 1 for r neighbouring units; warp on the back 2m + 1 for m repeats of a unit of picks',
  colour: 'Ends of shaft 1 of one colour, the others of the other.',
  scale: 'The floats grow with the block.',
  source: 'Petrini; floats computed',
};

function bronsonLace(count: number): Structure {
  const blocks = letters(count);
  const all = [2, ...blocks.map((_, index) => index + 3)];
  return {
    name: 'Bronson lace',
    aliases: ['Atwater-Bronson lace', 'Atwater-Bronson'],
    about:
      'Units of six ends with a tie on shaft 2: lace blocks of any width, any number of blocks on two shafts more.',
    shafts: count + 2,
    blocks,
    profile: blocks,
    threading: { blocks: perBlock(blocks, (_, index) => ({ lay: [1, index + 3, 1, index + 3, 1, 2] })) },
    tieUp: { a: [1], b: all, ...perBlockNamed(blocks, 'l', (index) => all.filter((shaft) => shaft !== index + 3)) },
    tabby: ['a', 'b'],
    manners: [
      { name: 'as drawn in', blocks: perBlock(blocks, (block) => ({ lay: picks(`a l${block} a l${block} a b`) })) },
    ],
    widths: EVEN_WIDTHS,
    floatLaw: 'weft 5 on the face, warp 5 on the back, for every profile',
    colour: 'Six and six by unit; or ends of shaft 1 of one colour and the rest of the other.',
    scale: 'More units a block; the floats stay.',
    source: 'Atwater, through articles; floats computed',
    withBlocks: bronsonLace,
  };
}

const swedishLace: Structure = {
  name: 'Swedish lace',
  aliases: ['swedish lace weave'],
  about:
    'Huck units that may repeat: a tie end of the other outer shaft goes between two of a kind, a tie pick likewise.',
  shafts: 4,
  blocks: ['A', 'B'],
  profile: ['A', 'A', 'A', 'B', 'B'],
  threading: {
    blocks: {
      A: { lay: shafts('1-2-1-2-1'), after: { 1: { first: [[4]] } } },
      B: { lay: shafts('4-3-4-3-4'), after: { 4: { first: [[1]] } } },
    },
  },
  tieUp: { a: [1, 3], b: [2, 4], pA: [4], pB: [1] },
  tabby: ['a', 'b'],
  manners: [
    {
      name: 'as drawn in',
      blocks: {
        A: { lay: picks('a pA a pA a'), after: { a: { first: [['b']] } } },
        B: { lay: picks('b pB b pB b'), after: { b: { first: [['a']] } } },
      },
    },
  ],
  widths: EVEN_WIDTHS,
  floatLaw: 'weft 5 on the face, warp 5 on the back, for every profile',
  colour: 'As huck: five or six ends a colour, or warp of one colour and weft of another.',
  scale: 'More units a block, with their tie ends; the floats stay.',
  source: 'one published towel draft; floats computed',
};

function perBlockNamed<T>(blocks: readonly string[], prefix: string, make: (index: number) => T): Record<string, T> {
  return Object.fromEntries(blocks.map((block, index) => [`${prefix}${block}`, make(index)]));
}

/** Lace and spot weaves, of one warp and one weft. */
export const LACE: readonly Structure[] = [
  huck,
  huckLace,
  msAndOs,
  huckWithMsAndOs,
  spotBronson,
  bronsonLace(2),
  swedishLace,
];
