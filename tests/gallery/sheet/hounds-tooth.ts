import { type Draft, EVEN_WIDTHS } from '../../../src/draft/draft.js';
import { ofEachLook } from '../../../src/score/parts/look-figures.js';
import type { Found } from '../../../src/search/strategy/outcome.js';

const four = [0, 0, 0, 0, 1, 1, 1, 1];
const eight = [[1], [2], [3], [4], [1], [2], [3], [4]];

/** Hound's tooth by unit, its four dark and four light threads begun with the weave. */
export const HOUNDS_TOOTH: Draft = {
  threading: eight,
  tieUp: [
    [1, 2],
    [2, 3],
    [3, 4],
    [4, 1],
  ],
  treadling: eight,
  pickKinds: four.map(() => 'ground'),
  endUnits: [4, 4],
  pickUnits: [4, 4],
  widths: EVEN_WIDTHS,
  yarns: [
    { letter: 'D', name: 'navy', hex: '#1f2a44' },
    { letter: 'L', name: 'natural', hex: '#efe6d2' },
  ],
  warp: four,
  weft: four,
  sett: { ends: 20, picks: 20, per: 'inch' },
};

/** The same as a search hands it on. */
export function found(rank: number, more: Partial<Found> = {}): Found {
  return {
    rank,
    code: `code${rank}`,
    recipe: '2/2 twill, DL, unit by unit, weft as warp',
    shortRecipe: '2/2 twill, unit by unit',
    why: 'ranked here for: contrast 0.32',
    structure: '2/2 twill',
    redraw: [],
    draft: HOUNDS_TOOTH,
    order: { warp: 'DL', weft: 'DL', by: 'unit', fill: 'solid', times: 1, start: [0, 0] },
    scores: {
      score: 0.4,
      contrast: 0.3207,
      tone: 0.3183,
      line: 0.0385,
      figure: 0.2461,
      darkShare: 0.5,
      ...ofEachLook(() => 0),
      symmetry: 0.25,
      operations: [],
      shiftExchange: true,
      planeGroup: 'p1',
      colourGroup: 'p1/p1',
      floats: { warpFace: 2, warpBack: 2, weftFace: 2, weftBack: 2, longest: 2, longestMm: 2.54 },
      reads: { '0.6': 37.07, '2': 24.5, '6': 10.28 },
      easyTo: 2.3285,
      goneBy: 17.46,
    },
    ease: {
      warpChanges: 2,
      ends: { D: 4, L: 4 },
      winding: [],
      shuttles: 2,
      weftChanges: 2,
      longestCarry: 4,
      sameSide: true,
    },
    equals: 3,
    nearTwin: null,
    ...more,
  };
}
