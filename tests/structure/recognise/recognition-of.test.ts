import { describe, expect, it } from 'vitest';
import { DEFAULT_SETT, DEFAULT_YARNS } from '../../../src/draft/yaml/yarns-given.js';
import { structures, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { recognise } from '../../../src/structure/recognise/recognise.js';
import { recognitionOf, understoodDraft } from '../../../src/structure/recognise/recognition-of.js';
import { bareWeave } from '../../bare.js';

/** The usual draft of a structure in bare numbers, begun some threads later. */
function begunAt(later: number, structure: (typeof structures)[number]) {
  const turn = <T>(list: readonly T[]): T[] => [...list.slice(later), ...list.slice(0, later)];
  const { threading, tieUp, treadling } = weaveOf(structure, structure.profile);
  const weave = bareWeave({ threading: turn(threading), tieUp, treadling: turn(treadling) });
  const colours = { warp: weave.threading.map(() => 0), weft: weave.treadling.map(() => 1) };
  return { ...weave, ...colours, yarns: DEFAULT_YARNS, sett: DEFAULT_SETT };
}

describe.each(structures.map((structure) => [structure.name, structure] as const))('%s', (_, structure) => {
  it('with its units, is not recognised again where it begins with a unit: the answer would be the same', () => {
    const draft = begunAt(0, structure);
    const made = understoodDraft(draft);
    expect(recognitionOf(made)).toBe(recognitionOf(draft));
    expect(recognitionOf(made)).toEqual(recognise(made));
  });

  it('is recognised again where units begin elsewhere', () => {
    const made = understoodDraft(begunAt(1, structure));
    expect(recognitionOf(made)).toEqual(recognise(made));
  });
});
