import { runsOf } from '../../order/order.js';
import { plainWord } from '../../structure/model/structure.js';
import { EFFECTS } from './classic-effects.js';
import { CLASSICS } from './novelty.js';

/**
 * The order that a weaver means by the name of a classic, in words: `(DL)4 (LD)4 on plain weave` for “log cabin”;
 * undefined where no classic has the name.
 */
export function classicNamed(name: string): string | undefined {
  const bare = (word: string): string => plainWord(word).replace(/ order$/, '');
  const means = (known: string): boolean => bare(known) === bare(name);
  const effect = EFFECTS.find((each) => means(each.name));
  if (effect !== undefined) return `${runsOf(effect.word)} on ${effect.weave.structure}`;
  const classic = CLASSICS.find((each) => means(each.name));
  return classic && runsOf(classic.word);
}
