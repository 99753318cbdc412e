import { type Draft, liftAt } from '../../draft/draft.js';
import { shuttleCount } from '../../draft/shuttles.js';
import { heddles, liftsUsed } from '../../structure/loom/lifts.js';
import { heddlesFor, type Loom, type LoomTieUp, obstacles, tieUpOn } from '../../structure/loom/loom-fit.js';

/** The demands of a draft on any loom, in words: lifts, and heddles on each shaft. */
export function needsOf(draft: Draft): (readonly [name: string, value: string])[] {
  const lifts = liftsUsed(draft).length;
  return [
    ['lifts', `${lifts}, as many treadles with one foot`],
    ['heddles', `${heddles(draft).join(' ')} a repeat, shaft 1 first`],
  ];
}

/** Lines about a draft on one loom: tie-up, treadling, and what the loom lacks. */
export function loomLines(draft: Draft, loom: Loom): string[] {
  const tied = tieUpOn(draft, loom);
  const lacks = obstacles(draft, loom);
  const owned = loom.heddles === undefined ? '' : `, owned ${loom.heddles.join(' ')}`;
  const ends = loom.ends ?? draft.threading.length;
  return [
    `on the loom (${loom.kind}): ${mannerOf(draft, tied, loom)}`,
    `  heddles for ${ends} ends: ${heddlesFor(draft, ends).join(' ')}${owned}`,
    ...(tied.manner === 'lift plan'
      ? [
          '  lift plan, shafts up at each pick:',
          ...draft.treadling.map((_, j) => `  ${pad(j + 1)}  ${liftAt(draft, j).join(' ')}`),
        ]
      : [
          `  ${TIE_UP_WORDS[loom.kind]}:`,
          ...tied.treadles.map((treadle, at) => `  ${pad(at + 1)}  ${treadleOf(treadle)}`),
          `  treadling: ${tied.treadling.map((pressed) => pressed.join('+')).join(' ')}`,
        ]),
    ...lacks.map((lack) => `wrong: ${lack}`),
    ...(loom.shuttles !== undefined && shuttleCount(draft.pickKinds, draft.weft) > loom.shuttles
      ? [`wrong: needs ${shuttleCount(draft.pickKinds, draft.weft)} shuttles, the weaver has ${loom.shuttles}`]
      : []),
  ];
}

const TIE_UP_WORDS: Readonly<Record<Loom['kind'], string>> = {
  rising: 'tie-up, shafts that each treadle raises',
  sinking: 'tie-up, shafts that each treadle lowers',
  countermarch: 'tie-up, shafts that each treadle raises / lowers',
  table: 'levers',
};

function mannerOf(draft: Draft, { manner, treadles }: LoomTieUp, loom: Loom): string {
  const lifts = `${liftsUsed(draft).length} lifts`;
  if (loom.kind === 'table') return `${lifts}, a lever for each shaft`;
  if (manner === 'lift plan') return `${lifts} are more than its treadles give; a table loom would do`;
  return manner === 'two feet' ? `${lifts} on ${treadles.length} treadles, with two feet` : `${lifts}, a treadle each`;
}

function treadleOf({ rise, sink }: LoomTieUp['treadles'][number]): string {
  return [rise, sink]
    .filter((shafts) => shafts.length > 0)
    .map((shafts) => shafts.join(' '))
    .join(' / ');
}

const pad = (number: number): string => String(number).padStart(3);
