import { sayLength } from './measure.js';
import type { PiecePlan } from './piece-plan.js';
import type { WarpPlan } from './warp-plan.js';

/** The figures of one sheet: a label and the words of each. */
export function figures(warp: WarpPlan, piece: PiecePlan): (readonly [string, string])[] {
  const { per, floating, wound, denting, heddles } = warp;
  const count = warp.ends.length;
  const parts = [
    `${warp.repeats} × ${warp.repeat}`,
    ...(warp.balance > 0 ? [`${warp.balance} to balance`] : []),
    ...(warp.border > 0 ? [`borders 2 × ${warp.border}`] : []),
  ].join(' + ');
  const own = wound.map(({ letter, ends }) => `${letter} ${ends}`).join(', ');
  const floats = floating.ends > 0 ? `, with 2 floating selvedges in ${floating.letter}, in dents of their own` : '';
  const { carry, shuttles, starts } = piece;
  const { longest, longestMm } = piece.floats;
  const sides = shuttles.map(({ name, side }) => `${name} from the ${side}`).join(', ');
  const edges = starts.allCaught
    ? 'every turn catches its edge end'
    : `edge ends are caught at ${starts.caught.left.caught + starts.caught.right.caught} of ${starts.caught.left.turns + starts.caught.right.turns} turns`;
  const fills = warp.fillings.map(
    ({ repeats, ends, over }) =>
      `${repeats} repeats ${ends} (${over > 0 ? '+' : over < 0 ? '−' : '±'}${Math.abs(over)})`,
  );
  return [
    ['ends', `${count} = ${parts}`],
    ['wind', `${own}: ${count + floating.ends} in all${floats}`],
    ['fillings', `of ${warp.wanted}: ${fills.join('; ')}`],
    ['sett', `${piece.draft.sett.ends} ends, ${piece.draft.sett.picks} picks per ${per === 'inch' ? 'inch' : 'cm'}`],
    [
      'reed',
      `${denting.reed} per ${per}, ${denting.dents.join('-')} in a dent, ${warp.dents} dents: ${sayLength(warp.widthInReed, per)}`,
    ],
    ['heddles', heddles.map((each, s) => `shaft ${s + 1}: ${each}`).join(', ')],
    [
      'picks',
      `${piece.picks} in ${sayLength(piece.woven, per)}: ${shuttles.map(({ name, picks }) => `${name} ${picks}`).join(', ')}`,
    ],
    ['start', `${sides}; ${edges}`],
    ['carry', carry.picks === 0 ? 'none' : `at most ${carry.picks} picks, ${sayLength(carry.mm, per)}`],
    [
      'float',
      longest === null || longestMm === null
        ? 'without end'
        : `at most ${longest} threads; ${sayLength(longestMm, per)}`,
    ],
  ];
}
