import type { Weave } from '../draft/draft.js';
import type { Laying } from '../order/lay.js';
import type { Order } from '../order/order.js';
import { Problem } from '../problem.js';
import { findStructure, type Structure, weaveOf } from '../structure/index.js';
import type { By, Fill, Question } from './question.js';

/** One way of laying orders on one weave: all of a candidate but its orders and where they start. */
export interface Family {
  readonly structure: string;
  /** Manner of treadling, where the structure knows several. */
  readonly manner: string;
  readonly profile: readonly string[];
  readonly by: By;
  readonly fill: Fill;
  readonly times: number;
  /** The weave; where the orders choose the blocks, one for each pair of orders. */
  weave(warp: Order, weft: Order): Weave;
  /** Whether every pair of orders has the same weave. */
  readonly fixedWeave: boolean;
}

/** Every way of laying orders that a question asks for, in the order in which they are tried. */
export function familiesOf(question: Question): Family[] {
  const families: Family[] = [];
  for (const base of basesOf(question)) {
    for (const by of question.profile === 'order' ? (['block'] as const) : question.by) {
      for (const fill of question.fill) {
        for (const times of question.times) {
          // One thread an element has no companion beside it: alternate is solid.
          const same = fill === 'alternate' && by === 'thread' && times === 1 && question.fill.includes('solid');
          if (!same) families.push(base(by, fill, times));
        }
      }
    }
  }
  return families;
}

type Base = (by: By, fill: Fill, times: number) => Family;

function basesOf(question: Question): Base[] {
  if (question.draft) {
    const { draft, file } = question.draft;
    return [
      (by, fill, times) => {
        if (by === 'block') throw new Problem(`by block: ${file} has no named blocks; expected by thread or by unit`);
        return {
          structure: draft.name ?? file,
          manner: '',
          profile: [],
          by,
          fill,
          times,
          fixedWeave: true,
          weave: () => draft,
        };
      },
    ];
  }
  return question.structures.map(findStructure).flatMap((structure) => {
    const manners = question.treadlings.length > 0 ? question.treadlings : [''];
    return manners.map(
      (manner): Base =>
        (by, fill, times) =>
          structureFamily(question, structure, manner, by, fill, times),
    );
  });
}

function structureFamily(
  question: Question,
  structure: Structure,
  manner: string,
  by: By,
  fill: Fill,
  times: number,
): Family {
  const options = manner === '' ? {} : { manner };
  const common = { structure: structure.name, manner, by, fill, times };
  if (by !== 'block') {
    const profile =
      question.profile === 'order' || question.profile.length === 0 ? structure.profile : question.profile;
    const weave = weaveOf(structure, profile, options);
    return { ...common, profile, fixedWeave: true, weave: () => weave };
  }
  if (structure.blocks.length < question.yarns.length) {
    throw new Problem(
      `by block: ${structure.name} has ${structure.blocks.length} block${structure.blocks.length === 1 ? '' : 's'}, ` +
        `but the orders have ${question.yarns.length} colours; expected no more colours than blocks`,
    );
  }
  const blocksFor = (order: Order): string[] =>
    order.flatMap((colour) => new Array<string>(times).fill(structure.blocks[colour]!));
  const weave = (warp: Order, weft: Order): Weave =>
    weaveOf(structure, blocksFor(warp), {
      ...options,
      treadled: blocksFor(question.weft.rule === 'fixed' ? warp : weft),
    });
  return { ...common, profile: [], fixedWeave: false, weave };
}

/** How orders are laid in a family. By block the order lies on whole units, as the blocks do. */
export function layingOf(family: Family, start: number): Laying {
  return { by: family.by === 'thread' ? 'thread' : 'unit', fill: family.fill, times: family.times, start };
}

/**
 * The order that colours the threads. Where the colour order itself carries the blocks (turned taqueté), an order that
 * has chosen the blocks has said all: the threads take the first colour and its companion as the blocks ask.
 */
export function colouring(family: Family, weave: Weave, order: Order): Order {
  return family.by === 'block' && weave.companions ? order.map(() => 0) : order;
}

/** Whether tabby picks keep their own colour, whatever the orders are. */
export function hasTabby(family: Family): boolean {
  return family.weave([0], [0]).pickKinds.includes('tabby');
}
