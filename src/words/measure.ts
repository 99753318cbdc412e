import { Problem, quote } from '../problem.js';

/** Millimetres in an inch and a yard; grams in a pound and an ounce (international yard and pound, 1959). */
export const INCH = 25.4;
export const YARD = 914.4;
export const POUND = 453.59237;
const OUNCE = POUND / 16;

/** The measure in which a sett is counted, and in which lengths are given first; the other follows in brackets. */
export type Per = 'inch' | 'cm';
/** Millimetres of each. */
export const MEASURES: Readonly<Record<Per, number>> = { inch: INCH, cm: 10 };

const UNITS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: INCH,
  inch: INCH,
  inches: INCH,
  '"': INCH,
  '″': INCH,
  yd: YARD,
  yard: YARD,
  yards: YARD,
};
const SIGNS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const SIGN = new RegExp(`[${Object.keys(SIGNS).join('')}]`, 'g');
const LONGEST = 1e7;

/**
 * A number as a person writes it: `20`, `2.5`, `2,5`, `3/8`, `1 1/2`, `1½`; NaN for anything else. A comma before three
 * digits may stand for thousands, and is none.
 */
function parseNumber(text: string): number {
  const spelt = text.replace(SIGN, (sign) => ` ${SIGNS[sign]}`).trim();
  const found = /^(?:(\d+(?:\.\d+|,\d\d?)?)|(?:(\d{1,4})\s+)?(\d{1,4})\/([1-9]\d{0,3}))$/.exec(spelt);
  if (found === null) return Number.NaN;
  const [, decimal, whole = '0', above, below] = found;
  return decimal === undefined ? Number(whole) + Number(above) / Number(below) : Number(decimal.replace(',', '.'));
}

/**
 * A length as a person writes it, `20 in`, `50 cm`, `3 yd`, `2.5 m`, `1 1/2 in`, in millimetres.
 *
 * @throws Problem for anything else, and for more than 10 km
 */
export function parseLength(text: string): number {
  const found = /^(.*[\d¼½¾⅓⅔⅛⅜⅝⅞])\s*([^\d¼½¾⅓⅔⅛⅜⅝⅞]*)$/.exec(text.trim());
  const length = found === null ? Number.NaN : parseNumber(found[1]!) * (UNITS[found[2]!] ?? Number.NaN);
  if (!(length <= LONGEST))
    throw new Problem(`found ${quote(text)}; expected a length such as 20 in, 50 cm, 3 yd or 2.5 m`);
  return length;
}

/**
 * A share as a person writes it, `8 %` or `8%`, as a number from 0 to below 1.
 *
 * @throws Problem for anything else, and for 90 % and more
 */
export function parseShare(text: string): number {
  const found = /^(\d+(?:\.\d+)?)\s*(?:%|per ?cent)$/.exec(text.trim());
  const share = found === null ? Number.NaN : Number(found[1]) / 100;
  if (!(share < 0.9)) throw new Problem(`found ${quote(text)}; expected per cent below 90, such as 8 %`);
  return share;
}

/** A length on the loom, in inches or centimetres first: `20.2 in (51.3 cm)`; under 2 cm in millimetres. */
export function sayLength(mm: number, per: Per): string {
  const inches = `${fixed(mm / INCH, 3)} in`;
  const centimetres = mm < 20 ? `${fixed(mm, 1)} mm` : `${fixed(mm / 10, 1)} cm`;
  return per === 'inch' ? `${inches} (${centimetres})` : `${centimetres} (${inches})`;
}

/** A length that is an estimate, like {@link sayLength} to the nearest tenth of an inch or half centimetre. */
export function sayAbout(mm: number, per: Per): string {
  if (per === 'inch') return sayLength((Math.round((mm / INCH) * 10) / 10) * INCH, per);
  const centimetres = Math.round(mm / 5) / 2;
  return `${fixed(centimetres, 1)} cm (${fixed((centimetres * 10) / INCH, 1)} in)`;
}

/** A length of yarn or warp, in yards or metres first: `3 yd (2.74 m)`. */
export function sayLong(mm: number, per: Per): string {
  const yards = `${fixed(mm / YARD, mm >= 10 * YARD ? 1 : 2)} yd`;
  const metres = `${fixed(mm / 1000, mm >= 10_000 ? 1 : 2)} m`;
  return per === 'inch' ? `${yards} (${metres})` : `${metres} (${yards})`;
}

/** A length of yarn or warp in its first unit alone: `3 yd`. */
export function sayShort(mm: number, per: Per): string {
  return sayLong(mm, per).replace(/ \(.*/, '');
}

/** A weight, in ounces or grams first: `98.0 g (3.46 oz)`. */
export function sayWeight(grams: number, per: Per): string {
  const metric = `${grams.toFixed(1)} g`;
  const ounces = `${(grams / OUNCE).toFixed(2)} oz`;
  return per === 'inch' ? `${ounces} (${metric})` : `${metric} (${ounces})`;
}

/** `8 %` of 0.08. */
export function sayShare(share: number): string {
  return `${fixed(share * 100, 1)} %`;
}

/** A number to so many decimals, without zeros at its end. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** Rounds up to whole steps; a value within rounding error of a whole number of steps is left there. */
export function upTo(value: number, step: number): number {
  return Math.ceil(value / step - 1e-9) * step;
}
