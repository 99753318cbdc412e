import type { Draft } from '../../draft/draft.js';
import { Problem } from '../../problem.js';
import type { Question } from '../question/question.js';
import { draftOf, recipesOf, weftOf } from '../space/candidate.js';
import { familiesOf } from '../space/families.js';

/** A draft, and the words for how it is made. */
export interface OneDraft {
  readonly name: string;
  readonly draft: Draft;
}

/**
 * The draft of a question that leaves nothing to try: one order in one way on one structure.
 *
 * @param start end and pick (or units) on which the orders begin, from 0
 * @throws Problem if the question asks for more than one
 */
export function oneDraft(question: Question, start: readonly [number, number]): OneDraft {
  const [warp, more] = question.orders;
  if (warp === undefined || more !== undefined) {
    throw new Problem('--warp: found several orders; expected one, such as DLDDL');
  }
  if (question.weft.rule === 'own') {
    throw new Problem('--weft: found “own”; expected same, exchange, a letter or an order');
  }
  if (question.name?.drafts === 'all') {
    throw new Problem(`--name-draft: found all drafts; expected one, as “${question.name.text}, draft 2”`);
  }
  const [family, another] = familiesOf(question);
  if (family === undefined || another !== undefined) {
    throw new Problem('found several ways to draw; expected one structure, one --by, one --fill and one --times');
  }
  const candidate = { family, warp, weft: weftOf(question, warp), start };
  return { name: recipesOf(candidate, question).recipe, draft: draftOf(candidate, question) };
}
