/**
 * A shaft number that no end is threaded on, but whose digits are threaded shafts: 12 for shafts 1 and 2, as tie-ups
 * are commonly printed.
 */
interface RunTogether {
  /** Place of the lift, from 0. */
  readonly lift: number;
  readonly found: string;
  readonly expected: string;
}

/** The first lift of one shaft number that looks like several shafts run together; undefined if there is none. */
export function runTogether(
  threading: readonly (readonly number[])[],
  lifts: readonly (readonly number[])[],
): RunTogether | undefined {
  const threaded = new Set(threading.flat());
  const digitsOf = (shaft: number): string[] => [...String(shaft)];
  const lift = lifts.findIndex(([shaft, ...others]) => {
    if (shaft === undefined || others.length > 0 || threaded.has(shaft)) return false;
    const digits = digitsOf(shaft);
    return new Set(digits).size === digits.length && digits.every((digit) => threaded.has(Number(digit)));
  });
  if (lift < 0) return undefined;
  const [shaft] = lifts[lift]!;
  return {
    lift,
    found: `shaft ${shaft}, which no end is on`,
    expected: `shafts that are threaded (did you mean ${digitsOf(shaft!).join(' ')}?)`,
  };
}
