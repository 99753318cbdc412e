import type { Sett } from '../../draft/draft.js';
import { beginInWords } from '../../order/laid-order.js';
import { formatOrder, formatRuns, smallestPeriod } from '../../order/order.js';
import { readsTo } from '../../score/contrast/viewing-distance.js';
import { isLogCabin } from '../../score/likeness/classic-effects.js';
import type { Floats } from '../../score/model/figures.js';
import type { Found } from '../../search/strategy/outcome.js';
import { counted } from '../../words/counts.js';
import { fitting, wrapped } from './sheet-text.js';

/** A cloth whose figures differ from a classic's by less than this looks like it (a choice of ours, made by looking). */
const LIKE_CLASSIC = 0.05;

/** `3 threads, 0.15 in`: the longest float, with its length in the unit of the sett. */
export function floatWords({ longest, longestMm }: Floats, per: Sett['per']): string {
  if (longest === null || longestMm === null) return 'never interlaces';
  const length = per === 'inch' ? `${(longestMm / 25.4).toFixed(2)} in` : `${longestMm.toFixed(1)} mm`;
  return `${counted(longest, 'thread')}, ${length}`;
}

/**
 * The caption of a picture: the distance at which its pattern is clear, for the first line, and at most `most` further
 * lines. A free line names the classic that the cloth is like.
 *
 * @param recipe how it is made, without the orders
 */
export function caption(found: Found, recipe: string, width: number, most: number): { reads: string; lines: string[] } {
  const { scores, draft } = found;
  const far = readsTo(scores.reads);
  const float = floatWords(scores.floats, draft.sett.per);
  const said = recipe === '' ? [] : wrapped(recipe, width, 2);
  const orders = orderLines(found, width, most - said.length - 1);
  const name = classicOf(found);
  const isRoom = name !== undefined && said.length + orders.length + 1 < most;
  const like = isRoom ? [fitting([name], width)] : [];
  const last = fitting([`longest float ${float}`, `float ${float}`], width);
  return {
    reads: far === null ? 'one tone at 0.6 m' : `clear at ${far} m`,
    lines: [...said, ...orders, ...like, last],
  };
}

/** The classic order that a cloth has, or is like. */
function classicOf({ draft, scores: { novelty = 1, nearest } }: Found): string | undefined {
  if (isLogCabin(draft.warp) && isLogCabin(draft.weft)) return 'log cabin order';
  return nearest !== undefined && novelty < LIKE_CLASSIC ? `like ${nearest}` : undefined;
}

/**
 * The colours of the threads in letters, in one line or two. Threads too many to write are told by the order, called
 * one, and where it begins: who winds from it must lay it first.
 */
function orderLines({ draft, order }: Found, width: number, most: number): string[] {
  const said = (strands: readonly number[]) => {
    const repeat = strands.slice(0, smallestPeriod(strands));
    const letters = formatOrder(repeat, draft.yarns);
    const runs = formatRuns(repeat, draft.yarns);
    return runs.length <= letters.length ? runs : letters;
  };
  const [warp, weft] = [said(draft.warp), said(draft.weft)];
  const begins = beginInWords(order);
  const ordered = [
    order.warp === order.weft ? `warp and weft order ${order.warp}` : `orders: warp ${order.warp}, weft ${order.weft}`,
    ...(begins === undefined ? [] : [begins]),
  ];
  const wordings = [
    ...(warp === weft
      ? [[`warp and weft ${warp}`]]
      : [[`warp ${warp} · weft ${weft}`], [`warp ${warp}`, `weft ${weft}`]]),
    ordered,
    ordered.map((line) => fitting([line], width)),
  ].filter((lines) => lines.length <= Math.max(1, most));
  const fits = (lines: string[]): boolean => lines.every((line) => fitting([line], width) === line);
  return wordings.find(fits) ?? [fitting([ordered.join(', ')], width)];
}
