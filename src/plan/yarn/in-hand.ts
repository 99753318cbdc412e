import { Problem, quote } from '../../problem.js';
import { fixed, INCH, type Per, POUND, sayLong, sayWeight, YARD } from '../../words/measure.js';

/** An amount of yarn as it is weighed or measured. */
export type Amount = { readonly grams: number } | { readonly mm: number };

/** What there is of each yarn, and how it is sold, by letter; “pattern” for pattern wefts, “” for all. */
export interface Stock {
  readonly inHand: Readonly<Record<string, Amount>>;
  readonly putUps: Readonly<Record<string, Amount>>;
}

/** What is needed of one yarn: millimetres, and grams if its size is known. */
interface Need {
  readonly length: number;
  readonly grams: number | null;
}

/** What is in hand and what is to buy of one yarn. */
export interface ToBuy {
  readonly inHand?: Amount;
  /** What is still missing. */
  readonly missing: Need;
  /** How many put-ups make up for that, and how much one is. */
  readonly putUps?: { readonly count: number; readonly each: Amount };
}

const UNITS: Readonly<Record<string, Amount>> = {
  g: { grams: 1 },
  kg: { grams: 1000 },
  oz: { grams: POUND / 16 },
  lb: { grams: POUND },
  m: { mm: 1000 },
  yd: { mm: YARD },
};
const EXPECTED = 'an amount such as 400 g, 8 oz, 1 lb, 500 m or 600 yd';

/** Reads an amount such as `400 g`, `8 oz` or `600 yd`. */
export function parseAmount(text: string): Amount {
  const [, number, unit] = /^(\d+(?:\.\d+)?)\s*(g|kg|oz|lb|m|yd)$/.exec(text.trim()) ?? [];
  const one = unit === undefined ? undefined : UNITS[unit];
  const count = Number(number);
  if (one === undefined || count > 1e6) throw new Problem(`found ${quote(text)}; expected ${EXPECTED}`);
  return 'grams' in one ? { grams: one.grams * count } : { mm: one.mm * count };
}

/**
 * What is missing of a yarn, and the put-ups to buy. Weights and lengths are set off against each other by the size of
 * the yarn.
 *
 * @throws Problem if a weight is given, and the yarn has no size
 */
export function toBuy(name: string, need: Need, inHand: Amount | undefined, each: Amount | undefined): ToBuy {
  const perMm = need.grams === null ? null : need.grams / need.length;
  const lengthOf = (amount: Amount): number => {
    if ('mm' in amount) return amount.mm;
    if (perMm !== null) return amount.grams / perMm;
    throw new Problem(
      `yarn ${name}: found ${fixed(amount.grams, 1)} g of it; expected its size too (yarn size), or a length such as 600 yd`,
    );
  };
  const length = Math.max(0, need.length - (inHand === undefined ? 0 : lengthOf(inHand)));
  const missing = { length, grams: perMm === null ? null : length * perMm };
  return {
    ...(inHand !== undefined && { inHand }),
    missing,
    ...(each !== undefined && { putUps: { count: Math.ceil(length / lengthOf(each) - 1e-9), each } }),
  };
}

/** `400 g (14.11 oz)`, or a length. */
export function sayAmount(amount: Amount, per: Per): string {
  return 'grams' in amount ? sayWeight(amount.grams, per) : sayLong(amount.mm, per);
}

/** `in hand 100 g; buy 3 of 250 g`; empty if nothing is known of either. */
export function buyWords({ inHand, missing, putUps }: ToBuy, per: Per): string {
  const what = missing.grams === null ? sayLong(missing.length, per) : sayWeight(missing.grams, per);
  const packed = putUps === undefined ? '' : `, ${putUps.count} of ${sayAmount(putUps.each, per)}`;
  const buy = missing.length < INCH / 1e6 ? 'nothing to buy' : `buy ${what}${packed}`;
  if (inHand === undefined && putUps === undefined) return '';
  return inHand === undefined ? buy : `in hand ${sayAmount(inHand, per)}, ${buy}`;
}
