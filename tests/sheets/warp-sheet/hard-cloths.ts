import type { KeptCloth } from '../../../src/formats/shortlist.js';
import { gampNeeds, gampOf } from '../../../src/plan/gamp/gamp-plan.js';
import { readPlanOptions } from '../../../src/plan/options/plan-options.js';
import { planWarps, type WarpPlan } from '../../../src/plan/piece/warp-plan.js';
import { dealSheets, planSheets } from '../../../src/sheets/sheets.js';
import { kept, YARNS } from '../../plan/cloths.js';

/** What a cloth without any repetition is made of. */
interface Wandering {
  readonly ends: number;
  readonly picks?: number;
  readonly shafts?: number;
  readonly warp?: string;
  readonly weft?: string;
  /** Shafts that each lift raises. Default: two side by side, and one more on many shafts. */
  readonly up?: number;
}

/** A threading and a treadling that go up and down at random, so that nothing can be folded; the same in every run. */
export function wandering({
  ends,
  picks = ends,
  shafts = 4,
  warp = 'DDLDL',
  weft = 'DL',
  up = shafts > 8 ? 3 : 2,
}: Wandering): KeptCloth {
  let state = ends + 31 * shafts;
  const rises = (): boolean => {
    state = (state * 48_271) % 2_147_483_647;
    return state % 2 === 0;
  };
  const walk = (steps: number): number[] => {
    let at = 1;
    return Array.from({ length: steps }, () => {
      at = Math.max(1, Math.min(shafts, at + (rises() ? 1 : -1)));
      return at;
    });
  };
  const colours = (word: string, threads: number): number[] =>
    Array.from({ length: threads }, (_, at) => 'DLR'.indexOf(word[at % word.length]!));
  const ones = (threads: number): number[] => new Array<number>(threads).fill(1);
  const base = kept('2/2 twill', { warp: 'D' });
  const draft = {
    ...base.draft,
    yarns: `${warp}${weft}`.includes('R') ? [...YARNS, { letter: 'R', name: 'red', hex: '#b03030' }] : YARNS,
    threading: walk(ends).map((shaft) => [shaft]),
    tieUp: Array.from({ length: shafts }, (_, s) => {
      const lift = [0, 1, 5, 3, 8, 10].slice(0, up).map((step) => ((s + step) % shafts) + 1);
      return lift.toSorted((a, b) => a - b);
    }),
    treadling: walk(picks).map((treadle) => [treadle]),
    warp: colours(warp, ends),
    weft: colours(weft, picks),
    pickKinds: ones(picks).map(() => base.draft.pickKinds[0]!),
    endUnits: ones(ends),
    pickUnits: ones(picks),
  };
  const recipe = `wandering, ${ends} ends by ${picks} picks, ${shafts} shafts`;
  const { order: _, ...rest } = base;
  return { ...rest, code: `w${ends}s${shafts}`, recipe, draft };
}

/** A cloth on 32 shafts, about half of them up at a pick: its tie-up is as large as the page has room for, or larger. */
export function tied(treadles = 32): KeptCloth {
  const shafts = 32;
  const each = Array.from({ length: shafts }, (_, s) => s);
  const picks = Array.from({ length: 200 }, (_, j) => j);
  const { order: _, ...base } = kept('2/2 twill', { warp: 'D' });
  const draft = {
    ...base.draft,
    threading: each.map((s) => [s + 1]),
    tieUp: Array.from({ length: treadles }, (_, t) =>
      Array.from({ length: t < shafts ? 16 : 15 }, (_, k) => ((t + k) % shafts) + 1),
    ),
    treadling: picks.map((j) => [(j % treadles) + 1]),
    warp: each.map((s) => s % 2),
    weft: picks.map((j) => Number(j % 3 > 0)),
    pickKinds: picks.map(() => 'ground' as const),
    endUnits: each.map(() => 1),
    pickUnits: picks.map(() => 1),
  };
  return { ...base, code: 'tied32', recipe: 'twill on 32 shafts, 16 up at each pick', draft };
}

/** A cloth, the needs of its plan, and for whom its sheet is. */
export interface HardSheet {
  readonly cloth: () => KeptCloth;
  readonly flags?: Readonly<Record<string, string>>;
  readonly weaver?: string;
  /** Most pages of the sheet. Default: 2. */
  readonly pages?: number;
}

const taqueté = (): KeptCloth =>
  kept('turned twill', { warp: 'DLDDL', profile: 'A A B A B', by: 'unit', weft: 'LDDDL', times: 4 });

/** Sheets of every kind that a weaver may pin to the loom. */
export const HARD: Readonly<Record<string, HardSheet>> = {
  'eight-ends': { cloth: () => kept('2/2 twill', { warp: 'DDDDLLLL' }) },
  'twenty-ends-greek': {
    cloth: () => kept('2/2 twill', { warp: 'DDLDL', times: 4 }),
    weaver: 'Καλλιόπη Παπαδοπούλου-Αναγνωστοπούλου, Ирина Преображенская 織',
  },
  'thirty-two-ends': { cloth: () => wandering({ ends: 32, shafts: 8, warp: 'DDDL', weft: 'DLL' }) },
  'fifty-eight-ends': { cloth: () => wandering({ ends: 58, picks: 116 }) },
  'three-yarns': { cloth: () => wandering({ ends: 120, shafts: 8, warp: 'DDLDLR', weft: 'DLR' }) },
  'four-hundred-ends': { cloth: () => wandering({ ends: 400 }), pages: 6 },
  'mirrored-bordered': {
    cloth: () => kept('summer and winter', { warp: 'DLDDL', by: 'unit' }),
    flags: { mirror: 'single', 'mirror weft': 'single', border: '8 D', balance: 'yes' },
  },
  'overshot-tabby': { cloth: () => kept('overshot', { warp: 'D', weft: 'DL' }) },
  'lift-plan-eight': { cloth: taqueté, flags: { loom: 'table' } },
  'lift-plan-twelve': {
    cloth: () => wandering({ ends: 60, picks: 48, shafts: 12, weft: 'DDL' }),
    flags: { loom: 'table' },
  },
  'lift-plan-long': {
    cloth: () => wandering({ ends: 120, picks: 116, shafts: 12, up: 6 }),
    flags: { loom: 'table' },
  },
  'many-shuttles': { cloth: () => kept('turned twill', { warp: 'DLDDL', by: 'unit', weft: 'LD', times: 4 }) },
};

/** Names that are read from the right, with letters that no type has. */
export const FROM_THE_RIGHT: HardSheet = {
  cloth: () => kept('plain weave', { warp: 'DDL' }),
  flags: { project: 'מגבות מטבח (12), אביב' },
  weaver: 'فاطِمة الزهراء 織子',
};

/** The PDF of one of these sheets; `changed` puts another plan on paper. */
export async function hardSheet(
  { cloth, flags = {}, weaver }: HardSheet,
  paper = 'a4',
  changed: (warp: WarpPlan) => WarpPlan = (warp) => warp,
): Promise<Buffer> {
  const options = readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', paper, ...flags });
  const warps = planWarps([cloth()], options).map(changed);
  if (weaver === undefined) return planSheets(warps, options);
  const share = { weaver: { name: weaver, loom: options.loom }, cloth: warps[0]!.pieces[0]!.cloth, apart: 1 };
  return dealSheets([share], warps, options);
}

/** The PDF of a gamp of five orders by five. */
export async function gampSheets(paper = 'a4'): Promise<Buffer> {
  const options = readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', width: '17 in', paper });
  const orders = ['DDLDL', 'DDDLL', 'DL', 'DDLL', 'LLDLD'].map((warp) => kept('2/2 twill', { warp }));
  const gamp = gampOf(orders, options, { separator: 4 });
  const own = gampNeeds(gamp, options);
  return planSheets(planWarps([gamp.cloth], own), own, gamp);
}
