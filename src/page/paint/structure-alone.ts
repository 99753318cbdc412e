import { linearLight, type Yarn } from '../../colour/yarn.js';
import type { Draft } from '../../draft/draft.js';
import type { Picture } from '../../render/cloth.js';
import { encodeLight } from '../../render/light.js';
import type { FloatRun } from './float-runs.js';

/** A dark yarn for the warp and a light one for the weft, which show the structure alone. */
const PLAIN_YARNS: readonly Yarn[] = [
  { letter: 'D', name: 'warp', hex: '#4a4a4a' },
  { letter: 'L', name: 'weft', hex: '#f4f4f4' },
];

/** The draft with a dark warp and a light weft. */
export function draftWithoutColours(draft: Draft): Draft {
  return { ...draft, yarns: PLAIN_YARNS, warp: draft.warp.map(() => 0), weft: draft.weft.map(() => 1) };
}

/**
 * Paints the colours without the structure: at every crossing the mean light of both threads, as in a very fine plain
 * weave. One point per crossing.
 */
export function colourAlone(draft: Draft, repeats: number): Picture {
  const light = draft.yarns.map(({ hex }) => linearLight(hex));
  const width = draft.warp.length * repeats;
  const height = draft.weft.length * repeats;
  const rgb = new Uint8Array(width * height * 3);
  for (let j = 0, at = 0; j < height; j++) {
    const weft = light[draft.weft[j % draft.weft.length]!]!;
    for (let i = 0; i < width; i++) {
      const warp = light[draft.warp[i % draft.warp.length]!]!;
      for (let c = 0; c < 3; c++) rgb[at++] = encodeLight((warp[c]! + weft[c]!) / 2);
    }
  }
  return { width, height, rgb };
}

/** Rectangles of floats on a drawing of `repeats` repeats, in crossings from its top left corner. */
interface Outline {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** The rectangles of floats on a drawing, including floats that begin before its edge. */
export function outlinesOf(runs: readonly FloatRun[], draft: Draft, repeats: number, side: 'face' | 'back'): Outline[] {
  const ends = draft.warp.length;
  const picks = draft.weft.length;
  const outlines: Outline[] = [];
  for (const { warp, end, pick, length } of runs) {
    const [w, h] = warp ? [1, length] : [length, 1];
    for (let r = -1; r < repeats; r++) {
      for (let q = -1; q < repeats; q++) {
        const left = end + q * ends;
        const x = side === 'back' ? ends * repeats - left - w : left;
        const y = pick + r * picks;
        if (x < ends * repeats && y < picks * repeats && x + w > 0 && y + h > 0) outlines.push({ x, y, w, h });
      }
    }
  }
  return outlines;
}
