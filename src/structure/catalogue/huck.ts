import { EVEN_WIDTHS } from '../../draft/draft.js';
import { NO_BLOCK } from '../model/block-weave.js';
import { letters, type Manner, type Structure } from '../model/structure.js';
import { perBlock, picks, type Unit } from '../model/unit.js';

/** Blocks A, C … have their outer ends on shaft 1 (kind 0), blocks B, D … on the last shaft (kind 1). */
type Kind = 0 | 1;
const KINDS = [0, 1] as const;
const otherKind = (kind: Kind): Kind => (kind === 0 ? 1 : 0);
/** The tabby that raises the outer shaft of a kind, and the inner shafts of the other kind. */
const TABBIES = ['a', 'b'] as const;
const SAME_TABBY = (treadle: string): { never: string } => ({ never: `two picks of tabby ${treadle} would follow` });

/** Huck groups on two outer shafts and one inner shaft for each block, with all treadles. */
class Groups {
  readonly blocks: readonly string[];
  readonly outer: readonly [number, number];
  readonly tabby: readonly [readonly number[], readonly number[]];
  readonly tieUp: Record<string, readonly number[]>;

  constructor(count: number) {
    this.blocks = letters(count);
    this.outer = [1, count + 2];
    this.tabby = [sorted([1, ...this.inner(1)]), sorted([count + 2, ...this.inner(0)])];
    this.tieUp = { a: this.tabby[0], b: this.tabby[1] };
  }

  kind(block: string): Kind {
    return this.blocks.indexOf(block) % 2 === 0 ? 0 : 1;
  }

  /** The inner shafts of one kind, of all blocks or of those that show together. */
  inner(kind: Kind, element?: string): number[] {
    const shown = this.blocks.filter((block) => this.kind(block) === kind && element?.includes(block) !== false);
    return shown.map((block) => this.blocks.indexOf(block) + 2);
  }

  /** Of which kind are blocks that show together; undefined where they are of both. */
  kindOf(element: string): Kind | undefined {
    return KINDS.find((kind) => this.inner(otherKind(kind), element).length === 0);
  }

  /** Ties a treadle, and returns the five picks that begin and end on the tabby of a kind. */
  group(kind: Kind, name: string, raised: readonly number[]): string[] {
    this.tieUp[name] = sorted(raised);
    const tabby = TABBIES[kind];
    return [tabby, name, tabby, name, tabby];
  }

  /** Weft floats over the ends of these blocks: their inner shafts stay down. */
  weftSpots(kind: Kind, element: string): string[] {
    const spots = this.inner(kind, element);
    const raised = this.tabby[otherKind(kind)].filter((shaft) => !spots.includes(shaft));
    return this.group(kind, `p${together(element)}`, raised);
  }

  /** Warp floats in these blocks: their inner shafts are raised as well. */
  warpSpots(kind: Kind, element: string): string[] {
    return this.group(otherKind(kind), `w${together(element)}`, [...this.tabby[kind], ...this.inner(kind, element)]);
  }

  /** Weft floats in the blocks of one kind, with warp floats in blocks of the other: in all, or in those that show. */
  lace(kind: Kind, element: string): string[] {
    const spots = this.inner(kind, element);
    const raised = this.tabby[otherKind(kind)].filter((shaft) => !spots.includes(shaft));
    const alone = this.kindOf(element) !== undefined;
    const against = this.inner(otherKind(kind), alone ? undefined : element);
    return this.group(kind, `l${together(element)}${alone ? '' : kind + 1}`, [...raised, ...against]);
  }
}

const together = (element: string): string => element.replaceAll('+', '');
const sorted = (shafts: readonly number[]): number[] => [...shafts].sort((a, b) => a - b);

/** A group that may not follow one on the same tabby. */
const apart = (lay: string[]): Unit<string> => ({ lay, after: { [lay[0]!]: SAME_TABBY(lay[0]!) } });
/** Of two treadlings, the one that begins on the other tabby than the last. */
const byTurns = (lay: string[], other: string[]): Unit<string> => ({ lay, after: { [lay[0]!]: { lay: other } } });
const PLAIN_GROUP = byTurns(picks('a b a b a'), picks('b a b a b'));

/** The manners of huck; blocks that show together are treadled where one group of picks can show them. */
function mannersOf(
  groups: Groups,
  asked: readonly string[],
): Record<'texture' | 'warpSpots' | 'lace', Manner> & { readonly more: Manner[] } {
  const elements = [...groups.blocks, ...asked.filter((element) => element !== NO_BLOCK)];
  const none = asked.includes(NO_BLOCK) ? { [NO_BLOCK]: PLAIN_GROUP } : {};
  const manner = (
    name: string,
    about: string,
    unit: (element: string, kind: Kind | undefined) => Unit<string> | undefined,
  ): Manner => {
    const units = elements.flatMap((element) => {
      const made = unit(element, groups.kindOf(element));
      return made === undefined ? [] : [[element, made] as const];
    });
    return { name, about, blocks: { ...Object.fromEntries(units), ...none } };
  };
  return {
    texture: manner('texture', 'Weft spots in one block, plain weave elsewhere.', (element, kind) =>
      kind === undefined ? undefined : apart(groups.weftSpots(kind, element)),
    ),
    warpSpots: manner('warp spots', 'As texture, with the ends floating on the face.', (element, kind) =>
      kind === undefined ? undefined : apart(groups.warpSpots(kind, element)),
    ),
    lace: manner(
      'lace',
      'Every square floats, in warp and weft by turns; A+B is lace in these two blocks, plain weave elsewhere.',
      (element, kind) =>
        kind === undefined
          ? byTurns(groups.lace(0, element), groups.lace(1, element))
          : apart(groups.lace(kind, element)),
    ),
    more: [
      manner('weft and warp spots', 'Weft spots and warp spots of a block by turns.', (element, kind) => {
        if (kind === undefined) return undefined;
        const [weft, warp] = [groups.weftSpots(kind, element), groups.warpSpots(kind, element)];
        return byTurns([...weft, ...warp], [...warp, ...weft]);
      }),
      manner('plain weave', 'The ground alone.', () => PLAIN_GROUP),
    ],
  };
}

const SIDE_BY_SIDE = (shaft: number): { never: string } => ({
  never: `two ends on shaft ${shaft} would lie side by side`,
});

/** The five ends of a block, and what happens after an end on its own outer shaft. */
function fiveEnds(
  groups: Groups,
  block: string,
): { readonly lay: number[]; readonly outer: readonly [number, number] } {
  const kind = groups.kind(block);
  const [own, across] = [groups.outer[kind], groups.outer[otherKind(kind)]];
  const [inner] = groups.inner(kind, block);
  return { lay: [own, inner!, own, inner!, own], outer: [own, across] };
}

const OTHER_TABBY = 'blocks A, C … float on the picks of one tabby, B, D … on those of the other';

const HUCK = {
  widths: EVEN_WIDTHS,
  tabby: TABBIES,
  neverTogether: `${OTHER_TABBY}, but for lace`,
  floatLaw: '5 ends in a weft spot, 5 picks in a warp spot, each on one face; lace 5 on all four counts',
  colour: 'Warp of one colour and weft of another; five and five; outer shafts of one colour, inner of the other.',
  scale: 'Not by repeating a block: with a tie end between it becomes Swedish lace.',
  source: 'articles on lace weaves; floats computed',
} as const;

function huckOf(count: number, asked: readonly string[] = []): Structure {
  const groups = new Groups(count);
  const { texture, warpSpots, lace, more } = mannersOf(groups, asked);
  return {
    ...HUCK,
    name: 'huck',
    aliases: ['huck texture', 'huckaback', 'huck weave'],
    about:
      'Groups of five ends, with one inner shaft for each block on two outer shafts: raised spots on plain weave. Blocks A, C … and B, D … must alternate.',
    shafts: count + 2,
    blocks: groups.blocks,
    // The two kinds of groups alternate at the seam as well.
    profile: count % 2 === 0 ? groups.blocks : [...groups.blocks, 'B'],
    threading: {
      blocks: perBlock(groups.blocks, (block) => {
        const { lay, outer } = fiveEnds(groups, block);
        return { lay, after: { [outer[0]]: SIDE_BY_SIDE(outer[0]) } };
      }),
    },
    tieUp: groups.tieUp,
    manners: [texture, warpSpots, lace, ...more],
    withBlocks: huckOf,
  };
}

function huckLaceOf(count: number, asked: readonly string[] = []): Structure {
  const { manners, ...huck } = huckOf(count, asked);
  const [texture, warpSpots, lace, ...more] = manners as [Manner, Manner, Manner, ...Manner[]];
  return {
    ...huck,
    name: 'huck lace',
    aliases: ['huckaback lace', 'all-over huck lace'],
    about: 'Huck with every square floating, an openwork of five-thread groups.',
    manners: [lace, texture, warpSpots, ...more],
    withBlocks: huckLaceOf,
  };
}

function swedishLaceOf(count: number, asked: readonly string[] = []): Structure {
  const groups = new Groups(count);
  const [first, last] = groups.outer;
  const together = asked.filter((element) => element !== NO_BLOCK && groups.kindOf(element) !== undefined);
  const none = asked.includes(NO_BLOCK);
  const plainEnds = [first, last, first, last, first, last];
  return {
    name: 'Swedish lace',
    aliases: ['swedish lace weave'],
    about:
      'Huck units that may repeat: a tie end of the other outer shaft goes between two of a kind, a tie pick likewise. Any number of blocks on two shafts more; “.” is a plain unit.',
    shafts: count + 2,
    blocks: groups.blocks,
    profile: count === 2 ? ['A', 'A', 'A', 'B', 'B'] : groups.blocks,
    threading: {
      blocks: {
        ...perBlock(groups.blocks, (block) => {
          const { lay, outer } = fiveEnds(groups, block);
          return { lay, after: { [outer[0]]: { first: [[outer[1]]] } } };
        }),
        ...(none && { [NO_BLOCK]: { lay: plainEnds, after: { [first]: { lay: plainEnds.toReversed() } } } }),
      },
    },
    tieUp: groups.tieUp,
    tabby: TABBIES,
    neverTogether: OTHER_TABBY,
    manners: [
      {
        name: 'as drawn in',
        blocks: {
          ...perBlock([...groups.blocks, ...together], (element) => {
            const kind = groups.kindOf(element)!;
            const tie = { first: [[TABBIES[otherKind(kind)]]] };
            return { lay: groups.weftSpots(kind, element), after: { [TABBIES[kind]]: tie } };
          }),
          ...(none && { [NO_BLOCK]: byTurns(picks('a b a b a b'), picks('b a b a b a')) }),
        },
      },
    ],
    widths: EVEN_WIDTHS,
    floatLaw: 'weft 5 on the face, warp 5 on the back, for every profile and any number of blocks',
    colour: 'As huck: five or six ends a colour, or warp of one colour and weft of another.',
    scale: 'More units a block, with their tie ends; the floats stay.',
    source: 'one published towel draft; floats computed',
    withBlocks: swedishLaceOf,
  };
}

/** Weaves of huck groups. */
export const HUCK_WEAVES: readonly Structure[] = [huckOf(2), huckLaceOf(2)];
export const SWEDISH_LACE = swedishLaceOf(2);
