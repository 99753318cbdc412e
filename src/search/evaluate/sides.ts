import type { Drawdown } from '../../cloth/drawdown.js';
import { floatsIn, longestOfEnds, longestOfPicks } from '../../cloth/floats.js';
import { holdsTogether } from '../../cloth/holds-together.js';
import { liftAt, type Weave } from '../../draft/draft.js';
import type { Order } from '../../order/order.js';
import type { Laid } from './laid.js';
import type { Interlacement } from './weave-limits.js';

type Lay = (order: Order, start: number) => Laid;
type Threads = Weave['threading'] | Weave['treadling'];

type Lists = readonly (readonly number[])[];

/** The kinds of the threads of one side, and the shafts of each kind: on which it is threaded, or which it raises. */
interface Kinds {
  readonly kind: Uint16Array;
  readonly shafts: Lists;
  /** The longest floats of these threads, by the shafts of the kinds that cross them. */
  readonly floats: WeakMap<Lists, readonly [number, number]>;
}

/** The interlacement of kinds of ends with kinds of picks, and whether they make one cloth. */
interface Crossing {
  readonly up: Uint8Array;
  readonly holds: boolean;
}

/**
 * Threadings and treadlings that many weaves share, as where the orders choose the blocks: what follows from one of them
 * is computed once for each. Ends on the same shafts are of one kind, and so are picks with one lift; kinds that look
 * alike by chance are not made one, which no figure minds.
 */
export class Sides {
  private readonly ends = new WeakMap<Threads, Kinds>();
  private readonly picks = new WeakMap<Threads, Kinds>();
  private readonly lays = new WeakMap<Threads, Lay>();
  /** One list for all sides whose kinds are on the same shafts. */
  private readonly lists = new Map<string, Lists>();
  private readonly crossings = new WeakMap<Lists, WeakMap<Lists, Crossing>>();

  /** The interlacement of a weave. */
  interlacement(weave: Weave): Interlacement {
    const ends = once(this.ends, weave.threading, () => this.kindsOf(weave.threading));
    const picks = once(this.picks, weave.treadling, () =>
      this.kindsOf(weave.treadling.map((_, j) => liftAt(weave, j))),
    );
    const ofEnds = once(this.crossings, ends.shafts, () => new WeakMap<Lists, Crossing>());
    const known = ofEnds.get(picks.shafts);
    const cloth: Drawdown = {
      ends: ends.kind.length,
      picks: picks.kind.length,
      endKind: ends.kind,
      pickKind: picks.kind,
      endKinds: ends.shafts.length,
      pickKinds: picks.shafts.length,
      up: known?.up ?? crossed(ends.shafts, picks.shafts),
    };
    const { holds } = known ?? once(ofEnds, picks.shafts, () => ({ up: cloth.up, holds: holdsTogether(cloth) }));
    return {
      cloth,
      holdsTogether: () => holds,
      // The floats of ends follow from the treadling, and from the shafts on which there are ends.
      floats: (sett) =>
        floatsIn(
          once(picks.floats, ends.shafts, () => longestOfEnds(cloth)),
          once(ends.floats, picks.shafts, () => longestOfPicks(cloth)),
          sett,
        ),
    };
  }

  /** The laying of orders on a threading or a treadling. */
  laid(threads: Threads, make: () => Lay): Lay {
    return once(this.lays, threads, make);
  }

  private kindsOf(threads: Lists): Kinds {
    const known = new Map<string, number>();
    const kind = Uint16Array.from(threads, (own) => {
      const name = own.join(' ');
      const number = known.get(name) ?? known.size;
      known.set(name, number);
      return number;
    });
    const name = [...known.keys()].join();
    const shafts = this.lists.get(name) ?? Array.from(known.values(), (number) => threads[kind.indexOf(number)]!);
    this.lists.set(name, shafts);
    return { kind, shafts, floats: new WeakMap() };
  }
}

/** Which kinds of ends lie over which kinds of picks. */
function crossed(ends: Lists, picks: Lists): Uint8Array {
  const up = new Uint8Array(picks.length * ends.length);
  picks.forEach((lift, p) => {
    ends.forEach((shafts, e) => {
      if (shafts.some((shaft) => lift.includes(shaft))) up[p * ends.length + e] = 1;
    });
  });
  return up;
}

function once<K extends object, T>(known: WeakMap<K, T>, key: K, make: () => T): T {
  let value = known.get(key);
  if (value === undefined) {
    value = make();
    known.set(key, value);
  }
  return value;
}
