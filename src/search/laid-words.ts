import type { Draft } from '../draft/draft.js';
import type { By } from './question.js';

/** How orders are laid on a cloth, as far as its recipe says so in short. */
export interface Laid {
  readonly by: By;
  /** Thread or unit on which the warp order, and the weft order, begins, counted from 0. */
  readonly start: readonly [number, number];
}

/** The end of a recipe: how the orders are laid, what the weft is, where they begin. */
const SHORT =
  /(?: by (thread|unit|block)(?: ×\d+)?(?: alternate| nested)?|, warp (?:and tie-up )?on the loom.*), weft .+$/;
const FROM = /, from (\d+)\/(\d+)$/;

/** Reads how orders are laid from a recipe; undefined where it is another kind of line (a gamp’s). */
export function laidOf(recipe: string): Laid | undefined {
  const laid = SHORT.exec(recipe);
  if (laid === null) return undefined;
  const from = FROM.exec(recipe);
  const start: Laid['start'] = from === null ? [0, 0] : [Number(from[1]) - 1, Number(from[2]) - 1];
  // A warp on the loom lies thread by thread, and so do its wefts.
  return { by: (laid[1] as By | undefined) ?? 'thread', start };
}

/** Where the orders begin: `warp order begins on end 5, weft order on pick 5`; none where both begin on the first. */
export function startInWords({ by, start }: Laid, { pickKinds }: Pick<Draft, 'pickKinds'>): string | undefined {
  const [warp, weft] = start.map((place) => place + 1);
  if (warp === 1 && weft === 1) return undefined;
  if (by !== 'thread') return `warp order begins on unit ${warp}, weft order on unit ${weft}`;
  const skipped = pickKinds.includes('tabby') && pickKinds.some((kind) => kind !== 'tabby');
  return `warp order begins on end ${warp}, weft order on pick ${weft}${skipped ? ', tabby not counted' : ''}`;
}

/** The same for a whole sheet of cloths, as the legend of what their recipes say in short. */
export const START_LEGEND = 'from 5/3: the warp order begins on end (by unit: unit) 5, the weft order on pick (unit) 3';

/** Whether any of the recipes says in short where orders begin. */
export function saysStart(recipes: readonly string[]): boolean {
  return recipes.some((recipe) => FROM.test(recipe));
}
