// Worked examples of planning, from the first idea to the loom: sample warp, yarn, heddles, floats, winding, shuttles,
// gamp, fitting, twelve weavers, denting, distance, value, sett, edges, print. Every figure was worked out by a script
// that shares nothing with this project; the rules are those of the handweaving literature (CNCH on shrinkage; van der
// Hoogt on balance; Petrini on selvedges; Ashenhurst on sett), the percentages common practice, no source.
import type { Draft, Sett, Weave } from '../../src/draft/draft.js';
import { readPlanOptions } from '../../src/plan/options/plan-options.js';
import { planWarps, type WarpPlan } from '../../src/plan/piece/warp-plan.js';
import { findStructure, parseProfile, weaveOf } from '../../src/structure/catalogue/catalogue.js';
import { heddles } from '../../src/structure/loom/lifts.js';
import { INCH } from '../../src/words/measure.js';
import { field, kept, type Made } from '../plan/cloths.js';

export const SETT: Sett = { ends: 20, picks: 20, per: 'inch' };
export const YARNS = [
  { letter: 'D', name: 'navy', hex: '#1f2a44' },
  { letter: 'L', name: 'natural', hex: '#efe6d2' },
];
export const word = (text: string, times = 1): number[] =>
  [...text].flatMap((letter) => new Array<number>(times).fill('DLS'.indexOf(letter)));
export const inches = (mm: number): number => mm / INCH;

/** 2/2 twill on a straight draw, 12, 23, 34, 41, with these colour orders laid thread by thread. */
export function twill(warp: number[], weft: number[]): Draft {
  const whole = (length: number): number => (length % 4 === 0 ? length : length * 4);
  return {
    threading: Array.from({ length: whole(warp.length) }, (_, i) => [(i % 4) + 1]),
    tieUp: [
      [1, 2],
      [2, 3],
      [3, 4],
      [1, 4],
    ],
    treadling: Array.from({ length: whole(weft.length) }, (_, j) => [(j % 4) + 1]),
    pickKinds: Array.from({ length: whole(weft.length) }, () => 'ground'),
    endUnits: new Array<number>(whole(warp.length)).fill(1),
    pickUnits: new Array<number>(whole(weft.length)).fill(1),
    widths: { warp: 1, ground: 1, pattern: 1, tabby: 1 },
    yarns: YARNS,
    warp: field(warp, whole(warp.length)),
    weft: field(weft, whole(weft.length)),
    sett: SETT,
  };
}

export const profiled = (name: string, profile: string): Weave => {
  const known = findStructure(name);
  return weaveOf(known, parseProfile(profile, known.blocks));
};
export const structure = (name: string, profile: string, ends: number): number[] => {
  const weave = profiled(name, profile);
  return heddles(weave).map((count) => (count * ends) / weave.threading.length);
};

/** One cloth as the whole plan has it, with the yarn of the examples. */
export function planned(name: string, made: Made, flags: Record<string, string> = {}): WarpPlan {
  return planWarps(
    [kept(name, made)],
    readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', floating: 'no', ...flags }),
  )[0]!;
}
