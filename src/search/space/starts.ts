import { type Drawdown, drawdown, isUp } from '../../cloth/drawdown.js';
import type { Weave } from '../../draft/draft.js';
import { endStrands, pickStrands, places, startCount } from '../../order/lay.js';
import type { Question } from '../question/question.js';
import { elementsLaid, type Family } from './family.js';

/**
 * Pairs of starts (warp, weft) that give different cloths. With `weft` the warp order begins on the first thread. By
 * thread, a shift that carries the weave to itself maps one pair to another; one of these is listed.
 */
export function startsOf(
  asked: Question['starts'],
  family: Family,
  n: number,
  m: number,
): (readonly [number, number])[] {
  if (asked === 'first' || family.by === 'block') return [[0, 0]];
  const weave = family.weave([0], [0]);
  const by = { by: family.by, times: family.times } as const;
  const across = startCount(endStrands(weave), elementsLaid(family, n), by);
  const down = startCount(pickStrands(weave), elementsLaid(family, m), by);
  // One yarn each way stands alike wherever it begins.
  if (across * down === 1) return [[0, 0]];
  const shifts = family.by === 'thread' ? weaveShifts(weave) : [];
  const seen = new Uint8Array(across * down);
  const starts: (readonly [number, number])[] = [];
  for (let a = 0; a < (asked === 'weft' ? 1 : across); a++) {
    for (let b = 0; b < down; b++) {
      if (seen[a * down + b]) continue;
      starts.push([a, b]);
      for (const [x, y] of shifts) seen[((a + x) % across) * down + ((b + y) % down)] = 1;
    }
  }
  return starts;
}

const shiftsOf = new WeakMap<Weave, (readonly [number, number])[]>();

/**
 * Shifts (ends, picks) that carry a weave to itself; an empty list if the order skips picks (tabby) or has companions.
 */
export function weaveShifts(weave: Weave): (readonly [number, number])[] {
  let shifts = shiftsOf.get(weave);
  if (shifts === undefined) {
    shifts =
      weave.companions || places(pickStrands(weave), 'thread') < weave.treadling.length
        ? []
        : shiftsIn(drawdown(weave));
    shiftsOf.set(weave, shifts);
  }
  return shifts;
}

function shiftsIn(cloth: Drawdown): (readonly [number, number])[] {
  const { ends, picks } = cloth;
  // Beyond this a search by trial costs more than it saves.
  if (ends * picks > 40_000) return [];
  const shifts: (readonly [number, number])[] = [];
  const holds = (x: number, y: number): boolean => {
    for (let j = 0; j < picks; j++) {
      for (let i = 0; i < ends; i++) {
        if (isUp(cloth, j, i) !== isUp(cloth, (j + y) % picks, (i + x) % ends)) return false;
      }
    }
    return true;
  };
  for (let x = 0; x < ends; x++) for (let y = 0; y < picks; y++) if (holds(x, y)) shifts.push([x, y]);
  return shifts;
}
