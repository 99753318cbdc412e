import type { Draft } from '../../draft/draft.js';
import { mirrored, type Turn } from './fill-width.js';

/** The turns with which warp and weft are mirrored; an absent system is not mirrored. */
export interface Mirror {
  readonly warp?: Turn;
  readonly weft?: Turn;
}

/**
 * Mirrors a draft. Threading and warp colours are mirrored together, so that the cloth turns and not the stripes alone;
 * so are treadling and weft colours. If every other pick is tabby, the tabby keeps alternating and only the pattern
 * picks are mirrored.
 */
export function mirroredDraft(draft: Draft, { warp, weft }: Mirror): Draft {
  return { ...draft, ...(warp && mirroredWarp(draft, warp)), ...(weft && mirroredWeft(draft, weft)) };
}

/** `warp mirrored, single turns`; empty if nothing is mirrored. */
export function mirrorWords({ warp, weft }: Mirror): string {
  const said = (of: string, turn: Turn): string => `${of} mirrored, ${turn} turns`;
  if (warp !== undefined && warp === weft) return said('warp and weft', warp);
  return [...(warp ? [said('warp', warp)] : []), ...(weft ? [said('weft', weft)] : [])].join('; ');
}

function mirroredWarp({ threading, warp, endUnits }: Draft, turn: Turn): Partial<Draft> {
  const order = there(threading.length, turn);
  return {
    threading: order.map((i) => threading[i]!),
    warp: order.map((i) => warp[i]!),
    endUnits: units(endUnits, turn, 1),
  };
}

function mirroredWeft({ treadling, weft, pickKinds, pickUnits }: Draft, turn: Turn): Partial<Draft> {
  const steady = pickKinds.every((kind, j) => (kind === 'tabby') === (j % 2 === 1));
  const inPairs = steady && pickKinds.length % 2 === 0;
  const order = inPairs
    ? there(pickKinds.length / 2, turn).flatMap((pattern, at) => [2 * pattern, (2 * at + 1) % pickKinds.length])
    : there(pickKinds.length, turn);
  return {
    treadling: order.map((j) => treadling[j]!),
    weft: order.map((j) => weft[j]!),
    pickKinds: order.map((j) => pickKinds[j]!),
    pickUnits: units(pickUnits, turn, inPairs ? 2 : 1),
  };
}

/** Indices of `count` threads, forward and then back. */
function there(count: number, turn: Turn): readonly number[] {
  return mirrored(
    Array.from({ length: count }, (_, at) => at),
    turn,
  ).order;
}

/** Unit lengths, forward and then back; with single turns, the units at the turns lose `shared` threads. */
function units(list: readonly number[], turn: Turn, shared: number): readonly number[] {
  const back = list.toReversed();
  if (turn === 'single') {
    back[0]! -= shared;
    back[back.length - 1]! -= shared;
  }
  return [...list, ...back.filter((unit) => unit > 0)];
}
