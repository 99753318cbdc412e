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
    ['As written', `${written}, ${laid}${begins}`],
    ['As wound', `${formatRuns(warp, yarns)}: ${counted(warp.length, 'end')} in a repeat`],
    ['As threaded', grouped(draft.threading, warp, draft.endUnits, draft)],
    ['As woven', grouped(draft.treadling, weft, draft.pickUnits, draft)],
  ];
}

const FILLED = {
  solid: '',
  alternate: ', its colour and the next yarn in turn',
  nest: ', the whole order in each element',
} as const;

/** `1–4: 1 2 3 4 in D L D D`: every unit in a line, equal neighbours together. */
function grouped(
  on: Draft['threading'],
  colours: readonly number[],
  units: readonly number[],
  { yarns }: Draft,
): string {
  const sizes = units.every((unit) => unit === 1)
    ? Array.from({ length: Math.ceil(on.length / COUNTED) }, (_, k) => Math.min(COUNTED, on.length - k * COUNTED))
    : units;
  const lines: { from: number; to: number; text: string; times: number }[] = [];
  let from = 0;
  for (const size of sizes) {
    const threads = on
      .slice(from, from + size)
      .map((places) => places.join('+'))
      .join(' ');
    const text = `${threads} in ${formatOrder(colours.slice(from, from + size), yarns)}`;
    const last = lines.at(-1);
    if (last?.text === text) {
      last.to = from + size;
      last.times++;
    } else lines.push({ from, to: from + size, text, times: 1 });
    from += size;
  }
  return lines
    .map(({ from: first, to, text, times }) => `${first + 1}–${to}: ${text}${times > 1 ? `, ${times} times` : ''}`)
    .join('\n');
}
