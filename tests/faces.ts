import fc from 'fast-check';
import { fromCells } from '../src/cloth/drawdown.js';
import {
  colourAt,
  colourFace,
  type Face,
  faceFromRows,
  faceMaker,
  strandKinds,
  type Threads,
  woven,
} from '../src/cloth/face.js';
import { slopesOf } from '../src/score/look/light-lines.js';
import type { LocalLight } from '../src/score/look/local-light.js';

/** All cells of a face: rows of palette indices, first pick first. */
export const cellsOf = (face: Face): number[][] =>
  Array.from({ length: face.picks }, (_, j) => Array.from({ length: face.ends }, (_, i) => colourAt(face, j, i)));

const size = fc.integer({ min: 1, max: 8 });
const colours = fc.integer({ min: 1, max: 3 });

/** Cells at random. */
const anyFace = fc.record({ ends: size, picks: size, colours }).chain((r) =>
  fc
    .array(fc.array(fc.nat(r.colours - 1), { minLength: r.ends, maxLength: r.ends }), {
      minLength: r.picks,
      maxLength: r.picks,
    })
    .map(faceFromRows),
);

/** Interlacements of few kinds of threads, coloured by random orders once or twice as long. */
export const wovenCloths = fc
  .record({
    ends: size,
    picks: size,
    threading: fc.array(fc.nat(3), { minLength: 8, maxLength: 8 }),
    treadling: fc.array(fc.nat(3), { minLength: 8, maxLength: 8 }),
    tie: fc.array(fc.boolean(), { minLength: 16, maxLength: 16 }),
    times: fc.constantFrom(1, 2),
    colours,
    warp: fc.array(fc.nat(11), { minLength: 16, maxLength: 16 }),
    weft: fc.array(fc.nat(11), { minLength: 16, maxLength: 16 }),
  })
  .map((r) =>
    woven(
      fromCells(r.ends, r.picks, (j, i) => r.tie[r.treadling[j]! * 4 + r.threading[i]!]!),
      r.warp.slice(0, r.ends * r.times).map((c) => c % r.colours),
      r.weft.slice(0, r.picks * r.times).map((c) => c % r.colours),
    ),
  );

/** Their faces. */
export const wovenFaces = wovenCloths.map((cloth) => faceMaker()(cloth));

/** An order, and how often the weave goes into it: where it is small, so often that many threads lie at one place. */
const word = fc.tuple(fc.array(fc.nat(2), { minLength: 24, maxLength: 24 }), fc.integer({ min: 1, max: 12 }));

/**
 * A weave and its back, most of their threads of a kind of its own, so that some are too large to be kept; on them warps
 * and wefts of several lengths that meet in turn, as they do in a search, where those that come later may take the rooms
 * of others.
 */
export const meetings = fc
  .record({
    ends: fc.oneof(fc.integer({ min: 1, max: 12 }), fc.constantFrom(1, 2)),
    picks: fc.integer({ min: 1, max: 12 }),
    up: fc.array(fc.boolean(), { minLength: 144, maxLength: 144 }),
    warps: fc.array(word, { minLength: 1, maxLength: 3 }),
    wefts: fc.array(word, { minLength: 1, maxLength: 3 }),
    places: fc.constantFrom(1, 3),
    turns: fc.array(fc.tuple(fc.nat(1), fc.nat(2), fc.nat(2)), { minLength: 1, maxLength: 6 }),
    values: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }),
  })
  .map(({ ends, picks, up, warps, wefts, places, turns, values }) => {
    const front = fromCells(ends, picks, (j, i) => up[j * 12 + i]!);
    const sides = [front, { ...front, up: front.up.map((is) => 1 - is) }];
    const laid = (orders: typeof warps, kinds: Uint16Array): Threads[] => {
      const rooms = Array.from({ length: places }, () => []);
      return orders.map(([order, times], k) => ({
        ...strandKinds(kinds, order.slice(0, kinds.length * Math.min(times, Math.floor(24 / kinds.length)))),
        rooms: rooms[k % places]!,
      }));
    };
    const [warp, weft] = [laid(warps, front.endKind), laid(wefts, front.pickKind)];
    const met = turns.map(([side, a, b]) => ({
      cloth: sides[side]!,
      ends: warp[a % warp.length]!,
      picks: weft[b % weft.length]!,
    }));
    return { met, values: Float64Array.from(values) };
  });

/** Twills coloured by an order both ways: many translations that are not along the threads. */
export const twillFaces = fc
  .record({ lift: fc.array(fc.boolean(), { minLength: 2, maxLength: 6 }), move: fc.integer({ min: 1, max: 5 }) })
  .chain(({ lift, move }) =>
    fc
      .tuple(
        fc.array(fc.nat(1), { minLength: lift.length, maxLength: lift.length }),
        fc.array(fc.nat(1), { minLength: lift.length, maxLength: lift.length }),
        fc.boolean(),
      )
      .map(([warp, weft, solid]) => {
        const n = lift.length;
        return colourFace(
          fromCells(n, n, (j, i) => lift[(i + j * move) % n]!),
          solid ? warp.fill(0) : warp,
          solid ? weft.fill(1) : weft,
        );
      }),
  );

type Map = (i: number, j: number, n: number) => readonly [number, number];
const MAPS: readonly Map[] = [
  (i, j, n) => [n - i, n - j],
  (i, j, n) => [n - i, j],
  (i, j, n) => [i, n - j],
  (i, j, n) => [n - j, i],
  (i, j) => [j, i],
  (i, j, n) => [n - j, n - i],
  (i, j) => [i, j],
];

/**
 * Faces made symmetrical on purpose: cells that some isometries (with a shift, perhaps with the colours exchanged)
 * carry to one another are coloured alike, each class at random; classes that would have to exchange with themselves
 * break the symmetry, as they must.
 */
const madeSymmetric = fc
  .record({
    n: size,
    isometries: fc.array(
      fc.record({ map: fc.nat(MAPS.length - 1), x: fc.nat(7), y: fc.nat(7), exchanges: fc.boolean() }),
      { minLength: 1, maxLength: 2 },
    ),
    cells: fc.array(fc.nat(11), { minLength: 64, maxLength: 64 }),
    colours: fc.integer({ min: 2, max: 3 }),
  })
  .map(({ n, isometries, cells, colours }) => {
    const colour = new Array<number>(n * n).fill(-1);
    const paint = (at: number, c: number): void => {
      if (colour[at] !== -1) return;
      colour[at] = c;
      for (const { map, x, y, exchanges } of isometries) {
        const [a, b] = MAPS[map]!(at % n, Math.floor(at / n), n);
        paint(((b + y) % n) * n + ((a + x) % n), exchanges && colours === 2 ? 1 - c : c);
      }
    };
    for (let at = 0; at < n * n; at++) paint(at, cells[at]! % colours);
    return faceFromRows(Array.from({ length: n }, (_, j) => colour.slice(j * n, (j + 1) * n)));
  });

/** Small faces of one to three colours, many of them symmetrical. */
export const faces: fc.Arbitrary<Face> = fc.oneof(anyFace, wovenFaces, twillFaces, madeSymmetric, madeSymmetric);

/** Light given cell by cell, first pick first, as if the ends brought all of it, on a weave of the size of the cloth. */
export function lightOf(cells: readonly number[], ends: number): LocalLight {
  const picks = cells.length / ends;
  const rows = Array.from({ length: picks }, (_, j) => cells.slice(j * ends, (j + 1) * ends));
  return {
    ...{ ends, picks, everyEnd: 1, everyPick: picks },
    byEnds: Float64Array.from(cells),
    byPicks: new Float64Array(picks),
    leastEnds: Float64Array.from(rows, (row) => Math.min(...row)),
    mostEnds: Float64Array.from(rows, (row) => Math.max(...row)),
    slopesOfEnds: slopesOf(Float64Array.from(cells), picks, ends, new Float64Array(0)),
    slopesOfPicks: new Float64Array(2 * picks),
    order: undefined,
  };
}

/** Light cell by cell, first pick first. */
export const lightAt = ({ ends, picks, everyEnd, everyPick, byEnds, byPicks }: LocalLight): number[] =>
  Array.from({ length: ends * picks }, (_, at) => {
    const [i, j] = [at % ends, Math.floor(at / ends)];
    return byEnds[(j % everyPick) * ends + i]! + byPicks[j * everyEnd + (i % everyEnd)]!;
  });
