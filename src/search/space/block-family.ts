import type { Weave } from '../../draft/draft.js';
import type { Fill } from '../../order/laid-order.js';
import { nestedOrder, type Order } from '../../order/order.js';
import { Problem } from '../../problem.js';
import { drawn, type Structure, weaveOf } from '../../structure/catalogue/catalogue.js';
import { blocksForColours } from '../../structure/model/sized.js';
import { counted } from '../../words/counts.js';
import type { Question } from '../question/question.js';
import type { Family } from './family.js';

/** What blocks are laid of. */
export interface Woven {
  readonly structure: Structure;
  /** Manner of treadling; the first where it has no name. */
  readonly manner: string;
  /** What it is called where that is not the structure's name: a draft. */
  readonly called?: string;
  /** Brings a weave to the tie-up that is there. */
  readonly tied?: (weave: Weave) => Weave;
}

/** A block order, or the blocks that a name spells. */
export interface Profile {
  readonly blocks: readonly string[];
  readonly called?: string;
  /** Block order of the treadling, if not as drawn in. */
  readonly treadled?: readonly string[];
  /** Whether that goes without saying, since all blocks are treadled alike. */
  readonly isPlain?: boolean;
}

/** The elements of an order as they are laid: the order, or the order nested in itself. */
export function elementsOf(question: Question, fill: Fill): (order: Order) => Order {
  return fill === 'nest' ? (order) => nestedOrder(order, question.yarns.length) : (order) => order;
}

/**
 * Orders laid on a structure in a block order of its own. By block, an element covers a block: all units of one letter
 * side by side.
 */
export function profileFamily(
  question: Question,
  { structure, manner, called: name = structure.name, tied = (weave) => weave }: Woven,
  { blocks, called, treadled = question.treadled, isPlain = false }: Profile,
  laying: Pick<Family, 'by' | 'fill' | 'times'>,
): Family {
  const asked = { ...(manner !== '' && { manner }), ...(treadled.length > 0 && { treadled }) };
  const { weave: inUnits, ends, picks } = drawn(structure, blocks, asked);
  const inBlocks = { ...inUnits, endUnits: runsOfBlocks(ends), pickUnits: runsOfBlocks(picks) };
  const weave = tied(laying.by === 'block' ? inBlocks : inUnits);
  return {
    structure: name,
    manner,
    profile: blocks,
    ...(called !== undefined && { called }),
    ...(treadled.length > 0 && !isPlain && { treadled }),
    ...laying,
    fixedWeave: true,
    weave: () => weave,
    laid: elementsOf(question, laying.fill),
  };
}

/** Threads of each block in turn. */
function runsOfBlocks(strands: readonly { readonly block: string }[]): number[] {
  const runs: number[] = [];
  strands.forEach(({ block }, at) => {
    if (at > 0 && block === strands[at - 1]!.block) runs[runs.length - 1]!++;
    else runs.push(1);
  });
  return runs;
}

/** Threadings (treadlings) that are remembered. */
const REMEMBERED = 4096;

/**
 * Weaves whose threading follows from one order and whose treadling from the other, so that each is drawn once: those of
 * the first pair with which an order could be woven. How many blocks both have together may change the tie-up.
 */
export function bySides(drawn: (warp: Order, weft: Order) => Weave): (warp: Order, weft: Order) => Weave {
  const threaded = new Map<string, Weave>();
  const treadled = new Map<string, Weave>();
  const signs = new WeakMap<Order, string[]>();
  // What an order is known by, under each number of blocks that both have together.
  const signOf = (order: Order, blocks: number): string => {
    let known = signs.get(order);
    if (known === undefined) {
      known = [];
      signs.set(order, known);
    }
    known[blocks] ??= `${blocks} ${order}`;
    return known[blocks];
  };
  const keep = (known: Map<string, Weave>, key: string, weave: Weave): void => {
    if (known.size >= REMEMBERED) known.clear();
    known.set(key, weave);
  };
  return (warp, weft) => {
    let blocks = 0;
    for (const colour of warp) blocks = Math.max(blocks, colour);
    for (const colour of weft) blocks = Math.max(blocks, colour);
    const [across, down] = [signOf(warp, blocks), signOf(weft, blocks)];
    const [ends, picks] = [threaded.get(across), treadled.get(down)];
    if (ends !== undefined && picks !== undefined) return joined(ends, picks);
    const weave = drawn(warp, weft);
    if (ends === undefined) keep(threaded, across, weave);
    if (picks === undefined) keep(treadled, down, weave);
    return ends === undefined && picks === undefined ? weave : joined(ends ?? weave, picks ?? weave);
  };
}

/** The threading of one weave with the treadling and tie-up of another. */
function joined(ends: Weave, picks: Weave): Weave {
  const { companions: _, ...rest } = picks;
  const weave = { ...rest, threading: ends.threading, endUnits: ends.endUnits };
  if (ends.companions === undefined && picks.companions === undefined) return weave;
  const companions = {
    ends: ends.companions?.ends ?? ends.threading.map(() => 0),
    picks: picks.companions?.picks ?? picks.treadling.map(() => 0),
  };
  return [...companions.ends, ...companions.picks].includes(1) ? { ...weave, companions } : weave;
}

/** The orders are the profile too: the first colour stands for block A, the second for B, and so on. */
export function blockFamily(question: Question, woven: Woven, fill: Fill, times: number): Family {
  const { structure, manner, called = structure.name, tied = (weave) => weave } = woven;
  const colours = question.yarns.length;
  const wide = colours > structure.blocks.length ? (structure.withBlocks?.(colours) ?? structure) : structure;
  const known = blocksForColours(wide, manner === '' ? undefined : manner);
  if (known.length < colours) {
    const treadled = known.length < wide.blocks.length ? ` that “${manner}” treadles` : '';
    throw new Problem(
      `by block: ${structure.name} has ${counted(known.length, 'block')}${treadled}, ` +
        `but the orders have ${colours} colours; expected no more colours than blocks`,
    );
  }
  const elements = elementsOf(question, fill);
  const fixedWeft = question.weft.rule === 'fixed';
  const blocksFor = (order: Order): string[] =>
    elements(order).flatMap((colour) => new Array<string>(times).fill(known[colour]!));
  const drawn = (warp: Order, weft: Order): Weave =>
    weaveOf(structure, blocksFor(warp), {
      ...(manner !== '' && { manner }),
      treadled: question.treadled.length > 0 ? question.treadled : blocksFor(fixedWeft ? warp : weft),
    });
  // A draft's own tie-up is brought to the whole weave; else threading and treadling follow from one order each.
  const weave = woven.tied || fixedWeft ? (warp: Order, weft: Order) => tied(drawn(warp, weft)) : bySides(drawn);
  const laid: Family['laid'] = (order, system, { companions }) => {
    const all = elements(order);
    // A weft of one yarn, or with blocks of its own, is laid as it is given.
    if (system === 'picks' && (fixedWeft || question.treadled.length > 0)) return all;
    // Where the colours themselves carry the blocks (turned taqueté), the blocks have said all.
    return companions ? all.map(() => 0) : all;
  };
  const { treadled } = question;
  const common = { structure: called, letters: known, manner, ...(treadled.length > 0 && { treadled }) };
  return { ...common, profile: [], by: 'block', fill, times, fixedWeave: false, weave, laid };
}
