import { LINEAR } from '../../colour/yarn.js';
import type { Draft } from '../../draft/draft.js';
import { spacing } from '../../draft/draft.js';
import { AT_THE_LOOM } from '../../draft/point-of-view.js';
import { type Picture, paintCloth, type Scale } from '../../render/cloth.js';
import { encodeLight } from '../../render/light.js';
import { blurWeights } from '../../score/contrast/blur.js';
import { ARC_MINUTE } from '../../score/contrast/viewing-distance.js';

/** Picture points per standard deviation of the blur: more would show nothing further. */
const FINEST = 2.5;

/**
 * Paints the cloth as seen from `metres` away: blurred in linear light by a Gaussian of one minute of arc, at the same
 * scale as from near. A far picture has fewer points, since it has no finer detail.
 */
export function clothFrom(draft: Draft, scale: Scale, metres: number): Picture {
  if (metres === 0) return paintCloth(draft, scale);
  const sigma = ARC_MINUTE * metres * 1000;
  const perMillimetre = Math.min(scale.perMillimetre, FINEST / sigma);
  const { across, along } = spacing(draft.sett);
  // Whole repeats are painted round the piece: it begins on end 1, and its edges are blurred with their surroundings.
  const before = (repeat: number): number => Math.ceil((5 * sigma) / repeat) * repeat;
  const left = before(draft.warp.length * across);
  const top = before(draft.weft.length * along);
  const { width, height } = scale.millimetres;
  const whole = paintCloth(draft, {
    ...scale,
    perMillimetre,
    millimetres: { width: left + width + 5 * sigma, height: top + height + 5 * sigma },
  });
  const points = (length: number): number => Math.round(length * perMillimetre);
  const piece = { width: Math.max(1, points(width)), height: Math.max(1, points(height)) };
  const { pick, end } = scale.seen ?? AT_THE_LOOM;
  return blurred(whole, kernel(sigma * perMillimetre), {
    x: end === 'right' ? whole.width - points(left) - piece.width : points(left),
    y: pick === 'bottom' ? whole.height - points(top) - piece.height : points(top),
    ...piece,
  });
}

interface Piece {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Half a kernel, middle first. Its variance is reduced by the blur of painting and sampling over a point's breadth. */
function kernel(sigma: number): Float64Array {
  const own = Math.sqrt(Math.max(1e-6, sigma * sigma - 1 / 6));
  const reach = Math.ceil(4 * own) + 1;
  return blurWeights(2 * reach + 3, own).subarray(0, reach + 1);
}

/** Blurs a piece of a picture in linear light: columns first, then rows. */
function blurred({ width, height, rgb }: Picture, half: Float64Array, piece: Piece): Picture {
  const light = Float32Array.from(rgb, (step) => LINEAR[step]!);
  const row = width * 3;
  const middle = new Float32Array(piece.height * row);
  for (let y = 0; y < piece.height; y++) {
    for (let k = 1 - half.length; k < half.length; k++) {
      const weight = half[Math.abs(k)]!;
      const from = held(y + piece.y + k, height) * row;
      for (let x = 0; x < row; x++) middle[y * row + x] = middle[y * row + x]! + weight * light[from + x]!;
    }
  }
  const out = new Uint8Array(piece.width * piece.height * 3);
  for (let y = 0; y < piece.height; y++) {
    for (let x = 0; x < piece.width; x++) {
      let [r, g, b] = [0, 0, 0];
      for (let k = 1 - half.length; k < half.length; k++) {
        const weight = half[Math.abs(k)]!;
        const from = y * row + held(x + piece.x + k, width) * 3;
        r += weight * middle[from]!;
        g += weight * middle[from + 1]!;
        b += weight * middle[from + 2]!;
      }
      out.set([encodeLight(r), encodeLight(g), encodeLight(b)], (y * piece.width + x) * 3);
    }
  }
  return { width: piece.width, height: piece.height, rgb: out };
}

function held(place: number, length: number): number {
  return Math.max(0, Math.min(length - 1, place));
}
