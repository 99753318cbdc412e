import { drawdown } from '../cloth/drawdown.js';
import { type FloatPlace, longestFloatPlace, weftFloatsByKind } from '../cloth/floats.js';
import { layers } from '../cloth/sound.js';
import { type Draft, spacing } from '../draft/draft.js';
import { formatOrder } from '../order/order.js';
import { trueLay } from '../render/strands.js';
import { DISTANCES } from '../score/distance.js';
import { exceedsFloat, type FloatLimit } from '../score/rank.js';
import type { Scored } from '../score/score.js';
import { inWords, lengthInWords, limitInWords, symmetryInWords } from '../score/words.js';
import { heddles, liftsUsed } from '../structure/loom.js';
import { needsOf } from './draw-loom.js';

/** A cloth in one sentence, then every figure in a line of its own. */
export function figureLines(name: string, draft: Draft, scored: Scored, floatLimit: FloatLimit): string[] {
  const figures = [...facesOf(draft, scored), ...floatsIn(draft), ...easeOf(draft, scored), ...needsOf(draft)];
  const width = Math.max(...figures.map(([figure]) => figure.length));
  return [
    `${name} (${scored.code})`,
    `${inWords(scored.scores, { ...draft, floatLimit })}.`,
    '',
    ...figures.map(([figure, value]) => `  ${figure.padEnd(width)}  ${value}`),
  ];
}

type Figure = readonly [name: string, value: string];

/** What the eye sees, and what holds the threads. */
function facesOf(draft: Draft, { scores }: Scored): Figure[] {
  const { floats, reads } = scores;
  const group = scores.colourGroup === null ? '' : `, in two colours ${scores.colourGroup}`;
  const sides = (face: number | null, back: number | null, thread: string): string =>
    `${face ?? 'without end'} on the face, ${back ?? 'without end'} on the back, in ${thread}s`;
  return [
    ['score', `${scores.score.toFixed(4)}, the parts weighed together`],
    ['contrast', `${scores.contrast.toFixed(4)}: tone ${scores.tone.toFixed(4)}, line ${scores.line.toFixed(4)}`],
    ['figure', `${scores.figure.toFixed(4)}, the share that is more than stripes`],
    ['symmetry', `${scores.symmetry}: ${symmetryInWords(scores, draft).join('; ')}`],
    ['plane group', `${scores.planeGroup}${group}`],
    ['dark share', `${(100 * scores.darkShare).toFixed(1)} %`],
    ['reads at', DISTANCES.map((distance) => `${distance} m ${reads[distance].toFixed(1)}`).join(', ')],
    ['easy to', `${scores.easyTo.toFixed(1)} m; gone by ${scores.goneBy.toFixed(1)} m`],
    ['warp floats', sides(floats.warpFace, floats.warpBack, 'pick')],
    ['weft floats', sides(floats.weftFace, floats.weftBack, 'end')],
  ];
}

/** Where the longest float lies, and the weft floats of each kind of pick where there are several. */
function floatsIn(draft: Draft): Figure[] {
  const cloth = drawdown(draft);
  const kinds = Object.entries(weftFloatsByKind(cloth, draft.pickKinds));
  const place = longestFloatPlace(cloth);
  const millimetres = lengthAt(draft, place);
  const length = millimetres === null ? '' : `: ${lengthInWords(millimetres, draft.sett)} as the threads lie`;
  const sides = ({ face, back }: { face: number | null; back: number | null }): string =>
    `${face ?? 'without end'} on the face, ${back ?? 'without end'} on the back`;
  return [
    ['longest float', `${floatInWords(place)}${length}`],
    ...(kinds.length < 2 ? [] : kinds.map(([kind, floats]): Figure => [`${kind} weft`, sides(floats)])),
  ];
}

/** How long a float is in millimetres, thick threads taking more room than thin ones; null without end. */
function lengthAt(draft: Draft, { side, from, length }: FloatPlace): number | null {
  if (length === null) return null;
  const { ends, picks } = trueLay(draft, 1, 0);
  const { pitch } = side === 'warpFace' || side === 'warpBack' ? picks : ends;
  return Array.from({ length }, (_, step) => pitch[(from + step) % pitch.length]!).reduce((sum, room) => sum + room, 0);
}

/** What the cloth costs to weave. */
function easeOf({ warp, weft, sett }: Draft, { ease }: Scored): Figure[] {
  const { across, along } = spacing(sett);
  const size = `${lengthInWords(warp.length * across, sett)} by ${lengthInWords(weft.length * along, sett)}`;
  const ends = Object.entries(ease.ends).map(([letter, count]) => `${letter} ${count}`);
  const ways = ease.winding.map(({ way, knots }) => `${way}: ${knots} ${knots === 1 ? 'knot' : 'knots'}`);
  const home = ease.sameSide ? 'every shuttle comes home' : 'a shuttle starts from the wrong side';
  return [
    ['repeat', `${warp.length} ends by ${weft.length} picks, ${size}`],
    ['ends', ends.join(', ')],
    ['colour changes', `${ease.warpChanges} in the warp, ${ease.weftChanges} in the weft`],
    ['winding', ways.join('; ')],
    [
      'shuttles',
      `${ease.shuttles}; longest carry ${ease.longestCarry} ${ease.longestCarry === 1 ? 'pick' : 'picks'}; ${home}`,
    ],
  ];
}

/** What is wrong with a draft, and where. */
export function faultsOf(draft: Draft, { scores, hangsTogether }: Scored, floatLimit: FloatLimit): string[] {
  const cloth = drawdown(draft);
  const faults: string[] = [];
  if (exceedsFloat(scores.floats, floatLimit)) {
    const place = longestFloatPlace(cloth, 'mm' in floatLimit ? draft.sett : undefined);
    faults.push(`${floatInWords(place)}, over the limit of ${limitInWords(floatLimit, draft.sett)}`);
  }
  if (!hangsTogether)
    faults.push(`the cloth does not hang together: it lies in ${layers(cloth)} layers that lift apart`);
  return faults;
}

/** A draft and its figures as plain values. */
export function asData(name: string, draft: Draft, scored: Scored, wrong: readonly string[]) {
  const { scores, ease, hangsTogether, code } = scored;
  const { threading, tieUp, treadling, pickKinds, yarns, sett } = draft;
  return {
    format: 'shedlight-draw',
    version: 1,
    name,
    code,
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
    hangsTogether,
    longestFloat: longestFloatPlace(drawdown(draft)),
    weftFloats: weftFloatsByKind(drawdown(draft), pickKinds),
    heddles: heddles(draft),
    lifts: liftsUsed(draft),
    wrong,
  };
}

function floatInWords({ side, strand, from, length }: FloatPlace): string {
  const warp = side === 'warpFace' || side === 'warpBack';
  const [thread, crossing] = warp ? ['end', 'pick'] : ['pick', 'end'];
  if (length === null) return `${thread} ${strand + 1} never interlaces`;
  const face = side === 'warpFace' || side === 'weftFace' ? 'face' : 'back';
  return `${thread} ${strand + 1} floats over ${length} ${crossing}s on the ${face}, from ${crossing} ${from + 1} on`;
}
