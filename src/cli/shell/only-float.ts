import { isKeys } from '../../input/given.js';
import { placed } from '../../input/source.js';
import { Problem } from '../../problem.js';
import { QUESTION_TABLE } from '../../search/question/question-table.js';

/** Throws on limits other than for floats, where a command shows what it is given and sets nothing aside. */
export function onlyFloat({ limits }: Readonly<Record<string, string>>): void {
  if (limits === undefined) return;
  const read = () => QUESTION_TABLE.keys.limits.kind.parts!(limits);
  const parts = placed({ value: limits, place: () => '--limits' }, read);
  const other = isKeys(parts) ? Object.keys(parts).find((part) => part !== 'float') : undefined;
  if (other !== undefined) throw new Problem(`--limits: found ${other}; expected float alone, as float 1/2 in`);
}
