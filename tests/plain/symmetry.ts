// Symmetry cell by cell, by trying every translation: a reader can check it against the definitions by eye.

/** Rows of palette indices, first pick first; continued without end both ways. */
export type Cells = readonly (readonly number[])[];

export type PointOperation =
  | 'half-turn'
  | 'mirror-left-right'
  | 'mirror-up-down'
  | 'quarter-turn'
  | 'quarter-turn-back'
  | 'diagonal'
  | 'antidiagonal';

type Point = readonly [number, number];
/** A point operation (or none) with the translation after it, and whether the two colours are exchanged. */
interface Isometry {
  readonly op: PointOperation | 'identity';
  readonly shift: Point;
  readonly exchanged: boolean;
}

const MAPS: Record<PointOperation | 'identity', (i: number, j: number) => Point> = {
  identity: (i, j) => [i, j],
  'half-turn': (i, j) => [-i, -j],
  'mirror-left-right': (i, j) => [-i, j],
  'mirror-up-down': (i, j) => [i, -j],
  'quarter-turn': (i, j) => [-j, i],
  'quarter-turn-back': (i, j) => [j, -i],
  diagonal: (i, j) => [j, i],
  antidiagonal: (i, j) => [-j, -i],
};

const mod = (value: number, n: number): number => ((value % n) + n) % n;

const at = (cells: Cells, i: number, j: number): number => {
  const row = cells[mod(j, cells.length)]!;
  return row[mod(i, row.length)]!;
};

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

const shown = (cells: Cells): number[] => [...new Set(cells.flat())].sort((a, b) => a - b);

/** A side of a square in which every translation and operation of the endless cloth can be seen. */
const windowOf = (cells: Cells): number => (cells.length * cells[0]!.length) / gcd(cells.length, cells[0]!.length);

const swapIn = (colours: readonly number[], colour: number): number =>
  colour === colours[0] ? colours[1]! : colours[0]!;

/** Whether A(g·x + t) = A(x) for all x, colours kept or exchanged. */
export function holds(cells: Cells, { op, shift, exchanged }: Isometry): boolean {
  const colours = shown(cells);
  const side = windowOf(cells);
  for (let j = 0; j < side; j++) {
    for (let i = 0; i < side; i++) {
      const [x, y] = MAPS[op](i, j);
      const there = at(cells, x + shift[0], y + shift[1]);
      if (at(cells, i, j) !== (exchanged ? swapIn(colours, there) : there)) return false;
    }
  }
  return true;
}

/** Shifts from 0 to below the repeat, ends and picks. */
function shifts(cells: Cells): Point[] {
  return cells.flatMap((row, j) => row.map((_, i): Point => [i, j]));
}

/** The smallest rectangular repeat: [ends, picks]. */
export function smallestRepeat(cells: Cells): Point {
  const keeps = (shift: Point): boolean => holds(cells, { op: 'identity', shift, exchanged: false });
  let ends = 1;
  while (!keeps([ends, 0])) ends++;
  let picks = 1;
  while (!keeps([0, picks])) picks++;
  return [ends, picks];
}

export function allowed(cells: Cells, squareCells: boolean): PointOperation[] {
  const [ends, picks] = smallestRepeat(cells);
  const always: PointOperation[] = ['half-turn', 'mirror-left-right', 'mirror-up-down'];
  if (!squareCells || ends !== picks) return always;
  return [...always, 'quarter-turn', 'quarter-turn-back', 'diagonal', 'antidiagonal'];
}

export interface PlainSymmetry {
  readonly symmetry: number;
  readonly operations: { op: PointOperation; counterchange: boolean }[];
  readonly shiftExchange: boolean;
  readonly planeGroup: string;
  readonly colourGroup: string | null;
}

export function symmetry(cells: Cells, squareCells: boolean): PlainSymmetry {
  const two = shown(cells).length === 2;
  const some = (op: Isometry['op'], exchanged: boolean): boolean =>
    shifts(cells).some((shift) => holds(cells, { op, shift, exchanged }));
  const operations = allowed(cells, squareCells).flatMap((op) => {
    if (some(op, false)) return [{ op, counterchange: false }];
    return two && some(op, true) ? [{ op, counterchange: true }] : [];
  });
  const shiftExchange = two && some('identity', true);
  const keeping = planeGroup(cells, squareCells, [false]);
  const exchanges = shiftExchange || operations.some((o) => o.counterchange);
  return {
    symmetry: (Math.log2(1 + operations.length) + (shiftExchange ? 1 : 0)) / 4,
    operations,
    shiftExchange,
    planeGroup: keeping,
    colourGroup: exchanges ? `${planeGroup(cells, squareCells, [false, true])}/${keeping}` : null,
  };
}

/** A mirror line (slide 0) or glide line, at half `place` on the coordinate across it. */
interface Line {
  readonly direction: PointOperation;
  readonly place: number;
  readonly slide: number;
}

/**
 * The recognition chart of plane groups, walked through with every turn centre and every mirror and glide line that
 * lies in two windows: quarter-turns first, then half-turns, then mirrors, then glides that lie apart from mirrors.
 */
export function planeGroup(whole: Cells, squareCells: boolean, exchanging: readonly boolean[]): string {
  const cells = reduced(whole);
  const side = windowOf(cells);
  const elements = (op: PointOperation): Point[] => (allowed(cells, squareCells).includes(op) ? all(op) : []);
  const all = (op: PointOperation): Point[] => {
    const here = shifts(cells).filter((shift) =>
      exchanging.some(
        (exchanged) => (!exchanged || shown(cells).length === 2) && holds(cells, { op, shift, exchanged }),
      ),
    );
    const [ends, picks] = smallestRepeat(cells);
    return steps(2 * side, picks).flatMap((y) =>
      steps(2 * side, ends).flatMap((x) => here.map(([a, b]): Point => [x + a, y + b])),
    );
  };
  const twice = (n: number): number => mod(n, 2 * side);
  const lines: Line[] = [
    ...elements('mirror-left-right').map(([a, b]) => line('mirror-left-right', twice(a), mod(b, side))),
    ...elements('mirror-up-down').map(([a, b]) => line('mirror-up-down', twice(b), mod(a, side))),
    ...elements('diagonal').map(([a, b]) => line('diagonal', twice(a - b), twice(a + b))),
    ...elements('antidiagonal').map(([a, b]) => line('antidiagonal', twice(a + b), twice(a - b))),
  ];
  const mirrors = lines.filter(({ slide }) => slide === 0);
  const mirrorPlaces = new Set(mirrors.map(({ direction, place }) => `${direction} ${place}`));
  const directions = new Set(mirrors.map(({ direction }) => direction)).size;
  /** Whether a mirror passes through the point (x/2, y/2). */
  const onMirror = (x: number, y: number): boolean =>
    mirrorPlaces.has(`mirror-left-right ${twice(x)}`) ||
    mirrorPlaces.has(`mirror-up-down ${twice(y)}`) ||
    mirrorPlaces.has(`diagonal ${twice(x - y)}`) ||
    mirrorPlaces.has(`antidiagonal ${twice(x + y)}`);

  const quarters = elements('quarter-turn');
  if (quarters.length > 0) {
    if (lines.length === 0) return 'p4';
    return quarters.some(([a, b]) => onMirror(a - b, a + b)) ? 'p4m' : 'p4g';
  }
  const halves = elements('half-turn');
  if (halves.length > 0) {
    if (lines.length === 0) return 'p2';
    if (directions === 0) return 'pgg';
    if (directions === 1) return 'pmg';
    return halves.every(([a, b]) => onMirror(a, b)) ? 'pmm' : 'cmm';
  }
  if (lines.length === 0) return 'p1';
  if (directions === 0) return 'pg';
  return lines.every(({ direction, place }) => mirrorPlaces.has(`${direction} ${place}`)) ? 'pm' : 'cm';
}

const line = (direction: PointOperation, place: number, slide: number): Line => ({ direction, place, slide });

const steps = (upTo: number, by: number): number[] => Array.from({ length: upTo / by }, (_, n) => n * by);

/** The same cloth by its smallest rectangular repeat. */
export function reduced(cells: Cells): Cells {
  const [ends, picks] = smallestRepeat(cells);
  return cells.slice(0, picks).map((row) => row.slice(0, ends));
}

/** The largest share of cells that agree under an operation, over all shifts, colours kept or (of two) exchanged. */
export function agreement(cells: Cells, op: PointOperation): number {
  const side = windowOf(cells);
  const shares = shifts(cells).map(([a, b]) => {
    let agreeing = 0;
    for (let j = 0; j < side; j++) {
      for (let i = 0; i < side; i++) {
        const [x, y] = MAPS[op](i, j);
        if (at(cells, i, j) === at(cells, x + a, y + b)) agreeing++;
      }
    }
    const share = agreeing / side ** 2;
    return shown(cells).length === 2 ? Math.max(share, 1 - share) : share;
  });
  return Math.max(...shares);
}

/** The allowed operation that does not hold with the largest agreement, at 0.8 and above. */
export function nearly(cells: Cells, squareCells: boolean): { op: PointOperation; agreement: number } | undefined {
  const held = symmetry(cells, squareCells).operations.map(({ op }) => op);
  const near = allowed(cells, squareCells)
    .filter((op) => !held.includes(op))
    .map((op) => ({ op, agreement: agreement(cells, op) }))
    .filter((candidate) => candidate.agreement >= 0.8);
  return near.find((candidate) => candidate.agreement === Math.max(...near.map((other) => other.agreement)));
}

/** What may carry one cloth to another beside a translation. */
export type Sameness = 'mirror' | 'half-turn' | 'quarter-turn' | 'exchange';

/** Whether two faces are the same cloth, in a palette of so many colours. */
export function sameCloth(a: Cells, b: Cells, same: readonly Sameness[], colours: number): boolean {
  const one = reduced(a);
  const other = reduced(b);
  return operationsOf(same).some((op) => {
    const turned = reduced(seenThrough(one, op));
    if (turned.length !== other.length || turned[0]!.length !== other[0]!.length) return false;
    const exchanges = same.includes('exchange') ? [false, true] : [false];
    return exchanges.some((exchange) => {
      const coloured = exchange ? exchangedColours(turned, colours) : turned;
      return (
        coloured !== undefined &&
        shifts(coloured).some(([x, y]) =>
          other.every((row, j) => row.every((c, i) => at(coloured, i + x, j + y) === c)),
        )
      );
    });
  });
}

/** The operations that the allowed ones generate. */
function operationsOf(same: readonly Sameness[]): (PointOperation | 'identity')[] {
  const found: (PointOperation | 'identity')[] = ['identity'];
  const mirror = same.includes('mirror');
  const quarter = same.includes('quarter-turn');
  if (mirror || quarter || same.includes('half-turn')) found.push('half-turn');
  if (mirror) found.push('mirror-left-right', 'mirror-up-down');
  if (quarter) found.push('quarter-turn', 'quarter-turn-back');
  if (mirror && quarter) found.push('diagonal', 'antidiagonal');
  return found;
}

/** The cloth with cell x showing what the first shows at g·x. */
function seenThrough(cells: Cells, op: PointOperation | 'identity'): Cells {
  const side = windowOf(cells);
  return Array.from({ length: side }, (_, j) =>
    Array.from({ length: side }, (_, i) => {
      const [x, y] = MAPS[op](i, j);
      return at(cells, x, y);
    }),
  );
}

/** The two colours exchanged: those shown, or those of a palette of two. None where there are not two. */
function exchangedColours(cells: Cells, colours: number): Cells | undefined {
  const pair = colours === 2 ? [0, 1] : shown(cells);
  return pair.length === 2 ? cells.map((row) => row.map((colour) => swapIn(pair, colour))) : undefined;
}

/** Whether a diagonal or antidiagonal operation that does not slide exchanges the two colours. */
export function exchangingDiagonalMirror(cells: Cells): boolean {
  return shifts(cells).some(
    ([a]) =>
      holds(cells, { op: 'diagonal', shift: [a, -a], exchanged: true }) ||
      holds(cells, { op: 'antidiagonal', shift: [a, a], exchanged: true }),
  );
}
