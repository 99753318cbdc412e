import { liftAt } from '../../draft/draft.js';
import { Misread, textOf } from '../../input/given.js';
import { leastRotation } from '../../order/necklace.js';
import { smallestPeriod } from '../../order/order.js';
import { didYouMean, quote } from '../../problem.js';
import { structureOn } from '../../structure/rethread/on-draft.js';
import { everyTieUpOn, ITS_OWN, type WayOn, waysOn } from '../../structure/rethread/treadlings-on.js';
import type { Question } from './question.js';

/**
 * Word for every manner of a structure; on a draft, also for the well-known tie-ups and treadlings of its threading.
 */
export const ALL = 'all';
/** Word, on a draft, for all of these and every other tie-up. */
const EVERY_TIE_UP = 'every tie-up';
/** Most ways listed in the message about a misspelt one. */
const NAMED = 8;

/** The ways of weaving on a draft's threading that a question asks for; of ways with the same cloth, one. */
export function waysTried({ draft, treadlings }: Pick<Question, 'draft' | 'treadlings'>): readonly WayOn[] {
  const weave = draft!.draft;
  if (treadlings.length === 0) return [{ name: ITS_OWN, weave }];
  const ways = waysOn(weave, structureOn(weave));
  if (treadlings.includes(EVERY_TIE_UP)) return distinct([...ways, ...everyTieUpOn(weave)]);
  if (treadlings.includes(ALL)) return distinct(ways);
  const every = treadlings.every((name) => ways.some((way) => way.name === name)) ? [] : everyTieUpOn(weave);
  return [...ways, ...every].filter(({ name }) => treadlings.includes(name));
}

/**
 * Checks names of ways of weaving on a draft's threading, and returns them as they are spelt.
 *
 * @param blocks true if blocks are laid, which only manners of the draft's structure can do
 * @throws Misread on an unknown name, with the nearest known names
 */
export function wayNames(names: readonly string[], draft: Question['draft'], blocks: boolean): string[] {
  const weave = draft!.draft;
  const ways = waysOn(weave, structureOn(weave)).filter((way) => !blocks || way.free === undefined);
  const known = [ALL, ITS_OWN, ...ways.map(({ name }) => name).filter((name) => name !== ITS_OWN)];
  const every = blocks ? [] : everyTieUpOn(weave).map(({ name }) => name);
  if (every.length > 0) known.splice(1, 0, EVERY_TIE_UP);
  return [...new Set(names.map((name) => called(name, known, every)))];
}

function called(name: string, known: readonly string[], every: readonly string[]): string {
  const text = textOf(name, 'a way of treadling').toLowerCase();
  const found = [...known, ...every].find((each) => each.toLowerCase() === text);
  if (found !== undefined) return found;
  const more = known.length > NAMED ? ` … (${known.length} in all)` : '';
  throw new Misread(
    `found ${quote(name)}; expected ${known.slice(0, NAMED).join(', ')}${more}${didYouMean(text, known)}`,
  );
}

/** Keeps the first of several ways with the same cyclic sequence of sheds. */
function distinct(ways: readonly WayOn[]): WayOn[] {
  const numbers = new Map<string, number>();
  const seen = new Set<string>();
  return ways.filter(({ weave }) => {
    const threaded = new Set(weave.threading.flat());
    const ring = weave.treadling.map((_, pick) => {
      const shed = `${weave.pickKinds[pick]} ${liftAt(weave, pick).filter((shaft) => threaded.has(shaft))}`;
      const number = numbers.get(shed) ?? numbers.size;
      numbers.set(shed, number);
      return number;
    });
    const word = leastRotation(ring.slice(0, smallestPeriod(ring))).join();
    return !seen.has(word) && seen.add(word);
  });
}

/** The ways tried, in words: their names, or their number if there are many. */
export function waysCounted(question: Pick<Question, 'draft' | 'treadlings'>): string {
  const [first, ...others] = waysTried(question).map(({ name }) => (name === ITS_OWN ? 'as in the draft' : name));
  return others.length < NAMED ? [first, ...others].join(', ') : `${first} and in ${others.length} other ways`;
}

/** All ways tried, in words: manners by name, then tie-ups, then treadlings. */
export function waysInWords(question: Pick<Question, 'draft' | 'treadlings'>): string {
  const ways = waysTried(question);
  const named = ways.filter(({ free }) => free === undefined).map(({ name }) => name);
  const free = ways.flatMap((way) => way.free ?? []);
  if (free.length === 0) return named.join(', ');
  const unlike = (words: readonly string[]): string[] => [...new Set(words)];
  const tieUps = unlike(free.filter(({ regular }) => regular).map(({ tieUp }) => tieUp));
  const others = free.filter(({ regular }) => !regular).length;
  const more = others === 0 ? '' : `; straight on ${others} other tie-ups`;
  const treadlings = unlike(free.filter(({ regular }) => regular).map(({ treadling }) => treadling));
  return `${named.join(', ')}; on tie-ups ${tieUps.join(', ')}: ${treadlings.join(', ')}${more}`;
}
