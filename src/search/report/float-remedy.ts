import { drawdown } from '../../cloth/drawdown.js';
import { type Floats, floatsOf } from '../../cloth/floats.js';
import type { Sett } from '../../draft/draft.js';
import { distinctOrdersOf } from '../../order/necklace.js';
import { Problem } from '../../problem.js';
import { findStructure, type Structure, structures, weaveOf } from '../../structure/catalogue/catalogue.js';
import { usualSett } from '../../structure/catalogue/usual-sett.js';
import { weaveWithin } from '../evaluate/weave-limits.js';
import type { Question } from '../question/question.js';
import { weftOf } from '../space/candidate.js';
import { familiesOf } from '../space/families.js';

/** What would bring floats under a limit; each is there only where it has been tried, and does. */
export interface FloatRemedy {
  /** Threads or units an element, fewer than were asked for: the largest that does. */
  readonly times?: number;
  /** Units of one block side by side in the block order: the most that do. */
  readonly run?: number;
  /** A closer sett for the same cloth. */
  readonly sett?: Sett;
  /** Structures on which the same question stays under the limit, the likest first, and their longest floats. */
  readonly structures: readonly { readonly name: string; readonly floats: Floats }[];
  /** Whether the floats of the structure that was asked for grow with the block, and those of the others do not. */
  readonly grows: boolean;
}

/** Orders that are tried where the orders choose the blocks. */
const MOST_ORDERS = 20;
/** A sett that is closer than so many times is another yarn altogether. */
const CLOSEST = 2;
/** Structures named. */
const NAMED = 2;
/** A float that grows is longer in blocks so many times as wide. */
const WIDER = 4;

/**
 * Looks for what would bring the floats of a question under its limit.
 *
 * @param nearest the longest floats of the cloth that comes nearest to the limit
 */
export function floatRemedy(question: Question, nearest: Floats): FloatRemedy {
  const [times, run, sett] = [fewerTimes(question), shorterRun(question), closerSett(question, nearest)];
  const asked = question.structures.map(findStructure);
  const grows = asked.length > 0 && asked.every(growsWithBlock);
  return {
    ...(times !== undefined && { times }),
    ...(run !== undefined && { run }),
    ...(sett !== undefined && { sett }),
    structures: asked.length === 1 ? otherStructures(question, asked[0]!, grows) : [],
    grows,
  };
}

/** The longest floats of the first cloth of a question that is within its limits for weaves; none where there is none. */
function floatsWithin(question: Question): Floats | undefined {
  try {
    for (const family of familiesOf(question)) {
      const { orders, lengths, yarns } = question;
      const listed = orders.length > 0 ? orders : distinctOrdersOf(lengths.slice(0, 1), yarns.length);
      for (const warp of family.fixedWeave ? [[0]] : listed.slice(0, MOST_ORDERS)) {
        const weave = family.weave(warp, weftOf(question, warp));
        const within = weaveWithin(question, weave);
        if (!('fault' in within)) return within.floats;
      }
    }
    return undefined;
  } catch (problem) {
    if (problem instanceof Problem) return undefined;
    throw problem;
  }
}

/** Where the orders choose the blocks, a block is as wide as an element. */
function fewerTimes(question: Question): number | undefined {
  if (question.profile !== 'order' && !question.by.includes('block')) return undefined;
  const by = ['block'] as const;
  for (let times = Math.max(...question.times) - 1; times >= 1; times--) {
    if (floatsWithin({ ...question, by, times: [times] })) return times;
  }
  return undefined;
}

/** The block order with no more units of one block side by side than so many. */
function shorterRun(question: Question): number | undefined {
  const { profile } = question;
  if (profile === 'order') return undefined;
  const places = profile.map((block, at) => {
    let from = at;
    while (from > 0 && profile[from - 1] === block) from--;
    return at - from;
  });
  for (let most = Math.max(0, ...places); most >= 1; most--) {
    const shorter = profile.filter((_, at) => places[at]! < most);
    if (floatsWithin({ ...question, profile: shorter, by: ['unit'] })) return most;
  }
  return undefined;
}

/** The sett at which floats of so many threads are no longer than the limit; picks and ends keep their proportion. */
function closerSett({ limits, sett, onTheLoom }: Question, floats: Floats): Sett | undefined {
  const limit = limits.float;
  // A warp on the loom is sleyed.
  if (onTheLoom || !('mm' in limit) || floats.longestMm === null) return undefined;
  const wanted = floats.longestMm / limit.mm;
  if (wanted > CLOSEST) return undefined;
  // In centimetres setts are counted in halves.
  const step = sett.per === 'inch' ? 1 : 0.5;
  const closer = (count: number): number => Math.ceil((count * wanted) / step - 1e-9) * step;
  const ends = closer(sett.ends);
  return { ends, picks: Math.max(closer(sett.picks), (ends * sett.picks) / sett.ends), per: sett.per };
}

function growsWithBlock(structure: Structure): boolean {
  const wide = structure.profile.flatMap((block) => new Array<string>(WIDER).fill(block));
  const [narrow, wider] = [structure.profile, wide].map((profile) => longestOn(structure, profile));
  return narrow === undefined || wider === undefined || wider > narrow;
}

/** The longest float in threads; none where the blocks may not stand so. */
function longestOn(structure: Structure, profile: readonly string[]): number | undefined {
  try {
    const one = { ends: 1, picks: 1, per: 'cm' } as const;
    return floatsOf(drawdown(weaveOf(structure, profile)), one).longest ?? undefined;
  } catch (problem) {
    if (problem instanceof Problem) return undefined;
    throw problem;
  }
}

/**
 * Structures that answer the question within the limit, those first that are woven with the same kinds of picks in as
 * many blocks; then, where floats are not to grow, those with the shortest, else those that are the nearest relations. Of
 * the drafts of one structure (halvdräll, halvdräll with even ties) the first will do.
 */
function otherStructures(question: Question, asked: Structure, grows: boolean): FloatRemedy['structures'] {
  const { ends, per } = question.sett;
  const within = (other: Structure): Floats | undefined =>
    floatsWithin({
      ...question,
      structures: [other.name],
      treadlings: [],
      sett: usualSett(other, { ends, per }),
    });
  return structures
    .filter((other) => other !== asked && !(grows && growsWithBlock(other)))
    .flatMap((other) => {
      const floats = within(other);
      return floats === undefined
        ? []
        : [{ name: other.name, floats, unlike: relationRank(other, asked, floats, grows) }];
    })
    .sort((a, b) => a.unlike.map((part, at) => part - b.unlike[at]!).find((part) => part !== 0) ?? 0)
    .filter(({ name }, at, all) => !all.slice(0, at).some((before) => name.startsWith(before.name)))
    .slice(0, NAMED)
    .map(({ name, floats }) => ({ name, floats }));
}

/** Wherein a structure is unlike another, the weightiest first. */
function relationRank(other: Structure, asked: Structure, { longest }: Floats, grows: boolean): number[] {
  return [
    kindsOf(other) === kindsOf(asked) ? 0 : 1,
    Math.abs(other.blocks.length - asked.blocks.length),
    grows ? longest! : 0,
    Math.abs(other.shafts - asked.shafts),
    Math.abs(structures.indexOf(other) - structures.indexOf(asked)),
  ];
}

/** The kinds of picks of the usual manner, as one word. */
function kindsOf({ manners }: Structure): string {
  return [...new Set(manners[0]!.kinds ?? ['ground'])].sort().join();
}
