import type { Floats } from '../../cloth/floats.js';
import type { Sett } from '../../draft/draft.js';
import { distinctOrdersOf } from '../../order/necklace.js';
import { Problem } from '../../problem.js';
import { findStructure, type Structure, structures } from '../../structure/catalogue/catalogue.js';
import { usualSett } from '../../structure/catalogue/usual-sett.js';
import { longestFloat } from '../../structure/model/longest-float.js';
import { weaveWithin } from '../evaluate/weave-limits.js';
import type { Question } from '../question/question.js';
import { weftOf } from '../space/candidate.js';
import { familiesOf } from '../space/families.js';

/** What would bring floats under a limit; each is there only where it has been tried, and does. */
interface FloatRemedy {
  /** Threads or units an element, fewer than were asked for: the largest that does. */
  readonly times?: number;
  /** The largest number of units of one block side by side, in the block order, that works. */
  readonly run?: number;
  /** A closer sett for the same cloth. */
  readonly sett?: Sett;
  /** Structures on which the same question stays under the limit, the most similar first, with their longest floats. */
  readonly structures: readonly { readonly name: string; readonly floats: Floats }[];
  /** True if floats grow with the block on the structure of the question, and not on the other structures. */
  readonly grows: boolean;
}

/** Most orders tried if the orders choose the blocks. */
const MOST_ORDERS = 20;
/** Greatest factor by which a sett may be closer; beyond it the yarn would be another one altogether. */
const CLOSEST = 2;
/** Most structures named. */
const NAMED = 2;
/** Factor by which blocks are widened to see whether the floats grow. */
const WIDER = 4;

/**
 * Looks for remedies that bring the floats of a question under its limit.
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

/** The longest floats of the first cloth of a question whose weave is within the limits; undefined if there is none. */
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

/** Tries fewer units per element, for orders that choose the blocks: there a block is as wide as an element. */
function fewerTimes(question: Question): number | undefined {
  if (question.profile !== 'order' && !question.by.includes('block')) return undefined;
  const by = ['block'] as const;
  for (let times = Math.max(...question.times) - 1; times >= 1; times--) {
    if (floatsWithin({ ...question, by, times: [times] })) return times;
  }
  return undefined;
}

/** Tries the block order with fewer units of one block side by side. */
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

/** The sett at which these floats are within the limit in length; ends and picks keep their proportion. */
function closerSett({ limits, sett, onTheLoom }: Question, floats: Floats): Sett | undefined {
  const limit = limits.float;
  // A warp on the loom is already sleyed, so its sett is fixed.
  if (onTheLoom || !('mm' in limit) || floats.longestMm === null) return undefined;
  const wanted = floats.longestMm / limit.mm;
  if (wanted > CLOSEST) return undefined;
  // Setts per centimetre are counted in halves.
  const step = sett.per === 'inch' ? 1 : 0.5;
  const closer = (count: number): number => Math.ceil((count * wanted) / step - 1e-9) * step;
  const ends = closer(sett.ends);
  return { ends, picks: Math.max(closer(sett.picks), (ends * sett.picks) / sett.ends), per: sett.per };
}

function growsWithBlock(structure: Structure): boolean {
  const wide = structure.profile.flatMap((block) => new Array<string>(WIDER).fill(block));
  const [narrow, wider] = [structure.profile, wide].map((profile) => longestFloat(structure, profile));
  return narrow === undefined || wider === undefined || wider > narrow;
}

/**
 * Structures that answer the question within the limit. They are sorted by the same kinds of picks and number of
 * blocks; then, if floats should not grow, by the shortest floats, else by the nearest relation. Of the variants of one
 * structure (halvdräll, halvdräll with even ties) only the first is kept.
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
    .filter((other) => basic(other) !== basic(asked) && !(grows && growsWithBlock(other)))
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

const basic = ({ name, variantOf }: Structure): string => variantOf ?? name;

/** Sort key for a structure's difference from another, the most important part first. */
function relationRank(other: Structure, asked: Structure, { longest }: Floats, grows: boolean): number[] {
  return [
    kindsOf(other) === kindsOf(asked) ? 0 : 1,
    Math.abs(other.blocks.length - asked.blocks.length),
    grows ? longest! : 0,
    Math.abs(other.shafts - asked.shafts),
    Math.abs(structures.indexOf(other) - structures.indexOf(asked)),
  ];
}

/** The kinds of picks of the usual manner, joined. */
function kindsOf({ manners }: Structure): string {
  return [...new Set(manners[0]!.kinds ?? ['ground'])].sort().join();
}
