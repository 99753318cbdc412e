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
export { type Drawn, drawn, findManner, type WeaveOptions, weaveOf } from '../model/weave.js';
export { type NameDraft, type NameDraftOptions, nameDraft } from './name-draft.js';

/** Every structure known, from the plainest on. */
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

/** Names of all structures, in their order. */
export function structureNames(): string[] {
  return structures.map((structure) => structure.name);
}

/**
 * The structure of that name or other name of the trade, whatever its case, accents, apostrophes and hyphens.
 *
 * @throws Problem where there is none, with the three nearest names
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
