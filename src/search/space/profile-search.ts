import { countDistinctWords, distinctWords, firstOfSame, type Wanted } from '../../order/bracelet.js';
import type { Order } from '../../order/order.js';
import { Problem } from '../../problem.js';
import { NO_BLOCK } from '../../structure/model/block-weave.js';
import { someBlocks } from '../../structure/model/sized.js';
import type { Structure } from '../../structure/model/structure.js';
import type { Question } from '../question/question.js';
import type { Family, Profiles } from './family.js';
import { memoized } from './memoize.js';

/** Most profiles of one family that are listed. */
const LISTED_PROFILES = 20_000;
/** Profiles whose families are remembered. */
const REMEMBERED = 4000;

/** Block orders in letters, for what is searched. */
interface Laid {
  readonly blocks?: readonly string[];
  readonly treadled?: readonly string[];
}

/**
 * A family whose block orders are searched. Profiles that a rotation, a mirror or (where all blocks are alike) a renaming
 * carries to each other show the same figure, so each is tried once: a mirrored treadling mirrors the cloth, a mirrored
 * threading and treadling turn it by a half.
 */
export function searchedFamily(
  { profiles: asked, same, blocks }: Question,
  structure: Structure,
  lay: (laid: Laid) => Family,
): Family {
  const { lengths, threaded, treadled } = asked!;
  const letters = someBlocks(structure, blocks ?? structure.blocks.length);
  const elements = treadled?.together ? unions(letters) : letters;
  const mirror = same.includes('mirror');
  const whole = memoized(REMEMBERED, (profiles: Profiles) => lay(laid(profiles, letters, elements)), profilesWritten);
  const known = memoized(
    LISTED_PROFILES,
    (profiles: Profiles): { readonly family: Family | undefined } => {
      try {
        // The many families of a list keep no weave: it is made again if it is forgotten.
        const weave: Family['weave'] = (...orders) => whole(profiles).weave(...orders);
        const { profile, treadled } = whole(profiles);
        // Where all blocks are alike, one that is not threaded shows nothing; with others it shows no more than they.
        const idle = (block: string): boolean => block !== NO_BLOCK && !profile.includes(block);
        const isIdle = profiles.treadled !== undefined && treadled!.some((each) => each.split('+').some(idle));
        if (structure.alike && isIdle) return { family: undefined };
        return { family: { ...whole(profiles), weave, searched: { base, profiles } } };
      } catch (problem) {
        // Blocks that may not be neighbours (huck), or that are not treadled together.
        if (problem instanceof Problem) return { family: undefined };
        throw problem;
      }
    },
    profilesWritten,
  );
  const wanted = (of: { readonly mirrored: boolean }, count: number, alone: boolean): Wanted => ({
    letters: count,
    mirrored: of.mirrored,
    reversed: mirror || (alone && same.includes('half-turn')),
    renamed: alone && structure.alike === true,
  });
  const base: Family = {
    ...lay({}),
    search: {
      lengths,
      ...(threaded && { threaded: wanted(threaded, letters.length, treadled === undefined) }),
      ...(treadled && { treadled: wanted(treadled, elements.length, false) }),
      family: (profiles) => known(profiles).family,
    },
  };
  return base;
}

function laid({ threaded, treadled }: Profiles, letters: readonly string[], elements: readonly string[]): Laid {
  return {
    ...(threaded && { blocks: threaded.map((letter) => letters[letter]!) }),
    ...(treadled && { treadled: treadled.map((element) => elements[element]!) }),
  };
}

/** The structure with a treadling for every set of its blocks, so that it is not made anew for each block order. */
export function withUnions(structure: Structure): Structure {
  const { blocks, withBlocks } = structure;
  return (
    withBlocks?.(
      blocks.length,
      unions(blocks).filter((element) => !blocks.includes(element)),
    ) ?? structure
  );
}

/** Every set of blocks, none first: `.`, `A`, `B`, `A+B` … */
function unions(letters: readonly string[]): string[] {
  return Array.from(
    { length: 2 ** letters.length },
    (_, set) => letters.filter((__, at) => set & (1 << at)).join('+') || NO_BLOCK,
  );
}

/** Profiles as one word, by which they are known: `0012/01`. */
export function profilesWritten({ threaded, treadled }: Profiles): string {
  return [threaded, treadled].map((word) => word?.join('.') ?? '').join('/');
}

/** Reads what {@link profilesWritten} wrote. */
export function readProfiles(text: string): Profiles {
  const [threaded, treadled] = text.split('/').map((word) => (word === '' ? undefined : word.split('.').map(Number)));
  return { ...(threaded && { threaded }), ...(treadled && { treadled }) };
}

/** The problem that no block order of the lengths asked for can be woven. */
export const NO_PROFILE = new Problem(
  'profile: found no block order of these lengths that the structure can weave; expected other lengths',
);

/** How many families a family stands for: one, or one for each profile that is tried. */
export function countFamilies({ search }: Family): number {
  if (search === undefined) return 1;
  const { lengths, threaded, treadled } = search;
  // A threading of one block alone shows no figure of blocks.
  const across = threaded ? countDistinctWords(lengths, threaded) - (threaded.renamed ? 1 : threaded.letters) : 1;
  return across * (treadled ? countDistinctWords(lengths, treadled) : 1);
}

/** Block orders that can be written for a family, rotations and repeats included. */
export function countWritten({ search }: Family): number {
  const words = (wanted: Wanted | undefined): number =>
    wanted === undefined ? 1 : search!.lengths.reduce((sum, length) => sum + wanted.letters ** length, 0);
  return words(search?.threaded) * words(search?.treadled);
}

/** The families that a family stands for, if they are few enough to list; undefined if not. */
export function listFamilies(family: Family): readonly Family[] | undefined {
  const { search } = family;
  if (search === undefined) return [family];
  if (countFamilies(family) > LISTED_PROFILES) return undefined;
  const { lengths, threaded, treadled } = search;
  const across = threaded ? distinctWords(lengths, threaded).filter(isFigure) : [undefined];
  const down = treadled ? distinctWords(lengths, treadled) : [undefined];
  return across.flatMap((one) =>
    down.flatMap((other) => search.family({ ...(one && { threaded: one }), ...(other && { treadled: other }) }) ?? []),
  );
}

/** The family with these profiles, each by the word that stands for its class; undefined where it cannot be woven. */
export function familyWith({ search }: Family, { threaded, treadled }: Profiles): Family | undefined {
  if (threaded && !isFigure(threaded)) return undefined;
  return search!.family({
    ...(threaded && { threaded: firstOfSame(threaded, search!.threaded!) }),
    ...(treadled && { treadled: firstOfSame(treadled, search!.treadled!) }),
  });
}

/** Whether a block order has more than one block. */
const isFigure = (word: Order): boolean => word.some((letter) => letter !== word[0]);
