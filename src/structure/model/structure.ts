import type { PickKind, Widths } from '../../draft/draft.js';
import type { Unit, Units } from './unit.js';

/** A way of treadling: what each block of the profile lays in the weft. */
export interface Manner {
  readonly name: string;
  /** One sentence where the name alone does not tell. */
  readonly about?: string;
  /** A unit of treadles for every block. */
  readonly blocks: Readonly<Record<string, Unit<string>>>;
  readonly starts?: readonly string[];
  /** Kind of each pick of a unit, in turn and over again. Absent: all are of the only weft. */
  readonly kinds?: readonly PickKind[];
}

/** A weave structure: nothing but data. */
export interface Structure {
  readonly name: string;
  /** Other spellings and names of the trade. */
  readonly aliases: readonly string[];
  /** What it is, for a weaver; with what is uncertain about it. */
  readonly about: string;
  readonly shafts: number;
  /** Letters of its blocks. */
  readonly blocks: readonly string[];
  /** The profile that is woven where none is asked for. */
  readonly profile: readonly string[];
  readonly threading: Units<number>;
  /** Shafts raised (rising shed) by each treadle, in the order in which treadles are numbered, tabby first. */
  readonly tieUp: Readonly<Record<string, readonly number[]>>;
  /** The two plain-weave treadles, where the threading has plain weave all over. */
  readonly tabby?: readonly [string, string];
  /** Manners of treadling; the first is the usual one. */
  readonly manners: readonly Manner[];
  readonly widths: Widths;
  /** The longest float, in words. */
  readonly floatLaw: string;
  /** Which colour order acts here, and how. */
  readonly colour: string;
  /** How the motif is made larger, and what that does to the floats. */
  readonly scale: string;
  /** Where the draft comes from. */
  readonly source: string;
  /** The same structure with so many blocks, where any number of them can be had on more shafts. */
  readonly withBlocks?: (blocks: number) => Structure;
}

/** A pattern weft about twice as thick as warp and ground (common practice, no source). */
export const PATTERN_WIDTHS: Widths = { warp: 1, ground: 1, pattern: 2, tabby: 1 };

/** A pattern pick, a tabby pick, and so on. */
export const PATTERN_AND_TABBY: readonly PickKind[] = ['pattern', 'tabby'];

/** The first letters of the alphabet, one a block. */
export function letters(count: number): string[] {
  return Array.from({ length: count }, (_, index) => String.fromCharCode(65 + index));
}

/** A name without case, accents, apostrophes and hyphens, by which spellings are compared. */
export function plainWord(name: string): string {
  return name
    .normalize('NFD')
    .replace(/[\p{M}'’]/gu, '')
    .toLowerCase()
    .replace(/&/g, ' and ')
    .replace(/[-–,\s]+/g, ' ')
    .trim();
}
