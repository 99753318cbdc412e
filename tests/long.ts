/**
 * Whether the long form of the tests is asked for: `npm run test:long`, by hand and before a release. The short form,
 * which every change goes through, makes the same checks on fewer cases.
 */
export const LONG = process.env.SHEDLIGHT_LONG === 'yes';

/** How often something is tried: in the short form of the tests, and in the long one. */
export function runs(short: number, long = 10 * short): number {
  return LONG ? long : short;
}
