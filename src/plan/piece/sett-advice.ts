import type { Draft } from '../../draft/draft.js';
import type { PlanOptions } from '../options/plan-options.js';
import { adviseSett, diametersPerInch, type SettAdvice } from '../yarn/sett.js';

/** Centimetres in an inch. */
const CM = 2.54;
/** Share of the closest sett below which threads may slip (our proposal; lace is about half). */
const OPEN = 0.5;

/**
 * Advice on the sett for a draft in its warp yarns: from counted wraps, or else from the sizes and fibres of the yarns
 * (the mean diameter, if sizes differ). Undefined if neither is known for every warp yarn.
 */
export function settFor(draft: Draft, options: PlanOptions): SettAdvice | undefined {
  const perInch = draft.sett.per === 'inch' ? 1 : CM;
  const diameters = options.wraps === undefined ? diametersOf(draft, options) : options.wraps * perInch;
  return diameters === undefined ? undefined : adviseSett(draft, diameters, options.hand);
}

/** `; closest 35.6, advised 28.4` in the measure of the sett; empty without advice. */
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

/** The arithmetic of the closest and the advised sett in words, in the measure of the sett. */
export function settWords(advice: SettAdvice, { sett: { per } }: Draft): string {
  const { diameters, ends, intersections, closest, advised, share } = inMeasure(advice, per);
  const crossings = Number.isInteger(intersections) ? intersections : intersections.toFixed(1);
  return (
    `${diameters.toFixed(1)} threads side by side to the ${per} × ${ends} ends ÷ (${ends} + ` +
    `${crossings} intersections) = ${closest.toFixed(1)}; ${Math.round(share * 100)} % of it ${advised.toFixed(1)} (Ashenhurst’s rule)`
  );
}

/** A caution, in one sentence, if the sett is above the closest, or below {@link OPEN} of it; else empty. */
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

/** Warp threads that lie side by side in an inch. */
function diametersOf({ warp, yarns }: Draft, options: PlanOptions): number | undefined {
  const width = yarns.map(({ letter, tex }) => {
    const fibre = options.fibre ?? (options.yarns[letter] ?? options.yarns[''])?.fibre;
    return tex === undefined || fibre === undefined ? Number.NaN : 1 / diametersPerInch(tex, fibre);
  });
  const diameters = warp.length / warp.reduce((sum, yarn) => sum + width[yarn]!, 0);
  return Number.isNaN(diameters) ? undefined : diameters;
}
