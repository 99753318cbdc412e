import type { By, Fill } from '../../order/laid-order.js';
import type { FloatLimit } from '../../score/model/float-limit.js';
import { PARTS, type Part, type Weights } from '../../score/parts/parts.js';
import type { Filters } from './filters.js';

/** Sizes at which cloth is shown. */
export const SIZES = ['motif', 'actual', 'half', 'quarter', 'close'] as const;
export type Size = (typeof SIZES)[number];
/** Orders of the list. */
const ORDERS = ['best', 'calm', 'lively', 'small', 'liked'] as const;
export type Ordering = (typeof ORDERS)[number];
/** Viewing distances in metres; 0 is near enough to see every thread. */
export const STEPS = [0, 0.6, 1, 1.5, 2, 3, 4, 6, 8, 10] as const;
/** Most cloths in a comparison. */
export const MOST_COMPARED = 6;
/** Millimetres in the units in which a float limit may be given. */
const UNITS: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: 25.4, '"': 25.4, '″': 25.4 };

/** The whole view, which is stored in the address, so that it can be bookmarked. */
export interface View {
  readonly weights: Weights;
  readonly filters: Filters;
  readonly order: Ordering;
  readonly find: string;
  /** The page of the list, from 1. */
  readonly page: number;
  /** Whether only kept cloths are listed. */
  readonly kept: boolean;
  readonly size: Size;
  readonly metres: number;
  readonly grey: boolean;
  /** Code of the cloth whose details are open. */
  readonly cloth?: string;
  readonly compare: readonly string[];
  /** Whether the comparison is open. */
  readonly comparing: boolean;
}

/** The view with which a gallery opens. */
export function usualView(weights: Weights): View {
  return {
    weights,
    filters: {},
    order: 'best',
    find: '',
    page: 1,
    kept: false,
    size: 'motif',
    metres: 0,
    grey: false,
    compare: [],
    comparing: false,
  };
}

const COUNTS = ['repeat', 'knots', 'shuttles', 'darkFrom', 'darkTo', 'times'] as const;

/** Writes a view as the part of an address after `#`; values equal to `usual` are left out. */
export function addressOf(view: View, usual: View): string {
  const said = new URLSearchParams();
  const say = (key: string, value: string | number | undefined, as?: string | number): void => {
    if (value !== undefined && value !== as) said.set(key, String(value));
  };
  say('rank', weightsText(view.weights), weightsText(usual.weights));
  const { float, structure, by, fill } = view.filters;
  say('float', float && floatText(float));
  for (const key of COUNTS) say(key, view.filters[key]);
  say('structure', structure);
  say('by', by);
  say('fill', fill);
  say('order', view.order, usual.order);
  say('find', view.find, '');
  say('page', view.page, 1);
  say('kept', view.kept ? 'only' : undefined);
  say('size', view.size, usual.size);
  say('from', view.metres, 0);
  say('grey', view.grey ? 'yes' : undefined);
  say('cloth', view.cloth);
  say('compare', view.compare.join('.'), '');
  say('beside', view.comparing ? 'yes' : undefined);
  // Commas and colons are not encoded, so that a person can read the address.
  return said.toString().replace(/%2C/g, ',').replace(/%3A/g, ':');
}

/** Reads a view from an address; missing or invalid values are as in `usual`. `codes` are the gallery's cloths. */
export function viewOf(address: string, usual: View, codes: ReadonlySet<string>): View {
  const said = new URLSearchParams(address);
  const word = <W extends string>(key: string, known: readonly W[]): W | undefined =>
    known.find((each) => each === said.get(key));
  const count = (key: string): number | undefined => {
    const text = said.get(key);
    return text !== null && /^\d{1,5}(\.\d{1,3})?$/.test(text) ? Number(text) : undefined;
  };
  const given = <T>(key: string, value: T | undefined) => (value === undefined ? {} : { [key]: value });
  const compare = [...new Set((said.get('compare') ?? '').split('.'))].filter((code) => codes.has(code));
  const cloth = said.get('cloth') ?? (codes.has(address) ? address : undefined);
  const metres = count('from');
  return {
    weights: weightsOf(said.get('rank')) ?? usual.weights,
    filters: {
      ...given('float', floatOf(said.get('float') ?? '')),
      ...Object.assign({}, ...COUNTS.map((key) => given(key, count(key)))),
      ...given('structure', said.get('structure') ?? undefined),
      ...given('by', word<By>('by', ['thread', 'unit', 'block'])),
      ...given('fill', word<Fill>('fill', ['solid', 'alternate', 'nest'])),
    },
    order: word('order', ORDERS) ?? usual.order,
    find: said.get('find') ?? '',
    page: Math.max(1, Math.floor(count('page') ?? 1)),
    kept: said.get('kept') === 'only',
    size: word('size', SIZES) ?? usual.size,
    metres: STEPS.find((step) => step === metres) ?? 0,
    grey: said.get('grey') === 'yes',
    ...(cloth !== undefined && codes.has(cloth) && { cloth }),
    compare: compare.slice(0, MOST_COMPARED),
    comparing: said.get('beside') === 'yes' && compare.length > 1,
  };
}

/** `contrast:3,symmetry:2`. */
function weightsText(weights: Weights): string {
  return PARTS.filter((part) => weights[part] > 0)
    .map((part) => `${part}:${weights[part]}`)
    .join(',');
}

function weightsOf(text: string | null): Weights | undefined {
  if (text === null) return undefined;
  const weights = Object.fromEntries(PARTS.map((part) => [part, 0])) as Record<Part, number>;
  for (const [, name, weight] of text.matchAll(/([a-z]+):(\d{1,3}(?:\.\d{1,20})?)/g)) {
    const part = PARTS.find((each) => each === name);
    if (part !== undefined) weights[part] = Math.min(100, Number(weight));
  }
  return weights;
}

/** Writes a float limit: `7`, `9.5 mm`. */
export function floatText(limit: FloatLimit): string {
  return 'mm' in limit ? `${limit.mm} mm` : String(limit.threads);
}

/** Reads a float limit: `7` threads, `9.5 mm`, `3/8 in`, `1 1/2 in`; undefined if the text is none of these. */
export function floatOf(text: string): FloatLimit | undefined {
  const found = /^(?:(\d{1,4}(?:\.\d{1,9})?)|(?:(\d{1,4})\s+)?(\d{1,4})\/(\d{1,4}))\s*(mm|cm|in|"|″)?$/.exec(
    text.trim(),
  );
  if (found === null) return undefined;
  const [, decimal, whole = '0', above, below, unit] = found;
  const given = decimal === undefined ? Number(whole) + Number(above) / Number(below) : Number(decimal);
  if (!(given > 0 && given < 10_000) || (unit === undefined && decimal === undefined)) return undefined;
  return unit === undefined ? { threads: given } : { mm: Number((given * UNITS[unit]!).toFixed(6)) };
}
