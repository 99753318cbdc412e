import { type Draft, liftAt, type PickKind, type Weave } from '../../draft/draft.js';
import { refuseLarge } from '../../draft/limits.js';
import { oneRepeat } from '../../draft/shortest-repeat.js';
import { structures } from '../catalogue/catalogue.js';
import { tabbySheds } from '../loom/lifts.js';
import type { Structure } from '../model/structure.js';
import { equallyGood, type Fit, speaks } from './best-fit.js';
import { runLengths } from './block-runs.js';
import { fitsOf, unitLengths } from './fit-units.js';
import { kindsOf } from './pick-kinds.js';
import { sayRecognition } from './recognised-words.js';
import type { Confidence, Divided, Recognition } from './recognition.js';
import { drawnIn, followsAt } from './treadling-order.js';

/**
 * Recognises a weave: structure, units and blocks, repeat, plain weave, whether it is treadled as drawn in. Plain weave
 * is possible exactly if the number of ends is even and no shaft carries both odd and even ends.
 *
 * @throws Problem if a repeat is longer than 2000 ends or picks
 */
export function recognise(weave: Weave, among: readonly Structure[] = structures): Recognition {
  refuseLarge(weave);
  const fits = fitsOf(weave, among).filter(speaks);
  const [best] = fits;
  const sheds = weave.treadling.map((_, pick) => liftAt(weave, pick).join());
  const repeat = {
    ends: wholePeriod(weave.threading.map(String)),
    picks: wholePeriod(sheds),
  };
  const tabby = tabbySheds(weave.threading);
  const kinds = best === undefined ? undefined : kindsOf(best, weave);
  const divided = best === undefined ? byRuns(weave, sheds) : byFit(weave, sheds, best, kinds);
  const others = best === undefined ? [] : othersLike(best, fits);
  const found: Omit<Recognition, 'words'> = {
    ...(best !== undefined && { structure: best.structure, widths: best.structure.widths }),
    shedsKnown: best?.known === 1,
    tabbyLeftOut: kinds?.every((kind) => kind === 'pattern') ?? false,
    ...(best?.treadling !== undefined && { manner: best.treadling.manner.name }),
    ...(kinds !== undefined && { pickKinds: kinds }),
    ...(best?.renumbered && { renumbered: best.threading.bound }),
    ...(tabby !== undefined && { tabby }),
    others,
    confidence: confidenceOf(best, others, divided),
    turned: best?.turned ?? false,
    ...divided,
    asDrawnIn: drawnIn(weave, sheds, tabby, divided),
    repeat,
  };
  return { ...found, words: sayRecognition(found) };
}

/**
 * The draft with the recognised units, rotated to begin with a unit, so that colours can be laid by unit. The cloth is
 * the same but for the thread on which it begins. Kinds and widths of picks that the draft states are kept.
 */
export function understood(draft: Draft, { ends, picks, pickKinds, widths }: Recognition): Draft {
  const across = <T>(list: readonly T[]): T[] => [...list.slice(ends.from), ...list.slice(0, ends.from)];
  const along = <T>(list: readonly T[]): T[] => [...list.slice(picks.from), ...list.slice(0, picks.from)];
  const stated = draft.pickKinds.some((kind) => kind !== 'ground');
  const { companions } = draft;
  return {
    ...draft,
    threading: across(draft.threading),
    warp: across(draft.warp),
    endUnits: ends.units,
    treadling: along(draft.treadling),
    weft: along(draft.weft),
    pickUnits: picks.units,
    pickKinds: along(stated ? draft.pickKinds : (pickKinds ?? draft.pickKinds)),
    widths: stated || pickKinds === undefined ? draft.widths : (widths ?? draft.widths),
    ...(companions !== undefined && {
      companions: { ends: across(companions.ends), picks: along(companions.picks) },
    }),
  };
}

function byFit(
  weave: Weave,
  sheds: readonly string[],
  fit: Fit,
  kinds: readonly PickKind[] | undefined,
): { ends: Divided; picks: Divided } {
  const ends = over(
    weave.threading.length,
    fit.threading.from,
    unitLengths(fit.threading),
    fit.threading.units.map((unit) => unit.block),
  );
  const { treadling } = fit;
  if (treadling === undefined) {
    // A unit is a pattern pick and the tabby after it, where that is written.
    if (kinds?.includes('tabby')) return { ends, picks: over(sheds.length, kinds.indexOf('pattern'), [2]) };
    return { ends, picks: picksLike(weave, sheds, ends) };
  }
  const blocks = treadling.found.units.map((unit) => unit.block);
  return {
    ends,
    picks: over(weave.treadling.length, treadling.found.from, unitLengths(treadling.found), blocks),
  };
}

function byRuns(weave: Weave, sheds: readonly string[]): { ends: Divided; picks: Divided } {
  const ends = over(weave.threading.length, ...runLengths(numbersOf(weave.threading.map(String), weave.threading)));
  return { ends, picks: picksLike(weave, sheds, ends) };
}

/** Units of picks without a known manner: the units of the ends if the picks follow them, else straight runs. */
function picksLike(weave: Weave, sheds: readonly string[], ends: Divided): Divided {
  if (followsAt(weave.threading.map(String), sheds) === 0) return { from: ends.from, units: ends.units };
  return over(sheds.length, ...runLengths(numbersOf(sheds, weave.treadling)));
}

/** One number for each thread: its only shaft or treadle, else its index among the different words. */
function numbersOf(words: readonly string[], threads: readonly (readonly number[])[]): number[] {
  if (threads.every((on) => on.length === 1)) return threads.map((on) => on[0]!);
  const order = [...new Set(words)];
  return words.map((word) => order.indexOf(word) + 1);
}

/** The units of one repeat, repeated over `count` threads. */
function over(count: number, from: number, units: readonly number[], blocks?: readonly string[]): Divided {
  const times = count / units.reduce((sum, size) => sum + size, 0);
  const again = <T>(list: readonly T[]): T[] => Array.from({ length: times }, () => list).flat();
  return { from, units: again(units), ...(blocks !== undefined && { blocks: again(blocks) }) };
}

function othersLike(best: Fit, fits: readonly Fit[]): string[] {
  const others = fits.filter((fit) => fit !== best && equallyGood(fit, best)).map(({ structure }) => structure);
  // A variant of the best differs in joins that this weave does not have.
  const told = others.filter(({ name, variantOf }) => ![name, variantOf].includes(best.structure.name));
  return [...new Set(told.map(({ name }) => name))];
}

function confidenceOf(
  best: Fit | undefined,
  others: readonly string[],
  { ends }: { readonly ends: Divided },
): Confidence {
  if (best === undefined) return ends.units.some((size) => size > 1) ? 'possible' : 'none';
  if (best.treadling !== undefined) return others.length === 0 ? 'certain' : 'likely';
  return best.known === 1 && others.length === 0 ? 'likely' : 'possible';
}

function wholePeriod(ring: readonly string[]): number {
  return oneRepeat(ring).length;
}
