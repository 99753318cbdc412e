import type { Weave } from '../../draft/draft.js';
import { oneRepeat } from '../../draft/shortest-repeat.js';
import type { Lift } from '../loom/lifts.js';
import type { Divided, Recognition } from './recognition.js';
import { isTurn } from './ring.js';

/** Whether the picks follow the ends: thread by thread, plain-weave picks left out or not, or block by block. */
export function drawnIn(
  weave: Weave,
  sheds: readonly string[],
  tabby: readonly [Lift, Lift] | undefined,
  { ends, picks }: { readonly ends: Divided; readonly picks: Divided },
): Recognition['asDrawnIn'] {
  const shafts = oneRepeat(weave.threading.map(String));
  const plain = new Set(tabby?.map((lift) => lift.join()));
  const pattern = oneRepeat(sheds.filter((shed) => !plain.has(shed)));
  const all = oneRepeat(sheds);
  if ([all, pattern].some((order) => order.length > 1 && followsAt(shafts, order) !== undefined)) return 'thread';
  if (ends.blocks === undefined || picks.blocks === undefined) return 'no';
  const across = oneRepeat(ends.blocks);
  const along = oneRepeat(picks.blocks);
  return new Set(across).size > 1 && isTurn(across, along) ? 'unit' : 'no';
}

/**
 * The rotation of one cyclic list that makes it the same order as the other, with a one-to-one mapping of their words;
 * undefined if there is none.
 */
export function followsAt(ring: readonly string[], other: readonly string[]): number | undefined {
  const { length } = ring;
  if (other.length !== length || new Set(ring).size !== new Set(other).size) return undefined;
  for (let turn = 0; turn < length; turn++) {
    const stands = new Map<string, string>();
    if (
      ring.every((word, i) => {
        const there = other[(i + turn) % length]!;
        if (!stands.has(word)) stands.set(word, there);
        return stands.get(word) === there;
      })
    ) {
      return turn;
    }
  }
  return undefined;
}
