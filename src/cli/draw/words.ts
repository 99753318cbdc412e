import { drawdown } from '../../cloth/drawdown.js';
import { longestFloatPlace, weftFloatsByKind } from '../../cloth/floats.js';
import { layers } from '../../cloth/holds-together.js';
import { type Draft, spacing } from '../../draft/draft.js';
import { formatOrder } from '../../order/order.js';
import { DISTANCES, readsTo } from '../../score/contrast/viewing-distance.js';
import { classicName } from '../../score/likeness/classic-effects.js';
import type { FloatLimit } from '../../score/model/float-limit.js';
import { exceedsFloat } from '../../score/rank/rank.js';
import type { Scored } from '../../score/score.js';
import { inWords, lengthInWords, limitInWords, symmetryInWords } from '../../score/words/figure-words.js';
import { longestFloatInWords, placeInWords, weftKindsInWords } from '../../score/words/float-words.js';
import { heddles, liftsUsed } from '../../structure/loom/lifts.js';
import { counted } from '../../words/counts.js';
import { needsOf } from './draw-loom.js';

/** A sentence about a cloth, then a line for each figure. */
export function figureLines(name: string, draft: Draft, scored: Scored, floatLimit: FloatLimit): string[] {
  const figures: Figure[] = [
    ...facesOf(draft, scored),
    ['longest float', longestFloatInWords(draft)],
    ...weftKindsInWords(draft),
    ...easeOf(draft, scored),
    ...needsOf(draft),
  ];
  const width = Math.max(...figures.map(([figure]) => figure.length));
  const classic = classicName(draft);
  return [
    `${name} (${scored.code})`,
    `${inWords(scored.scores, { ...draft, floatLimit })}.`,
    ...(classic === undefined ? [] : [`Weavers call it ${classic}.`]),
    '',
    ...figures.map(([figure, value]) => `  ${figure.padEnd(width)}  ${value}`),
  ];
}

type Figure = readonly [name: string, value: string];

/** Figures of appearance and of the hold of the threads. */
function facesOf(draft: Draft, { scores }: Scored): Figure[] {
  const { floats, reads } = scores;
  const far = readsTo(reads);
  const clear = far === null ? 'no distance from 0.6 m on' : `${far} m`;
  const group = scores.colourGroup === null ? '' : `, in two colours ${scores.colourGroup}`;
  const sides = (face: number | null, back: number | null, thread: string): string =>
    `${face ?? 'never interlaces'} on the face, ${back ?? 'never interlaces'} on the back, in ${thread}s`;
  return [
    ['score', `${scores.score.toFixed(4)}, the weighted mean of the parts that count`],
    ['contrast', `${scores.contrast.toFixed(4)}: tone ${scores.tone.toFixed(4)}, line ${scores.line.toFixed(4)}`],
    ['figure', `${scores.figure.toFixed(4)}, the share that is more than stripes`],
    ['symmetry', `${scores.symmetry}: ${symmetryInWords(scores, draft).join('; ')}`],
    ['plane group', `${scores.planeGroup}${group}`],
    ['dark share', `${(100 * scores.darkShare).toFixed(1)} %`],
    [
      'clear at',
      `${clear}; light and dark differ by ${DISTANCES.map((m) => `${reads[m].toFixed(1)} at ${m} m`).join(', ')}`,
    ],
    [
      'repeat width',
      `easy to see up to ${scores.easyTo.toFixed(1)} m, too small to see from ${scores.goneBy.toFixed(1)} m, whatever its contrast`,
    ],
    ['warp floats', sides(floats.warpFace, floats.warpBack, 'pick')],
    ['weft floats', sides(floats.weftFace, floats.weftBack, 'end')],
  ];
}

/** Figures of the work of weaving. */
function easeOf({ warp, weft, sett }: Draft, { ease }: Scored): Figure[] {
  const { across, along } = spacing(sett);
  const size = `${lengthInWords(warp.length * across, sett)} by ${lengthInWords(weft.length * along, sett)}`;
  const ends = Object.entries(ease.ends).map(([letter, count]) => `${letter} ${count}`);
  const ways = ease.winding.map(({ way, knots }) => `${way}: ${counted(knots, 'knot')}`);
  const home = ease.sameSide ? 'every shuttle ends where it began' : 'a shuttle starts from the wrong side';
  return [
    ['repeat', `${warp.length} ends by ${weft.length} picks, ${size}`],
    ['ends', ends.join(', ')],
    ['colour changes', `${ease.warpChanges} in the warp, ${ease.weftChanges} in the weft`],
    ['winding', ways.join('; ')],
    ['shuttles', `${ease.shuttles}; longest carry ${counted(ease.longestCarry, 'pick')}; ${home}`],
  ];
}

/** The faults of a draft, with their places. */
export function faultsOf(draft: Draft, { scores, holdsTogether }: Scored, floatLimit: FloatLimit): string[] {
  const cloth = drawdown(draft);
  const faults: string[] = [];
  if (exceedsFloat(scores.floats, floatLimit)) {
    const place = longestFloatPlace(cloth, 'mm' in floatLimit ? draft.sett : undefined);
    faults.push(`${placeInWords(place)}, over the limit of ${limitInWords(floatLimit, draft.sett)}`);
  }
  if (!holdsTogether)
    faults.push(`the cloth does not hold together as one cloth: it lies in ${layers(cloth)} layers that lift apart`);
  return faults;
}

/** A draft and its figures as plain values, for JSON. */
export function asData(name: string, draft: Draft, scored: Scored, wrong: readonly string[]) {
  const { scores, ease, holdsTogether, code } = scored;
  const { threading, tieUp, treadling, pickKinds, yarns, sett } = draft;
  const classic = classicName(draft);
  return {
    format: 'shedlight-draw',
    version: 1,
    name,
    code,
    ...(classic !== undefined && { classic }),
    repeat: { ends: draft.warp.length, picks: draft.weft.length },
    draft: {
      threading,
      tieUp,
      treadling,
      pickKinds,
      warp: formatOrder(draft.warp, yarns),
      weft: formatOrder(draft.weft, yarns),
      yarns,
      sett,
    },
    scores,
    ease,
    holdsTogether,
    longestFloat: longestFloatPlace(drawdown(draft)),
    weftFloats: weftFloatsByKind(drawdown(draft), pickKinds),
    heddles: heddles(draft),
    lifts: liftsUsed(draft),
    wrong,
  };
}
