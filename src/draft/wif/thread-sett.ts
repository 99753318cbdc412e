import { brief } from '../../problem.js';
import { DENSEST, EVEN_WIDTHS, type Sett, type Widths } from '../draft.js';
import { MOST_THREADS } from '../limits.js';
import { DEFAULT_SETT } from '../yaml/yarns-given.js';
import { Fields } from './values.js';
import type { WifSections } from './wif-sections.js';

/** Inches in each unit of length; a decipoint is a tenth of a point of 1/72 inch. */
export const UNITS = { inches: 1, centimeters: 1 / 2.54, decipoints: 1 / 720 } as const;
export type WifUnit = keyof typeof UNITS;

/** The least sett that a loom can weave, in threads per inch or per centimetre. */
const LEAST = 0.1;
/** Least and greatest thickness of the weft, divided by that of the warp. */
const THINNEST = 0.05;
const THICKEST = 20;

/** What a file says of the distances and thicknesses of threads. */
interface WifSett {
  readonly sett: Sett;
  readonly widths: Widths;
  /** Unit of length of each system; absent if the file names none. */
  readonly units: { readonly warp?: WifUnit; readonly weft?: WifUnit };
}

interface System {
  readonly unit: WifUnit;
  /** From the middle of one thread to the middle of the next, in the unit. */
  readonly spacing: number | undefined;
  readonly thickness: number | undefined;
}

/**
 * Computes the sett from spacing and units: per inch if they are inches or decipoints, else per centimetre. A system
 * without a spacing takes that of the other; a file without any takes the usual sett. The thickness of the weft
 * relative to the warp is kept.
 *
 * @throws Problem on an unknown unit, or a sett that no cloth has
 */
export function readSett(sections: WifSections, notes: string[]): WifSett {
  const warp = readSystem(sections, 'WARP');
  const weft = readSystem(sections, 'WEFT');
  const said = {
    widths: widthsOf(warp, weft, notes),
    units: {
      ...(hasUnits(sections, 'WARP') && { warp: warp.unit }),
      ...(hasUnits(sections, 'WEFT') && { weft: weft.unit }),
    },
  };
  if (warp.spacing === undefined && weft.spacing === undefined) {
    notes.push(
      `the file has no spacing; the sett was taken as ${DEFAULT_SETT.ends} ends and picks per ${DEFAULT_SETT.per}`,
    );
    return { sett: DEFAULT_SETT, ...said };
  }
  const { unit } = warp.spacing === undefined ? weft : warp;
  const per = unit === 'centimeters' ? 'cm' : 'inch';
  const dense = (system: System): number | undefined =>
    system.spacing === undefined ? undefined : density(system.spacing * factor(system.unit, per));
  const ends = dense(warp) ?? dense(weft)!;
  const picks = dense(weft) ?? ends;
  if (warp.spacing === undefined) notes.push('[WARP] has no spacing; the ends were set as close as the picks');
  if (weft.spacing === undefined) notes.push('[WEFT] has no spacing; the picks were set as close as the ends');
  return { sett: { ends, picks, per }, ...said };
}

function hasUnits(sections: WifSections, name: string): boolean {
  return (Fields.of(sections, name).get('UNITS')?.value ?? '') !== '';
}

function readSystem(sections: WifSections, name: 'WARP' | 'WEFT'): System {
  const fields = Fields.of(sections, name);
  const unit = unitOf(fields);
  const usual = measure(fields, 'SPACING');
  const spacing = usual ?? meanSpacing(sections, name);
  const per = unit === 'centimeters' ? 'cm' : 'inch';
  if (spacing !== undefined) {
    const dense = density(spacing * factor(unit, per));
    const entry = fields.get('SPACING');
    if (entry !== undefined && usual !== undefined && !(dense >= LEAST && dense <= DENSEST)) {
      throw fields.wrong(entry, `found threads ${spacing} ${unit} apart`, `${LEAST} to ${DENSEST} threads per ${per}`);
    }
    if (!(dense >= LEAST && dense <= DENSEST))
      return { unit, spacing: undefined, thickness: measure(fields, 'THICKNESS') };
  }
  return { unit, spacing, thickness: measure(fields, 'THICKNESS') };
}

function unitOf(fields: Fields): WifUnit {
  const entry = fields.get('UNITS');
  if (entry === undefined || entry.value === '') return 'inches';
  const word = entry.value.replace(/;.*/, '').trim().toLowerCase().replace('centimetre', 'centimeter');
  const unit = (Object.keys(UNITS) as WifUnit[]).find((name) => name === word || name === `${word}s`);
  if (unit === undefined) {
    throw fields.wrong(entry, `found Units=${brief(entry.value)}`, 'inches, centimeters or decipoints');
  }
  return unit;
}

/** Reads a length above 0 under a key; undefined for 0, which means unknown. */
function measure(fields: Fields, key: string): number | undefined {
  const entry = fields.get(key);
  if (entry === undefined || entry.value === '') return undefined;
  return fields.measure(entry) || undefined;
}

/** The mean spacing of single threads, for a file that gives no spacing for the whole system. */
function meanSpacing(sections: WifSections, name: 'WARP' | 'WEFT'): number | undefined {
  const fields = Fields.of(sections, `${name} SPACING`);
  let sum = 0;
  let count = 0;
  for (const { entry } of fields.numbered('a thread', MOST_THREADS, '')) {
    sum += fields.measure(entry);
    count++;
  }
  return count === 0 || sum === 0 ? undefined : sum / count;
}

function factor(unit: WifUnit, per: Sett['per']): number {
  return UNITS[unit] / (per === 'cm' ? UNITS.centimeters : 1);
}

/** Threads per unit of length, rounded: files give spacings to a few digits, so further digits are noise. */
function density(spacing: number): number {
  return Number((1 / spacing).toPrecision(10));
}

function widthsOf(warp: System, weft: System, notes: string[]): Widths {
  if (warp.thickness === undefined || weft.thickness === undefined) return EVEN_WIDTHS;
  const ratio = (weft.thickness * UNITS[weft.unit]) / (warp.thickness * UNITS[warp.unit]);
  const width = Number(ratio.toPrecision(6));
  if (width < THINNEST || width > THICKEST) {
    notes.push(
      `the weft is ${width} times as thick as the warp, which is implausible and was ignored; both were taken as equally thick`,
    );
    return EVEN_WIDTHS;
  }
  return { warp: 1, ground: width, pattern: width, tabby: width };
}
