import type { PickKind, Weave } from '../../draft/draft.js';
import { didYouMean, Problem, quote } from '../../problem.js';
import { NO_BLOCK } from './block-weave.js';
import { blocksIn } from './profile.js';
import { type Manner, plainWord, type Structure } from './structure.js';
import { layClosed, type Strand } from './unit.js';

export interface WeaveOptions {
  /** Name of the manner of treadling. Default: the structure's first. */
  readonly manner?: string;
  /** Profile of the treadling. Default: the profile of the threading. */
  readonly treadled?: readonly string[];
  /**
   * Which of several incidental strands to lay: 0 (the usual) or 1 everywhere, or a list with a number for each element
   * of the profile, before which they are laid.
   */
  readonly alternative?: number | readonly number[];
}

/** A weave with what is known of each strand: its block, its unit, whether it is incidental. */
interface Drawn {
  readonly weave: Weave;
  readonly ends: readonly Strand<number>[];
  readonly picks: readonly Strand<string>[];
  /** Name of each treadle of the weave, in order. */
  readonly treadles: readonly string[];
}

/**
 * Makes one closed repeat of a structure from a profile.
 *
 * @throws Problem if a block or manner is unknown, or the profile breaks a rule of the structure
 */
export function weaveOf(structure: Structure, profile: readonly string[], options: WeaveOptions = {}): Weave {
  return drawn(structure, profile, options).weave;
}

/** Like {@link weaveOf}, with the block and unit of every end and pick, and the names of the treadles. */
export function drawn(structure: Structure, profile: readonly string[], options: WeaveOptions = {}): Drawn {
  const treadled = options.treadled ?? profile;
  const sized = withElements(structure, [...profile, ...treadled]);
  const manner = findManner(sized, options.manner);
  checkElements(sized, sized.threading.blocks, profile, 'threading');
  checkElements(sized, manner.blocks, treadled, 'treadling');
  const { alternative = 0 } = options;
  const choose = (element: number): number =>
    typeof alternative === 'number' ? alternative : (alternative[element] ?? 0);
  const ends = layClosed(sized.threading, profile, choose);
  const picks = layClosed({ ...manner, ...(sized.tabby && { tabby: sized.tabby }) }, treadled, choose);
  if (picks.length === 0) {
    throw new Problem(`${sized.name}, “${manner.name}”: no block of ${treadled.join(' ')} is treadled so`);
  }
  return { ends, picks, ...numbered(sized, manner, ends, picks) };
}

/** Finds a manner by name; without a name, the first. */
export function findManner(structure: Structure, name?: string): Manner {
  if (name === undefined) return structure.manners[0]!;
  const found = structure.manners.find((manner) => plainWord(manner.name) === plainWord(name));
  if (found !== undefined) return found;
  const names = structure.manners.map((manner) => manner.name);
  throw new Problem(
    `${structure.name} has no treadling ${quote(name)}${didYouMean(name, names)}; it has ${names.map((n) => `“${n}”`).join(', ')}`,
  );
}

/** The structure with as many blocks as a profile names, and with the blocks that it treadles together. */
function withElements(structure: Structure, used: readonly string[]): Structure {
  if (structure.withBlocks === undefined) return structure;
  const together = [...new Set(used)].filter((element) => !/^[A-Z]$/.test(element));
  const count = Math.max(structure.blocks.length, blocksIn(used));
  const { blocks } = structure.manners[0]!;
  if (count === structure.blocks.length && together.every((element) => blocks[element] !== undefined)) return structure;
  return structure.withBlocks(count, together);
}

function checkElements(
  { name, blocks, neverTogether }: Structure,
  units: Readonly<Record<string, unknown>>,
  profile: readonly string[],
  of: 'threading' | 'treadling',
): void {
  if (profile.length === 0) throw new Problem(`${name}: the profile is empty`);
  const unknown = profile.find((element) => units[element] === undefined);
  if (unknown === undefined) return;
  const has = `its blocks are ${blocks.join(', ')}`;
  if (unknown === NO_BLOCK) throw new Problem(`${name} has no unit of no block (“.”) in the ${of}; ${has}`);
  if (unknown.length === 1) throw new Problem(`${name} has no block ${unknown}; ${has}`);
  if (of === 'treadling') {
    const why = neverTogether === undefined ? '' : `: ${neverTogether}`;
    throw new Problem(`${name} cannot weave ${unknown} together${why}; ${has}`);
  }
  throw new Problem(
    `${name} has no end of both ${unknown.split('+').join(' and ')}; expected them together in the treadling alone`,
  );
}

/** Numbers the treadles in use, in the structure's order with tabby first, and makes the weave. */
function numbered(
  structure: Structure,
  manner: Manner,
  ends: readonly Strand<number>[],
  picks: readonly Strand<string>[],
): Pick<Drawn, 'weave' | 'treadles'> {
  const used = new Set(picks.map((pick) => pick.name));
  const tabby = structure.tabby ?? [];
  const treadles = [...new Set([...tabby, ...Object.keys(structure.tieUp)])].filter((name) => used.has(name));
  const kinds: readonly PickKind[] = manner.kinds ?? ['ground'];
  const weave: Weave = {
    threading: ends.map((end) => [end.name]),
    tieUp: treadles.map((name) => structure.tieUp[name]!),
    treadling: picks.map((pick) => [treadles.indexOf(pick.name) + 1]),
    pickKinds: picks.map((pick) => kinds[pick.place % kinds.length]!),
    endUnits: unitLengths(ends),
    pickUnits: unitLengths(picks),
    widths: structure.widths,
  };
  if (![...ends, ...picks].some((strand) => strand.companion === 1)) return { weave, treadles };
  const companions = { ends: ends.map((end) => end.companion), picks: picks.map((pick) => pick.companion) };
  return { weave: { ...weave, companions }, treadles };
}

function unitLengths(strands: readonly Strand<unknown>[]): number[] {
  const lengths: number[] = [];
  for (const strand of strands) lengths[strand.unit] = (lengths[strand.unit] ?? 0) + 1;
  return lengths;
}
