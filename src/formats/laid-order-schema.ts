import * as v from 'valibot';
import { FILLS, LAID_BY, type LaidOrder } from '../order/laid-order.js';

const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1e6));
/** Letters of an order; the limit guards against damaged files. */
const letters = v.pipe(v.string(), v.maxLength(65_536));

/** Schema of a cloth's colour orders and how they are laid, as galleries and shortlists store them. */
export const laidOrderSchema = v.object({
  warp: letters,
  weft: letters,
  by: v.picklist(LAID_BY),
  fill: v.picklist(FILLS),
  times: count,
  start: v.tuple([count, count]),
}) satisfies v.GenericSchema<unknown, LaidOrder>;
