import { values } from '../../colour/yarn.js';
import { SIGMA, SMALL_SIGMA } from '../../score/contrast/blur.js';
import { AREA_SIGMA } from '../../score/look/look.js';
import { PART, PARTS, type Part } from '../../score/parts/parts.js';
import { NOVEL } from '../../score/parts/records/novelty-parts.js';
import type { Shared } from '../evaluate/evaluate.js';
import { NEAR_CLASSICS } from '../evaluate/measurer.js';
import { NoveltyMost } from '../evaluate/novelty-most.js';
import { type Foreseen, type PartsMost, PLACE } from '../evaluate/reach.js';
import type { Question } from '../question/question.js';
import type { Ground } from './bound-ground.js';
import type { ExactLines } from './line-forms.js';
import { type PairForm, pairForms, products, quadratic } from './pair-form.js';
import { busyMost, figureMost, solidMost } from './part-most.js';
import { type SideOrders, shownAs } from './side-orders.js';
import type { SymmetryBound } from './symmetry-bound.js';

/** The forms by which parts are bounded, besides that of tone. */
type FormName = 'small' | 'rows' | 'columns' | 'areas' | 'across' | 'down';

const NEEDED: Readonly<Partial<Record<Part, readonly FormName[]>>> = {
  figure: ['small', 'rows', 'columns'],
  figured: ['small', 'rows', 'columns'],
  novelty: ['small', 'rows', 'columns', 'across', 'down'],
  newness: ['small', 'rows', 'columns', 'across', 'down'],
  solid: ['areas'],
  calm: ['across', 'down'],
  lively: ['across', 'down'],
};

/** The parts that these forms bound by themselves; those that compare with the classics need the face too. */
const BY_FORMS: readonly Part[] = ['figure', 'figured', 'solid', 'calm', 'lively'];

/** A form with the numbers that follow from one of the two orders, and the cross terms of the warp order in hand. */
class FormOfPairs {
  private readonly form: PairForm;
  private readonly warps: Float64Array;
  private readonly wefts: Float64Array;
  private readonly ofWarp: Float64Array;
  private readonly ofWeft: Float64Array;
  private readonly cross: Float64Array;
  private own = 0;

  constructor(form: PairForm, warps: Float64Array, wefts: Float64Array) {
    this.form = form;
    this.warps = warps;
    this.wefts = wefts;
    const [S, T] = [Math.sqrt(form.A.length), Math.sqrt(form.B.length)];
    const each = (matrix: Float64Array, list: Float64Array, size: number): Float64Array =>
      Float64Array.from({ length: list.length / size }, (_, at) =>
        quadratic(matrix, list.subarray(at * size, (at + 1) * size)),
      );
    this.ofWarp = each(form.A, warps, S);
    this.ofWeft = each(form.B, wefts, T);
    this.cross = new Float64Array(T);
  }

  /** Takes a warp order in hand. */
  take(warp: number): void {
    const { cross, warps } = this;
    const { C } = this.form;
    const T = cross.length;
    const S = C.length / T;
    cross.fill(0);
    for (let s = 0; s < S; s++) {
      const value = 2 * warps[warp * S + s]!;
      if (value === 0) continue;
      for (let t = 0, at = s * T; t < T; t++, at++) cross[t] = cross[t]! + value * C[at]!;
    }
    this.own = this.ofWarp[warp]!;
  }

  /** Its value for the warp order in hand and a weft order. */
  with(weft: number): number {
    const { cross, wefts } = this;
    const T = cross.length;
    let sum = this.own + this.ofWeft[weft]!;
    for (let t = 0, at = weft * T; t < T; t++, at++) sum += cross[t]! * wefts[at]!;
    return sum;
  }
}

/** Symmetry is a number of quarters. */
const SYMMETRY_STEP = 0.25;

/** What all grounds of one question share. */
export interface Ranking {
  readonly weights: Float64Array;
  readonly floatPart: number;
  readonly squareness: number;
  /** The value of each yarn. */
  readonly palette: Float64Array;
  readonly forms: readonly FormName[];
  readonly noveltyMost: NoveltyMost | undefined;
  /** Whether there are two yarns, one of them light and one dark: cells of two colours then differ in that. */
  readonly isLightOrDark: boolean;
  /** Whether a niche of less symmetry may have a lower score to reach. */
  readonly ofEachKind: boolean;
}

/** What the bounds of a question ask for, in a family whose float part is known. */
export function rankingOf(
  { rank, yarns, oneOfEachKind }: Question,
  { floatPart, classics }: Shared,
  squareness: number,
): Ranking {
  const palette = values(yarns);
  return {
    weights: Float64Array.from(PARTS, (part) => rank[part]),
    floatPart,
    squareness,
    palette,
    forms: [...new Set(PARTS.flatMap((part) => (rank[part] > 0 ? (NEEDED[part] ?? []) : [])))],
    noveltyMost: classics.length > 0 ? NoveltyMost.beside(classics) : undefined,
    isLightOrDark: palette.length === 2 && palette[0]! < 0.5 !== palette[1]! < 0.5,
    ofEachKind: oneOfEachKind === true,
  };
}

/** Bounds the score of each pair of orders on one ground: first take a warp order in hand, then ask for weft orders. */
export class PairBound {
  /** The most that each part of the last pair can be. */
  readonly most: PartsMost = new Float64Array(PARTS.length).fill(1);
  /** T² of the last pair, and its line contrast at the least and at the most. */
  toneSquared = 0;
  private leastLine = 0;
  private mostLine = 0;
  private dark = 0;
  /** Shares of neighbours, across and down, of which one is light and one is dark. */
  private unlikeAcross = 0;
  private unlikeDown = 0;
  private readonly ranking: Ranking;
  private readonly weights: Float64Array;
  readonly warps: SideOrders;
  readonly wefts: SideOrders;
  readonly symmetry: SymmetryBound | undefined;
  readonly lines: ExactLines | undefined;
  private readonly tone: FormOfPairs;
  private readonly forms: Partial<Record<FormName, FormOfPairs>> = {};
  readonly warpMean: Float64Array;
  readonly weftMean: Float64Array;
  private readonly warpLight: Float64Array;
  private readonly weftLight: Float64Array;
  /** Largest sums of weight·part: of the parts that nothing here bounds, and of those that forms bound. */
  private readonly unbounded: number;
  private readonly ofForms: number;
  /** Each of the traits of novelty at the least and at the most. */
  private readonly leastTraits = new Float64Array(7);
  private readonly mostTraits = new Float64Array(7);

  constructor(
    ranking: Ranking,
    ground: Ground,
    {
      warps,
      wefts,
      symmetry,
      lines,
    }: Pick<PairBound, 'warps' | 'wefts'> & {
      readonly symmetry?: SymmetryBound | undefined;
      readonly lines?: ExactLines | undefined;
    },
  ) {
    const { weights, squareness } = ranking;
    this.ranking = ranking;
    this.weights = weights;
    this.warps = warps;
    this.wefts = wefts;
    this.symmetry = symmetry;
    this.lines = lines;
    const forms = pairForms(ground);
    const { palette } = ranking;
    const light = palette.map((value) => (value < 0.5 ? -1 : 1));
    const values = { warp: shownAs(warps, palette), weft: shownAs(wefts, palette) };
    const lights = { warp: shownAs(warps, light), weft: shownAs(wefts, light) };
    const ofValues = (form: PairForm): FormOfPairs => new FormOfPairs(form, values.warp, values.weft);
    const ofLights = (form: PairForm): FormOfPairs => new FormOfPairs(form, lights.warp, lights.weft);
    this.tone = ofValues(forms.variance(SIGMA, squareness));
    const make: Record<FormName, () => FormOfPairs> = {
      small: () => ofValues(forms.variance(SMALL_SIGMA, squareness)),
      rows: () => ofValues(forms.rows(SMALL_SIGMA, squareness)),
      columns: () => ofValues(forms.columns(SMALL_SIGMA, squareness)),
      areas: () => ofValues(forms.variance(AREA_SIGMA, squareness)),
      across: () => ofLights(forms.across()),
      down: () => ofLights(forms.down()),
    };
    for (const name of ranking.forms) this.forms[name] = make[name]();
    this.warpMean = products(forms.mean.warp, values.warp);
    this.weftMean = products(forms.mean.weft, values.weft);
    this.warpLight = products(forms.mean.warp, lights.warp);
    this.weftLight = products(forms.mean.weft, lights.weft);
    this.most[PLACE.float] = ranking.floatPart;
    const sum = (parts: readonly Part[]): number =>
      parts.reduce((total, part) => total + weights[PLACE[part]]! * this.most[PLACE[part]]!, 0);
    const bounded: readonly Part[] = ['contrast', 'symmetry', 'ease', 'balance'];
    this.ofForms = sum(BY_FORMS);
    this.unbounded = sum(PARTS.filter((part) => !bounded.includes(part) && !BY_FORMS.includes(part)));
  }

  /** Takes a warp order in hand. */
  take(warp: number): void {
    this.tone.take(warp);
    for (const form of Object.values(this.forms)) form.take(warp);
  }

  /** The most symmetry that a pair can have. */
  symmetryMost(warp: number, weft: number): number {
    if (this.symmetry === undefined) return 1;
    const { most, warpClass, weftClass, weftClasses } = this.symmetry;
    return most[warpClass[warp]! * weftClasses + weftClass[weft]!]!;
  }

  /**
   * The most that Σ weight·part can be for a pair, as far as it had to be computed: below `enough` at once where it
   * cannot come so far. `seen`: with line contrast; else it is a guess, with none.
   */
  with(warp: number, weft: number, enough: number, seen = true): number {
    const { ranking, weights, most, warps, wefts } = this;
    const toneSquared = 4 * Math.max(0, this.tone.with(weft));
    const lines = warps.lines[warp]! + wefts.lines[weft]!;
    this.toneSquared = toneSquared;
    for (const part of NEAR_CLASSICS) most[PLACE[part]] = 1;
    this.leastLine = 0;
    this.mostLine = lines;
    this.dark = 1 - this.warpMean[warp]! - this.weftMean[weft]!;
    most[PLACE.contrast] = Math.min(1, Math.sqrt(toneSquared + (seen ? lines * lines : 0)));
    most[PLACE.symmetry] = this.symmetryMost(warp, weft);
    let sum =
      this.unbounded +
      weights[PLACE.contrast]! * most[PLACE.contrast]! +
      weights[PLACE.symmetry]! * most[PLACE.symmetry]!;
    if (weights[PLACE.ease]! > 0) {
      const changes =
        (5 * warps.changes[warp]!) / warps.repeat[warp]! + (5 * wefts.changes[weft]!) / wefts.repeat[weft]!;
      most[PLACE.ease] = 1 / (1 + changes + (wefts.shuttles[weft]! - 1) / 2);
      sum += weights[PLACE.ease]! * most[PLACE.ease]!;
    }
    if (weights[PLACE.balance]! > 0) {
      most[PLACE.balance] = 1 - Math.abs(2 * this.dark - 1);
      sum += weights[PLACE.balance]! * most[PLACE.balance]!;
    }
    if (sum + this.ofForms < enough) return sum + this.ofForms;
    if (ranking.forms.length > 0) sum += this.boundByForms(warp, weft);
    if (sum < enough) return sum;
    if (seen && this.lines !== undefined) {
      // First the warp's part of the lines is replaced by the exact one, then the weft's.
      const upright = this.lines.ofUpright(warp, weft);
      sum = this.withLines(sum, upright + wefts.lines[weft]!);
      if (sum < enough) return sum;
      const level = this.lines.ofLevel(warp, weft);
      this.leastLine = Math.abs(upright - level);
      this.mostLine = upright + level;
      sum = this.withLines(sum, upright + level);
    }
    return sum < enough ? sum : this.withNovelty(sum, warp, weft);
  }

  /** What is foreseen of the last pair. */
  readonly foresee = (least: number): Foreseen => ({
    most: this.most.slice(),
    least,
    ...(this.knowsFigure()
      ? {
          figures: {
            tone: Math.sqrt(this.toneSquared),
            darkShare: this.dark,
            figure: this.most[PLACE.figure]!,
            line: [this.leastLine, this.mostLine],
          },
        }
      : {}),
  });

  /** A sum in which lines of another strength are taken in the place of those that were. */
  private withLines(sum: number, lines: number): number {
    const { most, weights } = this;
    const contrast = Math.min(most[PLACE.contrast]!, Math.sqrt(this.toneSquared + lines * lines));
    const less = weights[PLACE.contrast]! * (most[PLACE.contrast]! - contrast);
    most[PLACE.contrast] = contrast;
    return sum - less;
  }

  /** A figure of 1 may be that of an even face, which has none. */
  private knowsFigure(): boolean {
    return this.forms.small !== undefined && this.most[PLACE.figure]! < 1;
  }

  /**
   * A sum in which the parts that compare with the classics are taken no higher than the traits allow. More symmetry may
   * bring a cloth nearer to a classic or farther from it, so each that is possible is tried. (Where a niche of less
   * symmetry may have a lower score to reach, what less of it costs is in that score: `Aims`.)
   */
  private withNovelty(sum: number, warp: number, weft: number): number {
    const { ranking, most, weights, warps, wefts } = this;
    if (ranking.noveltyMost === undefined || !this.knowsFigure()) return sum;
    const [least, highest] = [this.leastTraits, this.mostTraits];
    const known = (at: number, from: number, to: number): void => {
      least[at] = from;
      highest[at] = to;
    };
    const tone = Math.sqrt(this.toneSquared);
    const figure = most[PLACE.figure]!;
    known(0, tone, tone);
    known(1, this.leastLine, this.mostLine);
    known(2, figure, figure);
    known(4, this.dark, this.dark);
    // A line has as many runs as changes, or one run where it has none.
    const runs = (at: number, unlike: number, { even, repeat }: SideOrders, order: number): void => {
      if (ranking.isLightOrDark) known(at, 1 - unlike - even[order]! / repeat[order]!, 1 - unlike);
      else known(at, 0, 1);
    };
    runs(5, this.unlikeAcross, warps, warp);
    runs(6, this.unlikeDown, wefts, weft);
    ranking.noveltyMost.take(least, highest, weights[PLACE.novelty]! > 0 ? 1 : NOVEL);
    const before = NEAR_CLASSICS.reduce((all, part) => all + weights[PLACE[part]]!, 0);
    const symmetryMost = most[PLACE.symmetry]!;
    for (const part of NEAR_CLASSICS) most[PLACE[part]] = 0;
    let best = Number.NEGATIVE_INFINITY;
    for (let symmetry = symmetryMost; symmetry >= 0; symmetry -= SYMMETRY_STEP) {
      const novelty = { novelty: ranking.noveltyMost.with(symmetry) };
      let some = sum - before - (ranking.ofEachKind ? 0 : weights[PLACE.symmetry]! * (symmetryMost - symmetry));
      for (const part of NEAR_CLASSICS) {
        const value = PART[part].of(novelty as never);
        most[PLACE[part]] = Math.max(most[PLACE[part]]!, value);
        some += weights[PLACE[part]]! * value;
      }
      best = Math.max(best, some);
    }
    return best;
  }

  private boundByForms(warp: number, weft: number): number {
    const { weights, most } = this;
    const { small, rows, columns, areas, across, down } = this.forms;
    if (small !== undefined) {
      const figures = figureMost(small.with(weft), rows!.with(weft), columns!.with(weft));
      most[PLACE.figure] = figures.figure;
      most[PLACE.figured] = figures.figured;
    }
    if (areas !== undefined) most[PLACE.solid] = solidMost(areas.with(weft));
    if (across !== undefined) {
      this.unlikeAcross = (1 - across.with(weft)) / 2;
      this.unlikeDown = (1 - down!.with(weft)) / 2;
    }
    if (weights[PLACE.calm]! + weights[PLACE.lively]! > 0) {
      const light = (1 + this.warpLight[warp]! + this.weftLight[weft]!) / 2;
      const busy = busyMost(light, this.unlikeAcross, this.unlikeDown);
      most[PLACE.calm] = busy.calm;
      most[PLACE.lively] = busy.lively;
    }
    let sum = 0;
    for (const part of BY_FORMS) sum += weights[PLACE[part]]! * most[PLACE[part]]!;
    return sum;
  }
}
