import { didYouMean, Problem, quote } from '../../problem.js';
import { POUND, YARD } from '../../words/measure.js';

/**
 * Yards per pound of yarn of count 1 in each system: the length of its hank, lea, run, skein or cut (Taylor 1909,
 * chapter XII; ASTM D2260; run and skein: yarn numbering tables).
 */
const YARDS = {
  cotton: 840,
  'spun silk': 840,
  worsted: 560,
  linen: 300,
  hemp: 300,
  run: 1600,
  skein: 256,
  cut: 300,
} as const;

/** A system in which more is finer: so many lengths to a weight. */
type CountSystem = keyof typeof YARDS | 'metric';

/** Fibres, distinguished as far as they give a yarn of one weight different diameters. */
export const FIBRES = ['cotton', 'silk', 'linen', 'worsted', 'woollen'] as const;
export type Fibre = (typeof FIBRES)[number];

/** The fibre of each count system that is used for one fibre only. */
const FIBRE_OF: Readonly<Partial<Record<CountSystem, Fibre>>> = {
  cotton: 'cotton',
  'spun silk': 'silk',
  linen: 'linen',
  worsted: 'worsted',
  run: 'woollen',
  skein: 'woollen',
  cut: 'woollen',
};

/** The size of a yarn, and how its text was understood. */
export interface YarnSize {
  /** The fibre, if the count system names one. */
  readonly fibre?: Fibre;
  /** Grams per 1000 m of the yarn as it is used. */
  readonly tex: number;
  /** The same in words, as `8/2 cotton: 3360 yd/lb, 6773 m/kg, 147.6 tex`. */
  readonly said: string;
}

const OTHER_NAMES: Readonly<Record<string, CountSystem>> = {
  ne: 'cotton',
  nec: 'cotton',
  wool: 'worsted',
  lea: 'linen',
  flax: 'linen',
  woollen: 'run',
  woolen: 'run',
  yorkshire: 'skein',
  nm: 'metric',
  'spun-silk': 'spun silk',
};

const EXPECTED = 'a yarn size such as 8/2 cotton, 2/18 worsted, 16/2 linen, Nm 28/2, 30 tex, 40 denier or 3360 yd/lb';

/** Metres in a kilogram of yarn of count 1. */
export function metresPerKilo(system: CountSystem): number {
  return system === 'metric' ? 1000 : (YARDS[system] * YARD) / POUND;
}

/** Grams per 1000 m of a count. */
export function texOfCount(system: CountSystem, count: number): number {
  return 1e6 / (metresPerKilo(system) * count);
}

/** Yards in a pound, and metres in a kilogram. */
export function lengthPerWeight(tex: number): { readonly yardsPerPound: number; readonly metresPerKilo: number } {
  const metres = 1e6 / tex;
  return { yardsPerPound: (metres * POUND) / YARD, metresPerKilo: metres };
}

/** The three meanings of a bare `60/2 silk`, in yards per pound: English spun silk, cotton count, metric count. */
export function silkReadings(count: number, ply: number): readonly [number, number, number] {
  const cotton = YARDS.cotton * count;
  return [cotton, cotton / ply, ((count / ply) * 1000 * POUND) / YARD];
}

/**
 * A yarn's size as it stands on a label. Plied yarn may be written either way, 8/2 or 2/8: the smaller number is the
 * ply. Cotton, worsted, linen and woollen carry the count of the single; English spun silk that of the finished yarn.
 *
 * @throws Problem if the text is no size, or is plied silk without a system, which can mean three sizes
 */
export function parseYarnSize(text: string): YarnSize {
  const words = text.trim().toLowerCase().replace(/\s+/g, ' ');
  const { tex, fibre } = counted(words) ?? { tex: directTex(words), fibre: undefined };
  if (tex === undefined) {
    const name = words.replace(/[\d/. ]+/g, ' ').trim();
    const near = name === '' ? '' : didYouMean(name, [...Object.keys(YARDS), ...Object.keys(OTHER_NAMES)]);
    throw new Problem(`found ${quote(text)}; expected ${EXPECTED}${near}`);
  }
  if (!(tex > 0.1 && tex < 1e5))
    throw new Problem(`found ${quote(text)}, which is no yarn for a loom; expected ${EXPECTED}`);
  const { yardsPerPound, metresPerKilo: metres } = lengthPerWeight(tex);
  const said = `${text.trim()}: ${yardsPerPound.toFixed(0)} yd/lb, ${metres.toFixed(0)} m/kg, ${tex.toFixed(1)} tex`;
  return { tex, said, ...(fibre !== undefined && { fibre }) };
}

/** Reads a size given as weight per length or length per weight; undefined for another form. */
function directTex(words: string): number | undefined {
  const perWeight = /^(\d+(?:\.\d+)?) ?(yd\/lb|yards per pound|m\/kg|metres per kilo|m\/g|m\/100 ?g)$/.exec(words);
  if (perWeight !== null) {
    const length = Number(perWeight[1]);
    const unit = perWeight[2]!;
    if (unit.startsWith('y')) return POUND / ((length * YARD) / 1000) / 0.001;
    if (unit === 'm/g') return 1000 / length;
    return unit.startsWith('m/100') ? 1e5 / length : 1e6 / length;
  }
  const weight = /^(?:(tex|denier|den) )?(\d+(?:\.\d+)?)(?: ?[/x×] ?(\d+))? ?(tex|denier|den)?$/.exec(words);
  const unit = weight?.[1] ?? weight?.[4];
  if (weight === null || unit === undefined) return undefined;
  const whole = Number(weight[2]) * Number(weight[3] ?? 1);
  return unit === 'tex' ? whole : whole / 9;
}

/** Reads a size given as a count in a system, and the system's fibre; undefined for another form. */
function counted(words: string): { tex: number; fibre: Fibre | undefined } | undefined {
  const numbers = /(\d+(?:\.\d+)?)(?: ?\/ ?(\d+(?:\.\d+)?))?/.exec(words);
  if (numbers === null) return undefined;
  const name = words.replace(numbers[0], ' ').replace(/\s+/g, ' ').trim();
  const single = numbers[2] === undefined;
  const [first, second] = [Number(numbers[1]), Number(numbers[2])];
  const count = Math.max(first, second);
  const ply = Math.min(first, second);
  if (single ? first <= 0 : ply < 1 || !Number.isInteger(ply)) return undefined;
  if (name === 'silk') {
    const readings = silkReadings(single ? first : count, single ? 1 : ply).map((yards) => yards.toFixed(0));
    throw new Problem(
      `${quote(words)} can mean ${readings[0]}, ${readings[1]} or ${readings[2]} yards to the pound; expected its length ` +
        `for its weight as the seller gives it, such as ${readings[2]} yd/lb`,
    );
  }
  const system = name in YARDS ? (name as CountSystem) : OTHER_NAMES[name];
  if (system === undefined) return undefined;
  const finished = single ? first : system === 'spun silk' ? count : count / ply;
  return { tex: texOfCount(system, finished), fibre: FIBRE_OF[system] };
}
