import { oneRepeat } from '../../draft/shortest-repeat.js';
import type { Manner, Structure } from '../model/structure.js';
import { isTurn } from './ring.js';
import type { FoundUnits } from './unit-matches.js';

/** How well one structure explains a weave. */
export interface Fit {
  readonly structure: Structure;
  /** True if it has more blocks than usual, to have as many shafts as the weave. */
  readonly enlarged: boolean;
  /** True if its shafts have other numbers in the weave. */
  readonly renumbered: boolean;
  readonly threading: FoundUnits<number>;
  /** Its treadling, if the picks are units of one of its manners. */
  readonly treadling?: { readonly manner: Manner; readonly found: FoundUnits<string> };
  /** True if the cloth is woven face down: every shed is the opposite of the structure's. */
  readonly turned: boolean;
  /** Share of the picks, 0 to 1, whose shed is one of the structure's. */
  readonly known: number;
  /** Whether the picks are bound as the structure's are: with plain weave between pattern picks, or without. */
  readonly bound: boolean;
}

/** Whether two fits are equally good: nothing in the weave decides between the two structures. */
export function equallyGood(a: Fit, b: Fit): boolean {
  return compareWeave(a, b) === 0;
}

/** Mean number of ends in a unit, without incidental ends. */
function meanUnit({ threading: { units } }: Fit): number {
  return units.reduce((sum, unit) => sum + unit.own.length, 0) / units.length;
}

function incidentals({ threading: { units } }: Fit): number {
  return units.reduce((sum, unit) => sum + unit.first.length, 0);
}

/**
 * Units before which the incidental ends are another choice than the structure’s usual. Where shafts are renumbered, up
 * and down are no evidence.
 */
function unusualJoins({ structure, threading, renumbered }: Fit): number {
  if (renumbered) return 0;
  return threading.units.filter(({ block, first }) => {
    const afters = Object.values(structure.threading.blocks[block]!.after ?? {});
    return first.length > 0 && !afters.some((after) => 'first' in after! && after.first?.[0]?.join() === first.join());
  }).length;
}

const isVariant = ({ structure }: Fit): boolean => structure.variantOf !== undefined;

/** Compares two fits, the better first. Differences of numbering and habit only break ties. */
export function compareFits(a: Fit, b: Fit): number {
  return (
    compareWeave(a, b) ||
    Number(a.renumbered) - Number(b.renumbered) ||
    Number(isVariant(a)) - Number(isVariant(b)) ||
    incidentals(a) - incidentals(b)
  );
}

/** Compares two fits by the weave alone, without numbering and habit. */
function compareWeave(a: Fit, b: Fit): number {
  return (
    weight(b) - weight(a) ||
    Number(b.known === 1) - Number(a.known === 1) ||
    Number(b.bound) - Number(a.bound) ||
    Number(saysMuch(b)) - Number(saysMuch(a)) ||
    Number(incidentals(a) > 0) - Number(incidentals(b) > 0) ||
    meanUnit(b) - meanUnit(a) ||
    Number(b.treadling !== undefined) - Number(a.treadling !== undefined) ||
    b.known - a.known ||
    idle(a) - idle(b) ||
    Number(a.turned) - Number(b.turned) ||
    unusualJoins(a) - unusualJoins(b) ||
    Number(usual(b)) - Number(usual(a))
  );
}

/**
 * Whether the units are evidence. Units of single ends are not: nearly every four-shaft threading consists of them. Nor
 * are pairs of ends without a treadling, on more shafts: every straight draw is pairs.
 */
function saysMuch(fit: Fit): boolean {
  return meanUnit(fit) >= (fit.enlarged && fit.treadling === undefined ? 3 : 2);
}

/** Whether all ends and picks are units of the structure, and the units are evidence. */
function explained(fit: Fit): boolean {
  return fit.treadling !== undefined && saysMuch(fit);
}

/** Whether a structure explains the weave so simply that other numbers of the shafts need not be tried. */
export function settled(fit: Fit): boolean {
  return explained(fit) && incidentals(fit) === 0 && !fit.turned && idle(fit) === 0;
}

/**
 * The weight of the evidence for a structure. With renumbered shafts and incidental threads, many weaves can be read as
 * a structure; so the structure's own sheds on its own shafts, in any order, weigh more.
 */
function weight(fit: Fit): number {
  const isFree = incidentals(fit) > 0;
  if (explained(fit)) return fit.renumbered && isFree ? 1 : 3;
  const isBound = fit.bound || fit.structure.manners[0]!.kinds !== undefined;
  return fit.known === 1 && isBound && saysMuch(fit) && !fit.renumbered && !isFree ? 2 : 0;
}

/** Whether there is evidence for the structure: its treadling, its sheds bound as there, or units that not every threading has. */
export function speaks(fit: Fit): boolean {
  return fit.treadling !== undefined || saysMuch(fit) || (fit.known === 1 && fit.bound);
}

/** Number of shafts and blocks of the structure that the weave does not use. */
function idle({ structure, threading, treadling }: Fit): number {
  const blocks = new Set([...threading.units, ...(treadling?.found.units ?? [])].map((unit) => unit.block));
  return structure.shafts - threadedOf(threading).size + structure.blocks.length - blocks.size;
}

/** Whether the blocks are in the structure's usual order. */
function usual({ structure, threading }: Fit): boolean {
  const found = oneRepeat(threading.units.map((unit) => unit.block));
  return isTurn(found, oneRepeat(structure.profile));
}

/** The shafts of the weave that carry an end. */
export function threadedOf(threading: FoundUnits<number>): ReadonlySet<number> {
  return new Set(
    threading.units.flatMap(({ first, own }) => [...first, ...own]).map((name) => threading.bound.get(name)!),
  );
}
