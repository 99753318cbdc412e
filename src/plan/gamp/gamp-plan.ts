import { drawdown } from '../../cloth/drawdown.js';
import { colourFace } from '../../cloth/face.js';
import { values, type Yarn } from '../../colour/yarn.js';
import { type Draft, liftAt, type PickKind, type Sett, spacing } from '../../draft/draft.js';
import { cycle } from '../../draft/repeat.js';
import type { KeptCloth } from '../../formats/shortlist.js';
import { gcd, lcm } from '../../order/necklace.js';
import { formatRuns, smallestPeriod } from '../../order/order.js';
import { Problem } from '../../problem.js';
import { contrastMeter, FLAT } from '../../score/contrast/contrast.js';
import { clothKey } from '../../score/symmetry/canonical-cloth.js';
import { codeOf } from '../../score/symmetry/cloth-code.js';
import { INCH } from '../../words/measure.js';
import type { PlanOptions } from '../options/plan-options.js';
import { type Choice, chooseSections, type SectionCrossings } from './gamp-sections.js';
import { checkSections, gampColours, rightSizes, type Section, sectionStarts, squareNumber } from './gamp-windows.js';

/** Options of a gamp: number of sections each way, ends in a section, threads in a separator. */
export interface GampNeeds {
  readonly warps?: number;
  readonly wefts?: number;
  /** Threads in a separator. Default: the fewest with which every order starts in step with the weave. */
  readonly separator?: number;
  /** Ends in each warp section. Default: as many as the width has room for, in whole repeats of the order. */
  readonly section?: number;
}

/** One section of a gamp, as its key describes it. */
export interface GampSection {
  /** Numbered from 1. */
  readonly number: number;
  /** The colour order, `8D 4L 8D`. */
  readonly order: string;
  /** First thread, numbered from 1, and number of threads. */
  readonly from: number;
  readonly threads: number;
}

/** A gamp: warp sections crossed with weft sections on one weave, planned as one cloth. */
export interface Gamp {
  readonly cloth: KeptCloth;
  readonly warps: readonly GampSection[];
  readonly wefts: readonly GampSection[];
  readonly squares: readonly GampSquare[];
  readonly choice: Choice;
}

/** One square of a gamp: a cloth of its own, which can be kept and planned by its code. */
export interface GampSquare {
  readonly number: number;
  /** Numbers of its sections. */
  readonly warp: number;
  readonly weft: number;
  /** Numbers the different cloths from 1; 0 means that the square shows no pattern. */
  readonly cloth: number;
  readonly kept: KeptCloth;
}

/** The weave that all cloths of a gamp share, over its smallest repeat. */
interface Common {
  readonly draft: Draft;
  readonly ends: number;
  readonly picks: number;
}

const SEPARATOR: Yarn = { letter: 'S', name: 'separator', hex: '#a03c2a' };
const LEAST_SECTION = 2 * INCH;
/** Most orders each way from which sections are chosen, the first of the list: each crossing of two takes time. */
const MOST_ORDERS = 100;
/** Fewest threads in a separator: fewer hardly show. */
const LEAST_SEPARATOR = 4;

/**
 * Builds a gamp from a shortlist whose cloths share one weave. Chooses as many of its warp orders and weft orders as
 * asked for, so that the gamp shows the largest number of different cloths.
 *
 * @param tell told how many crossings of orders are looked at, and of how many
 * @throws Problem if the cloths differ in weave or yarns, or if the width is too small
 */
export function gampOf(
  kept: readonly KeptCloth[],
  options: PlanOptions,
  wanted: GampNeeds,
  tell: (done: number, of: number) => void = () => {},
): Gamp {
  const common = commonWeave(kept);
  const { draft } = common;
  const sett = options.sett ?? draft.sett;
  const found = [kept.map((cloth) => cloth.draft.warp), kept.map((cloth) => cloth.draft.weft)].map(distinct);
  const [allWarps, allWefts] = found.map((orders) => orders.slice(0, MOST_ORDERS)) as [number[][], number[][]];
  const keys = allWarps.map((warp, w) =>
    allWefts.map((weft, f) => {
      const key = keyOf(common, warp, weft);
      tell(w * allWefts.length + f + 1, allWarps.length * allWefts.length);
      return key;
    }),
  );
  const all = found.every((orders) => orders.length <= MOST_ORDERS);
  const choice = chosen(keys, wanted, all);
  const step = separatorStep(
    choice.warps.map((w) => allWarps[w]!),
    choice.wefts.map((f) => allWefts[f]!),
    common,
  );
  const { separator, each, picks } = sizesOf(choice, step, wanted, options.width, sett);
  const yarns = draft.yarns.some(({ letter }) => letter === SEPARATOR.letter)
    ? draft.yarns
    : [...draft.yarns, SEPARATOR];
  const yarn = yarns.findIndex(({ letter }) => letter === SEPARATOR.letter);
  const warps = {
    sections: choice.warps.map((w) =>
      wanted.section === undefined
        ? section(allWarps[w]!, each, separator, common.ends)
        : { order: allWarps[w]!, threads: wanted.section },
    ),
    separator,
    yarn,
  };
  checkSections(warps, common.ends);
  const wefts = {
    sections: choice.wefts.map((f) => section(allWefts[f]!, picks, separator, common.picks)),
    separator,
    yarn,
  };
  const whole = wovenAs(common, gampColours(warps), gampColours(wefts), yarns, sett);
  const said = (of: typeof warps, first: readonly number[]): GampSection[] =>
    of.sections.map(({ order, threads }, at) => ({
      number: at + 1,
      order: formatRuns(order, yarns),
      from: first[at]! + 1,
      threads,
    }));
  const cloths = [...new Set(choice.warps.flatMap((w) => choice.wefts.map((f) => keys[w]![f]!)))].filter(
    (key) => key !== null,
  );
  const structure = kept[0]!.structure;
  const squares = choice.wefts.flatMap((f, j) =>
    choice.warps.map((w, i): GampSquare => {
      const key = keys[w]![f]!;
      return {
        number: squareNumber(i, j, choice.warps.length),
        warp: i + 1,
        weft: j + 1,
        cloth: key === null ? 0 : cloths.indexOf(key) + 1,
        kept: squareCloth(common, allWarps[w]!, allWefts[f]!, structure, sett),
      };
    }),
  );
  const recipe = `gamp of ${warps.sections.length} × ${wefts.sections.length} sections, ${structure}`;
  return {
    cloth: { code: codeOf(whole), recipe, structure, note: '', stars: 0, draft: whole },
    warps: said(warps, sectionStarts(warps)),
    wefts: said(wefts, sectionStarts(wefts)),
    squares,
    choice,
  };
}

/**
 * Threads in a separator, ends in each warp section, and picks in each weft section.
 *
 * @param step the separators start every section in step with the weave if they are multiples of this
 * @param width of the warp, in millimetres
 * @throws Problem if the width is too small, or the separator out of step
 */
function sizesOf(
  choice: Choice,
  step: number,
  wanted: GampNeeds,
  width: number,
  sett: Sett,
): { readonly separator: number; readonly each: number; readonly picks: number } {
  const separator = wanted.separator ?? step * Math.ceil(LEAST_SEPARATOR / step);
  if (separator % step !== 0) {
    throw new Problem(
      `separator: found ${separator} threads, with which some sections never start in step with the weave; ` +
        `expected ${step * Math.max(1, Math.round(separator / step))}, or another multiple of ${step}`,
    );
  }
  const { across, along } = spacing(sett);
  const room = width / across - separator;
  const most = Math.floor(room / choice.warps.length + 1e-6) - separator;
  if (wanted.section !== undefined && wanted.section > most) {
    throw new Problem(
      `found room for ${Math.max(0, most)} ends in each of ${choice.warps.length} warp sections; expected room for ` +
        `${wanted.section}: fewer sections (--gamp), smaller ones (--section) or more width`,
    );
  }
  const each = wanted.section ?? most;
  if (each * across < LEAST_SECTION - across) {
    throw new Problem(
      `found room for ${Math.max(0, each)} ends in each of ${choice.warps.length} warp sections; expected at least 2 in ` +
        'of cloth each: fewer sections (--gamp) or more width',
    );
  }
  return { separator, each, picks: Math.round((each * across) / along) };
}

/** Chooses the sections; a choice among some of the orders alone is exact only if no choice could weave more. */
function chosen(keys: SectionCrossings, { warps, wefts }: GampNeeds, all: boolean): Choice {
  const choice = chooseSections(keys, warps ?? keys.length, wefts ?? keys[0]!.length);
  const most = choice.warps.length * choice.wefts.length;
  return all ? choice : { ...choice, atMost: most, exact: choice.cloths === most };
}

/** The cloth of one square, over its own repeat. */
function squareCloth(
  common: Common,
  warp: readonly number[],
  weft: readonly number[],
  structure: string,
  sett: Draft['sett'],
): KeptCloth {
  const { draft } = common;
  const ends = cycle(warp, lcm(warp.length, common.ends));
  const picks = cycle(weft, lcm(weft.length, common.picks));
  const own = wovenAs(common, ends, picks, draft.yarns, sett);
  const recipe = `${structure}, warp ${formatRuns(warp, draft.yarns)}, weft ${formatRuns(weft, draft.yarns)}`;
  return { code: codeOf(own), recipe, structure, note: '', stars: 0, draft: own };
}

/** The options of a plan for a gamp: the gamp's own width, and its own length with two hems of an inch. */
export function gampNeeds({ cloth }: Gamp, options: PlanOptions): PlanOptions {
  const { across, along } = spacing(cloth.draft.sett);
  const woven = cloth.draft.weft.length * along + 2 * INCH;
  const { border: _, ...rest } = options;
  return { ...rest, mirror: {}, width: cloth.draft.warp.length * across, piece: woven * (1 - options.shrinkage) };
}

/** A separator must be a multiple of this, so that every section of whole repeats starts in step with the weave. */
function separatorStep(
  warps: readonly (readonly number[])[],
  wefts: readonly (readonly number[])[],
  { ends, picks }: Common,
): number {
  const steps = [...warps.map(({ length }) => gcd(length, ends)), ...wefts.map(({ length }) => gcd(length, picks))];
  return steps.reduce(lcm, 1);
}

/** Finds the weave that all cloths share; throws a Problem if they differ. */
function commonWeave(kept: readonly KeptCloth[]): Common {
  const [first, ...others] = kept;
  if (first === undefined) throw new Problem('found a shortlist with nothing in it; expected at least one cloth');
  const common = smallest(first.draft);
  for (const { code, draft } of others) {
    const other = smallest(draft);
    if (sign(other) !== sign(common)) {
      throw new Problem(
        `${code}: found another weave, or other yarns, than in ${first.code}; expected one weave for a gamp`,
      );
    }
  }
  return common;
}

function smallest(draft: Draft): Common {
  const index = <T>(list: readonly T[]): number[] => list.map((item) => list.indexOf(item));
  const lifts = draft.treadling.map((_, j) => `${draft.pickKinds[j]} ${liftAt(draft, j)}`);
  return {
    draft,
    ends: smallestPeriod(index(draft.threading.map((shafts) => shafts.join('+')))),
    picks: smallestPeriod(index(lifts)),
  };
}

function sign({ draft, ends, picks }: Common): string {
  const lifts = draft.treadling.slice(0, picks).map((_, j) => [draft.pickKinds[j], liftAt(draft, j)]);
  return JSON.stringify([draft.threading.slice(0, ends), lifts, draft.yarns.map(({ letter, hex }) => letter + hex)]);
}

/** Reduces orders to their smallest repeat, and keeps each once, in order of first appearance. */
function distinct(words: readonly (readonly number[])[]): number[][] {
  const orders = words.map((word) => word.slice(0, smallestPeriod(word)));
  return [...new Map(orders.map((order) => [order.join(), order])).values()];
}

/** The key of the cloth that two orders weave; null if it shows no pattern. */
function keyOf({ draft, ends, picks }: Common, warp: readonly number[], weft: readonly number[]): string | null {
  const woven = wovenAs(
    { draft, ends, picks },
    cycle(warp, lcm(warp.length, ends)),
    cycle(weft, lcm(weft.length, picks)),
    draft.yarns,
    draft.sett,
  );
  const face = colourFace(drawdown(woven), woven.warp, woven.weft);
  const { across, along } = spacing(draft.sett);
  if (contrastMeter(across / along).measure(face, values(draft.yarns)).contrast < FLAT) return null;
  return clothKey(face, ['mirror', 'half-turn', 'exchange'], draft.yarns.length).join('-');
}

/** A section of about `threads` threads: the nearest allowed size from there down, or else the nearest above. */
function section(order: readonly number[], threads: number, separator: number, weaveRepeat: number): Section {
  // The separator was checked, so there is a size.
  return { order, threads: rightSizes(threads, order.length, separator, weaveRepeat)[0]! };
}

/** The weave, repeated to the length of its colours. */
function wovenAs(
  { draft, ends, picks }: Common,
  warp: readonly number[],
  weft: readonly number[],
  yarns: readonly Yarn[],
  sett: Draft['sett'],
): Draft {
  const ones = (count: number): number[] => new Array<number>(count).fill(1);
  return {
    threading: cycle(draft.threading.slice(0, ends), warp.length),
    tieUp: draft.tieUp,
    treadling: cycle(draft.treadling.slice(0, picks), weft.length),
    pickKinds: cycle<PickKind>(draft.pickKinds.slice(0, picks), weft.length),
    endUnits: ones(warp.length),
    pickUnits: ones(weft.length),
    widths: draft.widths,
    yarns,
    warp,
    weft,
    sett,
  };
}
