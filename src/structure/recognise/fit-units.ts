import type { Weave } from '../../draft/draft.js';
import { liftAt } from '../../draft/draft.js';
import { oneRepeat } from '../../draft/shortest-repeat.js';
import { MOST_BLOCKS } from '../model/sized.js';
import type { Structure } from '../model/structure.js';
import { compareFits, type Fit, settled, threadedOf } from './best-fit.js';
import { type Binding, bindingOf, shedWord } from './pick-kinds.js';
import { isTurn, repeatAndAll } from './ring.js';
import { type FoundUnits, findUnits } from './unit-matches.js';

/**
 * Ends and picks as cyclic lists of numbers. Since a unit may hold several repeats (1-2-1-2), the whole list is kept
 * too.
 */
interface Rings {
  /** Shaft of each end: one repeat, then all; empty if an end is on no shaft or on several. */
  readonly shafts: readonly (readonly number[])[];
  /** Number of each pick's shed: one repeat, then all. */
  readonly sheds: readonly (readonly number[])[];
  readonly shedNumber: ReadonlyMap<string, number>;
  readonly opposite: ReadonlyMap<string, number>;
  readonly binding: Binding;
}

/** Most numberings of the shafts that are tried against the picks; four shafts have 24. */
const MOST_READINGS = 24;

/**
 * Fits every structure to a weave with its shafts as numbered; if none explains it simply, also with the shafts
 * renumbered. The best fit comes first: all explained, then all sheds known, then the longest units.
 */
export function fitsOf(weave: Weave, among: readonly Structure[]): Fit[] {
  const rings = ringsOf(weave);
  if (rings.shafts.length === 0) return [];
  const plain = fitAll(rings, among, false);
  if (plain.some(settled)) return plain;
  return [...plain, ...fitAll(rings, among, true)].sort(compareFits);
}

function fitAll(rings: Rings, among: readonly Structure[], renumber: boolean): Fit[] {
  const known = new Map<string, FoundUnits<number>[]>();
  const fits = among.flatMap((structure): Fit[] => {
    const sized = withShafts(structure, renumber ? new Set(rings.shafts[0]).size : Math.max(...rings.shafts[0]!));
    if (sized === undefined) return [];
    const sign = JSON.stringify(sized.threading);
    const readings = known.get(sign) ?? findThreading(sized, rings.shafts, renumber);
    known.set(sign, readings);
    const each = readings.slice(0, MOST_READINGS).map((threading) => ({
      ...fitPicks(sized, threading, rings, renumber),
      enlarged: sized !== structure,
    }));
    return each.sort(compareFits).slice(0, 1);
  });
  return fits.sort(compareFits);
}

/**
 * The structure with as many blocks as `shafts` shafts need; undefined if it cannot have them, or only on other units
 * (halvdräll, which is then threaded as summer and winter).
 */
function withShafts(structure: Structure, shafts: number): Structure | undefined {
  if (structure.shafts >= shafts) return structure;
  if (structure.withBlocks === undefined) return undefined;
  for (let blocks = structure.blocks.length + 1; blocks <= MOST_BLOCKS; blocks++) {
    const larger = structure.withBlocks(blocks);
    if (larger.shafts >= shafts) return isTurn(unitA(larger), unitA(structure)) ? larger : undefined;
  }
  return undefined;
}

const unitA = ({ threading }: Structure): readonly number[] => threading.blocks.A?.lay ?? [];

function findThreading(structure: Structure, rings: Rings['shafts'], renumber: boolean): FoundUnits<number>[] {
  const own = Array.from({ length: structure.shafts }, (_, index) => index + 1);
  const names = new Map(renumber ? [] : own.map((shaft) => [shaft, shaft] as const));
  for (const ring of rings) {
    const found = findUnits(structure.threading, { ring, names, binds: renumber });
    if (found.length > 0) return found;
  }
  return [];
}

/** Fits the picks face up, or face down if that explains more. */
function fitPicks(
  structure: Structure,
  threading: FoundUnits<number>,
  rings: Rings,
  renumbered: boolean,
): Omit<Fit, 'enlarged'> {
  const up = fitSheds(structure, threading, rings, rings.shedNumber);
  const down = up.treadling !== undefined ? up : fitSheds(structure, threading, rings, rings.opposite);
  const turned = down.treadling !== undefined && up.treadling === undefined;
  const fit = turned ? down : up;
  const { kinds } = fit.treadling?.manner ?? structure.manners[0]!;
  const bound = (kinds?.includes('tabby') ?? false) === (rings.binding !== 'none');
  return { structure, renumbered, threading, turned, bound, ...fit };
}

function fitSheds(
  structure: Structure,
  threading: FoundUnits<number>,
  { sheds }: Rings,
  shedNumber: ReadonlyMap<string, number>,
): Pick<Fit, 'treadling' | 'known'> {
  const names = new Map<string, number>();
  for (const [name, shafts] of Object.entries(structure.tieUp)) {
    const raised = shafts.flatMap((shaft) => threading.bound.get(shaft) ?? []);
    const number = shedNumber.get(shedWord(raised, threadedOf(threading)));
    if (number !== undefined) names.set(name, number);
  }
  const numbers = new Set(names.values());
  const known = sheds[0]!.filter((shed) => numbers.has(shed)).length / sheds[0]!.length;
  if (known < 1) return { known };
  const across = oneRepeat(threading.units.map((unit) => unit.block));
  let treadling: Fit['treadling'];
  for (const manner of structure.manners) {
    const units = { ...manner, ...(structure.tabby && { tabby: structure.tabby }) };
    const [found] = sheds.flatMap((ring) => findUnits(units, { ring, names, binds: false }));
    if (found === undefined) continue;
    treadling ??= { manner, found };
    const along = oneRepeat(found.units.map((unit) => unit.block));
    // Of several manners that fit, the one whose picks follow the blocks of the threading is preferred.
    if (isTurn(across, along)) return { known, treadling: { manner, found } };
  }
  return treadling === undefined ? { known } : { known, treadling };
}

function ringsOf(weave: Weave): Rings {
  const single = weave.threading.every((on) => on.length === 1);
  const shafts = single ? repeatAndAll(weave.threading.map((on) => on[0]!)) : [];
  const threaded = new Set(weave.threading.flat());
  const shedNumber = new Map<string, number>();
  const opposite = new Map<string, number>();
  const all = weave.treadling.map((_, pick) => {
    const lift = liftAt(weave, pick);
    const word = shedWord(lift, threaded);
    const number = shedNumber.get(word) ?? shedNumber.size;
    const raised = new Set(lift);
    shedNumber.set(word, number);
    opposite.set(
      shedWord(
        [...threaded].filter((shaft) => !raised.has(shaft)),
        threaded,
      ),
      number,
    );
    return number;
  });
  return { shafts, sheds: repeatAndAll(all), shedNumber, opposite, binding: bindingOf(weave) };
}

/** Lengths of the units: their own strands, plus the incidental strands of the next unit. */
export function unitLengths<S>({ units }: FoundUnits<S>): number[] {
  return units.map((unit, u) => unit.own.length + units[(u + 1) % units.length]!.first.length);
}
