import type { Weave } from '../draft/draft.js';
import { recognise } from './recognise.js';
import { weaveOf } from './weave.js';

/** A manner of treadling on a threading that is there. */
export interface MannerOn {
  readonly name: string;
  /** The weave with that manner's tie-up and treadling; its threading is the one that was given. */
  readonly weave: Weave;
}

/**
 * The other manners of treadling of a weave's structure, on the weave's own threading, as drawn in. None where no
 * structure is certain or likely, or where the structure would thread these blocks otherwise, end for end.
 */
export function mannersOn(weave: Weave): MannerOn[] {
  const { structure, confidence, ends, manner: own, renumbered, turned } = recognise(weave);
  const sure = confidence === 'certain' || confidence === 'likely';
  if (structure === undefined || ends.blocks === undefined || !sure || turned || weave.companions) return [];
  const here = (shaft: number): number => renumbered?.get(shaft) ?? shaft;
  const threaded = (threading: Weave['threading']): string => threading.map((on) => on.join()).join(' ');
  const blocks = ends.blocks;
  return structure.manners.flatMap(({ name }) => {
    if (name === own) return [];
    const { threading, tieUp, treadling, pickKinds, pickUnits, widths, companions } = weaveOf(structure, blocks, {
      manner: name,
    });
    if (companions || threaded(threading.map((on) => on.map(here))) !== threaded(weave.threading)) return [];
    const tied = tieUp.map((shafts) => shafts.map(here));
    return [{ name, weave: { ...weave, tieUp: tied, treadling, pickKinds, pickUnits, widths } }];
  });
}
