import { folded } from '../../plan/piece/folds.js';
import type { WarpPlan } from '../../plan/piece/warp-plan.js';
import type { Run, WindingPart } from '../../plan/warp/winding.js';
import { counted } from '../../words/counts.js';
import type { Pdf } from '../paper/paper.js';
import { type Row, textRows } from './rows.js';

/** Most runs in a group that is written once. */
const LONGEST_FOLD = 24;

/** How to wind a warp: the ways with their knots, each chain, and the whole order, with running totals at all ties. */
export function windingRows(pdf: Pdf, warp: WarpPlan, width: number): Row[] {
  const { winding, yarns, floating } = warp;
  const said = [
    ...winding.ways.map(({ way, knots, passes }, at) => {
      return `${at + 1}. ${way}: ${counted(knots, 'knot')}, ${passes} passes${togetherWords(warp, way)}`;
    }),
    ...winding.chains.map(({ yarn, ends, rounds, oneMore, ties }) => {
      const more = oneMore ? ' and one end' : '';
      return `${yarns[yarn]!.letter}: ${ends} ends, ${rounds} rounds${more}; counting ties at ${ties.join(' ')}`;
    }),
    ...(winding.chains.length > 1 ? orderWords(warp) : []),
    ...(floating.ends > 0 ? [`wind apart: ${floating.ends} floating selvedges in ${floating.letter}`] : []),
  ];
  return [
    ...textRows(pdf, `winding warp ${warp.number}, least work first (a pass: peg to peg)`, width, true),
    ...said.flatMap((line) => textRows(pdf, line, width)),
  ];
}

/** What is wound in one pass when several ends are wound together. */
function togetherWords({ winding, yarns }: WarpPlan, way: string): string {
  const repeats = winding.parts.find(({ what }) => what === 'repeats');
  if (way !== 'several ends together' || repeats === undefined) return '';
  const letters = repeats.runs.flatMap(({ yarn, ends }) => new Array<string>(ends).fill(yarns[yarn]!.letter));
  const rest = winding.parts.some(({ what }) => what === 'rest of a repeat')
    ? ', then the rest of a repeat singly'
    : '';
  return `; ${letters.join(' ')} in one pass, ${repeats.times} times${rest}`;
}

/** The whole warp in order, with its counting ties and the pegs of its changes. */
function orderWords({ winding, yarns }: WarpPlan): string[] {
  const parts = winding.parts.map((part) => `${PARTS[part.what](part.times)} ${runWords(part.runs, yarns)}`);
  const pegs = winding.even
    ? 'even runs: all changes at peg 1'
    : 'odd runs: changes at both pegs (double every run to keep them at one)';
  return [
    `in order: ${parts.join('; then ')}; end at ${winding.ties.at(-1)}; ${pegs}`,
    `counting ties in order, at ${winding.ties.join(' ')} ends`,
  ];
}

const PARTS: Readonly<Record<WindingPart['what'], (times: number) => string>> = {
  'first border': () => 'border',
  repeats: (times) => (times === 1 ? 'once' : `${times} times`),
  'rest of a repeat': () => 'once',
  'last border': () => 'border',
};

/** `8D 4L`; runs that recur in turn as `(D L)×24`. */
function runWords(runs: readonly Run[], yarns: WarpPlan['yarns']): string {
  const words = runs.map(({ yarn, ends }) => `${ends > 1 ? ends : ''}${yarns[yarn]!.letter}`);
  const folds = folded(words, (word) => word, LONGEST_FOLD);
  return folds.map(({ lines, times }) => (times > 1 ? `(${lines.join(' ')})×${times}` : lines.join(' '))).join(' ');
}
