import { drawdown } from '../../cloth/drawdown.js';
import { colourFace } from '../../cloth/face.js';
import type { Yarn } from '../../colour/yarn.js';
import type { Draft } from '../../draft/draft.js';
import { descriptorOf, featureDistance, isNearer } from '../../score/likeness/descriptor.js';
import { clothKey } from '../../score/symmetry/canonical-cloth.js';
import type { Question } from '../question/question.js';

/** Tests of candidates against the cloths that are already woven. */
export interface AlreadyWoven {
  /** Whether a cloth is already woven, by its key (its words joined), whatever draft it was woven from. */
  isDone(key: string): boolean;
  /**
   * Whether a cloth is too similar to one already woven: its distance is below the question's `unlike done`. The answer
   * depends on the cloth alone, not on its draft, and is computed once per key.
   */
  isNear(key: string, draft: () => Draft): boolean;
}

/** The tests for a question; undefined if the question names no cloths already woven. */
export function alreadyWoven({ done, yarns, same }: Question): AlreadyWoven | undefined {
  if (done === undefined) return undefined;
  const keys = new Set(
    done.drafts.flatMap((draft) => {
      const [warp, weft] = [inYarns(draft.warp, draft.yarns, yarns), inYarns(draft.weft, draft.yarns, yarns)];
      if (warp === undefined || weft === undefined) return [];
      return [clothKey(colourFace(drawdown(draft), warp, weft), same, yarns.length).join()];
    }),
  );
  const { unlike } = done;
  const portraits = unlike === undefined ? [] : done.drafts.map((draft) => descriptorOf(draft, same));
  const known = new Map<string, boolean>();
  const isNear = (draft: Draft, least: number): boolean => {
    const descriptor = descriptorOf(draft, same);
    // A cloth with similar features is usually near, so it is compared first; one hit is enough.
    const apart = new Map(portraits.map((other) => [other, featureDistance(descriptor, other)]));
    return portraits
      .toSorted((a, b) => apart.get(a)! - apart.get(b)!)
      .some((other) => isNearer(descriptor, other, least));
  };
  return {
    isDone: (key) => keys.has(key),
    isNear: (key, draft) => {
      if (unlike === undefined) return false;
      const found = known.get(key) ?? isNear(draft(), unlike);
      known.set(key, found);
      return found;
    },
  };
}

/**
 * Translates palette indices to another palette: each yarn becomes the yarn of the same colour, or else of the same
 * letter. Undefined if a yarn has no counterpart or two share one: the cloth cannot be woven in the other yarns.
 */
function inYarns(word: readonly number[], own: readonly Yarn[], yarns: readonly Yarn[]): number[] | undefined {
  const used = [...new Set(word)];
  const there = used.map((at) => {
    const alike = yarns.findIndex(({ hex }) => hex === own[at]!.hex);
    return alike >= 0 ? alike : yarns.findIndex(({ letter }) => letter === own[at]!.letter);
  });
  if (there.includes(-1) || new Set(there).size < there.length) return undefined;
  return word.map((at) => there[used.indexOf(at)]!);
}
