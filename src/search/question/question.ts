import type { Yarn } from '../../colour/yarn.js';
import type { Draft, Sett } from '../../draft/draft.js';
import type { Seen } from '../../draft/point-of-view.js';
import type { By, Fill } from '../../order/laid-order.js';
import type { Order } from '../../order/order.js';
import { FLAT } from '../../score/contrast/contrast.js';
import type { FloatLimit } from '../../score/model/float-limit.js';
import type { Weights } from '../../score/parts/parts.js';
import type { Sameness } from '../../score/symmetry/canonical-cloth.js';
import type { Loom } from '../../structure/loom/loom-fit.js';

/** The starts to try: every start of both orders, the first thread only, or every start of the weft order only. */
export const STARTS = ['all', 'first', 'weft'] as const;
/**
 * The weft order: the same as the warp's, its exchange, every order independently, or a fixed one (one yarn: length 1).
 */
export type WeftRule =
  | { readonly rule: 'same' | 'exchange' | 'own' }
  | { readonly rule: 'fixed'; readonly order: Order };

/** A name to be drafted as a threading, and which of its drafts to use. */
export interface NameAsked {
  readonly text: string;
  /** The usual draft, all drafts, or one draft by its number from 1. */
  readonly drafts: 'usual' | 'all' | number;
  readonly mirrored: boolean;
  /** Shafts of letters that differ from the usual table. */
  readonly letters: Readonly<Record<string, number>>;
}

/** Block orders that are searched, as numbers of elements, for the threading, the treadling or both. */
export interface ProfilesAsked {
  readonly lengths: readonly number[];
  /** As drawn in, where the treadling is not searched or given. */
  readonly threaded?: { readonly mirrored: boolean };
  /** With `together`, any blocks may show together on a pick. */
  readonly treadled?: { readonly mirrored: boolean; readonly together: boolean };
}

/** Limits above which a candidate is set aside and counted. Absent: no limit. */
export interface Limits {
  /** Longest float: in threads, or in millimetres. */
  readonly float: FloatLimit;
  /** Ends or picks in one repeat, whichever is more. */
  readonly repeat: number;
  /** Least motif contrast, which fine textures do not reach. Absent: as {@link leastContrast} says. */
  readonly contrast?: number;
  readonly warpChanges?: number;
  readonly weftChanges?: number;
  readonly shuttles?: number;
  readonly treadles?: number;
  readonly shafts?: number;
}

export type { Sameness };

/** Cloths that are already woven, which a search leaves out. */
export interface Done {
  /** The files they were read from, as written in the question; of a path from the root the last name. */
  readonly files: readonly string[];
  readonly drafts: readonly Draft[];
  /** Least distance (0 to 1) from each of them; nearer cloths are left out too. Absent: only the same cloths are. */
  readonly unlike?: number;
}

/** A complete question: defaults filled in, flags applied, orders and yarns read. */
export interface Question {
  /** Names of structures; empty if a draft is given. */
  readonly structures: readonly string[];
  /** Its file as written in the question; of a path from the root the last name. */
  readonly draft?: { readonly file: string; readonly draft: Draft };
  /**
   * Names of manners of treadling; empty: the first of each structure. For a draft, `its own` is the draft's treadling.
   */
  readonly treadlings: readonly string[];
  /** The name to be drafted as the threading. */
  readonly name?: NameAsked;
  /** The loom; a cloth that needs more than it has is set aside. */
  readonly loom?: Loom;
  /** How many blocks the structures have; absent: as many as usual, or as the block orders name. */
  readonly blocks?: number;
  /** Block order; `order`: the colour order chooses the blocks; empty: every block of the structure once. */
  readonly profile: readonly string[] | 'order';
  /** Block order of the treadling; empty: as drawn in. */
  readonly treadled: readonly string[];
  /** Set if block orders are searched; `profile` and `treadled` are then empty where they are. */
  readonly profiles?: ProfilesAsked;
  readonly yarns: readonly Yarn[];
  /** Lengths of the orders to try; empty if orders are given. */
  readonly lengths: readonly number[];
  readonly orders: readonly Order[];
  /** Set if the draft's threading and warp order are on the loom, and so stay unchanged. */
  readonly onTheLoom?: true;
  /** The one warp order, if the orders to try are for the weft alone. */
  readonly warp?: Order;
  readonly weft: WeftRule;
  /** Palette index of the yarn for tabby picks. */
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
  /** Most cloths shown. */
  readonly show: number;
  /** Set to show the best cloth of each niche; else the best cloths are shown, whatever their niche. */
  readonly oneOfEachKind?: true;
  /** From where cloth and drafts are drawn. */
  readonly seen: Seen;
  readonly seed: string;
  /** Number of restarts of a search by mutation, each with its own random numbers. */
  readonly tries: number;
}

/**
 * The motif contrast that a cloth must show. Orders that a person gives are never too fine, nor is any cloth where the
 * ranking asks for no contrast.
 */
export function leastContrast({ limits, orders, rank }: Pick<Question, 'limits' | 'orders' | 'rank'>): number {
  return limits.contrast ?? (orders.length > 0 || rank.contrast === 0 ? 0 : FLAT);
}
