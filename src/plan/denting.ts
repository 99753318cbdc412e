import { gcd, lcm } from '../order/necklace.js';

/** How a sett is put through one reed. */
export interface Denting {
  /** Dents in the measure in which the sett is counted. */
  readonly reed: number;
  /** Ends in each dent, over and over again: 2-3, or 1-2-2. */
  readonly dents: readonly number[];
  /** Ends after which the dents and the colour order meet in the same way again. */
  readonly meets: number;
  /** Uneven denting that lands on the same place of every repeat of the order: a streak that looks designed. */
  readonly inStep: boolean;
}

/** More ends in a dent than this rub each other and the reed (common practice, no source). */
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

/** How a sett is put through a reed, and whether the dents fall in step with a colour order of `repeat` ends. */
export function dentingOf(sett: number, reed: number, repeat: number): Denting {
  const dents = dentsOf(sett, reed);
  const meets = lcm(sum(dents), repeat);
  return { reed, dents, meets, inStep: dents.length > 1 && meets === repeat };
}

/** Reeds in order of evenness: the shortest order of dents first, then nearest to two in a dent; in step comes last. */
export function rankReeds(sett: number, reeds: readonly number[], repeat: number): Denting[] {
  return reeds
    .map((reed) => dentingOf(sett, reed, repeat))
    .filter(({ dents }) => Math.max(...dents) <= MOST_IN_A_DENT && Math.min(...dents) >= 1)
    .sort(
      (a, b) =>
        Number(a.inStep) - Number(b.inStep) ||
        a.dents.length - b.dents.length ||
        Math.abs(a.reed * 2 - sett) - Math.abs(b.reed * 2 - sett),
    );
}

/** Dents that so many ends fill, and one for each floating selvedge. */
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
