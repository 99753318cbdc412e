import { Problem } from '../../problem.js';
import { counted } from '../../words/counts.js';
import type { Structure } from './structure.js';
import { findManner } from './weave.js';

/** Most shafts for which blocks are made, where no loom is given. */
export const BLOCK_SHAFTS = 32;
/** One for each letter. */
export const MOST_BLOCKS = 26;

/** The structure with as many blocks as asked for; one that has no more than its own, with a profile of so many. */
export function sized(structure: Structure, blocks: number | undefined): Structure {
  if (blocks === undefined || blocks === structure.blocks.length) return structure;
  if (structure.withBlocks !== undefined) return structure.withBlocks(blocks);
  if (blocks > structure.blocks.length) throw new Problem(tooMany(structure, blocks)!);
  return { ...structure, profile: someBlocks(structure, blocks) };
}

/** So many blocks of a structure in the order of their letters, those that share least with each other. */
export function someBlocks(structure: Structure, count: number): string[] {
  return [...apart(structure)].slice(0, count).sort();
}

/** The blocks in the order in which colours take them, without those that a manner does not treadle. */
export function blocksForColours(structure: Structure, manner: string | undefined): readonly string[] {
  const { blocks } = findManner(structure, manner);
  return apart(structure).filter((block) => blocks[block]!.lay.length > 0);
}

const apart = ({ apart, blocks }: Structure): readonly string[] => apart ?? blocks;

/** Most blocks of a structure that a number of shafts holds; 0 if not even its usual ones. */
export function mostBlocks(structure: Structure, shafts: number): number {
  const { withBlocks } = structure;
  if (withBlocks === undefined) return structure.shafts <= shafts ? structure.blocks.length : 0;
  for (let blocks = MOST_BLOCKS; blocks > 0; blocks--) if (withBlocks(blocks).shafts <= shafts) return blocks;
  return 0;
}

/** One sentence that a structure cannot have so many blocks, and how many it can have; undefined if it can. */
export function tooMany(structure: Structure, blocks: number, loomShafts?: number): string | undefined {
  const { name, withBlocks } = structure;
  const found = `found ${counted(blocks, 'block')} of ${name}`;
  if (withBlocks === undefined && blocks > structure.blocks.length) {
    const has = structure.blocks.length;
    return `${found}, which has ${has === 1 ? 'one alone' : `${has} and no more`}; expected ${has}${has === 1 ? '' : ' at most'}`;
  }
  const { shafts } = withBlocks === undefined ? structure : withBlocks(blocks);
  const there = loomShafts ?? BLOCK_SHAFTS;
  if (shafts <= there) return undefined;
  const most = mostBlocks(structure, there);
  const enough = most === 0 ? 'too few for any' : `enough for ${counted(most, 'block')}`;
  return loomShafts === undefined
    ? `${found}, which take ${shafts} shafts; expected ${most} at most, on ${BLOCK_SHAFTS} shafts`
    : `${found}, which take ${shafts} shafts; the loom has ${loomShafts}, ${enough}`;
}
