import type { Drawdown } from '../../cloth/drawdown.js';
import type { Threads, Woven } from '../../cloth/face.js';
import { roomIn } from '../../cloth/scratch.js';
import type { Contrast } from '../model/figures.js';
import { deviation, EVEN, motifContrast } from './contrast.js';
import { type Gather, gatherer } from './gathered.js';
import { Forms } from './pair-forms.js';

/** Most entries of one matrix that is kept with a warp or weft; of larger ones only the last is kept. */
const MOST_KEPT = 1024;

/**
 * Contrast and figure as `contrastMeter` measures them, for cloths of which many share their warp or their weft.
 *
 * Σ(Bg)² = Σ W[r][r']·G[r'][c]·V[c][c']·G[r][c] is the sum of the entries of W ∘ (G·V·Gᵀ). Where rows are listed by kind
 * of pick and colour, all that there can be, G·V·Gᵀ follows from the warp alone, and W from the weft alone. Lines, means
 * and the small blur go the same way. Each such form is computed once for its order and stays in its rooms; a cloth
 * then costs a few products of short lists. See ../../cloth/KINDS.md.
 */
export class PairContrast {
  private readonly values: Float64Array;
  private readonly gatherEnds: Gather;
  private readonly gatherPicks: Gather;
  private readonly formsOfEnds = roomIn(() => new Forms());
  private readonly formsOfPicks = roomIn(() => new Forms());
  /** The cloth in hand, what its warp and its weft bring, and its mean value, from one half. */
  private cloth: Drawdown | undefined;
  private ends: Threads | undefined;
  private picks: Threads | undefined;
  private warp!: Forms;
  private weft!: Forms;
  private mean = 0;

  /**
   * @param squareness picks per centimetre over ends per centimetre
   * @param values 0 (dark) to 1 (light) of each palette index
   */
  constructor(squareness: number, values: Float64Array) {
    this.values = values;
    this.gatherEnds = gatherer(1);
    this.gatherPicks = gatherer(squareness);
  }

  /** Motif contrast with tone and line, and the dark share. */
  motif(woven: Woven): Omit<Contrast, 'figure'> {
    this.turnTo(woven);
    const { warp, weft, mean } = this;
    const cells = warp.threads * weft.threads;
    const tone = 2 * deviation(product(weft.near, warp.areas) - cells * mean ** 2, cells);
    // Upright lines stand between ends, level ones between picks.
    const upright = product(weft.counts, warp.lineMeans) / weft.threads;
    const level = product(warp.counts, weft.lineMeans) / warp.threads;
    const both = product(warp.crossed, weft.crossed);
    const lines = product(weft.near, warp.lines) + product(warp.near, weft.lines) - 2 * both;
    const line = deviation(lines - cells * (level - upright) ** 2, cells);
    return { contrast: motifContrast(tone, line), tone, line, darkShare: 0.5 - mean };
  }

  /** The share of the pattern that is not stripes. */
  figure(woven: Woven): number {
    const variance = this.variance(woven);
    if (variance < EVEN) return 0;
    const { warp, weft, mean } = this;
    const byRows = product(weft.smallNear, warp.stripes) / weft.threads - mean ** 2;
    const byColumns = product(warp.smallNear, weft.stripes) / warp.threads - mean ** 2;
    return Math.min(1, Math.max(0, 1 - (byRows + byColumns) / variance));
  }

  /** Variance of the face blurred as for `figure`. */
  variance(woven: Woven): number {
    this.turnTo(woven);
    const { warp, weft, mean } = this;
    warp.blurLittle(this.gatherEnds);
    weft.blurLittle(this.gatherPicks);
    return Math.max(0, product(weft.smallNear, warp.smallAreas) / (warp.threads * weft.threads) - mean ** 2);
  }

  /** Turns to a cloth, of which several figures may be asked one after the other. */
  private turnTo({ cloth, ends, picks }: Woven): void {
    if (cloth === this.cloth && ends === this.ends && picks === this.picks) return;
    this.cloth = cloth;
    this.ends = ends;
    this.picks = picks;
    this.warp = this.ofEnds(cloth, ends);
    this.weft = this.ofPicks(cloth, picks);
    this.mean = product(this.weft.counts, this.warp.means) / this.weft.threads;
  }

  private ofEnds(cloth: Drawdown, ends: Threads): Forms {
    const forms = this.formsOfEnds(this.isKept(cloth) ? ends.rooms : undefined);
    forms.turnTo(cloth, ends, 'ends', this.values, this.gatherEnds);
    return forms;
  }

  private ofPicks(cloth: Drawdown, picks: Threads): Forms {
    const forms = this.formsOfPicks(this.isKept(cloth) ? picks.rooms : undefined);
    forms.turnTo(cloth, picks, 'picks', this.values, this.gatherPicks);
    return forms;
  }

  private isKept({ endKinds, pickKinds }: Drawdown): boolean {
    return (Math.max(endKinds, pickKinds) * this.values.length) ** 2 <= MOST_KEPT;
  }
}

/** Σ a·b; four sums side by side, since one alone would wait for itself at every step. */
function product(a: Float64Array, b: Float64Array): number {
  let p = 0;
  let q = 0;
  let r = 0;
  let s = 0;
  let at = 0;
  for (; at + 4 <= a.length; at += 4) {
    p += a[at]! * b[at]!;
    q += a[at + 1]! * b[at + 1]!;
    r += a[at + 2]! * b[at + 2]!;
    s += a[at + 3]! * b[at + 3]!;
  }
  for (; at < a.length; at++) p += a[at]! * b[at]!;
  return p + q + r + s;
}
