import { gcd, lcm } from '../../order/necklace.js';
import type { Per } from '../../words/measure.js';
import { dentsPer, isForeign, type Reed, reedWords } from './reed.js';

/** How a sett is put through one reed. */
export interface Denting {
  /** Dents per inch or per centimetre, like the sett. */
  readonly reed: number;
  /** The reed as it is named, `10 per inch`. */
  readonly named: string;
  /** Ends in each dent, repeated along the reed: 2-3, or 1-2-2. */
  readonly dents: readonly number[];
  /** Ends after which dents and colour order are in the same position to each other again. */
  readonly meets: number;
  /** True if uneven denting falls on the same place in every repeat of the order: a streak that looks designed. */
  readonly inStep: boolean;
}

/** Most ends in a dent: more would rub each other and the reed (common practice, no source). */
const MOST_IN_A_DENT = 4;

/**
 * Ends in each dent: the whole part in every dent, the rest spread as evenly as it goes, the fuller dents last.
 *
 * @param sett, reed ends and dents in the same measure, both whole numbers or tenths
 */
export function dentsOf(sett: number, reed: number): number[] {
  const [ends, dents] = [Math.round(sett * 10), Math.round(reed * 10)];
  const common = gcd(ends, dents);
  const [p, q] = [ends / common, dents / common];
  return Array.from({ length: q }, (_, d) => Math.floor(((d + 1) * p) / q) - Math.floor((d * p) / q));
}

/** Longest sequence of dents tried for a reed and a sett in different measures. */
const LONGEST_NEAR = 8;
/** Share by which a short sequence of dents may miss the sett. */
const NEAR = 0.01;

/** Ends in each dent, in an order of few dents that comes near a sett which none meets exactly. */
function dentsNear(sett: number, reed: number): number[] {
  const orders = Array.from({ length: LONGEST_NEAR }, (_, at) => {
    const dents = at + 1;
    const ends = Math.max(1, Math.round((sett / reed) * dents));
    return { ends, dents, off: Math.abs((ends / dents) * reed - sett) / sett };
  });
  const nearest = orders.reduce((best, order) => (order.off < best.off - 1e-9 ? order : best));
  const { ends, dents } = orders.find(({ off }) => off <= NEAR) ?? nearest;
  return dentsOf(ends, dents);
}

/** The denting of a sett in a reed, and whether it falls in step with a colour order of `repeat` ends. */
export function dentingOf(sett: number, reed: Reed, per: Per, repeat: number): Denting {
  const count = dentsPer(reed, per);
  const dents = isForeign(reed, per) ? dentsNear(sett, count) : dentsOf(sett, count);
  const meets = lcm(sum(dents), repeat);
  return { reed: count, named: reedWords(reed, per), dents, meets, inStep: dents.length > 1 && meets === repeat };
}

/** The sett that a denting gives, in the measure of the sett. */
export function settIn({ reed, dents }: Denting): number {
  return (sum(dents) / dents.length) * reed;
}

/**
 * Sorts reeds: the shortest sequence of dents first, then the nearest to two ends in a dent; dents in step come last.
 */
export function rankReeds(sett: number, reeds: readonly number[], per: Per, repeat: number): Denting[] {
  return reeds
    .map((dents) => dentingOf(sett, { dents }, per, repeat))
    .filter(({ dents }) => Math.max(...dents) <= MOST_IN_A_DENT && Math.min(...dents) >= 1)
    .sort(
      (a, b) =>
        Number(a.inStep) - Number(b.inStep) ||
        a.dents.length - b.dents.length ||
        Math.abs(a.reed * 2 - sett) - Math.abs(b.reed * 2 - sett),
    );
}

/** Number of dents filled by `ends` ends, plus one for each floating selvedge. */
export function dentsFilled(ends: number, denting: Denting, floating: number): number {
  const whole = Math.floor(ends / sum(denting.dents));
  let left = ends - whole * sum(denting.dents);
  let dents = whole * denting.dents.length;
  for (let d = 0; left > 0; d++, dents++) left -= denting.dents[d]!;
  return dents + floating;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0);
}
