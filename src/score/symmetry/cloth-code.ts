import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { type Draft, liftAt } from '../../draft/draft.js';

/** Letters and digits that are not taken for one another on paper (no i, l, o, u). */
const SIGNS = '0123456789abcdefghjkmnpqrstvwxyz';
const LENGTH = 8;

/**
 * The code of a draft: eight signs, a hash of its threading, lifts and colours. The same
 * draft has the same code in every list and on every sheet, however its treadles are numbered or its yarns named.
 * 40 bits of SHA-256: two of a thousand drafts share one with a chance of about one in two million.
 */
export function codeOf(draft: Draft): string {
  const hex = (yarn: number): string => draft.yarns[yarn]!.hex;
  const said = JSON.stringify([
    draft.threading,
    draft.treadling.map((_, j) => liftAt(draft, j)),
    draft.pickKinds,
    draft.warp.map(hex),
    draft.weft.map(hex),
  ]);
  // Not the hash of Node's own, so that the page of a gallery can say codes too.
  const digest = sha256(utf8ToBytes(said));
  return Array.from({ length: LENGTH }, (_, k) => {
    const bit = k * 5;
    const window = (digest[bit >> 3]! << 8) | digest[(bit >> 3) + 1]!;
    return SIGNS[(window >> (11 - (bit & 7))) & 31];
  }).join('');
}
