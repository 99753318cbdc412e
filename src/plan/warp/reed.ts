import { describe, type Given, Misread, textOf } from '../../input/given.js';
import { Problem } from '../../problem.js';
import { fixed, MEASURES, type Per } from '../../words/measure.js';

/** The lengths in which dents are counted, in millimetres. */
const LENGTHS = { ...MEASURES, '10 cm': 100 } as const;

/** A reed: dents in a length; without a length, in the measure of the sett. */
export interface Reed {
  readonly dents: number;
  readonly per?: keyof typeof LENGTHS;
}

/** The coarsest and the finest reeds that handweavers use, dents in each length (common practice, no source). */
const RANGES = { inch: [2, 40], cm: [1, 16], '10 cm': [10, 160] } as const;
const [[LEAST_INCH, MOST_INCH], [LEAST_CM, MOST_CM]] = [RANGES.inch, RANGES['10 cm']];
/** What a reed is expected to be. */
export const REEDS =
  `dents such as 10, 10 per inch or 50/10 (to 10 cm), from ${LEAST_INCH} to ${MOST_INCH} per inch ` +
  `(${LEAST_CM} to ${MOST_CM} to 10 cm)`;

/** Reads `10` (in the measure of the sett), `10 per inch`, `5 per cm`, `50/10`, `50/10 cm`. */
export function reedOf(given: Given): Reed {
  const text = textOf(given, REEDS);
  const found = /^(\d+(?:\.\d)?)(?:[\s-]*dents?)?\s*(?:(?:\/|per)\s*(inch|in|cm|10(?=\s*cm|$)(?:\s*cm)?))?$/.exec(text);
  const [, dents, unit] = found ?? [];
  const per = unit === undefined ? undefined : unit.startsWith('10') ? '10 cm' : unit === 'cm' ? 'cm' : 'inch';
  const [least, most] = per === undefined ? [RANGES.cm[0], RANGES.inch[1]] : RANGES[per];
  if (found === null || Number(dents) < least || Number(dents) > most) {
    throw new Misread(`found ${describe(text)}; expected ${REEDS}`);
  }
  return { dents: Number(dents), ...(per !== undefined && { per }) };
}

/**
 * Dents per inch or per centimetre of a reed.
 *
 * @throws Problem if a reed without a length is out of range in the measure of the sett
 */
export function dentsPer(reed: Reed, per: Per): number {
  const counted = reed.per ?? per;
  const [least, most] = RANGES[counted];
  if (reed.dents < least || reed.dents > most) {
    throw new Problem(`reed: found ${reed.dents} dents per ${counted}; expected ${least} to ${most}`);
  }
  return counted === per ? reed.dents : (reed.dents / LENGTHS[counted]) * LENGTHS[per];
}

/** Words for a reed, `50 per 10 cm`; followed by its dents in the measure of the sett, if that is another. */
export function reedWords(reed: Reed, per: Per): string {
  const named = `${reed.dents} per ${reed.per ?? per}`;
  return isForeign(reed, per) ? `${named} (${fixed(dentsPer(reed, per), 2)} per ${per})` : named;
}

/** Whether reed and sett are counted in inches and centimetres, so that no short sequence of dents meets the sett. */
export function isForeign(reed: Reed, per: Per): boolean {
  return reed.per !== undefined && (reed.per === 'inch') !== (per === 'inch');
}
