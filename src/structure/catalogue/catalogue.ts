import { nearestFirst, Problem, quote } from '../../problem.js';
import { plainWord, type Structure } from '../model/structure.js';
import { CRACKLE } from './crackle.js';
import { LACE } from './lace.js';
import { OVERSHOT } from './overshot.js';
import { PLAIN } from './plain.js';
import { TIED } from './tied.js';
import { TURNED } from './turned.js';
import { TWILLS } from './twills.js';

export { parseProfile } from '../model/profile.js';
export type { Manner, Structure } from '../model/structure.js';
export { drawn, findManner, type WeaveOptions, weaveOf } from '../model/weave.js';
export { letterBlocks, nameDraft, spelledStructure } from './name-draft.js';

/** All structures, the plainest first. */
export const structures: readonly Structure[] = [
  ...PLAIN,
  ...TWILLS,
  ...TURNED,
  ...OVERSHOT,
  ...CRACKLE,
  ...TIED,
  ...LACE,
];

const byWord = new Map(
  structures.flatMap((structure) => structure.aliases.map((word) => [plainWord(word), structure])),
);
for (const structure of structures) byWord.set(plainWord(structure.name), structure);

/**
 * Finds a structure by its name or an alias, ignoring case, accents, apostrophes and hyphens.
 *
 * @throws Problem if there is none, with the three nearest names
 */
export function findStructure(name: string): Structure {
  const found = byWord.get(plainWord(name));
  if (found !== undefined) return found;
  const known = structures.flatMap((structure) => [structure.name, ...structure.aliases]);
  const near = nearestFirst(name.trim(), known).map((word) => byWord.get(plainWord(word))!.name);
  const [first, second, third] = [...new Set(near)].map((each) => `“${each}”`);
  throw new Problem(
    `no structure ${quote(name)}; the nearest are ${first}, ${second} and ${third} (“shedlight structures” lists all)`,
  );
}
