import type { PickKind, Widths } from '../../draft/draft.js';
import type { Unit, Units } from './unit.js';

/** A manner of treadling: the unit of treadles for each block. */
export interface Manner {
  readonly name: string;
  /** One sentence, if the name does not explain itself. */
  readonly about?: string;
  /** A unit of treadles for every block. */
  readonly blocks: Readonly<Record<string, Unit<string>>>;
  readonly starts?: readonly string[];
  /** Kinds of the picks, repeated over each unit. Absent: all picks are ground. */
  readonly kinds?: readonly PickKind[];
}

/** A weave structure, as data. */
export interface Structure {
  readonly name: string;
  /** Other names and spellings. */
  readonly aliases: readonly string[];
  /** The structure that it is but for some joins; that one is named where a draft is both. */
  readonly variantOf?: string;
  /** A description for weavers, uncertainties included. */
  readonly about: string;
  readonly shafts: number;
  /** Letters of its blocks. */
  readonly blocks: readonly string[];
  /** The blocks in the order in which two, three … of them are used: those that share least first. Default: `blocks`. */
  readonly apart?: readonly string[];
  /** Set if all blocks do the same, so that blocks that change places throughout weave the same cloth. */
  readonly alike?: true;
  /** Why no pick shows some of its blocks together, where none can. */
  readonly neverTogether?: string;
  /** The default profile. */
  readonly profile: readonly string[];
  readonly threading: Units<number>;
  /** Shafts raised (rising shed) by each treadle, in the order in which treadles are numbered, tabby first. */
  readonly tieUp: Readonly<Record<string, readonly number[]>>;
  /** The two plain-weave treadles, if the threading allows plain weave throughout. */
  readonly tabby?: readonly [string, string];
  /** Manners of treadling; the first is the usual one. */
  readonly manners: readonly Manner[];
  readonly widths: Widths;
  /** The longest float, in words. */
  readonly floatLaw: string;
  /** Which colour order has an effect, warp or weft, and how. */
  readonly colour: string;
  /** How to enlarge the motif, and the effect on the floats. */
  readonly scale: string;
  /** Source of the draft. */
  readonly source: string;
  /**
   * Makes the same structure with another number of blocks, if more shafts allow any number; and with treadlings for
   * blocks that show together (`A+C`) or for no block (`.`), where it has them.
   */
  readonly withBlocks?: (blocks: number, together?: readonly string[]) => Structure;
}

/** A pattern weft about twice as thick as warp and ground (common practice, no source). */
export const PATTERN_WIDTHS: Widths = { warp: 1, ground: 1, pattern: 2, tabby: 1 };

/** Pattern and tabby picks alternating. */
export const PATTERN_AND_TABBY: readonly PickKind[] = ['pattern', 'tabby'];

/** The first `count` letters of the alphabet, one for each block. */
export function letters(count: number): string[] {
  return Array.from({ length: count }, (_, index) => String.fromCharCode(65 + index));
}

/** A name without case, accents, apostrophes and hyphens, for comparing spellings. */
export function plainWord(name: string): string {
  return name
    .normalize('NFD')
    .replace(/[\p{M}'’"“”„«»]/gu, '')
    .toLowerCase()
    .replace(/&/g, ' and ')
    .replace(/[-–,\s]+/g, ' ')
    .trim();
}
