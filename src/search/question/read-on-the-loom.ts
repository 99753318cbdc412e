import type { Yarn } from '../../colour/yarn.js';
import type { Draft } from '../../draft/draft.js';
import { Misread } from '../../input/given.js';
import type { Order } from '../../order/order.js';
import { quote } from '../../problem.js';
import type { Question } from './question.js';
import type { Written } from './question-table.js';

/** Throws on keys that would change a warp which is already wound and threaded. */
export function refuseOnTheLoom(written: Written): void {
  for (const key of ['structure', 'draft', 'warp', 'profile'] as const) {
    if (written[key] === undefined) continue;
    throw new Misread(`found a ${key} beside a warp on the loom, which has its own; expected one or the other`, {
      within: [key],
      key: true,
    });
  }
  const usual = { by: 'thread', fill: 'solid', times: '1' } as const;
  for (const [key, word] of Object.entries(usual) as [keyof typeof usual, string][]) {
    const found = written[key].join(' ');
    if (found === word) continue;
    throw new Misread(`found ${quote(found)} with a warp on the loom, whose threads lie as they do; expected ${word}`, {
      within: [key],
    });
  }
}

/** The warp order of a draft as indices into the question's yarns. */
export function woundOrder(draft: Draft, yarns: readonly Yarn[]): Order {
  return draft.warp.map((at) => {
    const { letter } = draft.yarns[at]!;
    const index = yarns.findIndex((yarn) => yarn.letter === letter);
    if (index >= 0) return index;
    const found = yarns.map((yarn) => yarn.letter).join(', ');
    throw new Misread(`found ${found}; expected yarn ${letter} among them, which is wound on the loom`);
  });
}

/** The starts for a warp on the loom: the warp order stays, the weft order may begin anywhere. */
export function onLoomStarts({ starts }: Written): Question['starts'] {
  return starts === 'first' ? 'first' : 'weft';
}
