import type { Weave } from '../draft/draft.js';
import type { Laying } from '../order/lay.js';
import { nested, type Order } from '../order/order.js';
import { Problem } from '../problem.js';
import { findManner, findStructure, nameDraft, type Structure, weaveOf } from '../structure/index.js';
import { type MannerOn, mannersOn } from '../structure/manners-on.js';
import { letters } from '../structure/structure.js';
import type { By, Fill, Question } from './question.js';

/** How the treadling that a draft has of itself is asked for. */
export const ITS_OWN = 'its own';

/** One way of laying orders on one weave: all of a candidate but its orders and where they start. */
export interface Family {
  readonly structure: string;
  /** Manner of treadling, where the structure knows several. */
  readonly manner: string;
  readonly profile: readonly string[];
  /** What the profile is called where letters of blocks do not say it: the name that is drafted. */
  readonly called?: string;
  /** Block order of the treadling where it is not as drawn in. */
  readonly treadled?: readonly string[];
  readonly by: By;
  readonly fill: Fill;
  readonly times: number;
  /** The weave; where the orders choose the blocks, one for each pair of orders. */
  weave(warp: Order, weft: Order): Weave;
  /** Whether every pair of orders has the same weave. */
  readonly fixedWeave: boolean;
  /** The order of colours that an order lays on the ends (picks) of a weave. */
  laid(order: Order, system: 'ends' | 'picks', weave: Weave): Order;
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
    return weavesOf(question, draft).map(
      ({ name: manner, weave }): Base =>
        (by, fill, times) => {
          if (by === 'block') throw new Problem(`by block: ${file} has no named blocks; expected by thread or by unit`);
          const laid = elementsOf(question, fill);
          return {
            structure: draft.name ?? file,
            manner,
            profile: [],
            by,
            fill,
            times,
            fixedWeave: true,
            weave: () => weave,
            laid,
          };
        },
    );
  }
  return question.structures.map(findStructure).flatMap((structure) => {
    const manners = question.treadlings.length > 0 ? question.treadlings : [''];
    return manners.flatMap((manner) =>
      profilesOf(question, structure).map(
        (profile): Base =>
          (by, fill, times) =>
            by === 'block'
              ? blockFamily(question, structure, manner, fill, times)
              : profileFamily(question, structure, manner, profile, { by, fill, times }),
      ),
    );
  });
}

/** A draft as it is, or treadled in the manners that are asked for; its own has no name. */
function weavesOf({ treadlings }: Question, draft: Weave): readonly MannerOn[] {
  const own = { name: '', weave: draft };
  if (treadlings.length === 0) return [own];
  const others = mannersOn(draft).filter(({ name }) => treadlings.includes(name));
  return treadlings.includes(ITS_OWN) ? [own, ...others] : others;
}

interface Profile {
  readonly blocks: readonly string[];
  readonly called?: string;
}

/** The block orders that are tried: the one asked for, the structure's own, or those of a name. */
function profilesOf(question: Question, structure: Structure): Profile[] {
  const { name, profile } = question;
  if (name === undefined) {
    return [{ blocks: profile === 'order' || profile.length === 0 ? structure.profile : profile }];
  }
  const { text, drafts, mirrored, letters: table } = name;
  const options = { mirrored, letters: table };
  const first = nameDraft(text, {
    ...options,
    ...(drafts !== 'usual' && { alternative: drafts === 'all' ? 0 : drafts - 1 }),
  });
  const all = 2 ** first.gaps;
  const rest = drafts === 'all' ? Array.from({ length: all - 1 }, (_, at) => at + 1) : [];
  return [first, ...rest.map((alternative) => nameDraft(text, { ...options, alternative }))].map((draft) => ({
    blocks: draft.profile,
    called: `${text}${mirrored ? ' mirrored' : ''}${all > 1 ? `, draft ${draft.alternative + 1} of ${all}` : ''}`,
  }));
}

/** The elements of an order as they are laid: the order, or the order nested in itself. */
function elementsOf(question: Question, fill: Fill): (order: Order) => Order {
  return fill === 'nest' ? (order) => nested(order, question.yarns.length) : (order) => order;
}

function profileFamily(
  question: Question,
  structure: Structure,
  manner: string,
  { blocks, called }: Profile,
  laying: Pick<Family, 'by' | 'fill' | 'times'>,
): Family {
  const { treadled } = question;
  const weave = weaveOf(structure, blocks, {
    ...(manner !== '' && { manner }),
    ...(treadled.length > 0 && { treadled }),
  });
  return {
    structure: structure.name,
    manner,
    profile: blocks,
    ...(called !== undefined && { called }),
    ...(treadled.length > 0 && { treadled }),
    ...laying,
    fixedWeave: true,
    weave: () => weave,
    laid: elementsOf(question, laying.fill),
  };
}

/** The orders are the profile too: the first colour stands for block A, the second for B, and so on. */
function blockFamily(question: Question, structure: Structure, manner: string, fill: Fill, times: number): Family {
  const colours = question.yarns.length;
  const known = structure.withBlocks ? letters(colours) : structure.blocks;
  if (known.length < colours) {
    throw new Problem(
      `by block: ${structure.name} has ${known.length} block${known.length === 1 ? '' : 's'}, ` +
        `but the orders have ${colours} colours; expected no more colours than blocks`,
    );
  }
  const elements = elementsOf(question, fill);
  const { blocks: treadles } = findManner(
    structure.withBlocks?.(colours) ?? structure,
    manner === '' ? undefined : manner,
  );
  const fixedWeft = question.weft.rule === 'fixed';
  const blocksFor = (order: Order): string[] =>
    elements(order).flatMap((colour) => new Array<string>(times).fill(known[colour]!));
  const weave = (warp: Order, weft: Order): Weave =>
    weaveOf(structure, blocksFor(warp), {
      ...(manner !== '' && { manner }),
      treadled: question.treadled.length > 0 ? question.treadled : blocksFor(fixedWeft ? warp : weft),
    });
  const laid: Family['laid'] = (order, system, { companions }) => {
    const all = elements(order);
    // A weft of one yarn, or with blocks of its own, is laid as it is given.
    if (system === 'picks' && (fixedWeft || question.treadled.length > 0)) return all;
    // Where the colours themselves carry the blocks (turned taqueté), the blocks have said all.
    if (companions) return all.map(() => 0);
    // Blocks that are not treadled in this manner have no picks to colour.
    return system === 'picks' ? all.filter((colour) => treadles[known[colour]!]!.lay.length > 0) : all;
  };
  const { treadled } = question;
  const common = { structure: structure.name, manner, ...(treadled.length > 0 && { treadled }) };
  return { ...common, profile: [], by: 'block', fill, times, fixedWeave: false, weave, laid };
}

/** How an order is laid in a family. By block it lies on whole units, as the blocks do. */
export function layingOf(family: Family, start: number): Laying {
  const { by, fill, times } = family;
  return { by: by === 'thread' ? 'thread' : 'unit', fill: fill === 'alternate' ? 'alternate' : 'solid', times, start };
}

/** How many elements an order of so many lays. */
export function elementsLaid(family: Family, length: number): number {
  return family.fill === 'nest' ? length ** 2 : length;
}

/** Whether tabby picks keep their own colour, whatever the orders are. */
export function hasTabby(family: Family): boolean {
  return family.weave([0], [0]).pickKinds.includes('tabby');
}
