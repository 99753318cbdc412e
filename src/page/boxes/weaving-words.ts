import type { Draft } from '../../draft/draft.js';
import { startInWords } from '../../order/laid-order.js';
import { formatOrder, formatRuns } from '../../order/order.js';
import { folded } from '../../plan/piece/folds.js';
import type { Found } from '../../search/strategy/outcome.js';
import { counted } from '../../words/counts.js';

/** One way of giving the orders of a cloth: its name and the text. */
type Given = readonly [name: string, text: string];

/** Threads in a group where a draft has no units. */
const COUNTED = 8;
/** Longest group of units that is read as one that repeats. */
const LONGEST_FOLD = 4;

/** The orders as written, as wound, as threaded and as thrown. */
export function ordersInWords({ draft, order }: Pick<Found, 'draft' | 'order'>): Given[] {
  const { yarns, warp, weft } = draft;
  const laid = `by ${order.by}${order.times > 1 ? `, ${order.times} each` : ''}${FILLED[order.fill]}`;
  const start = startInWords(order, draft);
  const begins = start === undefined ? '' : `; ${start}`;
  const written = order.warp === order.weft ? order.warp : `warp ${order.warp}, weft ${order.weft}`;
  return [
    ['Order', `${written}, ${laid}${begins}`],
    ['Warp colours', `${formatRuns(warp, yarns)}: ${counted(warp.length, 'end')} in a repeat`],
    ['Threading', grouped(draft.threading, warp, draft.endUnits, draft)],
    ['Treadling', grouped(draft.treadling, weft, draft.pickUnits, draft)],
  ];
}

const FILLED = {
  solid: '',
  alternate: ', its colour and the next yarn in turn',
  nest: ', the whole order in each element',
} as const;

/** `1–4: 1 2 3 4 in D L D D`: every unit in a line, what repeats in one line. */
function grouped(
  on: Draft['threading'],
  colours: readonly number[],
  units: readonly number[],
  { yarns }: Draft,
): string {
  const sizes = units.every((unit) => unit === 1)
    ? Array.from({ length: Math.ceil(on.length / COUNTED) }, (_, k) => Math.min(COUNTED, on.length - k * COUNTED))
    : units;
  const from = sizes.map((_, at) => sizes.slice(0, at).reduce((sum, size) => sum + size, 0));
  const texts = sizes.map((size, at) => {
    const first = from[at]!;
    const threads = on.slice(first, first + size).map((places) => places.join('+'));
    return `${threads.join(' ')} in ${formatOrder(colours.slice(first, first + size), yarns)}`;
  });
  let at = 0;
  return folded(texts, (text) => text, LONGEST_FOLD)
    .map(({ lines, times }) => {
      const first = at;
      at += lines.length * times;
      const place = `${from[first]! + 1}–${from[at - 1]! + sizes[at - 1]!}`;
      if (times === 1) return `${place}: ${lines[0]}`;
      return `${place}: ${lines.length === 1 ? lines[0] : `(${lines.join(', ')})`}, ${times} times`;
    })
    .join('\n');
}
