import type { Draft } from '../../draft/draft.js';
import { startInWords } from '../../order/laid-order.js';
import { formatOrder, formatRuns } from '../../order/order.js';
import type { Found } from '../../search/strategy/outcome.js';
import { counted } from '../../words/counts.js';

/** One way of giving the orders of a cloth: its name and the text. */
type Given = readonly [name: string, text: string];

/** Threads in a group where a draft has no units. */
const COUNTED = 8;

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
  return folded(texts)
    .map(({ at, length, times }) => {
      const last = at + length * times - 1;
      const place = `${from[at]! + 1}–${from[last]! + sizes[last]!}`;
      const said = texts.slice(at, at + length);
      if (times === 1) return `${place}: ${said[0]}`;
      return `${place}: ${length === 1 ? said[0] : `(${said.join(', ')})`}, ${times} times`;
    })
    .join('\n');
}

/** A run of `times` equal groups of `length` items, the first at `at`. */
interface Fold {
  readonly at: number;
  readonly length: number;
  readonly times: number;
}

/** Longest group of units that is read as one that repeats. */
const LONGEST_FOLD = 4;

/** Divides a list into runs of equal groups: at each place the run that takes in most, of the shortest groups. */
export function folded(items: readonly string[]): Fold[] {
  const folds: Fold[] = [];
  for (let at = 0; at < items.length; ) {
    let best: Fold = { at, length: 1, times: 1 };
    for (let length = 1; length <= LONGEST_FOLD; length++) {
      const times = timesAt(items, at, length);
      if (times > 1 && length * times > best.length * best.times) best = { at, length, times };
    }
    folds.push(best);
    at += best.length * best.times;
  }
  return folds;
}

/** How often the group at a place stands there in a row. */
function timesAt(items: readonly string[], at: number, length: number): number {
  let same = 0;
  while (at + length + same < items.length && items[at + same] === items[at + length + same]) same++;
  return 1 + Math.floor(same / length);
}
