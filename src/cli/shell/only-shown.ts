import { isKeys } from '../../input/given.js';
import { placed } from '../../input/source.js';
import { Problem } from '../../problem.js';
import { QUESTION_TABLE } from '../../search/question/question-table.js';
import { isSearched } from '../../search/question/read-profiles.js';

/**
 * Throws on what a command cannot do that shows what it is given: set aside by other limits than for floats, or search
 * for block orders.
 */
export function onlyShown({ limits, ...blocks }: Readonly<Record<string, string>>): void {
  for (const key of ['profile', 'treadled']) {
    if (isSearched(blocks[key]))
      throw new Problem(`--${key}: found search; expected one block order (explore searches)`);
  }
  if (limits === undefined) return;
  const read = () => QUESTION_TABLE.keys.limits.kind.parts!(limits);
  const parts = placed({ value: limits, place: () => '--limits' }, read);
  const other = isKeys(parts) ? Object.keys(parts).find((part) => part !== 'float') : undefined;
  if (other !== undefined) throw new Problem(`--limits: found ${other}; expected float alone, as float 1/2 in`);
}
