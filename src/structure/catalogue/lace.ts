import { EVEN_WIDTHS } from '../../draft/draft.js';
import { type BlockWeave, blockWeave } from '../model/block-weave.js';
import type { Manner, Structure } from '../model/structure.js';
import { perBlock, picks, shafts } from '../model/unit.js';
import { HUCK_WEAVES, SWEDISH_LACE } from './huck.js';

const msAndOs: Structure = {
  name: 'M’s and O’s',
  aliases: ['Ms and Os weave', 'sålldräll'],
  about:
    'Blocks of eight ends: while one weaves ribs the others weave plain, and they pull each other round. Two blocks as a rule; the third, C, slips by two threads at its joins.',
  shafts: 4,
  blocks: ['A', 'B', 'C'],
  neverTogether: 'while one weaves ribs the others weave plain; M’s and O’s with tabby can, on more shafts',
  profile: ['A', 'B'],
  threading: {
    blocks: {
      A: { lay: shafts('1-2-1-2-3-4-3-4') },
      B: { lay: shafts('1-3-1-3-2-4-2-4') },
      C: { lay: shafts('3-2-3-2-1-4-1-4') },
    },
  },
  tieUp: { a: [1, 3], b: [2, 4], c: [1, 2], d: [3, 4], e: [2, 3], f: [1, 4] },
  manners: [
    {
      name: 'as drawn in',
      blocks: {
        A: { lay: picks('a b a b a b a b') },
        B: { lay: picks('c d c d c d c d') },
        C: { lay: picks('e f e f e f e f') },
      },
    },
  ],
  widths: EVEN_WIDTHS,
  floatLaw: 'weft 4, 5 beside block C, and warp 2, on both faces; no plain weave right across',
  colour: 'One colour each way, with fine outlines between units; or four and four by half units.',
  scale: 'More units a block; the floats stay.',
  source: 'Davison; van der Hoogt; Alderman (third block); floats computed',
};

const msAndOsWithTabby: BlockWeave = {
  name: 'M’s and O’s with tabby',
  aliases: ['M’s and O’s on more shafts', 'M’s and O’s on six shafts'],
  about:
    'Two shafts shared and two for each block, so that any blocks weave ribs while all others weave plain, and plain weave goes right across.',
  blocks: 2,
  shared: 2,
  own: 2,
  unit: '1-p-1-p-q-2-q-2',
  sheds: { a: '1 q', b: '2 p', '*c': ['1 p', '1 q'], '*d': ['2 q', '2 p'] },
  tabby: ['a', 'b'],
  manners: [{ name: 'as drawn in', lay: '*c *d *c *d *c *d *c *d' }],
  widths: EVEN_WIDTHS,
  floatLaw: 'weft 4, warp 2, on both faces, for every profile and any number of blocks',
  colour: msAndOs.colour,
  scale: msAndOs.scale,
  source: 'computed: the smallest threading in which every block is free',
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

const spotBronson: BlockWeave = {
  name: 'spot Bronson',
  aliases: ['barleycorn', 'Bronson spot', 'spot weave'],
  about:
    'Shaft 1 carries every other end: weft spots on plain weave, any number of blocks on one shaft more. Blocks side by side that show together join their floats.',
  blocks: 3,
  profile: ['A', 'A', 'B', 'B', 'C', 'C'],
  shared: 1,
  own: 1,
  unit: '1-p',
  sheds: { a: '1', b: 'p', 's*': ['', 'p'] },
  tabby: ['a', 'b'],
  manners: [{ name: 'as drawn in', lay: 'a s*' }],
  widths: EVEN_WIDTHS,
  floatLaw:
    'weft on the face 2r + 1 for r neighbouring units that show; warp on the back 2m + 1 for m repeats of a unit of picks',
  colour: 'Ends of shaft 1 of one colour, the others of the other.',
  scale: 'The floats grow with the block.',
  source: 'Petrini; floats computed',
};

const bronsonLace: BlockWeave = {
  name: 'Bronson lace',
  aliases: ['Atwater-Bronson lace', 'Atwater-Bronson'],
  about:
    'Units of six ends with a tie on shaft 2: lace blocks of any width, any number of blocks on two shafts more, and any of them together. “.” is a plain unit.',
  blocks: 2,
  shared: 2,
  own: 1,
  unit: '1-p-1-p-1-2',
  plain: '1-2-1-2-1-2',
  sheds: { a: '1', b: '2 p', 'l*': ['2', '2 p'] },
  tabby: ['a', 'b'],
  manners: [{ name: 'as drawn in', lay: 'a l* a l* a b' }],
  widths: EVEN_WIDTHS,
  floatLaw: 'weft 5 on the face, warp 5 on the back, for every profile and any number of blocks',
  colour: 'Six and six by unit; or ends of shaft 1 of one colour and the rest of the other.',
  scale: 'More units a block; the floats stay.',
  source: 'Atwater, through articles; floats computed',
};

/** Lace and spot weaves, of one warp and one weft. */
export const LACE: readonly Structure[] = [
  ...HUCK_WEAVES,
  msAndOs,
  blockWeave(msAndOsWithTabby),
  huckWithMsAndOs,
  blockWeave(spotBronson),
  blockWeave(bronsonLace),
  SWEDISH_LACE,
];
