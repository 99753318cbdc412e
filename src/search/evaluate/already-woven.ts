import { drawdown } from '../../cloth/drawdown.js';
import { colourFace } from '../../cloth/face.js';
import type { Yarn } from '../../colour/yarn.js';
import type { Draft } from '../../draft/draft.js';
import { descriptorOf, featureDistance, isNearer } from '../../score/likeness/descriptor.js';
import { clothKey } from '../../score/symmetry/canonical-cloth.js';
import type { Question } from '../question/question.js';

/** What was done before, for a search to hold its cloths against. */
export interface AlreadyWoven {
  /** Whether a cloth was done, by the words of its key joined: whatever draft wove it. */
  isDone(key: string): boolean;
  /**
   * Whether a cloth is nearer than is asked to one that was done. It hangs on the cloth, not on the draft of it, and is
   * found once for each key.
   */
  isNear(key: string, draft: () => Draft): boolean;
}

/** What a question leaves out; undefined where it leaves out nothing. */
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
    // What is alike in its traits is most often near, and then the others need not be looked at.
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
 * Colours of one palette in another: each yarn is the one of the same colour there, or else of the same letter.
 * Undefined where one has no counterpart, or two the same: such a cloth cannot be woven in those yarns.
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
