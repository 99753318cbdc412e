import type { Draft } from '../../draft/draft.js';
import { SWATCH_MILLIMETRES } from '../../gallery/html/scale.js';
import { POINTS } from '../paint/paint.js';
import type { Screen } from '../paint/screen.js';
import { countedScale, motifScale } from '../store/sizes.js';
import type { Size, View } from '../store/view.js';

/** The room of a picture: its side in CSS pixels, and CSS pixels per millimetre of cloth. */
export interface CardFrame {
  readonly side: number;
  readonly scale: number;
}

/** Side of a picture in CSS pixels where there is room: that of a swatch on a usual screen. */
const SIDE = SWATCH_MILLIMETRES * POINTS;
/** From picture to picture across, in CSS pixels, as in the style. */
const GUTTER = 20;

/**
 * The room of each picture in a list of this width: whole columns fill it, two of them on a phone. At actual size a
 * picture is as large as its swatch.
 */
export function frameOf(
  size: Size,
  width: number,
  longest: number,
  draft: Pick<Draft, 'sett'>,
  screen: Screen,
): CardFrame {
  const columns = Math.max(2, Math.round((width + GUTTER) / (SIDE + GUTTER)));
  const fitted = Math.floor((width - GUTTER * (columns - 1)) / columns);
  const side = size === 'actual' ? SWATCH_MILLIMETRES * screen.points : fitted;
  return { side, scale: scaleOf(size, draft, screen, longest, side) };
}

/** CSS pixels per millimetre of cloth; a whole motif is fitted into `side`. */
export function scaleOf(
  size: Size,
  draft: Pick<Draft, 'sett'>,
  { points }: Screen,
  longest: number,
  side: number,
): number {
  switch (size) {
    case 'motif':
      return motifScale(longest, side, draft);
    case 'quarter':
      return points / 4;
    case 'half':
      return points / 2;
    case 'actual':
      return points;
    case 'close':
      return countedScale(draft);
  }
}

export const SIZE_WORDS: Readonly<Record<Size, string>> = {
  motif: 'whole motif',
  actual: 'actual size',
  half: 'half its size',
  quarter: 'a quarter of its size',
  close: 'close, to count threads',
};

/** `actual size, as seen from 2 m, greys only`. */
export function lookInWords({ size, metres, grey }: Pick<View, 'size' | 'metres' | 'grey'>): string {
  const words = [SIZE_WORDS[size], metres > 0 && `as seen from ${metres} m`, grey && 'greys only'];
  return words.filter(Boolean).join(', ');
}
