/**
 * A 128-bit hash of a list of 32-bit words, written to `hash` as four words: MurmurHash3, the 128-bit variant for 32-bit
 * machines (A. Appleby, 2011), the list filled up with zeros to a multiple of four. Lists of different lengths must be
 * told apart by what they hold. Of n different lists any two share a hash by accident with odds of about n²/2^129.
 */
export function hashWords(words: Int32Array, hash: Uint32Array): void {
  const count = words.length;
  let h1 = 0;
  let h2 = 0;
  let h3 = 0;
  let h4 = 0;
  for (let at = 0; at < count; at += 4) {
    h1 ^= Math.imul(turnLeft(Math.imul(words[at]!, C1), 15), C2);
    h1 = (Math.imul((turnLeft(h1, 19) + h2) | 0, 5) + 0x561ccd1b) | 0;
    h2 ^= Math.imul(turnLeft(Math.imul(at + 1 < count ? words[at + 1]! : 0, C2), 16), C3);
    h2 = (Math.imul((turnLeft(h2, 17) + h3) | 0, 5) + 0x0bcaa747) | 0;
    h3 ^= Math.imul(turnLeft(Math.imul(at + 2 < count ? words[at + 2]! : 0, C3), 17), C4);
    h3 = (Math.imul((turnLeft(h3, 15) + h4) | 0, 5) + 0x96cd1c35) | 0;
    h4 ^= Math.imul(turnLeft(Math.imul(at + 3 < count ? words[at + 3]! : 0, C4), 18), C1);
    h4 = (Math.imul((turnLeft(h4, 13) + h1) | 0, 5) + 0x32ac3b17) | 0;
  }
  const bytes = count * 4;
  mix(hash, h1 ^ bytes, h2 ^ bytes, h3 ^ bytes, h4 ^ bytes);
  mix(hash, scattered(hash[0]!), scattered(hash[1]!), scattered(hash[2]!), scattered(hash[3]!));
}

const C1 = 0x239b961b;
const C2 = 0xab0e9789;
const C3 = 0x38b34ae5;
const C4 = 0xa1e38b93;

const turnLeft = (word: number, bits: number): number => (word << bits) | (word >>> (32 - bits));

/** Lets every lane reach every other. */
function mix(hash: Uint32Array, h1: number, h2: number, h3: number, h4: number): void {
  const sum = (h1 + h2 + h3 + h4) | 0;
  hash[0] = sum;
  hash[1] = h2 + sum;
  hash[2] = h3 + sum;
  hash[3] = h4 + sum;
}

/** Lets every bit of 32 reach every other. */
export function scattered(lane: number): number {
  let h = lane;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}
