import { AT_THE_LOOM } from '../../src/draft/point-of-view.js';
import { Pdf } from '../../src/sheets/paper/paper.js';
import type { PdfLine, PdfPage } from './pdf-text.js';

const POINTS = 72 / 25.4;
const ruler = new Pdf({ paper: 'a4', seen: AT_THE_LOOM }, 'widths of type');
/** A hair's breadth, in points: type may touch, but not cover. */
const HAIR = 0.3;
/** Height of small letters, and how far down tails go, as shares of the size of the type. */
const [X_HEIGHT, TAIL] = [0.5, 0.2];

/** What a reader would complain of on a page: type over type, or beyond the margin (7 mm at least). */
export function complaints(page: PdfPage): string[] {
  const boxes = page.lines.map((line) => ({ ...line, right: line.x + widthOf(line) }));
  const margin = 7 * POINTS;
  const beyond = boxes.filter(({ x, y, right }) => {
    return x < margin || right > page.width - margin || y < margin || y > page.height - margin;
  });
  const covered = boxes.flatMap((a, at) =>
    boxes
      .slice(at + 1)
      .filter((b) => overlap(a, b))
      .map((b) => `“${a.text}” under “${b.text}”`),
  );
  return [...beyond.map(({ text }) => `“${text}” beyond the margin`), ...covered];
}

type Box = PdfLine & { readonly right: number };

function overlap(a: Box, b: Box): boolean {
  const across = Math.min(a.right, b.right) - Math.max(a.x, b.x) > HAIR;
  const top = (line: PdfLine): number => line.y - X_HEIGHT * line.size;
  const foot = (line: PdfLine): number => line.y + TAIL * line.size;
  return across && Math.min(foot(a), foot(b)) - Math.max(top(a), top(b)) > HAIR;
}

function widthOf({ text, size, bold }: PdfLine): number {
  return ruler.textWidth(text, size, bold) * POINTS;
}
