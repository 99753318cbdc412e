import { liftAt, type Weave } from '../../draft/draft.js';
import { type Lift, tabbySheds } from '../loom/lifts.js';
import { PATTERN_AND_TABBY, PATTERN_WIDTHS } from '../model/structure.js';
import { type StructureOn, treadledOn } from './on-draft.js';
import { type Places, type Treadling, treadlingsFor, WITH_TABBY } from './treadlings.js';
import { EVERY_TIE_UP_SHAFTS, everyTieUp, regularTieUps } from './usual-tie-ups.js';

/** Name of a draft's own treadling. */
export const ITS_OWN = 'its own';

/** A way of weaving on a given threading: a tie-up and a treadling, with a name. */
export interface WayOn {
  readonly name: string;
  /** The weave, with the given threading. */
  readonly weave: Weave;
  /** Names of tie-up and treadling; absent for the draft's own way and the manners of its structure. */
  readonly free?: Free;
}

/** The names of a tie-up and a treadling. */
interface Free {
  readonly tieUp: string;
  readonly treadling: string;
  /** Whether the tie-up has a common name; else its name lists its shafts. */
  readonly regular: boolean;
}

/**
 * The ways of weaving on a threading: as given, in the other manners of its structure, and with the tie-ups and
 * treadlings of plain weave and regular twills. Several names may give the same cloth.
 */
export function waysOn(weave: Weave, on: StructureOn | undefined): WayOn[] {
  const retie = onTieUpOf(weave);
  const manners = (on?.structure.manners ?? []).flatMap(({ name }): WayOn[] => {
    if (name === on!.found.manner) return [];
    const other = treadledOn(weave, on!, { manner: name });
    return other === undefined ? [] : [{ name, weave: retie(other) }];
  });
  return [{ name: ITS_OWN, weave }, ...manners, ...freeWays(weave, retie)];
}

/** Every tie-up of as many treadles as shafts, treadled straight; empty for more than four shafts. */
export function everyTieUpOn(weave: Weave): WayOn[] {
  const shafts = shaftsOf(weave);
  if (shafts === undefined || shafts.length > EVERY_TIE_UP_SHAFTS) return [];
  const retie = onTieUpOf(weave);
  return everyTieUp(shafts.length).map((sheds) => {
    const lifts = sheds.map((places) => places.map((place) => shafts[place - 1]!));
    const straight = { name: 'straight', units: [lifts.map((_, treadle) => treadle + 1)] };
    const tieUp = lifts.map((lift) => lift.join('+')).join(' ');
    return free({ weave, retie }, { name: tieUp, lifts, regular: false }, straight);
  });
}

/**
 * A function that puts another weave on the tie-up of a draft. A weave that needs sheds or shafts the draft lacks is
 * returned unchanged. Shafts without ends are ignored when sheds are compared.
 */
export function onTieUpOf({ threading, tieUp, treadling }: Weave): (weave: Weave) => Weave {
  const threaded = new Set(threading.flat());
  const shedOf = (lift: Lift): string => lift.filter((shaft) => threaded.has(shaft)).join();
  const pressed = [...treadling, ...tieUp.map((_, treadle) => [treadle + 1])];
  const tied = new Map(pressed.toReversed().map((on) => [shedOf(liftAt({ tieUp, treadling: [on] }, 0)), on]));
  return (weave) => {
    if (weave.threading !== threading && weave.threading.flat().some((shaft) => !threaded.has(shaft))) return weave;
    const presses = weave.treadling.map((_, pick) => tied.get(shedOf(liftAt(weave, pick))));
    return presses.every((on) => on !== undefined) ? { ...weave, tieUp, treadling: presses } : weave;
  };
}

function freeWays(weave: Weave, retie: (weave: Weave) => Weave): WayOn[] {
  const shafts = shaftsOf(weave);
  if (shafts === undefined) return [];
  const threading = { weave, retie };
  const threaded: Places = {
    ends: weave.threading.map(([shaft]) => shafts.indexOf(shaft!) + 1),
    units: weave.endUnits,
  };
  const tabby = tabbySheds(weave.threading);
  const regular = regularTieUps(shafts.length).flatMap((tieUp) => {
    const lifts = tieUp.lifts.map((places) => places.map((place) => shafts[place - 1]!));
    const tied = { name: tieUp.name, lifts, regular: true };
    const simple = tieUp.runs.length === 2 && lifts.length === shafts.length && lifts.length > 3;
    const between =
      tabby !== undefined && simple && !lifts.some((lift) => tabby.some((shed) => `${shed}` === `${lift}`));
    return treadlingsFor(tieUp, threaded).flatMap((treadling) => [
      free(threading, tied, treadling),
      ...(between && WITH_TABBY.includes(treadling.name) ? [withTabby(threading, tied, treadling, tabby)] : []),
    ]);
  });
  if (tabby === undefined) return regular;
  const plain = { name: 'plain weave', lifts: tabby, regular: true };
  return [
    { ...free(threading, plain, { name: 'straight', units: [[1, 2]] }), name: 'as plain weave' },
    {
      ...free(threading, plain, { name: 'each pick twice', units: [[1, 1, 2, 2]] }),
      name: 'as plain weave each pick twice',
    },
    ...regular,
  ];
}

/**
 * The shafts with ends, ascending; undefined if an end is on several, all ends are on one, or colours make the blocks.
 */
function shaftsOf({ threading, companions }: Weave): number[] | undefined {
  if (companions !== undefined || !threading.every((on) => on.length === 1)) return undefined;
  const shafts = [...new Set(threading.flat())].sort((a, b) => a - b);
  return shafts.length > 1 ? shafts : undefined;
}

/** A weave whose threading is used, and the function that puts other weaves on its tie-up. */
interface Threaded {
  readonly weave: Weave;
  readonly retie: (weave: Weave) => Weave;
}

interface TieUp {
  readonly name: string;
  readonly lifts: readonly Lift[];
  readonly regular: boolean;
}

function free(threaded: Threaded, tieUp: TieUp, { name, units }: Treadling): WayOn {
  const order = units.flat();
  return way(threaded, tieUp, name, {
    treadling: order.map((treadle) => [treadle]),
    pickKinds: order.map(() => 'ground'),
    pickUnits: units.map((unit) => unit.length),
  });
}

/** Makes every pick a pattern pick, each followed by the next of two alternating plain-weave picks. */
function withTabby(threaded: Threaded, tieUp: TieUp, { name, units }: Treadling, tabby: readonly [Lift, Lift]): WayOn {
  const once = units.flat().length;
  const rounds = once % 2 === 0 ? [units] : [units, units];
  let turn = 0;
  const treadling = rounds.flat(2).flatMap((treadle) => [[treadle], [tieUp.lifts.length + 1 + (turn++ % 2)]]);
  const { pickKinds, widths } = threaded.weave;
  return way(threaded, { ...tieUp, lifts: [...tieUp.lifts, ...tabby] }, `${name} with tabby`, {
    treadling,
    pickKinds: treadling.map((_, pick) => PATTERN_AND_TABBY[pick % 2]!),
    pickUnits: rounds.flat().map((unit) => 2 * unit.length),
    widths: pickKinds.includes('pattern') ? widths : PATTERN_WIDTHS,
  });
}

/** Makes a way with its name, without unused treadles, or on the draft's own tie-up. */
function way(
  { weave, retie }: Threaded,
  { name: tieUp, lifts, regular }: TieUp,
  treadling: string,
  picks: Pick<Weave, 'treadling' | 'pickUnits' | 'pickKinds'> & { readonly widths?: Weave['widths'] },
): WayOn {
  const pressed = new Set(picks.treadling.flat());
  const used = lifts.map((_, at) => at + 1).filter((treadle) => pressed.has(treadle));
  const tied: Weave = {
    ...weave,
    ...picks,
    tieUp: used.map((treadle) => lifts[treadle - 1]!),
    treadling: picks.treadling.map(([treadle]) => [used.indexOf(treadle!) + 1]),
  };
  return { name: `${treadling} on tie-up ${tieUp}`, weave: retie(tied), free: { tieUp, treadling, regular } };
}
