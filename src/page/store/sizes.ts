import { type Draft, spacing } from '../../draft/draft.js';
import { colours, endStrands, layout, pickStrands, type Strands, wholeRepeat } from '../../order/lay.js';
import { nested, type Order, parseOrder } from '../../order/order.js';
import type { Found } from '../../search/strategy/outcome.js';

/** A cloth's motif at another size. */
interface Sized {
  readonly times: number;
  readonly draft: Draft;
}

/** Longest repeat, in threads, that is shown as a size of a motif. */
const LONGEST = 400;
const FACTORS = [1, 2, 3, 4, 6, 8, 12, 16] as const;

/**
 * The motif at other sizes: the same orders on the same weave, each element over more threads (units); the floats do
 * not change. If the orders chose the blocks, the weave would change, so only the cloth itself is returned.
 */
export function sizesOf(found: Found): Sized[] {
  const { draft, order } = found;
  if (order.by === 'block') return [{ times: order.times, draft }];
  const factors = [...new Set<number>([...FACTORS, order.times])].sort((a, b) => a - b);
  return factors
    .map((times) => ({ times, draft: times === order.times ? draft : laidAgain(found, times) }))
    .filter(
      ({ times, draft: { warp, weft } }) => times === order.times || Math.max(warp.length, weft.length) <= LONGEST,
    );
}

/** The draft with its orders laid with another number of threads (units) per element. */
export function laidAgain({ draft, order }: Pick<Found, 'draft' | 'order'>, times: number): Draft {
  const { yarns, pickKinds, weft } = draft;
  const tabby = weft[pickKinds.indexOf('tabby')] ?? 0;
  const laid = (strands: Strands, word: string, start: number): Uint8Array => {
    const elements = elementsOf(parseOrder(word, yarns), order.fill === 'nest', yarns.length);
    const by = order.by === 'thread' ? 'thread' : 'unit';
    const fill = order.fill === 'alternate' ? 'alternate' : 'solid';
    return colours(layout(strands, elements.length, { by, fill, times, start }), elements, yarns.length, tabby);
  };
  return {
    ...draft,
    ...wholeRepeat(
      draft,
      laid(endStrands(draft), order.warp, order.start[0]),
      laid(pickStrands(draft), order.weft, order.start[1]),
    ),
  };
}

function elementsOf(order: Order, nest: boolean, yarns: number): Order {
  return nest ? nested(order, yarns) : order;
}

/** Width and height of one repeat in millimetres. */
export function repeatOf({ warp, weft, sett }: Draft): { readonly width: number; readonly height: number } {
  const { across, along } = spacing(sett);
  return { width: warp.length * across, height: weft.length * along };
}
