import { EVEN_WIDTHS } from '../../draft/draft.js';
import type { Manner, Structure } from '../model/structure.js';
import { perBlock, picks, shafts } from '../model/unit.js';

/** The three tie-ups of a four-shaft twill: warp over so many picks, then under so many. */
const WEAVES = [
  {
    name: '2/2',
    tieUp: { '1': [1, 2], '2': [2, 3], '3': [3, 4], '4': [4, 1] },
    about: 'warp and weft equal on both faces',
    floats: { straight: '2', broken: '2', turned: '3', undulating: 'the ends of two neighbouring groups, here 4' },
  },
  {
    name: '1/3',
    tieUp: { '1': [1], '2': [2], '3': [3], '4': [4] },
    about: 'mostly weft on the face',
    floats: { straight: '3', broken: '4', turned: '5', undulating: 'the ends of three neighbouring groups, here 6' },
  },
  {
    name: '3/1',
    tieUp: { '1': [1, 2, 3], '2': [2, 3, 4], '3': [3, 4, 1], '4': [4, 1, 2] },
    about: 'mostly warp on the face',
    floats: { straight: '3', broken: '4', turned: '5', undulating: 'the ends of three neighbouring groups, here 6' },
  },
] as const;

interface Draw {
  /** The name after the numbers: `point twill` in `2/2 point twill`. */
  readonly name: string;
  readonly aliases: readonly string[];
  readonly about: string;
  readonly blocks: Readonly<Record<string, string>>;
  readonly profile: readonly string[];
  /** True if odd and even ends never share a shaft, so that plain weave is possible. */
  readonly plainWeave: boolean;
  readonly floats: 'straight' | 'broken' | 'turned' | 'undulating';
}

const DRAWS: readonly Draw[] = [
  {
    name: 'twill',
    aliases: ['straight twill'],
    about: 'Straight draw: the diagonals run on.',
    blocks: { A: '1-2-3-4' },
    profile: ['A'],
    plainWeave: true,
    floats: 'straight',
  },
  {
    name: 'point twill',
    aliases: ['pointed twill'],
    about: 'Point draw: the diagonals turn back at every point.',
    blocks: { A: '1-2-3-4-3-2' },
    profile: ['A'],
    plainWeave: true,
    floats: 'turned',
  },
  {
    name: 'rosepath',
    aliases: ['rosengång', 'extended point twill'],
    about: 'Rosepath of eight ends, the commonest in handbooks; some houses call this an extended point.',
    blocks: { A: '1-2-3-4-1-4-3-2' },
    profile: ['A'],
    plainWeave: true,
    floats: 'turned',
  },
  {
    name: 'rosepath on ten ends',
    aliases: ['ten-end rosepath'],
    about: 'Rosepath of ten ends; some houses keep the name for this order.',
    blocks: { A: '1-2-3-4-1-2-1-4-3-2' },
    profile: ['A'],
    plainWeave: true,
    floats: 'turned',
  },
  {
    name: 'broken twill',
    aliases: [],
    about: 'Four ends one way, four the other, with a clean break between.',
    blocks: { A: '1-2-3-4', B: '2-1-4-3' },
    profile: ['A', 'B'],
    plainWeave: false,
    floats: 'broken',
  },
  {
    name: 'herringbone',
    aliases: ['herringbone twill', 'broken-point herringbone'],
    about: 'Broken-point herringbone: eight ends one way, eight the other, with a clean break between.',
    blocks: { A: '1-2-3-4', B: '2-1-4-3' },
    profile: ['A', 'A', 'B', 'B'],
    plainWeave: false,
    floats: 'broken',
  },
  {
    name: 'undulating twill',
    aliases: ['undulated twill'],
    about: 'One end a shaft, then two: the diagonals swing from steep to flat.',
    blocks: { A: '1-2-3-4-1-1-2-2-3-3-4-4-1-1-2-2-3-3-4-4' },
    profile: ['A'],
    plainWeave: false,
    floats: 'undulating',
  },
];

const TREADLINGS = [
  { name: 'straight', order: '1 2 3 4' },
  {
    name: 'broken',
    order: '1 2 4 3',
    about: 'On a straight draw with 1/3 or 3/1 this is the false satin of four ends.',
  },
  { name: 'point', order: '1 2 3 4 3 2' },
  { name: 'rosepath', order: '1 2 3 4 1 4 3 2' },
] as const;

function mannersOf(draw: Draw): Manner[] {
  const blocks = Object.keys(draw.blocks);
  const fixed = TREADLINGS.map(
    ({ order, ...said }): Manner => ({ ...said, blocks: perBlock(blocks, () => ({ lay: picks(order) })) }),
  );
  const asDrawnIn: Manner = {
    name: 'as drawn in',
    about: 'The treadles follow the order of the threading.',
    blocks: perBlock(blocks, (block) => ({ lay: draw.blocks[block]!.split('-') })),
  };
  return draw.floats === 'straight' ? fixed : [fixed[0]!, asDrawnIn, ...fixed.slice(1)];
}

/** Longest floats: of the weft by the threading, of the warp by the treadling. */
function floatLawOf({ floats: draw }: Draw, floats: (typeof WEAVES)[number]['floats']): string {
  const drawnIn = draw === 'broken' || draw === 'undulating' ? `; ${floats[draw]} treadled as drawn in` : '';
  return `Weft ${floats[draw]}; warp ${floats.straight} treadled straight or broken, ${floats.turned} at the points of a point or rosepath treadling${drawnIn}.`;
}

const onFour: Structure[] = DRAWS.flatMap((draw) =>
  WEAVES.map((weave): Structure => {
    const aliases = draw.aliases.map((alias) => `${weave.name} ${alias}`);
    const blocks = Object.keys(draw.blocks);
    return {
      name: `${weave.name} ${draw.name}`,
      aliases: weave.name === '2/2' ? [...aliases, draw.name, ...draw.aliases] : aliases,
      about: `${draw.about} ${weave.name}: ${weave.about}.`,
      shafts: 4,
      blocks,
      profile: draw.profile,
      threading: { blocks: perBlock(blocks, (block) => ({ lay: shafts(draw.blocks[block]!) })) },
      tieUp: draw.plainWeave ? { a: [1, 3], b: [2, 4], ...weave.tieUp } : weave.tieUp,
      ...(draw.plainWeave && { tabby: ['a', 'b'] as const }),
      manners: mannersOf(draw),
      widths: EVEN_WIDTHS,
      floatLaw: floatLawOf(draw, weave.floats),
      colour: 'Single ends, and groups of 2, 4 and 8: steps, hound’s tooth, shepherd’s check.',
      scale: 'More straight repeats before a turn keep the float; doubled ends lengthen it.',
      source: 'articles on four-shaft twills; floats computed',
    };
  }),
);

const onThree: Structure[] = (['2/1', '1/2'] as const).map((name) => ({
  name: `${name} twill`,
  aliases: [`${name} straight twill`, name === '2/1' ? 'jean' : 'three-shaft twill'],
  about: `Three-shaft twill with ${name === '2/1' ? 'mostly warp' : 'mostly weft'} on the face.`,
  shafts: 3,
  blocks: ['A'],
  profile: ['A'],
  threading: { blocks: { A: { lay: shafts('1-2-3') } } },
  tieUp: name === '2/1' ? { '1': [1, 2], '2': [2, 3], '3': [3, 1] } : { '1': [1], '2': [2], '3': [3] },
  manners: [
    { name: 'straight', blocks: { A: { lay: picks('1 2 3') } } },
    { name: 'point', blocks: { A: { lay: picks('1 2 3 2') } } },
  ],
  widths: EVEN_WIDTHS,
  floatLaw: '2 in both systems; 3 in the warp at the points of a point treadling',
  colour: 'Single ends and groups of 3; three colours give upright or level hairlines.',
  scale: 'More repeats keep the float; doubled ends lengthen it.',
  source: 'common practice, no source; floats computed',
}));

/** Three- and four-shaft twills. */
export const TWILLS: readonly Structure[] = [...onFour, ...onThree];
