import type { Yarn } from '../colour/yarn.js';
import type { Draft, Sett } from '../draft/draft.js';
import type { Order } from '../order/order.js';
import type { Sameness } from '../score/clothkey.js';
import type { FloatLimit, Weights } from '../score/rank.js';

/** How an order is laid on the threads. */
export type By = 'thread' | 'unit' | 'block';
/** Whether an element's threads are all its colour, or its colour and the companion in turn. */
export type Fill = 'solid' | 'alternate';
/** The weft order: the warp's, its exchange, every order of its own, or one that is fixed (one yarn: length 1). */
export type WeftRule =
  | { readonly rule: 'same' | 'exchange' | 'own' }
  | { readonly rule: 'fixed'; readonly order: Order };

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

/** What is asked, complete: defaults filled in, flags applied, orders and yarns understood. */
export interface Question {
  /** Names of known structures; empty where a draft is given. */
  readonly structures: readonly string[];
  readonly draft?: { readonly file: string; readonly draft: Draft };
  /** Manners of treadling, by name; empty: the first of each structure. */
  readonly treadlings: readonly string[];
  /** Block order; `order` lets the colour order choose; empty: every block of the structure once. */
  readonly profile: readonly string[] | 'order';
  readonly yarns: readonly Yarn[];
  /** Lengths of the orders to list; empty where orders are given. */
  readonly lengths: readonly number[];
  readonly orders: readonly Order[];
  readonly weft: WeftRule;
  /** Index of the yarn that weaves the tabby, where there is one. */
  readonly tabby: number;
  readonly by: readonly By[];
  readonly fill: readonly Fill[];
  readonly times: readonly number[];
  readonly starts: 'all' | 'first';
  readonly sett: Sett;
  readonly limits: Limits;
  readonly rank: Weights;
  readonly same: readonly Sameness[];
  readonly show: number;
  readonly seed: string;
}
