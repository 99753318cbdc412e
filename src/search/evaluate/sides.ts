import type { Drawdown } from '../../cloth/drawdown.js';
import { liftAt, type Weave } from '../../draft/draft.js';
import type { Order } from '../../order/order.js';
import type { Laid } from './laid.js';

type Lay = (order: Order, start: number) => Laid;
type Threads = Weave['threading'] | Weave['treadling'];

/** The kinds of the threads of one side, and the shafts of each kind: on which it is threaded, or which it raises. */
interface Kinds {
  readonly kind: Uint16Array;
  readonly shafts: readonly (readonly number[])[];
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

  /** The drawdown of a weave. */
  cloth(weave: Weave): Drawdown {
    const ends = once(this.ends, weave.threading, () => kindsOf(weave.threading));
    const picks = once(this.picks, weave.treadling, () => kindsOf(weave.treadling.map((_, j) => liftAt(weave, j))));
    const up = new Uint8Array(picks.shafts.length * ends.shafts.length);
    picks.shafts.forEach((lift, p) => {
      ends.shafts.forEach((shafts, e) => {
        if (shafts.some((shaft) => lift.includes(shaft))) up[p * ends.shafts.length + e] = 1;
      });
    });
    return {
      ends: ends.kind.length,
      picks: picks.kind.length,
      endKind: ends.kind,
      pickKind: picks.kind,
      endKinds: ends.shafts.length,
      pickKinds: picks.shafts.length,
      up,
    };
  }

  /** The laying of orders on a threading or a treadling. */
  laid(threads: Threads, make: () => Lay): Lay {
    return once(this.lays, threads, make);
  }
}

function once<K extends object, T>(known: WeakMap<K, T>, key: K, make: () => T): T {
  let value = known.get(key);
  if (value === undefined) {
    value = make();
    known.set(key, value);
  }
  return value;
}

function kindsOf(threads: readonly (readonly number[])[]): Kinds {
  const known = new Map<string, number>();
  const shafts: (readonly number[])[] = [];
  const kind = Uint16Array.from(threads, (own) => {
    const name = own.join(' ');
    let number = known.get(name);
    if (number === undefined) {
      number = shafts.push(own) - 1;
      known.set(name, number);
    }
    return number;
  });
  return { kind, shafts };
}
