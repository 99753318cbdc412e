import { startInWords } from '../../order/laid-order.js';
import { blocksInWords } from '../../plan/piece/block-words.js';
import { picksInRepeats } from '../../plan/piece/lists.js';
import type { PiecePlan } from '../../plan/piece/piece-plan.js';
import { settInShort } from '../../plan/piece/sett-advice.js';
import type { WarpPlan } from '../../plan/piece/warp-plan.js';
import { learntWords } from '../../plan/results/matching-results.js';
import { counted } from '../../words/counts.js';
import { sayAbout, sayLength } from '../../words/measure.js';

/**
 * The figures of one sheet, each a label and its words.
 *
 * @param sections of the warp, if it is a gamp
 */
export function figures(
  warp: WarpPlan,
  piece: PiecePlan,
  sections?: readonly unknown[],
): (readonly [string, string])[] {
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
    ({ repeats, border, ends, over }) =>
      `${counted(repeats, 'repeat')}${border === undefined ? '' : `, borders ${border}:`} ${ends} (${over > 0 ? '+' : over < 0 ? '−' : '±'}${Math.abs(over)})`,
  );
  // The loss in width is assumed equal to the loss in length.
  const { shrinkage: shrunk } = piece;
  const width = sayLength(warp.widthInReed, per);
  const there = [
    ['warp', `on the loom: nothing to wind, thread or sley; ${width} wide as planned, ${count} ends${floats}`],
  ] as const;
  const wind = ['wind', `${own}: ${count + floating.ends} in all${floats}`] as const;
  const toWind =
    sections === undefined
      ? ([
          ['ends', `${count} = ${parts}`],
          wind,
          ['to fill', `${warp.wanted} ends are the width asked for; nearest ${fills.join('; ')}`],
        ] as const)
      : ([['ends', `${count} in ${counted(sections.length, 'section')}, with separators`], wind] as const);
  const reed = [
    'reed',
    `${denting.named}, ${denting.dents.join('-')} in a dent, ${warp.dents} dents: ${width}`,
  ] as const;
  const learnt = learntWords(piece.learnt, piece.cloth, piece.draft.sett);
  return [
    ...laidFigures(piece),
    ...(warp.onTheLoom ? there : toWind),
    ['sett', `${piece.draft.sett.ends} ends, ${piece.draft.sett.picks} picks per ${per}${settInShort(piece)}`],
    ...(warp.onTheLoom ? [] : [reed]),
    ['width', `about ${sayAbout(piece.widthOnLoom, per)} on the loom after draw-in`],
    [
      'finished',
      `about ${sayAbout(piece.widthOnLoom * (1 - shrunk), per)} wide, ${sayAbout(piece.woven * (1 - shrunk), per)} long`,
    ],
    ...(learnt.length === 0 ? [] : [['results', learnt.join('; ')] as const]),
    ...(piece.learnt.last === undefined ? [] : [['last time', piece.learnt.last] as const]),
    ...(warp.onTheLoom ? [] : [['heddles', heddleWords(heddles)] as const]),
    ...(piece.tied.manner === 'lift plan' ? [] : [['tie-up', tieUpWords(piece)] as const]),
    [
      'picks',
      `${picksInRepeats(piece)}, over ${sayLength(piece.woven, per)}: ${shuttles.map(({ name, picks }) => `${name} ${picks}`).join(', ')}`,
    ],
    ['start', `${sides}; ${edges}`],
    ['carry', carry.picks === 0 ? 'none' : `at most ${counted(carry.picks, 'pick')}, ${sayLength(carry.mm, per)}`],
    [
      'float',
      longest === null || longestMm === null
        ? 'never interlaces'
        : `at most ${counted(longest, 'thread')}; ${sayLength(longestMm, per)}`,
    ],
  ];
}

/** `shafts 1–4: 100 each, shaft 5: 40`. */
function heddleWords(heddles: readonly number[]): string {
  const said: string[] = [];
  for (let first = 0, next = 0; first < heddles.length; first = next) {
    while (next < heddles.length && heddles[next] === heddles[first]) next++;
    const shafts = next - first === 1 ? `shaft ${next}` : `shafts ${first + 1}–${next}`;
    const each = heddles[first] === 0 ? 'none' : next - first === 1 ? heddles[first] : `${heddles[first]} each`;
    said.push(`${shafts}: ${each}`);
  }
  return said.join(', ');
}

/** The parts of the recipe that need words: where the orders begin, and which yarn makes which block. */
function laidFigures({ cloth, draft }: PiecePlan): (readonly [string, string])[] {
  const { order } = cloth;
  if (order === undefined) return [];
  const [begin, blocks] = [startInWords(order, draft), blocksInWords(cloth.structure, order.by, draft.yarns)];
  return [
    ...(begin === undefined ? [] : [['begin', begin] as const]),
    ...(blocks === undefined ? [] : [['blocks', blocks] as const]),
  ];
}

/** Treadles whose shafts are listed; the tie-up of more is read off its drawing. */
const MOST_LISTED = 16;

/** Words for the tie-up: the shafts of each treadle (on a countermarch those that rise), and the use of two feet. */
function tieUpWords({ tied }: PiecePlan): string {
  const [rises, sinks] = [
    tied.treadles.some(({ rise }) => rise.length > 0),
    tied.treadles.some((t) => t.sink.length > 0),
  ];
  const treadles = tied.treadles.map(({ rise, sink }, t) => {
    const shafts = rises ? rise : sink;
    return `${t + 1}: ${shafts.length === 0 ? 'none' : shafts.join(' ')}`;
  });
  const lifts = new Set(tied.lifts.map((lift) => lift.join())).size;
  const feet = tied.manner === 'two feet' ? `${lifts} lifts on ${treadles.length} treadles with two feet: ` : '';
  if (treadles.length > MOST_LISTED) return `${feet || `${treadles.length} treadles: `}as drawn`;
  const moved = rises && sinks ? 'shafts up; all others down' : sinks ? 'shafts down' : 'shafts up';
  return `${feet}treadle ${treadles.join('; ')} (${moved})`;
}
