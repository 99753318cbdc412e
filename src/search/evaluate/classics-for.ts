import type { Weave } from '../../draft/draft.js';
import type { Classic } from '../../score/likeness/novelty.js';
import { measuredClassics } from '../../score/score.js';
import type { Question } from '../question/question.js';
import type { Family } from '../space/family.js';

/**
 * The classic orders with which candidates of a family are compared, measured once per weave. If the orders choose the
 * blocks, the classics are laid on a weave with each block once: a weave of its own for each pair of orders would
 * change the structure that is compared.
 */
export function classicsOf(question: Question): (family: Family) => readonly Classic[] {
  const known = new Map<string, readonly Classic[]>();
  return (family) => {
    // Where block orders are searched, the classics are laid on the structure’s usual one.
    const weave = representative(question, family.searched?.base ?? family);
    const name = JSON.stringify([weave.threading, weave.tieUp, weave.treadling, weave.pickKinds, weave.companions]);
    let classics = known.get(name);
    if (classics === undefined) {
      classics = measuredClassics(weave, question.sett);
      known.set(name, classics);
    }
    return classics;
  };
}

function representative(question: Question, family: Family): Weave {
  if (family.fixedWeave) return family.weave([0], [0]);
  const each = question.yarns.map((_, colour) => colour);
  return family.weave(each, each);
}
