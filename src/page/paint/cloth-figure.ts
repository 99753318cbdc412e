import { drawdown } from '../../cloth/drawdown.js';
import { type Draft, spacing } from '../../draft/draft.js';
import { repeatMillimetres } from '../store/sizes.js';
import { el } from './dom.js';
import { floatsOver } from './float-runs.js';
import { paintCanvas, put, seenFrom } from './paint.js';
import { colourAlone, draftWithoutColours, outlinesOf } from './structure-alone.js';

/** What is drawn of a cloth: a side, the structure alone, or the colours alone. */
export type Aspect = 'face' | 'back' | 'structure' | 'colour';

/** How a cloth is drawn large. */
interface Drawn {
  readonly side: Aspect;
  /** Whole repeats each way; 0 for a piece of the size asked for. */
  readonly repeats: number;
  /** CSS pixels per millimetre of cloth. */
  readonly scale: number;
  /** Size of the piece in CSS pixels, used if `repeats` is 0. */
  readonly width: number;
  readonly height: number;
  readonly grey: boolean;
  readonly metres: number;
  /** Floats over more threads than this are outlined. Absent: none. */
  readonly outline?: number;
  readonly words: string;
}

/** Draws a cloth large, with its long floats outlined if asked for. */
export function clothFigure(draft: Draft, drawn: Drawn): HTMLElement {
  const { side, repeats, scale, grey, metres } = drawn;
  const repeat = repeatMillimetres(draft);
  const width = repeats > 0 ? repeat.width * repeats : drawn.width / scale;
  const height = repeats > 0 ? repeat.height * repeats : drawn.height / scale;
  const canvas = el('canvas', { role: 'img', 'aria-label': drawn.words });
  const seen = side === 'back' ? 'back' : 'face';
  if (side === 'colour') paintColour(canvas, draft, width, height, scale);
  else {
    const shown = side === 'structure' ? draftWithoutColours(draft) : draft;
    paintCanvas(canvas, shown, { side: seen, grey, metres, scale, width, height });
  }
  const figure = el('div', { class: 'figure' }, canvas);
  if (drawn.outline !== undefined && side !== 'colour') {
    figure.append(outlines(draft, seen, drawn.outline, width, height, scale));
  }
  return figure;
}

/** Height and breadth of a small picture, in points of the page. */
export const SMALL_FIGURE = 120;

/** A cloth's face in a small picture among others, at a scale in points of the page to a millimetre. */
export function smallFigure(draft: Draft, scale: number, words: string): HTMLElement {
  const size = { width: SMALL_FIGURE, height: SMALL_FIGURE };
  return clothFigure(draft, { side: 'face', repeats: 0, scale, ...size, grey: false, metres: 0, words });
}

function paintColour(canvas: HTMLCanvasElement, draft: Draft, width: number, height: number, scale: number): void {
  const { across, along } = spacing(draft.sett);
  const repeat = repeatMillimetres(draft);
  const all = colourAlone(draft, Math.ceil(Math.max(width / repeat.width, height / repeat.height) - 1e-9));
  const piece = { width: Math.round(width / across), height: Math.round(height / along) };
  const rgb = new Uint8Array(piece.width * piece.height * 3);
  for (let y = 0; y < piece.height; y++) {
    rgb.set(all.rgb.subarray(y * all.width * 3, (y * all.width + piece.width) * 3), y * piece.width * 3);
  }
  put(canvas, { ...piece, rgb });
  canvas.classList.add('by-cells');
  canvas.style.transform = turning();
  canvas.style.width = `${width * scale}px`;
  canvas.style.height = `${height * scale}px`;
}

/** Turns what begins at the upper left to begin where the cloth does. */
function turning(): string {
  const { pick, end } = seenFrom();
  return `scale(${end === 'right' ? -1 : 1}, ${pick === 'bottom' ? -1 : 1})`;
}

const SVG = 'http://www.w3.org/2000/svg';

/** The outlines as a drawing over the cloth, with crossings of equal size. */
function outlines(
  draft: Draft,
  side: 'face' | 'back',
  most: number,
  width: number,
  height: number,
  scale: number,
): SVGElement {
  const { across, along } = spacing(draft.sett);
  const repeat = repeatMillimetres(draft);
  const repeats = Math.ceil(Math.max(width / repeat.width, height / repeat.height) - 1e-9);
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('viewBox', `0 0 ${width / across} ${height / along}`);
  svg.setAttribute('preserveAspectRatio', 'none');
  svg.setAttribute('aria-hidden', 'true');
  svg.style.transform = turning();
  svg.style.width = `${width * scale}px`;
  svg.style.height = `${height * scale}px`;
  const path = outlinesOf(floatsOver(drawdown(draft), side, most), draft, repeats, side)
    .map(({ x, y, w, h }) => `M${x + 0.06} ${y + 0.06}h${w - 0.12}v${h - 0.12}h${0.12 - w}z`)
    .join('');
  for (const name of ['halo', 'line']) {
    const line = document.createElementNS(SVG, 'path');
    line.setAttribute('d', path);
    line.setAttribute('class', name);
    svg.append(line);
  }
  return svg;
}
