import type { Draft } from '../../draft/draft.js';
import type { PlanOptions } from '../options/plan-options.js';
import { adviseSett, diametersPerInch, type SettAdvice } from '../yarn/sett.js';

/** Centimetres in an inch. */
const CM = 2.54;
/** Below this share of the closest sett threads have room to slip (our proposal; lace is about half). */
const OPEN = 0.5;

/**
 * The sett that a draft's weave bears in its warp yarns: by the wraps that were counted, or else by the yarns' sizes and
 * fibres (of several sizes the mean width). Undefined where neither is known of every warp yarn.
 */
export function settFor(draft: Draft, options: PlanOptions): SettAdvice | undefined {
  const perInch = draft.sett.per === 'inch' ? 1 : CM;
  const diameters = options.wraps === undefined ? diametersOf(draft, options) : options.wraps * perInch;
  return diameters === undefined ? undefined : adviseSett(draft, diameters, options.hand);
}

/** `; closest 35.6, advised 28.4` in the measure of the sett; nothing where the yarns are not known. */
export function settInShort({
  settAdvice,
  draft,
}: {
  readonly settAdvice?: SettAdvice;
  readonly draft: Draft;
}): string {
  if (settAdvice === undefined) return '';
  const { closest, advised } = inMeasure(settAdvice, draft.sett.per);
  return `; closest ${closest.toFixed(1)}, advised ${advised.toFixed(1)}`;
}

/** How the closest sett and the advised one are reckoned, in the measure of the sett. */
export function settWords(advice: SettAdvice, { sett: { per } }: Draft): string {
  const { diameters, ends, intersections, closest, advised, share } = inMeasure(advice, per);
  const crossings = Number.isInteger(intersections) ? intersections : intersections.toFixed(1);
  return (
    `${diameters.toFixed(1)} threads lie in ${per === 'inch' ? 'an inch' : 'a cm'}, × ${ends} ends ÷ (${ends} + ` +
    `${crossings} intersections) = ${closest.toFixed(1)}; ${Math.round(share * 100)} % of it ${advised.toFixed(1)} (Ashenhurst’s rule)`
  );
}

/** One sentence where ends are set closer than the closest, or far more open; nothing where it is neither. */
export function settCautions(advice: SettAdvice | undefined, { sett: { ends, per } }: Draft): string[] {
  if (advice === undefined) return [];
  const { closest, advised } = inMeasure(advice, per);
  const [most, good] = [closest.toFixed(1), advised.toFixed(1)];
  if (ends > closest + 1e-9) {
    return [`Set at ${ends}, closer than the ${most} at which the threads fill the ${per}: try nearer to ${good}.`];
  }
  if (ends < closest * OPEN - 1e-9) {
    return [`Set at ${ends}, far more open than the ${good} advised: threads may slip; sample before the whole warp.`];
  }
  return [];
}

function inMeasure(advice: SettAdvice, per: Draft['sett']['per']): SettAdvice {
  const by = per === 'inch' ? 1 : CM;
  const { diameters, closest, advised } = advice;
  return { ...advice, diameters: diameters / by, closest: closest / by, advised: advised / by };
}

/** Threads in an inch, of the warp's yarns as they lie side by side. */
function diametersOf({ warp, yarns }: Draft, options: PlanOptions): number | undefined {
  const width = yarns.map(({ letter, tex }) => {
    const fibre = options.fibre ?? (options.yarns[letter] ?? options.yarns[''])?.fibre;
    return tex === undefined || fibre === undefined ? Number.NaN : 1 / diametersPerInch(tex, fibre);
  });
  const diameters = warp.length / warp.reduce((sum, yarn) => sum + width[yarn]!, 0);
  return Number.isNaN(diameters) ? undefined : diameters;
}
