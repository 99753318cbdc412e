import { letters, type Manner, PATTERN_AND_TABBY, PATTERN_WIDTHS, type Structure } from '../model/structure.js';
import { perBlock, picks, shafts } from '../model/unit.js';

const OTHER_HOUSES =
  'Houses differ on its threading, and no printed draft was at hand: this unit is inferred from a rule on binding ends.';

interface HalvdrallDraft {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly about: string;
  readonly a: string;
  readonly b: string;
  readonly float: number;
}

function halvdrall({ name, aliases, about, a, b, float }: HalvdrallDraft): Structure {
  return {
    name,
    aliases,
    about: `${about} ${OTHER_HOUSES}`,
    shafts: 4,
    blocks: ['A', 'B'],
    profile: ['A', 'A', 'B', 'B', 'A', 'B'],
    threading: { blocks: { A: { lay: shafts(a) }, B: { lay: shafts(b) } } },
    tieUp: { a: [1, 3], b: [2, 4], PA: [3, 4], PB: [1, 2] },
    tabby: ['a', 'b'],
    manners: [
      {
        name: 'as drawn in',
        kinds: PATTERN_AND_TABBY,
        blocks: perBlock(['A', 'B'], (block) => ({ lay: picks(`P${block} tabby P${block} tabby`) })),
      },
    ],
    widths: PATTERN_WIDTHS,
    floatLaw: `pattern weft ${float} on both faces, for every profile; warp 3; ground 1`,
    colour: 'Warp and ground of one colour; the pattern weft’s colour by block.',
    scale: 'More units a block; the float stays. A longer unit has a longer float.',
    source: 'inferred from a weavers’ group’s notes on binding ends (2018, 2024); floats computed',
  };
}

const HALVDRALL: readonly Structure[] = [
  halvdrall({
    name: 'halvdräll',
    aliases: ['half dräll', 'halvdrall with crossed ties'],
    about: 'Monk’s belt with a binding end in each unit, so that blocks may be as wide as one likes.',
    a: '3-2-1-2',
    b: '3-4-3-2',
    float: 3,
  }),
  halvdrall({
    name: 'halvdräll with even ties',
    aliases: ['half dräll with even ties', 'halvdräll, ties on 2 and 4'],
    about: 'The variant in which shafts 2 and 4 bind and serve both blocks, as in summer and winter.',
    a: '1-2-1-4',
    b: '3-2-3-4',
    float: 3,
  }),
  halvdrall({
    name: 'halvdräll, float of five',
    aliases: ['half dräll, float of five'],
    about: 'Halvdräll with a longer unit of six ends.',
    a: '3-2-1-2-1-2',
    b: '3-4-3-4-3-2',
    float: 5,
  }),
  halvdrall({
    name: 'halvdräll, float of seven',
    aliases: ['half dräll, float of seven'],
    about: 'Halvdräll with a longer unit of eight ends.',
    a: '3-2-1-2-1-2-1-2',
    b: '3-4-3-4-3-4-3-2',
    float: 7,
  }),
];

/** Pattern sheds of one block are named by the block and the tie that is raised: A1, A2. */
function tieOrder(name: string, about: string, blocks: readonly string[], ties: readonly number[]): Manner {
  return {
    name,
    about,
    kinds: PATTERN_AND_TABBY,
    blocks: perBlock(blocks, (block) => ({ lay: ties.flatMap((tie) => [`${block}${tie}`, 'tabby']) })),
  };
}

function summerAndWinter(count: number): Structure {
  const blocks = letters(count);
  const pattern = blocks.map((_, index) => index + 3);
  const sheds = blocks.flatMap((block, index) =>
    [1, 2].map((tie): [string, number[]] => [`${block}${tie}`, [tie, ...pattern.filter((s) => s !== index + 3)]]),
  );
  return {
    name: 'summer and winter',
    aliases: ['kuvikas', 'S&W'],
    about:
      'Ties on shafts 1 and 2, one shaft more for each block: any number of blocks on two shafts more. Pattern on one face, its reverse on the other.',
    shafts: count + 2,
    blocks,
    profile: blocks,
    threading: { blocks: perBlock(blocks, (_, index) => ({ lay: [1, index + 3, 2, index + 3] })) },
    tieUp: { a: [1, 2], b: pattern, ...Object.fromEntries(sheds) },
    tabby: ['a', 'b'],
    manners: [
      tieOrder('singles', 'Ties in turn: bricks.', blocks, [1, 2]),
      tieOrder('pairs X', 'Ties 2-1-1-2.', blocks, [2, 1, 1, 2]),
      tieOrder('pairs O', 'Ties 1-2-2-1.', blocks, [1, 2, 2, 1]),
      tieOrder('columns', 'Tie 1 throughout: dukagång.', blocks, [1, 1]),
    ],
    widths: PATTERN_WIDTHS,
    floatLaw: 'pattern weft 3 on both faces, for every profile and any number of blocks; warp 3; ground 1',
    colour: 'Units of one colour; ties of one colour and pattern ends of the other; two pattern wefts in turn.',
    scale: 'More units a block; the float stays 3.',
    source: 'van der Hoogt; Sullivan; floats computed',
    withBlocks: summerAndWinter,
  };
}

/** Weaves in which tie ends bind the pattern weft, so that the float does not grow with the block. */
export const TIED: readonly Structure[] = [...HALVDRALL, summerAndWinter(2)];
