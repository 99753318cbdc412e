import * as v from 'valibot';
import { FILLS, LAID_BY, type LaidOrder } from '../order/laid-order.js';

const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1e6));
/** Longest order that is written; a guard against damage. */
const letters = v.pipe(v.string(), v.maxLength(65_536));

/** The colour orders of a cloth and how they are laid, as galleries and shortlists hold them. */
export const laidOrderSchema = v.object({
  warp: letters,
  weft: letters,
  by: v.picklist(LAID_BY),
  fill: v.picklist(FILLS),
  times: count,
  start: v.tuple([count, count]),
}) satisfies v.GenericSchema<unknown, LaidOrder>;
