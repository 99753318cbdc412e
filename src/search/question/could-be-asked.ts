import { isDeepStrictEqual } from 'node:util';
import type { Draft } from '../../draft/draft.js';
import { readDraft, writeDraft } from '../../draft/yaml/read-draft.js';
import type { Question } from './question.js';
import { readQuestion, resolvedQuestion } from './read-question.js';

/**
 * Whether a question that lay in a file is one that a person could have asked: written out in full it reads back as it
 * is, and its drafts and orders are sound. Whatever else it is, it is not one.
 */
export function couldBeAsked(question: Question): boolean {
  const { orders, yarns, draft, done } = question;
  const sound = (each: Draft): Draft => {
    readDraft(writeDraft(each), 'the draft');
    return each;
  };
  try {
    // The orders may be longer than a file that a person writes.
    const keys = { ...resolvedQuestion(question), orders: undefined, 'draft text': undefined };
    const read = readQuestion(
      { text: JSON.stringify(keys), flags: {} },
      () => sound(draft!.draft),
      () => done!.drafts.map(sound),
    );
    const areSound = orders.every((order) => order.length > 0 && order.every((colour) => yarns[colour] !== undefined));
    return areSound && isDeepStrictEqual({ ...read, ...(orders.length > 0 && { orders, lengths: [] }) }, question);
  } catch {
    return false;
  }
}
