import type { Sett } from '../../draft/draft.js';
import { formatOrder, formatRuns, smallestPeriod } from '../../order/order.js';
import { readsTo } from '../../score/contrast/viewing-distance.js';
import type { Floats } from '../../score/model/figures.js';
import { nearestInWords } from '../../score/rank/why.js';
import type { Found } from '../../search/strategy/outcome.js';
import { fitting, wrapped } from './sheet-text.js';

/** `3 (0.15 in)`: the longest float in threads, with its length in the unit of the sett. */
export function floatWords({ longest, longestMm }: Floats, per: Sett['per']): string {
  if (longest === null || longestMm === null) return 'never interlaces';
  return `${longest} (${per === 'inch' ? `${(longestMm / 25.4).toFixed(2)} in` : `${longestMm.toFixed(1)} mm`})`;
}

/**
 * The caption of a picture: the reading distance for its first line, and at most `most` further lines. A free line
 * names the nearest classic.
 */
export function caption(found: Found, width: number, most: number): { reads: string; lines: string[] } {
  const { scores, draft } = found;
  const far = readsTo(scores.reads);
  const float = floatWords(scores.floats, draft.sett.per);
  const recipe = wrapped(found.shortRecipe, width, 2);
  const orders = orderLines(found, width, most - recipe.length - 1);
  const nearest = recipe.length + orders.length + 1 < most ? nearestLine(found, width) : [];
  const last = fitting([`longest float ${float}`, `float ${float}`], width);
  return {
    reads: far === null ? 'one tone at 0.6 m' : `clear at ${far} m`,
    lines: [...recipe, ...orders, ...nearest, last],
  };
}

function nearestLine({ scores }: Found, width: number): string[] {
  const whole = nearestInWords(scores);
  if (whole === undefined) return [];
  return [fitting([whole, whole.replace('nearest classic', 'nearest'), `nearest: ${scores.nearest}`], width)];
}

/** The threads' colour orders in letters, in one line or two. What is too long to write by threads is said by the order,
 * and called one: who winds from it must lay it first. */
function orderLines({ draft, order }: Found, width: number, most: number): string[] {
  const said = (strands: readonly number[]) => {
    const repeat = strands.slice(0, smallestPeriod(strands));
    const letters = formatOrder(repeat, draft.yarns);
    const runs = formatRuns(repeat, draft.yarns);
    return runs.length < letters.length ? runs : letters;
  };
  const warp = said(draft.warp);
  const weft = said(draft.weft);
  const short = `warp order ${order.warp} · weft order ${order.weft}`;
  if (warp === weft) return [fitting([`warp and weft ${warp}`, short], width)];
  const together = `warp ${warp} · weft ${weft}`;
  const inOne = fitting([together, short], width);
  if (inOne === together || most < 2) return [inOne];
  return [
    fitting([`warp ${warp}`, `warp order ${order.warp}`], width),
    fitting([`weft ${weft}`, `weft order ${order.weft}`], width),
  ];
}
