import { drawdown } from '../cloth/drawdown.js';
import { colourFace, type Face } from '../cloth/face.js';
import { luminance } from '../colour/yarn.js';
import { type Draft, shaftCount } from '../draft/draft.js';
import { AT_THE_LOOM, asDrawn, numberAt, type Seen } from '../draft/point-of-view.js';
import { smallestPeriod } from '../order/order.js';
import { element, escapeText, short } from './svg.js';

const INK = '#20242c';
const RULE = '#b9bcc2';
/** Height of numbers and words, in the units of the drawing. */
const TYPE = 9;
/** Space between the parts of the draft, in cells. */
const GAP = 0.75;

/** The parts of a draft on paper, in cells: `x`, `y` of its top left corner, `w`, `h` its size. */
interface Part {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Space left of the drawing and above it, in its units, for numbers and words. */
const LEFT = 66;
const TOP = 16;

/**
 * Draws a draft as one SVG element: threading above or below the cloth, treadling at the right, tie-up in the corner
 * between them, drawdown in the colours of the threads, colour orders with the letters of the yarns. Shaft 1 is nearest
 * the cloth. Screen readers read out `title`.
 */
export function draftSvg(
  written: Draft,
  options: { readonly title: string; readonly cell?: number; readonly seen?: Seen },
): string {
  const seen = options.seen ?? AT_THE_LOOM;
  const draft = asDrawn(written, seen);
  const longest = Math.max(draft.warp.length, draft.weft.length);
  const cell = options.cell ?? (longest <= 40 ? 12 : longest <= 80 ? 9 : 6);
  const layout = layoutOf(draft, seen.threading === 'below');
  const width = LEFT + (layout.weftBar.x + 1) * cell + 24;
  const height = TOP + (layout.cloth.h + layout.shafts + 1 + 2 * GAP) * cell + (layout.below ? 12 : 4);
  const scaled = { transform: `translate(${LEFT} ${TOP}) scale(${cell})`, fill: 'none' };
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      role: 'img',
      viewBox: `0 0 ${Math.ceil(width)} ${Math.ceil(height)}`,
      width: Math.ceil(width),
      height: Math.ceil(height),
    },
    `<title>${escapeText(options.title)}</title>` +
      element('g', scaled, cellsOf(draft, layout).join('')) +
      element('g', { fill: INK, 'font-family': 'sans-serif' }, wordsOf(layout, cell, seen).join('')),
  );
}

type Layout = ReturnType<typeof layoutOf>;

/** Where the parts of a draft stand. `rowOf`: the row of a shaft in threading and tie-up. */
function layoutOf(draft: Draft, below: boolean) {
  const ends = draft.warp.length;
  const picks = draft.weft.length;
  const shafts = shaftCount(draft);
  const treadles = draft.tieUp.length;
  const threading: Part = { x: 0, y: below ? picks + GAP : 1 + GAP, w: ends, h: shafts };
  const cloth: Part = { x: 0, y: below ? 0 : threading.y + shafts + GAP, w: ends, h: picks };
  const warpBar: Part = { x: 0, y: below ? threading.y + shafts + GAP : 0, w: ends, h: 1 };
  const tieUp: Part = { x: ends + GAP, y: threading.y, w: treadles, h: shafts };
  const treadling: Part = { x: tieUp.x, y: cloth.y, w: treadles, h: picks };
  const weftBar: Part = { x: tieUp.x + treadles + GAP, y: cloth.y, w: 1, h: picks };
  const rowOf = (shaft: number): number => (below ? shaft - 1 : shafts - shaft);
  return { below, shafts, treadles, threading, cloth, warpBar, tieUp, treadling, weftBar, rowOf };
}

/** The parts drawn, in cells. */
function cellsOf(draft: Draft, { threading, cloth, warpBar, tieUp, treadling, weftBar, rowOf }: Layout): string[] {
  const rows = (shafts: readonly (readonly number[])[]) => shafts.map((on) => on.map(rowOf));
  const treadles = draft.treadling.map((on) => on.map((treadle) => treadle - 1));
  return [
    grid(threading),
    marks(threading, rows(draft.threading), 'column'),
    lines(threading, draft.endUnits, 'column'),
    grid(tieUp),
    marks(tieUp, rows(draft.tieUp), 'column'),
    grid(treadling),
    marks(treadling, treadles, 'row'),
    lines(treadling, draft.pickUnits, 'row'),
    face(cloth, draft),
    lines(cloth, draft.endUnits, 'column'),
    lines(cloth, draft.pickUnits, 'row'),
    bar(warpBar, draft, 'column'),
    bar(weftBar, draft, 'row'),
  ];
}

/** The numbers of shafts, treadles, ends and picks, and the words that say where to begin. */
function wordsOf(layout: Layout, cell: number, seen: Seen): string[] {
  const { below, shafts, treadles, threading, cloth, warpBar, tieUp, weftBar, rowOf } = layout;
  const left = (at: number) => LEFT + at * cell;
  const top = (at: number) => TOP + at * cell;
  const step = Math.max(cloth.w, cloth.h) <= 40 ? 5 : 10;
  /** The places that have a number beside them, each with its number. */
  const numbered = (count: number, first: Seen['pick'] | Seen['end']) =>
    Array.from({ length: count }, (_, at) => [at, numberAt(at, count, first)] as const).filter(
      ([, number]) => number === 1 || number % step === 0,
    );
  const upTo = (count: number) => Array.from({ length: count }, (_, n) => n + 1);
  const first = top(cloth.y + (seen.pick === 'bottom' ? cloth.h : 1) - 0.5);
  const size = Math.min(TYPE, cell);
  const small = Math.min(7, size);
  /** Outside a part: over it, or under it if the threading is below. */
  const beside = ({ y, h }: Part, by: number): number => (below ? top(y + h) + by : top(y) - by);
  return [
    ...upTo(shafts).map((n) => label(n, LEFT - 4, top(threading.y + rowOf(n) + 0.5), size, 'end')),
    ...upTo(treadles).map((n) => label(n, left(tieUp.x + n - 0.5), beside(tieUp, 5), size)),
    ...numbered(cloth.w, seen.end).map(([at, n]) => label(n, left(at + 0.5), beside(warpBar, 6), small)),
    ...numbered(cloth.h, seen.pick).map(([at, n]) =>
      label(n, left(weftBar.x + 1) + 4, top(cloth.y + at + 0.5), small, 'start'),
    ),
    label('begin here', LEFT - 12, first, TYPE, 'end'),
    arrow(LEFT - 9, first),
  ];
}

/** Fine lines round all cells. One broad dashed stroke draws all lines of one direction. */
function grid({ x, y, w, h }: Part): string {
  const across = { d: `M0 ${h / 2}h${w}`, 'stroke-width': h, 'stroke-dasharray': '.06 .94' };
  const along = { d: `M${w / 2} 0v${h}`, 'stroke-width': w, 'stroke-dasharray': '.06 .94' };
  const frame = element('path', { d: `M0 0h${w}v${h}h${-w}z`, 'stroke-width': 0.08 });
  return element(
    'g',
    { transform: `translate(${x} ${y})`, stroke: RULE },
    element('path', across) + element('path', along) + frame,
  );
}

/** A filled square for each mark: `at[n]` are the places of the marks in column (row) `n`. */
function marks({ x, y }: Part, at: readonly (readonly number[])[], by: 'column' | 'row'): string {
  const d = at.flatMap((places, n) => places.map((m) => (by === 'column' ? `M${n} ${m}h.76` : `M${m} ${n}h.76`)));
  if (d.length === 0) return '';
  return element('path', {
    transform: `translate(${short(x + 0.15)} ${short(y + 0.53)})`,
    d: d.join(''),
    stroke: INK,
    'stroke-width': 0.76,
  });
}

/** A heavier line at the end of each unit, to count by. Units of one thread get none. */
function lines({ x, y, w, h }: Part, units: readonly number[], by: 'column' | 'row'): string {
  if (units.every((unit) => unit === 1)) return '';
  let at = 0;
  const d = units.slice(0, -1).map((unit) => {
    at += unit;
    return by === 'column' ? `M${at} 0v${h}` : `M0 ${at}h${w}`;
  });
  if (d.length === 0) return '';
  return element('path', { transform: `translate(${x} ${y})`, d: d.join(''), stroke: '#6b7078', 'stroke-width': 0.1 });
}

/**
 * The drawdown. All rows of one kind are one dashed stroke per colour, which keeps the drawing of a long repeat small.
 */
function face(part: Part, draft: Draft): string {
  const cloth = colourFace(drawdown(draft), draft.warp, draft.weft);
  const ground = draft.warp[0]!;
  const strokes = Array.from({ length: cloth.rowKinds }, (_, kind) => {
    const d = Array.from(cloth.row).flatMap((k, j) => (k === kind ? [`M0 ${j}h${cloth.ends}`] : []));
    return draft.yarns.map((yarn, colour) => {
      const broken = colour === ground ? undefined : dashes(cloth, kind, colour);
      return broken ? element('path', { d: d.join(''), stroke: yarn.hex, ...broken }) : '';
    });
  });
  const box = { x: part.x, y: part.y, width: part.w, height: part.h };
  return (
    element('rect', { ...box, fill: draft.yarns[ground]!.hex }) +
    element(
      'g',
      { transform: `translate(${part.x} ${part.y + 0.5})`, 'stroke-width': 1, 'shape-rendering': 'crispEdges' },
      strokes.flat().join(''),
    ) +
    element('g', { opacity: 0.55 }, grid(part))
  );
}

/** The dashes of a row's stroke in one colour; undefined if the row does not show the colour. */
function dashes(cloth: Face, kind: number, colour: number): Record<string, string | number> | undefined {
  const shown = Array.from(cloth.column, (c) => (cloth.colour[kind * cloth.columnKinds + c] === colour ? 1 : 0));
  const period = smallestPeriod(shown);
  const start = shown.findIndex((on, i) => on === 1 && shown[(i + period - 1) % period] === 0);
  if (start < 0) return shown[0] === 1 ? {} : undefined;
  const runs: number[] = [];
  for (let k = 0; k < period; k++) {
    const same = k > 0 && shown[(start + k) % period] === shown[(start + k - 1) % period];
    if (same) runs[runs.length - 1]!++;
    else runs.push(1);
  }
  return { 'stroke-dasharray': runs.join(' '), ...(start > 0 && { 'stroke-dashoffset': period - start }) };
}

/** The colour order of one system: each run of one yarn is a bar with its letter; tabby picks are drawn thin. */
function bar({ x, y, w, h }: Part, draft: Draft, by: 'column' | 'row'): string {
  const colours = by === 'column' ? draft.warp : draft.weft;
  const thin = (n: number) => by === 'row' && draft.pickKinds[n] === 'tabby';
  const edges = [...colours.keys()].filter((n) => n === 0 || colours[n] !== colours[n - 1] || thin(n) !== thin(n - 1));
  const runs = edges.map((from, r) => ({ from, length: (edges[r + 1] ?? colours.length) - from }));
  const inset = (n: number) => (thin(n) ? 0.18 : 0);
  const blocks = draft.yarns.map((yarn, colour) => {
    const own = runs.filter(({ from }) => colours[from] === colour);
    if (own.length === 0) return '';
    const d = own.map(({ from, length }) =>
      by === 'column'
        ? `M${from} 0h${length}v1h${-length}z`
        : `M${inset(from)} ${from}h${1 - 2 * inset(from)}v${length}h${2 * inset(from) - 1}z`,
    );
    const middle = own.map(({ from, length }) => (from + length / 2).toFixed(1).replace('.0', ''));
    const letters = Array.from(own, () => escapeText(yarn.letter)).join('');
    const place =
      by === 'column'
        ? `<text x="${middle.join(' ')}" y=".76">${letters}</text>`
        : middle.map((m) => `<text x=".5" y="${m}" dy=".26">${escapeText(yarn.letter)}</text>`).join('');
    const ink = luminance(yarn.hex) > 0.18 ? '#000' : '#fff';
    const type = { fill: ink, 'font-size': 0.74, 'font-family': 'sans-serif', 'text-anchor': 'middle' };
    return (
      element('path', { d: d.join(''), fill: yarn.hex, stroke: '#6b7078', 'stroke-width': 0.06 }) +
      element('g', type, place)
    );
  });
  const frame =
    by === 'column' ? element('path', { d: `M0 0h${w}v${h}h${-w}z`, stroke: '#6b7078', 'stroke-width': 0.06 }) : '';
  return element('g', { transform: `translate(${x} ${y})` }, blocks.join('') + frame);
}

function label(text: string | number, x: number, y: number, size: number, anchor = 'middle'): string {
  return element('text', { x, y: y + size * 0.35, 'font-size': size, 'text-anchor': anchor }, escapeText(String(text)));
}

/** An arrow that points at the first pick. */
function arrow(x: number, y: number): string {
  return element('path', { d: `M${x} ${y - 4}l7 4l-7 4z` });
}
