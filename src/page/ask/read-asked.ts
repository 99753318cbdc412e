import { readKeys } from '../../input/key.js';
import { parseSource, placed } from '../../input/source.js';
import { Problem } from '../../problem.js';
import type { Question } from '../../search/question/question.js';
import { QUESTION_TABLE } from '../../search/question/question-table.js';
import { readQuestion } from '../../search/question/read-question.js';
import { structuresOf } from '../../search/question/read-weave.js';
import { type Asked, type AskedOf, questionText } from './asked.js';
import { draftOfOwn, textOfOwn } from './own-draft.js';

/** Reads a question that is asked in the page. `tell` is given notes about its draft. */
export function readAsked({ asked, own }: AskedOf, tell: (note: string) => void = () => {}): Question {
  if (own === undefined && ['structure', 'draft', 'on the loom'].every((key) => asked[key] === undefined)) {
    throw new Problem('choose a structure, or give a draft of your own');
  }
  return readQuestion({ text: questionText(asked), file: 'the question', flags: {} }, () => {
    if (own === undefined) throw new Problem('found no draft; expected one, typed or as a file');
    return draftOfOwn(own, tell);
  });
}

/** The question as a file that stands alone: its draft is in it. */
export function askedText({ asked, own }: AskedOf): string {
  return questionText(own === undefined ? asked : { ...asked, 'draft text': textOfOwn(own) });
}

/**
 * Reads the file of a question for the form; structures get the names that the form has for them.
 *
 * @throws Problem with file, line and column on keys that are unknown, and on values that cannot be read
 */
export function askedOfFile(text: string, file: string): Asked {
  const source = parseSource(text, file);
  return placed(source, () => {
    const { structure } = readKeys(QUESTION_TABLE, source.value);
    const names = structure !== undefined && structuresOf({ structure }).map(({ name }) => name);
    return { ...(source.value as Asked), ...(names && { structure: names }) };
  });
}
