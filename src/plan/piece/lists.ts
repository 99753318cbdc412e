import { smallestPeriod } from '../../order/order.js';
import { counted } from '../../words/counts.js';
import type { ShuttleSide, Throw } from '../warp/pick-list.js';
import type { TiedUp } from '../warp/warp-loom.js';
import { folded } from './folds.js';
import type { PiecePlan } from './piece-plan.js';
import { evenSizes, type GroupLine, groupFor, inGroups, inSections, type ListSection } from './threading-list.js';

/** One line of the pick list: consecutive picks of one shuttle. */
export interface PickLine {
  /** First and last pick, numbered from 1 within the repeat. */
  readonly from: number;
  readonly to: number;
  readonly shuttle: string;
  readonly start: ShuttleSide;
  readonly rests: ShuttleSide;
  /**
   * Treadles of each pick, `1 2 3 4`; repetitions as `(1 2 3 4)×5`. On a lift plan the shafts raised, picks with strokes
   * between them: `1 2 / 2 10`, `(1 2 / 2 10)×5`.
   */
  readonly steps: string;
  /** Picks that the weft is carried past. */
  readonly carry: number;
}

/** Tabby that follows every pattern pick, said once for all. */
interface TabbyLine {
  readonly shuttle: string;
  readonly start: ShuttleSide;
  /** Treadles of the two alternating picks, `5 and 6`; on a lift plan the shafts raised, `1 3 and 2 4`. */
  readonly steps: string;
}

/** The pick list of one repeat. */
interface PickSheet {
  readonly tabby?: TabbyLine;
  readonly lines: readonly PickLine[];
}

/** The pick list of one repeat, a line for each time a shuttle is taken up. Steady tabby is listed separately. */
export function pickSheet(piece: PiecePlan): PickSheet {
  const tabby = steadyTabby(piece);
  const thrown = tabby === undefined ? piece.list : piece.list.filter((_, j) => piece.draft.pickKinds[j] !== 'tabby');
  return { ...(tabby !== undefined && { tabby }), lines: pickLines(piece, thrown) };
}

/** The tabby, if every other pick is tabby in one yarn with its two sheds alternating; else undefined. */
function steadyTabby({ draft, list, shuttles, tied }: PiecePlan): TabbyLine | undefined {
  const picks = list.filter((_, j) => draft.pickKinds[j] === 'tabby');
  const steady = draft.pickKinds.every((kind, j) => (kind === 'tabby') === (j % 2 === 1));
  const [first, second] = picks.map(({ pick }) => stepOf(tied, pick));
  const inTurn = picks.every(({ pick, shuttle }, k) => {
    return shuttle === picks[0]!.shuttle && stepOf(tied, pick) === (k % 2 === 0 ? first : second);
  });
  if (!steady || !inTurn || second === undefined || picks.length % 2 === 1) return undefined;
  const { shuttle, from } = picks[0]!;
  return { shuttle: shuttles[shuttle]!.name, start: from, steps: `${first} and ${second}` };
}

function pickLines(piece: PiecePlan, thrown: readonly Throw[]): PickLine[] {
  const lines: {
    from: number;
    to: number;
    shuttle: number;
    start: ShuttleSide;
    rests: ShuttleSide;
    steps: string[];
    carry: number;
  }[] = [];
  for (const { pick, shuttle, from, to, carry } of thrown) {
    const step = stepOf(piece.tied, pick);
    const last = lines.at(-1);
    if (last !== undefined && last.shuttle === shuttle) {
      last.to = pick;
      last.rests = to;
      last.steps.push(step);
    } else lines.push({ from: pick, to: pick, shuttle, start: from, rests: to, steps: [step], carry });
  }
  return lines.map((line) => ({
    ...line,
    shuttle: piece.shuttles[line.shuttle]!.name,
    steps: said(line.steps, piece.tied),
  }));
}

/**
 * The picks of one repeat in groups, treadle and shuttle of each: `1D 2L 3D 4L`; steady tabby is left out. Undefined if
 * treadle and letter do not say enough: on a lift plan, and where one yarn is on two shuttles.
 */
export function pickGroups(piece: PiecePlan): GroupLine[] | undefined {
  const listed = picksSaid(piece);
  return listed && inGroups(listed.words, evenSizes(listed.words.length, listed.size));
}

/** The picks of a gamp, section by section; undefined like {@link pickGroups}, or where tabby is left out. */
export function pickSections(piece: PiecePlan, sections: Parameters<typeof inSections>[1]): ListSection[] | undefined {
  const listed = picksSaid(piece);
  if (listed === undefined || listed.words.length < piece.draft.weft.length) return undefined;
  return inSections(listed.words, sections, listed.size);
}

/** What is said of each pick, and the size of its groups. */
function picksSaid(piece: PiecePlan): { words: string[]; size: number } | undefined {
  const { draft, tied, shuttles } = piece;
  const tabby = steadyTabby(piece) !== undefined;
  const listed = piece.list.filter(({ pick }) => !tabby || draft.pickKinds[pick - 1] !== 'tabby');
  const used = new Set(listed.map(({ shuttle }) => shuttle));
  const letters = new Set([...used].map((shuttle) => draft.yarns[shuttles[shuttle]!.yarn]!.letter));
  if (tied.manner === 'lift plan' || letters.size < used.size) return undefined;
  const steps = listed.map(({ pick }) => stepOf(tied, pick));
  const words = listed.map(({ shuttle }, at) => `${steps[at]}${draft.yarns[shuttles[shuttle]!.yarn]!.letter}`);
  return { words, size: groupFor(smallestPeriod(steps.map((step) => steps.indexOf(step)))) };
}

/** Picks of a piece counted in repeats: `70 picks = 3 ½ repeats of 20`, `72 picks = 3 repeats of 20 + 12 picks`. */
export function picksInRepeats({ picks, draft }: PiecePlan): string {
  const repeat = draft.weft.length;
  const [whole, rest] = [Math.floor(picks / repeat), picks % repeat];
  const part = ({ 0.25: '¼', 0.5: '½', 0.75: '¾' } as Readonly<Record<number, string>>)[rest / repeat];
  const said = whole === 0 && part !== undefined ? '' : `${whole}`;
  if (part !== undefined)
    return `${picks} picks = ${`${said} ${part}`.trim()} ${whole === 0 ? 'of a repeat' : 'repeats'} of ${repeat}`;
  const repeats = `${counted(whole, 'repeat')} of ${repeat}`;
  if (rest === 0) return `${picks} picks = ${repeats}`;
  return whole === 0
    ? `${picks} picks of one repeat of ${repeat}`
    : `${picks} picks = ${repeats} + ${counted(rest, 'pick')}`;
}

/** Treadles of a pick (`1+5` for two at once), or shafts raised on a lift plan (`1 2 10`; `none` if none is). */
function stepOf(tied: TiedUp, pick: number): string {
  if (tied.manner !== 'lift plan') return tied.treadling[pick - 1]!.join('+');
  return tied.lifts[pick - 1]!.join(' ') || 'none';
}

/** Writes steps with repetitions folded, as `(1 2 3 4)×4 1 2`, or `(1 2 / 3 4)×4 / 1 2` on a lift plan. */
function said(steps: readonly string[], { manner }: TiedUp): string {
  const between = manner === 'lift plan' ? ' / ' : ' ';
  const parts = folded(steps, (step) => step).map(({ lines, times }) => {
    const block = lines.join(between);
    if (times === 1) return block;
    return `${lines.length === 1 && manner !== 'lift plan' ? block : `(${block})`}×${times}`;
  });
  return parts.join(between);
}
