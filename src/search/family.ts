import type { Weave } from '../draft/draft.js';
import type { Laying } from '../order/lay.js';
import type { Order } from '../order/order.js';
import { Problem } from '../problem.js';
import { findStructure, nameDraft, type Structure } from '../structure/index.js';
import { structureOn, treadledOn } from '../structure/on-draft.js';
import { ITS_OWN, onTieUpOf, type WayOn } from '../structure/ways-on.js';
import { blockFamily, elementsOf, type Profile, profileFamily, type Woven } from './block-family.js';
import type { By, Fill, Question } from './question.js';
import { ALL, waysTried } from './ways.js';

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
  /** Letters of the blocks for which the colours stand, where the orders choose the blocks. */
  readonly letters?: readonly string[];
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
          const family = same ? undefined : base(by, fill, times);
          if (family !== undefined) families.push(family);
        }
      }
    }
  }
  return families;
}

/** The families of one weave or structure; none where it cannot be laid so. */
type Base = (by: By, fill: Fill, times: number) => Family | undefined;

function basesOf(question: Question): Base[] {
  if (question.draft) return waysTried(question).map((way) => draftBase(question, question.draft!, way));
  return question.structures
    .map(findStructure)
    .flatMap((structure) =>
      mannersTried(question, structure).flatMap((manner) =>
        profilesOf(question, structure).map((profile): Base => structureBase(question, { structure, manner }, profile)),
      ),
    );
}

function mannersTried({ treadlings }: Question, structure: Structure): readonly string[] {
  if (treadlings.includes(ALL)) return structure.manners.map(({ name }) => name);
  return treadlings.length > 0 ? treadlings : [''];
}

function structureBase(question: Question, woven: Woven, profile: Profile): Base {
  return (by, fill, times) =>
    by === 'block'
      ? blockFamily(question, woven, fill, times)
      : profileFamily(question, woven, profile, { by, fill, times });
}

/**
 * One way of weaving on a draft: as its threads lie, or with other blocks of the structure that it was found to be. Of
 * blocks only the manners of that structure know.
 */
function draftBase(question: Question, { file, draft }: NonNullable<Question['draft']>, way: WayOn): Base {
  const { profile, treadled } = question;
  const called = draft.name ?? file;
  const manner = way.name === ITS_OWN ? '' : way.name;
  const inBlocks = (): Woven | undefined => {
    const on = structureOn(draft);
    if (on === undefined)
      throw new Problem(`blocks: ${file} is no structure known here; expected by thread or by unit`);
    return way.free ? undefined : { structure: on.structure, manner, called, tied: onTieUpOf(draft) };
  };
  return (by, fill, times) => {
    if (by !== 'block' && profile.length === 0) {
      const weave = treadled.length === 0 ? way.weave : ownTreadled(draft, file, manner, treadled);
      const own = { structure: called, manner, profile: [], ...(treadled.length > 0 && { treadled }) };
      return { ...own, by, fill, times, fixedWeave: true, weave: () => weave, laid: elementsOf(question, fill) };
    }
    const woven = inBlocks();
    return woven && structureBase(question, woven, { blocks: profile === 'order' ? [] : profile })(by, fill, times);
  };
}

/** The draft's own threading, treadled in other blocks. */
function ownTreadled(draft: Weave, file: string, manner: string, treadled: readonly string[]): Weave {
  const on = structureOn(draft);
  const weave = on && treadledOn(draft, on, { ...(manner !== '' && { manner }), treadled });
  if (weave === undefined) {
    throw new Problem(`treadled: ${file} has no blocks that can be treadled otherwise; expected a profile as well`);
  }
  return onTieUpOf(draft)(weave);
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
