import { type Draft, spacing } from '../../draft/draft.js';
import { colours, endStrands, layout, pickStrands, type Strands, wholeRepeat } from '../../order/lay.js';
import { nestedOrder, type Order, parseOrder } from '../../order/order.js';
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
  return nest ? nestedOrder(order, yarns) : order;
}

/** Width and height of one repeat in millimetres. */
export function repeatMillimetres({ warp, weft, sett }: Draft): { readonly width: number; readonly height: number } {
  const { across, along } = spacing(sett);
  return { width: warp.length * across, height: weft.length * along };
}

/** CSS pixels per thread from which threads can be counted. */
const COUNTED = 10;
/** Fewest CSS pixels per thread at which a whole motif is shown. */
const LEAST = 1;

/**
 * CSS pixels per millimetre at which a repeat of `longest` millimetres fits into a picture of `side` pixels: no threads
 * larger than can be counted with ease, and none smaller than a pixel, at which a longer repeat is cut.
 */
export function motifScale(longest: number, side: number, { sett }: Pick<Draft, 'sett'>): number {
  const { across, along } = spacing(sett);
  const thread = Math.min(across, along);
  return Math.max(LEAST / thread, Math.min(COUNTED / thread, side / longest));
}

/** CSS pixels per millimetre at which threads can be counted. */
export function countedScale({ sett }: Pick<Draft, 'sett'>): number {
  const { across, along } = spacing(sett);
  return COUNTED / Math.min(across, along);
}
