import type { Draft } from '../draft/draft.js';

/** What an element of an order colours: a thread, a unit, or a unit whose block the element chooses as well. */
export const LAID_BY = ['thread', 'unit', 'block'] as const;
export type By = (typeof LAID_BY)[number];
/** The colours of an element's threads: all its own, its own and the companion in turn, or the whole order again. */
export const FILLS = ['solid', 'alternate', 'nest'] as const;
export type Fill = (typeof FILLS)[number];

/** The colour orders of a cloth, and how they are laid on its threads. */
export interface LaidOrder {
  /** The orders in letters, before they are laid. */
  readonly warp: string;
  readonly weft: string;
  readonly by: By;
  readonly fill: Fill;
  /** Threads or units that each element covers. */
  readonly times: number;
  /** Thread (unit, if laid by unit or block) on which the warp order and the weft order begin, from 0. */
  readonly start: readonly [number, number];
}

/** Words for where the orders begin: `warp order begins on end 5, weft order on pick 5`; undefined if on the first. */
export function startInWords(
  { by, start }: Pick<LaidOrder, 'by' | 'start'>,
  { pickKinds }: Pick<Draft, 'pickKinds'>,
): string | undefined {
  const [warp, weft] = start.map((place) => place + 1);
  if (warp === 1 && weft === 1) return undefined;
  if (by !== 'thread') return `warp order begins on unit ${warp}, weft order on unit ${weft}`;
  const skipped = pickKinds.includes('tabby') && pickKinds.some((kind) => kind !== 'tabby');
  return `warp order begins on end ${warp}, weft order on pick ${weft}${skipped ? ', tabby not counted' : ''}`;
}

/** The same in a recipe, in short: `warp from unit 1, weft from unit 2`. */
export function beginInWords({ by, start }: Pick<LaidOrder, 'by' | 'start'>): string | undefined {
  const [warp, weft] = start.map((place) => place + 1);
  if (warp === 1 && weft === 1) return undefined;
  const [end, pick] = by === 'thread' ? ['end', 'pick'] : ['unit', 'unit'];
  return `warp from ${end} ${warp}, weft from ${pick} ${weft}`;
}
