import { letters, type Manner, PATTERN_AND_TABBY, PATTERN_WIDTHS, type Structure } from '../model/structure.js';
import { type After, perBlock, picks, type Unit } from '../model/unit.js';

/** Blocks and shafts on a ring, an even number of each: block A begins on shaft 1, B on shaft 2 … */
interface Ring {
  readonly size: number;
  /** The block at a place of the ring, from 0. */
  letter(place: number): string;
  /** The shaft at a place of the ring, from 1. */
  shaft(place: number): number;
}

function ringOf(size: number): Ring {
  const blocks = letters(size);
  const at = (place: number): number => ((place % size) + size) % size;
  return { size, letter: (place) => blocks[at(place)]!, shaft: (place) => at(place) + 1 };
}

/**
 * A three-shaft point of four strands on a ring, and the incidental strands before it after each other block: they go
 * from shaft to shaft, from the first shaft of the block that is left (which closes its point) to the block that
 * follows, the shorter way round; of two ways as long, upward by habit. The last strand laid tells which block went
 * before.
 */
function pointBlock<S extends number | string>(
  { size }: Ring,
  block: number,
  strand: (place: number) => readonly S[],
): Unit<S> {
  const after: Partial<Record<S, After<S>>> = {};
  for (let up = 1; up < size; up++) {
    const left = block - up;
    const ways = [
      { length: up, step: 1 },
      { length: size - up, step: -1 },
    ].sort((a, b) => a.length - b.length);
    const first = ways
      .filter(({ length }) => length === ways[0]!.length)
      .map(({ length, step }) => Array.from({ length }, (_, n) => strand(left + step * n)).flat());
    after[strand(left + 1)[0]!] = { first };
  }
  return { lay: [0, 1, 2, 1].flatMap((step) => strand(block + step)), after };
}

/**
 * The shed that shows a block: its first two shafts down, the next two up, and then down and up in turn. So no three
 * neighbouring shafts are alike, and no float is longer than three.
 */
function shedOf({ size, shaft }: Ring, block: number): number[] {
  const raised = [2, 3, ...Array.from({ length: (size - 4) / 2 }, (_, pair) => 5 + 2 * pair)];
  return raised.map((place) => shaft(block + place));
}

/** One unit of picks per block; `make` receives the letters of the block, and of its two neighbours on the ring. */
function sheds(ring: Ring, make: (own: string, next: string, before: string) => string): Manner['blocks'] {
  return perBlock(letters(ring.size), (own, block) => ({
    lay: picks(make(own, ring.letter(block + 1), ring.letter(block - 1))),
  }));
}

/** Crackle with `count` blocks, on as many shafts: four at least, and an even number. */
function crackleOf(count: number): Structure {
  const ring = ringOf(Math.max(4, count + (count % 2)));
  const blocks = letters(ring.size);
  const all = blocks.map((_, place) => place + 1);
  const shown = blocks.map((block, place) => [`P${block}`, shedOf(ring, place)] as const);
  // On four shafts the opposite of one block’s shed is the shed of another.
  const opposite = (block: string): string =>
    ring.size === 4 ? `P${ring.letter(blocks.indexOf(block) + 2)}` : `N${block}`;
  const opposites = shown.map(([, raised], place) => [
    `N${blocks[place]}`,
    all.filter((shaft) => !raised.includes(shaft)),
  ]);
  return {
    ...SAID,
    shafts: ring.size,
    blocks,
    profile: count === 4 ? [...'AABBCCDDCCBB'] : blocks.slice(0, count),
    threading: { blocks: perBlock(blocks, (_, block) => pointBlock(ring, block, (place) => [ring.shaft(place)])) },
    tieUp: {
      a: all.filter((shaft) => shaft % 2 === 1),
      b: all.filter((shaft) => shaft % 2 === 0),
      ...Object.fromEntries(shown),
      ...(ring.size > 4 && Object.fromEntries(opposites)),
    },
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
        blocks: perBlock(blocks, (_, block) => pointBlock(ring, block, (place) => [`P${ring.letter(place)}`, 'tabby'])),
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
    withBlocks: crackleOf,
  };
}

const SAID = {
  name: 'crackle',
  aliases: ['crackle weave', 'jämtlandsdräll', 'jämtlandsväv'],
  about:
    'Blocks of small points, three neighbouring shafts each: four blocks on four shafts, six on six, eight on eight. Incidental ends between unlike blocks close the points, so the repeat is longer than its units; each belongs to the unit that it follows.',
  tabby: ['a', 'b'],
  widths: PATTERN_WIDTHS,
  floatLaw: 'pattern weft 3 on both faces, for every profile; warp 3 with tabby, 5 in the Italian manner; ground 1',
  colour: 'The weft order by block, the warp order by unit.',
  scale: 'More units a block; the float stays 3. Count the incidental ends.',
  source: 'Tidball and Frey (incidental ends) through published notes; sheds on more shafts and floats computed',
} as const;

/** Crackle, the weave of points on a ring. */
export const CRACKLE: readonly Structure[] = [crackleOf(4)];
