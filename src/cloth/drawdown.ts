import { liftAt, type Weave } from '../draft/draft.js';
import { listSign } from '../draft/repeat.js';

/**
 * The interlacement of one whole repeat, stored by kinds: ends that are up at the same picks share one kind of end, and
 * picks that raise the same ends share one kind of pick. A handwoven draft has few kinds (shafts, treadles) however
 * long its repeat is, so everything that depends on the interlacement is computed once per kind.
 */
export interface Drawdown {
  readonly ends: number;
  readonly picks: number;
  /** Kind of each end, numbered in order of first appearance. */
  readonly endKind: Uint16Array;
  /** Kind of each pick, numbered in order of first appearance. */
  readonly pickKind: Uint16Array;
  readonly endKinds: number;
  readonly pickKinds: number;
  /** 1 where the end lies on the face: `up[pickKind * endKinds + endKind]`. */
  readonly up: Uint8Array;
}

/** Computes the drawdown of a weave. */
export function drawdown(weave: Weave): Drawdown {
  // Ends on the same shafts are alike, and so are picks on the same treadles. One of each is compared cell by cell,
  // which also finds ends (picks) that look alike though they are threaded (treadled) differently.
  const ends = kinds(weave.threading.length, (i) => listSign(weave.threading[i]!));
  const picks = kinds(weave.treadling.length, (j) => listSign(weave.treadling[j]!));
  const lifts = picks.first.map((j) => new Set(liftAt(weave, j)));
  const few = fromCells(ends.first.length, picks.first.length, (pick, end) =>
    weave.threading[ends.first[end]!]!.some((shaft) => lifts[pick]!.has(shaft)),
  );
  return {
    ...few,
    ends: ends.kind.length,
    picks: picks.kind.length,
    endKind: ends.kind.map((kind) => few.endKind[kind]!),
    pickKind: picks.kind.map((kind) => few.pickKind[kind]!),
  };
}

/** The drawdown of a cloth known cell by cell; `isUp(pick, end)` tells whether the end is on the face. */
export function fromCells(ends: number, picks: number, isUp: (pick: number, end: number) => boolean): Drawdown {
  const cells = new Uint8Array(ends * picks);
  for (let j = 0; j < picks; j++) for (let i = 0; i < ends; i++) cells[j * ends + i] = isUp(j, i) ? 1 : 0;
  const pick = kinds(picks, (j) => cells.subarray(j * ends, (j + 1) * ends).join(''));
  const end = kinds(ends, (i) => pick.first.map((j) => cells[j * ends + i]).join(''));
  const up = Uint8Array.from({ length: pick.first.length * end.first.length }, (_, at) => {
    const r = Math.floor(at / end.first.length);
    return cells[pick.first[r]! * ends + end.first[at % end.first.length]!]!;
  });
  return {
    ends,
    picks,
    endKind: end.kind,
    pickKind: pick.kind,
    endKinds: end.first.length,
    pickKinds: pick.first.length,
    up,
  };
}

/** Whether end `i` lies on the face at pick `j`. */
export function isUp(cloth: Drawdown, j: number, i: number): boolean {
  return cloth.up[cloth.pickKind[j]! * cloth.endKinds + cloth.endKind[i]!] === 1;
}

function kinds(length: number, say: (index: number) => number | string): { kind: Uint16Array; first: number[] } {
  const seen = new Map<number | string, number>();
  const first: number[] = [];
  const kind = Uint16Array.from({ length }, (_, index) => {
    const word = say(index);
    let known = seen.get(word);
    if (known === undefined) {
      known = first.push(index) - 1;
      seen.set(word, known);
    }
    return known;
  });
  return { kind, first };
}
