import type { Yarn } from '../colour/yarn.js';
import { type Draft, EVEN_WIDTHS, type Sett } from '../draft/draft.js';
import type { Manifest, ManifestCandidate } from './manifest-schema.js';

/** The draft of a cloth, ready to be drawn, scored or planned. */
export function draftOf(candidate: ManifestCandidate, manifest: Manifest): Draft {
  const { draft } = candidate;
  const yarns = manifest.palette.map(({ tex, ...yarn }): Yarn => (tex === undefined ? yarn : { ...yarn, tex }));
  const indexOf = new Map(yarns.map((yarn, index) => [yarn.letter, index]));
  const colours = (order: string): number[] => Array.from(order, (letter) => indexOf.get(letter)!);
  return {
    threading: draft.threading.map(listed),
    tieUp: draft.tieUp,
    treadling: draft.treadling.map(listed),
    pickKinds: draft.pickKinds,
    endUnits: draft.endUnits ?? draft.threading.map(() => 1),
    pickUnits: draft.pickUnits ?? draft.treadling.map(() => 1),
    widths: draft.widths ?? EVEN_WIDTHS,
    yarns,
    warp: colours(draft.warp),
    weft: colours(draft.weft),
    sett: manifest.question.sett satisfies Sett,
  };
}

function listed(on: number | readonly number[]): readonly number[] {
  return typeof on === 'number' ? [on] : on;
}
