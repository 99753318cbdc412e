import { spacing } from '../../draft/draft.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import { counted } from '../../words/counts.js';
import { fixed } from '../../words/measure.js';
import type { Frame, Pdf } from '../paper/paper.js';

/**
 * Side of the picture in millimetres, the least and the most at actual size; of one that is made smaller, and the height
 * of the strip over it. More would take too much ink.
 */
const LEAST = 60;
const MOST = 66;
const SMALLER = 56;
const STRIP = 22;
/** Greatest side of a picture of one whole repeat. */
const WHOLE = 70;
/** Least side of that picture, in millimetres; where it would be smaller it is left out. */
const LEAST_WHOLE = 10;
/** Repeats that a picture shows at least; a gamp is shown once. */
const REPEATS = 3;

/** Width of the pictures of a cloth in millimetres. */
export function pictureWidth({ draft }: PiecePlan, repeats = REPEATS): number {
  const { across, along } = spacing(draft.sett);
  const three = Math.ceil(repeats * Math.max(draft.warp.length * across, draft.weft.length * along));
  return three > MOST ? SMALLER : Math.max(LEAST, three);
}

/**
 * Draws three repeats and more, at actual size where they fit; else made smaller, with a strip at actual size over them.
 * Returns the y under all.
 */
export async function drawPictures(
  pdf: Pdf,
  piece: PiecePlan,
  x: number,
  y: number,
  repeats = REPEATS,
): Promise<number> {
  const { draft } = piece;
  const { across, along } = spacing(draft.sett);
  const side = pictureWidth(piece, repeats);
  const [wide, high] = [draft.warp.length * across, draft.weft.length * along];
  const times = Math.max(1, (repeats * Math.max(wide, high)) / side);
  let top = y;
  if (times > 1) {
    await framed(pdf, draft, { x, y: top, width: side, height: STRIP }, 1);
    pdf.text('actual size', x, top + STRIP + 4);
    top += STRIP + 7;
  }
  await framed(pdf, draft, { x, y: top, width: side, height: side }, times);
  const size = times > 1 ? `at ${fixed(100 / times, 100 / times < 10 ? 1 : 0)} %` : 'actual size';
  pdf.text(
    `${size}, ${side} mm: ${counted(Number(fixed((side * times) / wide, 1)), 'repeat')} across`,
    x,
    top + side + 4,
  );
  return top + side + 5;
}

/** Draws one whole repeat as large as a frame allows, up to actual size; nothing where there is hardly room. */
export async function drawWholeRepeat(pdf: Pdf, { draft }: PiecePlan, frame: Frame): Promise<void> {
  const { across, along } = spacing(draft.sett);
  const [wide, high] = [draft.warp.length * across, draft.weft.length * along];
  const scale = Math.min(1, WHOLE / wide, Math.min(WHOLE, frame.height - 5) / high);
  if (scale * Math.min(wide, high) < LEAST_WHOLE) return;
  const said = `one repeat, ${counted(draft.warp.length, 'end')} and ${counted(draft.weft.length, 'pick')}, at ${Math.round(scale * 100)} % of its size`;
  pdf.text(said, frame.x, frame.y + 3.4);
  await framed(pdf, draft, { x: frame.x, y: frame.y + 5, width: wide * scale, height: high * scale }, 1 / scale);
}

async function framed(pdf: Pdf, draft: PiecePlan['draft'], frame: Frame, times: number): Promise<void> {
  await pdf.cloth(draft, frame, { times });
  pdf.box(frame.x, frame.y, frame.width, frame.height);
}
