import type { Weave } from '../../draft/draft.js';
import type { Structure } from '../model/structure.js';
import type { After, Unit } from '../model/unit.js';
import { type WeaveOptions, weaveOf } from '../model/weave.js';
import type { Recognition } from '../recognise/recognition.js';
import { recognitionOf } from '../recognise/recognition-of.js';

/** The structure of a weave, in the weave's own numbering. */
export interface StructureOn {
  /** The structure on the weave's shafts, face down if the weave is, with the weave's manner of treadling first. */
  readonly structure: Structure;
  /** Blocks of the threading, from the end on which the first unit begins. */
  readonly blocks: readonly string[];
  readonly found: Recognition;
}

/** Structures found, by the recognition of their weave. */
const known = new WeakMap<Recognition, StructureOn | undefined>();

/** The structure of a weave, for laying other blocks on its shafts; undefined unless certain or likely. */
export function structureOn(weave: Weave): StructureOn | undefined {
  const found = recognitionOf(weave);
  if (!known.has(found)) known.set(found, structureFound(found));
  return known.get(found);
}

function structureFound(found: Recognition): StructureOn | undefined {
  const { structure, confidence, ends } = found;
  if (structure === undefined || ends.blocks === undefined) return undefined;
  if (confidence !== 'certain' && confidence !== 'likely') return undefined;
  return { structure: asFound(structure, found), blocks: ends.blocks, found };
}

/**
 * The threading of a weave, treadled in a manner of its structure, with the blocks as drawn in unless others are given.
 * Undefined if the structure would thread the blocks differently in any end, or if the colours make the blocks.
 */
export function treadledOn(
  weave: Weave,
  { structure, blocks, found }: StructureOn,
  options: Pick<WeaveOptions, 'manner' | 'treadled'>,
): Weave | undefined {
  if (weave.companions !== undefined) return undefined;
  const { threading, companions, tieUp, treadling, pickKinds, pickUnits, widths } = weaveOf(structure, blocks, options);
  const { from } = found.ends;
  const begun = [...weave.threading.slice(from), ...weave.threading.slice(0, from)];
  if (companions !== undefined || threading.join(' ') !== begun.join(' ')) return undefined;
  return { ...weave, tieUp, treadling, pickKinds, pickUnits, widths };
}

/** The structure with the shafts numbered as in the weave, and every shed turned over if it is woven face down. */
function asFound(structure: Structure, found: Recognition): Structure {
  const { shafts, threading, tieUp, manners, withBlocks } = structure;
  const own = manners.filter(({ name }) => name === found.manner);
  const here = numbering(shafts, found.renumbered);
  const all = Array.from({ length: shafts }, (_, index) => index + 1);
  const shed = (raised: readonly number[]): readonly number[] =>
    found.turned ? all.filter((shaft) => !raised.includes(shaft)) : raised;
  return {
    ...structure,
    manners: [...own, ...manners.filter((manner) => !own.includes(manner))],
    threading: {
      ...threading,
      blocks: Object.fromEntries(
        Object.entries(threading.blocks).map(([letter, unit]) => [letter, unitOn(unit, here)]),
      ),
      ...(threading.starts && { starts: threading.starts.map(here) }),
    },
    tieUp: Object.fromEntries(Object.entries(tieUp).map(([name, raised]) => [name, shed(raised).map(here)])),
    ...(withBlocks && {
      withBlocks: (blocks: number, together: readonly string[] = []) => asFound(withBlocks(blocks, together), found),
    }),
  };
}

/**
 * A function from a structure's shaft to the weave's number; a shaft without ends in the weave takes the next free one.
 */
function numbering(shafts: number, renumbered: Recognition['renumbered']): (shaft: number) => number {
  if (renumbered === undefined) return (shaft) => shaft;
  const taken = new Set(renumbered.values());
  const numbers = new Map(renumbered);
  for (let shaft = 1, free = 1; shaft <= shafts; shaft++) {
    if (numbers.has(shaft)) continue;
    while (taken.has(free)) free++;
    numbers.set(shaft, free++);
  }
  return (shaft) => numbers.get(shaft)!;
}

function unitOn(unit: Unit<number>, here: (shaft: number) => number): Unit<number> {
  const { lay, after } = unit;
  const changed = ({ first, lay: other }: Exclude<After<number>, { never: string }>): After<number> => ({
    ...(first && { first: first.map((strands) => strands.map(here)) }),
    ...(other && { lay: other.map(here) }),
  });
  const entries = Object.entries(after ?? {}) as [string, After<number>][];
  const afterHere = entries.map(([last, form]) => [here(Number(last)), 'never' in form ? form : changed(form)]);
  return { ...unit, lay: lay.map(here), ...(after && { after: Object.fromEntries(afterHere) }) };
}
