import { spacing } from '../../../draft/draft.js';
import type { Floats } from '../../model/figures.js';
import type { FloatLimit } from '../../model/float-limit.js';
import type { Measured, ScorePart } from './score-part.js';

/**
 * F = clamp((limit − longest)/(limit − 1), 0, 1): 1 for floats of one thread, 0 at the limit. A limit in length is
 * counted in lengths, one thread being the larger `spacing` (mm).
 */
export function shortness(floats: Pick<Floats, 'longest' | 'longestMm'>, limit: FloatLimit, spacing: number): number {
  if (floats.longest === null || floats.longestMm === null) return 0;
  const [most, longest, one] =
    'mm' in limit ? [limit.mm, floats.longestMm, spacing] : [limit.threads, floats.longest, 1];
  if (most - one <= 1e-12) return longest <= one + 1e-9 ? 1 : 0;
  return Math.min(1, Math.max(0, (most - longest) / (most - one)));
}

export const floatPart = {
  name: 'float',
  words: 'short floats',
  means: 'short floats: 1 for plain weave, 0 at your limit; longer ones are set aside and counted',
  weight: 1,
  of({ floats, floatLimit, sett }: Measured) {
    const { across, along } = spacing(sett);
    return shortness(floats, floatLimit, Math.max(across, along));
  },
} as const satisfies ScorePart;
