import type { Manner, Structure } from '../model/structure.js';
import { isTurn, oneRepeat } from './ring.js';
import type { FoundUnits } from './unit-matches.js';

/** How well one structure accounts for a weave. */
export interface Fit {
  readonly structure: Structure;
  /** Its shafts have other numbers in the weave. */
  readonly renumbered: boolean;
  readonly threading: FoundUnits<number>;
  /** Its treadling, where the picks are units of one of its manners. */
  readonly treadling?: { readonly manner: Manner; readonly found: FoundUnits<string> };
  /** The cloth lies face down: every shed is the opposite of the structure's. */
  readonly turned: boolean;
  /** Share of the picks, 0 to 1, whose shed is one of the structure's. */
  readonly known: number;
}

/** Whether two fits are equally good, so that nothing in the weave tells which of the two structures it is. */
export function equallyGood(a: Fit, b: Fit): boolean {
  return compareWeave(a, b) === 0;
}

/** Ends of a unit in the mean, incidental ends not counted. */
function meanUnit({ threading: { units } }: Fit): number {
  return units.reduce((sum, unit) => sum + unit.own.length, 0) / units.length;
}

function incidentals({ threading: { units } }: Fit): number {
  return units.reduce((sum, unit) => sum + unit.first.length, 0);
}

/** The better first; what is only a matter of numbering or habit comes last. */
export function compareFits(a: Fit, b: Fit): number {
  return compareWeave(a, b) || Number(a.renumbered) - Number(b.renumbered) || incidentals(a) - incidentals(b);
}

/** Compares by what the weave itself tells. */
function compareWeave(a: Fit, b: Fit): number {
  return (
    weight(b) - weight(a) ||
    Number(b.known === 1) - Number(a.known === 1) ||
    meanUnit(b) - meanUnit(a) ||
    Number(b.treadling !== undefined) - Number(a.treadling !== undefined) ||
    b.known - a.known ||
    Number(a.turned) - Number(b.turned) ||
    idle(a) - idle(b) ||
    Number(usual(b)) - Number(usual(a))
  );
}

/** Units of single ends say little: nearly every threading on four shafts is a walk from end to end. */
function saysMuch(fit: Fit): boolean {
  return meanUnit(fit) >= 2;
}

/** Whether ends and picks are all of the structure's units, and these say something. */
export function explained(fit: Fit): boolean {
  return fit.treadling !== undefined && saysMuch(fit);
}

/**
 * What speaks for a structure. A reading in which shafts are renumbered and threads are incidental can be had of much, so
 * that the sheds of a structure on its own shafts, in whatever order they come, say more.
 */
function weight(fit: Fit): number {
  const isFree = incidentals(fit) > 0;
  if (explained(fit)) return fit.renumbered && isFree ? 1 : 3;
  return fit.known === 1 && saysMuch(fit) && !fit.renumbered && !isFree ? 2 : 0;
}

/** Whether anything speaks for the structure: its treadling, or units that not every threading has. */
export function speaks(fit: Fit): boolean {
  return fit.treadling !== undefined || saysMuch(fit);
}

/** Shafts and blocks of the structure that the weave does not use. */
function idle({ structure, threading, treadling }: Fit): number {
  const blocks = new Set([...threading.units, ...(treadling?.found.units ?? [])].map((unit) => unit.block));
  return structure.shafts - threadedOf(threading).size + structure.blocks.length - blocks.size;
}

/** Whether the blocks come in the structure's usual order. */
function usual({ structure, threading }: Fit): boolean {
  const found = oneRepeat(threading.units.map((unit) => unit.block));
  return isTurn(found, oneRepeat(structure.profile));
}

/** Shafts of the weave that carry an end. */
export function threadedOf(threading: FoundUnits<number>): ReadonlySet<number> {
  return new Set(
    threading.units.flatMap(({ first, own }) => [...first, ...own]).map((name) => threading.bound.get(name)!),
  );
}
