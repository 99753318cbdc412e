import type { PickKind } from '../../draft/draft.js';
import { letters, type Structure } from './structure.js';
import { perBlock, picks } from './unit.js';

/** Shafts in a text, apart by hyphens or spaces: shared ones by number, a block's own as p, q, r … */
type Shafts = string;

/** In a profile, a unit of no block. */
export const NO_BLOCK = '.';
/** The letters of a block's own shafts, its first shaft first. */
const OWN = 'pqrstuvw';

/**
 * A weave of any number of like blocks, as data. Every block does one of two things on each pick: it shows its pattern,
 * or it does not. So any blocks may show together, or none.
 */
export interface BlockWeave
  extends Pick<
    Structure,
    'name' | 'aliases' | 'about' | 'tabby' | 'widths' | 'floatLaw' | 'colour' | 'scale' | 'source'
  > {
  /** How many blocks are woven where no number is asked for. */
  readonly blocks: number;
  /** The usual profile of as many blocks. Default, and with another number of blocks: each block once. */
  readonly profile?: readonly string[];
  /** How many shafts all blocks share; they are numbered first. */
  readonly shared: number;
  /** How many shafts each block has of its own. */
  readonly own: number;
  /** The ends of a unit. */
  readonly unit: Shafts;
  /** The ends of a unit that belongs to no block and so weaves plain, if the shared shafts allow it. */
  readonly plain?: Shafts;
  /** 1 for each end of a unit that takes the companion of its element's colour. */
  readonly companions?: readonly (0 | 1)[];
  /**
   * Shafts raised by each treadle. Of a pair, the first are raised in blocks that show, the second in all others; such a
   * treadle is there for each block, whose letter replaces the `*` of the name.
   */
  readonly sheds: Readonly<Record<string, Shafts | readonly [shown: Shafts, other: Shafts]>>;
  readonly manners: readonly BlockManner[];
}

interface BlockManner {
  readonly name: string;
  readonly about?: string;
  readonly kinds?: readonly PickKind[];
  /** The treadles of a unit; of several texts, blocks take them in turn. */
  readonly lay: string | readonly string[];
}

/**
 * Makes the structure for a number of blocks.
 *
 * @param together elements of profiles that are no single block: `A+C`, or {@link NO_BLOCK}
 */
export function blockWeave(data: BlockWeave, count = data.blocks, together: readonly string[] = []): Structure {
  const { blocks: usual, profile, shared, own, unit, plain, companions, sheds, manners, ...said } = data;
  const blocks = letters(count);
  const on = (text: Shafts, block: number): number[] =>
    text
      .split(/[- ]/)
      .filter((word) => word !== '')
      .map((word) => (OWN.includes(word) ? shared + block * own + OWN.indexOf(word) + 1 : Number(word)));
  const { tieUp, called } = tied(sheds, blocks, together, on);
  const laid = (lay: BlockManner['lay'], element: string): string[] => {
    const first = Math.max(0, blocks.indexOf(element[0]!));
    const text = typeof lay === 'string' ? lay : lay[first % lay.length]!;
    return picks(text).map((name) => called.get(nameFor(name, element)) ?? name);
  };
  return {
    ...said,
    shafts: shared + own * count,
    blocks,
    ...(manners.every(({ lay }) => typeof lay === 'string') && { alike: true as const }),
    profile: profile !== undefined && count === usual ? profile : blocks,
    threading: {
      blocks: {
        ...perBlock(blocks, (_, index) => ({ lay: on(unit, index), ...(companions && { companions }) })),
        ...(plain !== undefined && together.includes(NO_BLOCK) && { [NO_BLOCK]: { lay: on(plain, 0) } }),
      },
    },
    tieUp,
    manners: manners.map(({ lay, ...manner }) => ({
      ...manner,
      blocks: perBlock([...blocks, ...together], (element) => ({ lay: laid(lay, element) })),
    })),
    withBlocks: (more, union) => blockWeave(data, more, union),
  };
}

/** The treadles with the shafts that they raise, and for each name the treadle that makes its shed. */
function tied(
  sheds: BlockWeave['sheds'],
  blocks: readonly string[],
  together: readonly string[],
  on: (text: Shafts, block: number) => readonly number[],
): { tieUp: Record<string, number[]>; called: Map<string, string> } {
  const tieUp: Record<string, number[]> = {};
  const called = new Map<string, string>();
  const known = new Map<string, string>();
  const tie = (name: string, shafts: (block: string) => Shafts): void => {
    const raised = new Set(blocks.flatMap((block, index) => on(shafts(block), index)));
    const shed = [...raised].sort((a, b) => a - b);
    const same = known.get(shed.join()) ?? name;
    known.set(shed.join(), same);
    called.set(name, same);
    tieUp[same] = shed;
  };
  for (const [name, shafts] of Object.entries(sheds)) if (typeof shafts === 'string') tie(name, () => shafts);
  for (const element of [...blocks, ...together]) {
    for (const [name, pair] of Object.entries(sheds)) {
      if (typeof pair === 'string') continue;
      tie(nameFor(name, element), (block) => (element.includes(block) ? pair[0] : pair[1]));
    }
  }
  return { tieUp, called };
}

/** `lAC` for `l*` where blocks A and C show together. */
function nameFor(name: string, element: string): string {
  return name.replace('*', element.replaceAll('+', ''));
}
