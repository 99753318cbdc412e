import {
  describe,
  eachOf,
  expectedAmong,
  type Given,
  isKeys,
  Misread,
  numberOf,
  textOf,
  under,
} from '../../input/given.js';
import { didYouMean } from '../../problem.js';
import { PARTS, type Part, UNWEIGHED, type Weights } from '../../score/parts/parts.js';
import { PRESET_NAMES, PRESETS } from '../../score/rank/presets.js';
import { orList } from '../../words/counts.js';

/** What a ranking is expected to be. */
export const RANK = `what to rank by, as contrast 3, symmetry 2, or one word: ${orList(PRESET_NAMES)}`;

/**
 * Reads a ranking: the word of a preset, or weights by name, as keys or as `contrast 3, symmetry 2`. Parts that are not
 * named have weight 0.
 */
export function rankOf(given: Given): Weights {
  const view = PRESET_NAMES.find((name) => typeof given === 'string' && name === given.trim().toLowerCase());
  if (view !== undefined) return PRESETS[view];
  const asText = (item: Given): [string, string] => {
    const text = textOf(item, RANK);
    if (PARTS.some((part) => part === text.toLowerCase())) return [text, '1'];
    const found = /^([a-z]+)\s*[\s:=]\s*(\S+)$/i.exec(text);
    if (found === null)
      throw new Misread(`found ${describe(item)}; expected ${RANK}${didYouMean(text, [...PRESET_NAMES, ...PARTS])}`);
    return [found[1]!, found[2]!];
  };
  const pairs = isKeys(given) ? Object.entries(given) : eachOf(given, RANK, asText);
  const weights: Record<Part, number> = { ...UNWEIGHED };
  for (const [name, weight] of pairs) {
    const part = PARTS.find((each) => each === name.toLowerCase());
    if (part === undefined) {
      const spot = isKeys(given) ? { within: [name], key: true } : {};
      throw new Misread(`found ${describe(name)}; ${expectedAmong(name, PARTS, 'a figure')}`, spot);
    }
    const read = (): number => numberOf(weight, 'a weight from 0 to 100', 0, 100);
    weights[part] = isKeys(given) ? under(name, read) : read();
  }
  if (PARTS.every((part) => weights[part] === 0)) throw new Misread(`found no weight above 0; expected ${RANK}`);
  return weights;
}
