import { type BlockWeave, blockWeave } from '../model/block-weave.js';
import { PATTERN_AND_TABBY, PATTERN_WIDTHS, type Structure } from '../model/structure.js';
import { perBlock, shafts } from '../model/unit.js';

const OTHER_HOUSES =
  'Houses differ on its threading, and no printed draft was at hand: this unit is inferred from a rule on binding ends.';

const SAID_OF_HALVDRALL = {
  tabby: ['a', 'b'],
  widths: PATTERN_WIDTHS,
  colour: 'Warp and ground of one colour; the pattern weft’s colour by block.',
  scale: 'More units a block; the float stays. A longer unit has a longer float.',
  source: 'inferred from a weavers’ group’s notes on binding ends (2018, 2024); floats computed',
} as const;

const floatLawOf = (float: number): string =>
  `pattern weft ${float} on both faces, for every profile; warp 3; ground 1`;

interface HalvdrallDraft {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly about: string;
  readonly a: string;
  readonly b: string;
  readonly float: number;
  /** How it is woven with more blocks, or with blocks together; absent where it cannot be. */
  readonly more?: Larger;
}

type Larger = Pick<BlockWeave, 'about' | 'shared' | 'own' | 'unit' | 'sheds' | 'manners'>;

function halvdrall(draft: HalvdrallDraft, count = 2, together: readonly string[] = []): Structure {
  const { a, b, float, more, ...named } = draft;
  const said = { ...SAID_OF_HALVDRALL, ...named, floatLaw: floatLawOf(float) };
  const withBlocks: Structure['withBlocks'] = (blocks, union) => halvdrall(draft, blocks, union);
  if (more !== undefined && (count > 2 || together.length > 0)) {
    const larger = blockWeave({ ...said, ...more, blocks: 3 }, count, together);
    return { ...larger, about: `${more.about} ${OTHER_HOUSES}`, withBlocks };
  }
  return {
    ...said,
    about: `${named.about} ${OTHER_HOUSES}`,
    shafts: 4,
    blocks: ['A', 'B'],
    profile: ['A', 'A', 'B', 'B', 'A', 'B'],
    threading: { blocks: { A: { lay: shafts(a) }, B: { lay: shafts(b) } } },
    tieUp: { a: [1, 3], b: [2, 4], PA: [3, 4], PB: [1, 2] },
    manners: [
      {
        name: 'as drawn in',
        kinds: PATTERN_AND_TABBY,
        blocks: perBlock(['A', 'B'], (block) => ({
          // As many picks as ends.
          lay: shafts(a).flatMap((_, pick) => (pick % 2 === 0 ? [`P${block}`] : ['tabby'])),
        })),
      },
    ],
    ...(more && { withBlocks }),
  };
}

/** More blocks than two of halvdräll: two ties serve all, so it is summer and winter with one tie for each block. */
const TIES_SHARED: Larger = {
  about:
    'Halvdräll of more than two blocks: the ties are on shafts 1 and 2 and serve all blocks, as in summer and winter.',
  shared: 2,
  own: 1,
  unit: '1-p-2-p',
  sheds: { a: '1 2', b: 'p', 'P*1': ['1', '1 p'], 'P*2': ['2', '2 p'] },
  manners: [{ name: 'as drawn in', kinds: PATTERN_AND_TABBY, lay: ['P*2 tabby P*2 tabby', 'P*1 tabby P*1 tabby'] }],
};

/**
 * More blocks of a longer unit. Of two blocks, one always shows, so each may tie on a pattern shaft of the other; of more
 * blocks the tie needs a shaft of its own. It stands within its unit, so that the floats of two units never meet.
 */
const ownTies = (unit: string): Larger => ({
  about:
    'Halvdräll of more than two blocks: each has a tie shaft of its own, the third beside its pair of pattern shafts.',
  shared: 0,
  own: 3,
  unit,
  sheds: { a: 'p r', b: 'q', 'P*': ['r', 'p q'] },
  manners: [
    {
      name: 'as drawn in',
      kinds: PATTERN_AND_TABBY,
      // As many picks as ends.
      lay: unit
        .split('-')
        .map((_, pick) => (pick % 2 === 0 ? 'P*' : 'tabby'))
        .join(' '),
    },
  ],
});

const HALVDRALL: readonly Structure[] = [
  halvdrall({
    name: 'halvdräll',
    aliases: ['half dräll', 'halvdrall with crossed ties'],
    about:
      'Monk’s belt with a binding end in each unit, so that blocks may be as wide as one likes. More blocks, or blocks together, take shafts of their own for the ties: two shafts more than blocks.',
    a: '3-2-1-2',
    b: '3-4-3-2',
    float: 3,
    more: TIES_SHARED,
  }),
  halvdrall({
    name: 'halvdräll with even ties',
    aliases: ['half dräll with even ties', 'halvdräll, ties on 2 and 4'],
    about: 'The variant in which shafts 2 and 4 bind and serve both blocks. With more blocks it is summer and winter.',
    a: '1-2-1-4',
    b: '3-2-3-4',
    float: 3,
  }),
  halvdrall({
    name: 'halvdräll, float of five',
    aliases: ['half dräll, float of five'],
    about: 'Halvdräll with a longer unit of six ends. More blocks, or blocks together, take three shafts each.',
    a: '3-2-1-2-1-2',
    b: '3-4-3-4-3-2',
    float: 5,
    more: ownTies('p-q-r-q-p-q'),
  }),
  halvdrall({
    name: 'halvdräll, float of seven',
    aliases: ['half dräll, float of seven'],
    about: 'Halvdräll with a longer unit of eight ends. More blocks, or blocks together, take three shafts each.',
    a: '3-2-1-2-1-2-1-2',
    b: '3-4-3-4-3-4-3-2',
    float: 7,
    more: ownTies('p-q-p-q-r-q-p-q'),
  }),
];

const tieOrder = (name: string, about: string, ties: string): BlockWeave['manners'][number] => ({
  name,
  about,
  kinds: PATTERN_AND_TABBY,
  lay: [...ties].map((tie) => `*${tie} tabby`).join(' '),
});

const summerAndWinter: BlockWeave = {
  name: 'summer and winter',
  aliases: ['kuvikas', 'S&W'],
  about:
    'Ties on shafts 1 and 2, one shaft more for each block: any number of blocks on two shafts more, and any of them together. Pattern on one face, its reverse on the other.',
  blocks: 2,
  shared: 2,
  own: 1,
  unit: '1-p-2-p',
  sheds: { a: '1 2', b: 'p', '*1': ['1', '1 p'], '*2': ['2', '2 p'] },
  tabby: ['a', 'b'],
  manners: [
    tieOrder('singles', 'Ties in turn: bricks.', '12'),
    tieOrder('pairs X', 'Ties 2-1-1-2.', '2112'),
    tieOrder('pairs O', 'Ties 1-2-2-1.', '1221'),
    tieOrder('columns', 'Tie 1 throughout: dukagång.', '11'),
  ],
  widths: PATTERN_WIDTHS,
  floatLaw: 'pattern weft 3 on both faces, for every profile and any number of blocks; warp 3; ground 1',
  colour: 'Units of one colour; ties of one colour and pattern ends of the other; two pattern wefts in turn.',
  scale: 'More units a block; the float stays 3.',
  source: 'van der Hoogt; Sullivan; floats computed',
};

/** Weaves in which tie ends bind the pattern weft, so that the float does not grow with the block. */
export const TIED: readonly Structure[] = [...HALVDRALL, blockWeave(summerAndWinter)];
