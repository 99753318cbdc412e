import type { Yarn } from '../../colour/yarn.js';
import type { Draft, Sett } from '../../draft/draft.js';
import type { By, Fill } from '../../order/laid-order.js';
import type { Order } from '../../order/order.js';
import type { FloatLimit, Weights } from '../../score/rank/rank.js';
import type { Sameness } from '../../score/symmetry/canonical-cloth.js';
import type { Loom } from '../../structure/loom/loom-fit.js';

/** Where orders begin: both everywhere, both on the first thread, or the weft's alone everywhere. */
export const STARTS = ['all', 'first', 'weft'] as const;
/** The weft order: the warp's, its exchange, every order of its own, or one that is fixed (one yarn: length 1). */
export type WeftRule =
  | { readonly rule: 'same' | 'exchange' | 'own' }
  | { readonly rule: 'fixed'; readonly order: Order };

/** A threading made of the letters of a name, and which of its drafts. */
export interface NameAsked {
  readonly text: string;
  /** The usual draft, every one, or one by its number from 1. */
  readonly drafts: 'usual' | 'all' | number;
  readonly mirrored: boolean;
  /** Shafts of letters that are not on their usual ones. */
  readonly letters: Readonly<Record<string, number>>;
}

/** Above these a candidate is set aside and counted. Absent: no limit. */
export interface Limits {
  /** Longest float: in threads, or in millimetres. */
  readonly float: FloatLimit;
  /** Ends or picks in one repeat, whichever is more. */
  readonly repeat: number;
  readonly warpChanges?: number;
  readonly weftChanges?: number;
  readonly shuttles?: number;
  readonly treadles?: number;
  readonly shafts?: number;
}

export type { Sameness };

/** Cloths that were done before, which are left out. */
export interface Done {
  /** Where they were read from, as it was written. */
  readonly files: readonly string[];
  readonly drafts: readonly Draft[];
  /** What is less unlike one of them than this (0 to 1) is left out too; absent: only the very same cloths. */
  readonly unlike?: number;
}

/** What is asked, complete: defaults filled in, flags applied, orders and yarns understood. */
export interface Question {
  /** Names of known structures; empty where a draft is given. */
  readonly structures: readonly string[];
  readonly draft?: { readonly file: string; readonly draft: Draft };
  /** Manners of treadling, by name; empty: the first of each structure. For a draft, `its own` is the one it has. */
  readonly treadlings: readonly string[];
  /** The name that the threading spells, where there is one. */
  readonly name?: NameAsked;
  /** What the loom and its weaver have; a cloth that asks for more is set aside. */
  readonly loom?: Loom;
  /** Block order; `order` lets the colour order choose; empty: every block of the structure once. */
  readonly profile: readonly string[] | 'order';
  /** Block order of the treadling; empty: as drawn in. */
  readonly treadled: readonly string[];
  readonly yarns: readonly Yarn[];
  /** Lengths of the orders to list; empty where orders are given. */
  readonly lengths: readonly number[];
  readonly orders: readonly Order[];
  /** The draft's threading and warp order are on the loom: they stay as they are. */
  readonly onTheLoom?: true;
  /** The one order of the warp, where the listed orders are for the weft alone. */
  readonly warp?: Order;
  readonly weft: WeftRule;
  /** Index of the yarn that weaves the tabby, where there is one. */
  readonly tabby: number;
  readonly by: readonly By[];
  readonly fill: readonly Fill[];
  readonly times: readonly number[];
  readonly starts: (typeof STARTS)[number];
  readonly sett: Sett;
  readonly limits: Limits;
  readonly done?: Done;
  readonly rank: Weights;
  readonly same: readonly Sameness[];
  /** Cloths shown at the most. */
  readonly show: number;
  /** The best of each kind is shown; else the best, whatever their kind. */
  readonly oneOfEachKind?: true;
  readonly seed: string;
  /** How often a search by changes is made, each time with chances of its own. */
  readonly tries: number;
}
