import { buyWords } from '../../plan/yarn/in-hand.js';
import type { OrderedYarn } from '../../sheets/yarn-order.js';
import { type Per, sayLong, sayShort, sayWeight } from '../../words/measure.js';

/** A line for each yarn to have ready, its reserve included. */
export function yarnLines(yarn: readonly OrderedYarn[], per: Per): string[] {
  return yarn.map(({ letter, use, name, length, grams, warp, weft, toBuy }) => {
    const called = [letter, ...(name === letter ? [] : [name]), ...(use === undefined ? [] : [use])].join(' ');
    const weight = grams === null ? '' : `, ${sayWeight(grams, per)}`;
    const buy = buyWords(toBuy, per);
    const used = Object.entries({ warp, weft }).filter(([, mm]) => mm > 0);
    const parts = used.map(([what, mm]) => `${what} ${sayShort(mm, per)}`).join(', ');
    return `yarn ${called}: ${sayLong(length, per)}${weight}, includes 10 % reserve; ${parts}${buy === '' ? '' : `; ${buy}`}`;
  });
}
