import { type Manner, PATTERN_AND_TABBY, PATTERN_WIDTHS, type Structure } from '../model/structure.js';
import { type After, perBlock, picks, type Unit } from '../model/unit.js';
import { type Ring, ringFor } from './shaft-ring.js';

/** The ways round the ring to a block as far up as down; the first is taken by habit. */
type Ways = readonly (1 | -1)[];

/**
 * A three-shaft point of four strands on a ring, and the incidental strands before it after each other block: they go
 * from shaft to shaft, from the first shaft of the block that is left (which closes its point) to the block that
 * follows, the shorter way round. The last strand laid tells which block went before.
 */
function pointBlock<S extends number | string>(
  { size }: Ring,
  ways: Ways,
  block: number,
  strand: (place: number) => readonly S[],
): Unit<S> {
  const after: Partial<Record<S, After<S>>> = {};
  for (let up = 1; up < size; up++) {
    const left = block - up;
    const steps = 2 * up === size ? ways : [2 * up < size ? (1 as const) : (-1 as const)];
    const first = steps.map((step) =>
      Array.from({ length: Math.min(up, size - up) }, (_, n) => strand(left + step * n)).flat(),
    );
    after[strand(left + 1)[0]!] = { first };
  }
  return { lay: [0, 1, 2, 1].flatMap((step) => strand(block + step)), after };
}

/** One unit of picks per block; `make` receives the letters of the block, and of its two neighbours on the ring. */
function sheds(ring: Ring, make: (own: string, next: string, before: string) => string): Manner['blocks'] {
  return perBlock(ring.blocks, (own, block) => ({
    lay: picks(make(own, ring.letter(block + 1), ring.letter(block - 1))),
  }));
}

/** Crackle with `count` blocks, on as many shafts: four at least, and an even number. */
function crackleOf(said: Said, ways: Ways, count: number): Structure {
  const ring = ringFor(count);
  const { blocks, tieUp } = ring;
  // On four shafts the opposite of one block’s shed is the shed of another.
  const opposite = (block: string): string =>
    ring.size === 4 ? `P${ring.letter(blocks.indexOf(block) + 2)}` : `N${block}`;
  const opposites = blocks.map((block) => [
    `N${block}`,
    blocks.flatMap((_, place) => (tieUp[`P${block}`]!.includes(place + 1) ? [] : [place + 1])),
  ]);
  return {
    ...SAID,
    ...said,
    shafts: ring.size,
    blocks,
    profile: count === 4 ? said.profile : blocks.slice(0, count),
    threading: {
      blocks: perBlock(blocks, (_, block) => pointBlock(ring, ways, block, (place) => [ring.shaft(place)])),
    },
    tieUp: { ...tieUp, ...(ring.size > 4 && Object.fromEntries(opposites)) },
    manners: [
      {
        name: 'overshot manner',
        about:
          'One pattern shed with tabby for each block; every shed shows two blocks, and on more shafts half-tones.',
        kinds: PATTERN_AND_TABBY,
        blocks: sheds(ring, (own) => `P${own} tabby P${own} tabby`),
      },
      {
        name: 'as drawn in',
        about: 'The pattern sheds follow the threading end by end, incidental ends too, with tabby between.',
        kinds: PATTERN_AND_TABBY,
        blocks: perBlock(blocks, (_, block) =>
          pointBlock(ring, ways, block, (place) => [`P${ring.letter(place)}`, 'tabby']),
        ),
      },
      {
        name: 'Italian manner',
        about: 'The block’s shed, with the two sheds beside it in turn between; three wefts and no tabby.',
        blocks: sheds(ring, (own, next, before) => `P${own} P${next} P${own} P${before}`),
      },
      {
        name: 'summer-and-winter manner',
        about: 'Two neighbouring pattern sheds in turn, each bound by its opposite in the fine weft; no tabby.',
        kinds: PATTERN_AND_TABBY,
        blocks: sheds(ring, (own, next) => `P${own} ${opposite(own)} P${next} ${opposite(next)}`),
      },
      {
        name: 'polychrome',
        about: 'Two pattern wefts in rotation, one on the block’s shed, one on its opposite, with tabby between.',
        kinds: PATTERN_AND_TABBY,
        blocks: sheds(ring, (own) => `P${own} tabby ${opposite(own)} tabby`),
      },
    ],
    withBlocks: (more) => crackleOf(said, ways, more),
  };
}

type Said = Pick<Structure, 'name' | 'aliases' | 'about' | 'profile' | 'source' | 'variantOf'>;

const SAID = {
  neverTogether: 'they share their shafts, and every shed shows two of them as it is',
  tabby: ['a', 'b'],
  widths: PATTERN_WIDTHS,
  floatLaw: 'pattern weft 3 on both faces, for every profile; warp 3 with tabby, 5 in the Italian manner; ground 1',
  colour: 'The weft order by block, the warp order by unit.',
  scale: 'More units a block; the float stays 3. Count the incidental ends.',
} as const;

const crackle: Said = {
  name: 'crackle',
  aliases: ['crackle weave', 'jämtlandsdräll', 'jämtlandsväv'],
  about:
    'Blocks of small points, three neighbouring shafts each: four blocks on four shafts, six on six, eight on eight. Incidental ends between unlike blocks close the points, so the repeat is longer than its units; each belongs to the unit that it follows.',
  profile: [...'AABBCCDDCCBB'],
  source: 'Tidball and Frey (incidental ends) through published notes; sheds on more shafts and floats computed',
};

const crackleDownward: Said = {
  name: 'crackle, opposites joined downward',
  aliases: ['crackle joined downward'],
  about:
    'Crackle with the other choice of incidental ends: from a block to its opposite, A to C or B to D, they go down through the block between, not up. Blocks that are neighbours are joined as ever.',
  profile: [...'AACCBBDD'],
  source: 'that there are two choices: computed; which is taken is common practice, no source',
  variantOf: 'crackle',
};

/** Crackle, the weave of points on a ring. */
export const CRACKLE: readonly Structure[] = [crackleOf(crackle, [1, -1], 4), crackleOf(crackleDownward, [-1], 4)];
