import { type Manner, PATTERN_AND_TABBY, PATTERN_WIDTHS, type Structure } from '../model/structure.js';
import { type After, perBlock, picks, type Unit } from '../model/unit.js';
import { RING_BLOCKS, RING_TIE_UP } from './overshot.js';

const ring = (place: number): number => (place + 4) % 4;
const letter = (block: number): string => RING_BLOCKS[ring(block)]!;

/**
 * A three-shaft point of four strands on a ring of four shafts, and the incidental strands before it after each other
 * block. After a neighbouring block: the first strand of that block, which closes its point. After the block two away:
 * that strand, and the first strand of a block in between (of the two, the lower by habit). The last strand laid tells
 * which block went before.
 */
function pointBlock<S extends number | string>(block: number, strand: (place: number) => readonly S[]): Unit<S> {
  const at = (place: number): readonly S[] => strand(ring(place));
  const name = (place: number): S => at(place)[0]!;
  const after: Partial<Record<S, After<S>>> = {};
  for (const left of [block - 1, block + 1]) after[name(left + 1)] = { first: [at(left)] };
  const across = block + 2;
  after[name(across + 1)] = {
    first: [
      [...at(across), ...at(across + 1)],
      [...at(across), ...at(across - 1)],
    ],
  };
  return { lay: [0, 1, 2, 1].flatMap((step) => at(block + step)), after };
}

/**
 * One unit of picks per block; `make` receives the letters of the block and of the three blocks after it on the ring.
 */
function sheds(make: (own: string, next: string, opposite: string, before: string) => string): Manner['blocks'] {
  return perBlock(RING_BLOCKS, (_, block) => ({
    lay: picks(make(letter(block), letter(block + 1), letter(block + 2), letter(block + 3))),
  }));
}

const crackle: Structure = {
  name: 'crackle',
  aliases: ['crackle weave', 'jämtlandsdräll', 'jämtlandsväv'],
  about:
    'Four blocks of small points, three shafts each. Incidental ends between unlike blocks close the points, so the repeat is longer than its units; each belongs to the unit that it follows.',
  shafts: 4,
  blocks: RING_BLOCKS,
  profile: [...'AABBCCDDCCBB'],
  threading: { blocks: perBlock(RING_BLOCKS, (_, block) => pointBlock(block, (place) => [place + 1])) },
  tieUp: RING_TIE_UP,
  tabby: ['a', 'b'],
  manners: [
    {
      name: 'overshot manner',
      about: 'One pattern shed with tabby for each block; every shed shows two blocks.',
      kinds: PATTERN_AND_TABBY,
      blocks: sheds((own) => `P${own} tabby P${own} tabby`),
    },
    {
      name: 'as drawn in',
      about: 'The pattern sheds follow the threading end by end, incidental ends too, with tabby between.',
      kinds: PATTERN_AND_TABBY,
      blocks: perBlock(RING_BLOCKS, (_, block) => pointBlock(block, (place) => [`P${letter(place)}`, 'tabby'])),
    },
    {
      name: 'Italian manner',
      about: 'The block’s shed, with the two sheds beside it in turn between; three wefts and no tabby.',
      blocks: sheds((own, next, _, before) => `P${own} P${next} P${own} P${before}`),
    },
    {
      name: 'summer-and-winter manner',
      about: 'Two neighbouring pattern sheds in turn, each bound by its opposite in the fine weft; no tabby.',
      kinds: PATTERN_AND_TABBY,
      blocks: sheds((own, next, opposite, before) => `P${own} P${opposite} P${next} P${before}`),
    },
    {
      name: 'polychrome',
      about: 'Two pattern wefts in rotation, one on the block’s shed, one on its opposite, with tabby between.',
      kinds: PATTERN_AND_TABBY,
      blocks: sheds((own, _, opposite) => `P${own} tabby P${opposite} tabby`),
    },
  ],
  widths: PATTERN_WIDTHS,
  floatLaw: 'pattern weft 3 on both faces, for every profile; warp 3 with tabby, 5 in the Italian manner; ground 1',
  colour: 'The weft order by block, the warp order by unit.',
  scale: 'More units a block; the float stays 3. Count the incidental ends.',
  source: 'Tidball and Frey (incidental ends) through published notes; completeness and floats computed',
};

/** Crackle, the weave of points on a ring. */
export const CRACKLE: readonly Structure[] = [crackle];
