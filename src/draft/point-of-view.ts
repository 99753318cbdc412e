import { describe, eachOf, type Given, Misread, textOf } from '../input/given.js';
import { type Key, withDefault } from '../input/key.js';
import { kind } from '../input/kinds.js';
import type { Draft } from './draft.js';

/** From where cloth and drafts are drawn: the edges on which the first pick, end 1 and the threading lie. */
export interface Seen {
  readonly pick: 'top' | 'bottom';
  readonly end: 'left' | 'right';
  readonly threading: 'above' | 'below';
}

/** As a weaver sees it at the loom: the cloth grows upward, away from her, towards the shafts. */
export const AT_THE_LOOM: Seen = { pick: 'bottom', end: 'left', threading: 'above' };
/** As galleries of earlier versions were drawn. */
export const DRAWN_DOWN: Seen = { pick: 'top', end: 'left', threading: 'above' };

/** The words for each place, the usual one first. */
const PLACES = { pick: ['bottom', 'top'], end: ['left', 'right'], threading: ['above', 'below'] } as const;
const WHAT = ['pick', 'end', 'threading'] as const;
const EXPECTED =
  'first pick top or bottom, end 1 left or right, threading above or below, such as "bottom, right, above"';

/** The key for the point of view, in every kind of file that has one. */
export const SEEN: Key<Seen> = withDefault(kind(EXPECTED, seenOf), 'bottom, left, above', {
  about: 'how pictures and drafts are drawn: first pick top or bottom, end 1 left or right, threading above or below',
  usual: 'bottom, left, above: as at the loom',
  oneOfEach: { 'first pick': PLACES.pick, 'end 1': PLACES.end, threading: PLACES.threading },
  example: 'bottom, right, above',
  argument: '<places>',
});

/** Reads some of the places; those that are not given are the usual. */
function seenOf(given: Given, expected: string): Seen {
  let seen: Partial<Seen> = {};
  eachOf(
    given,
    expected,
    (item) => {
      const word = textOf(item, expected).toLowerCase();
      const what = WHAT.find((each) => PLACES[each].some((place) => place === word));
      if (what === undefined || what in seen) throw new Misread(`found ${describe(given)}; expected ${expected}`);
      seen = { ...seen, [what]: word };
    },
    /[\s,;]+/,
  );
  return { ...AT_THE_LOOM, ...seen };
}

/** A point of view as its key is written. */
export function seenWritten({ pick, end, threading }: Seen): string {
  return `${pick}, ${end}, ${threading}`;
}

/** What a picture says of its point of view. */
export function seenInWords({ pick, end }: Seen): string {
  return `end 1 at the ${end}, the first pick at the ${pick}`;
}

/** What a draft says of it. */
export function draftSeenInWords(seen: Seen): string {
  return `${seenInWords(seen)}, threading ${seen.threading}`;
}

/** The draft with its threads in the order in which they are drawn, from left to right and from the top down. */
export function asDrawn<D extends Draft>(draft: D, seen: Seen): D {
  const across = <T>(list: readonly T[]): readonly T[] => (seen.end === 'right' ? list.toReversed() : list);
  const along = <T>(list: readonly T[]): readonly T[] => (seen.pick === 'bottom' ? list.toReversed() : list);
  return {
    ...draft,
    threading: across(draft.threading),
    warp: across(draft.warp),
    endUnits: across(draft.endUnits),
    treadling: along(draft.treadling),
    weft: along(draft.weft),
    pickKinds: along(draft.pickKinds),
    pickUnits: along(draft.pickUnits),
  };
}

/** The number, from 1, of the thread that is drawn at a place among `count`. */
export function numberAt(place: number, count: number, first: Seen['pick'] | Seen['end']): number {
  return first === 'bottom' || first === 'right' ? count - place : place + 1;
}
