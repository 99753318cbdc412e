import type { Yarn } from '../../colour/yarn.js';
import type { By } from '../../order/laid-order.js';
import { type Structure, structures } from '../../structure/catalogue/catalogue.js';
import { blocksForColours } from '../../structure/model/sized.js';

/**
 * Says which yarn of an order by block makes which block: `D weaves block A, L block B`, with the threads of a unit if
 * alternating colours make the block. Undefined if the order chooses no blocks, or the structure is unknown.
 */
export function blocksInWords(name: string, by: By, yarns: readonly Yarn[]): string | undefined {
  const structure = by === 'block' ? structures.find((each) => each.name === name) : undefined;
  if (structure === undefined) return undefined;
  const wide = yarns.length > structure.blocks.length ? (structure.withBlocks?.(yarns.length) ?? structure) : structure;
  const blocks = blocksForColours(wide, undefined);
  const said = yarns.map(({ letter }, at) => {
    const unit = unitInLetters(structure, blocks[at]!, yarns);
    return `${letter}${at === 0 ? ' weaves' : ''} block ${blocks[at]}${unit === undefined ? '' : ` (a unit of ${unit})`}`;
  });
  return said.join(', ');
}

/** The colours of a unit whose ends alternate, as D L D L; undefined if they do not. */
function unitInLetters({ threading }: Structure, block: string, yarns: readonly Yarn[]): string | undefined {
  const companions = threading.blocks[block]?.companions;
  return companions?.map((companion) => yarns[companion % yarns.length]!.letter).join(' ');
}
