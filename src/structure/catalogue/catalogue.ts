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

/** Structures that are woven on one idea, and the idea. */
export interface StructureFamily {
  readonly title: string;
  readonly about: string;
  readonly structures: readonly Structure[];
}

/** All structures in their families, the plainest first. */
export const families: readonly StructureFamily[] = [
  {
    title: 'Plain weave and basket',
    about: 'Over and under by ones, twos or threes. Floats are as short as they can be; colour makes every pattern.',
    structures: PLAIN,
  },
  {
    title: 'Twills',
    about:
      'Each pick steps one end aside, so diagonals run. The threading says where they turn, the tie-up which face shows.',
    structures: TWILLS,
  },
  {
    title: 'Turned weaves',
    about: 'Blocks that change places: mostly warp beside mostly weft, or one colour of warp over the other.',
    structures: TURNED,
  },
  {
    title: 'Monk’s belt and overshot',
    about:
      'A thicker pattern weft floats over plain weave in blocks of shaft pairs. The wider a block, the longer its floats.',
    structures: OVERSHOT,
  },
  {
    title: 'Crackle',
    about: 'Small points side by side, so that the pattern weft never floats over more than three.',
    structures: CRACKLE,
  },
  {
    title: 'Tied weaves',
    about: 'Some ends only bind the pattern weft: blocks may be as wide as one likes, and the floats stay.',
    structures: TIED,
  },
  {
    title: 'Lace and spots',
    about: 'Groups of threads left unbound on plain weave, which draw together in the first wash.',
    structures: LACE,
  },
];

/** All structures. */
export const structures: readonly Structure[] = families.flatMap((family) => family.structures);

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
