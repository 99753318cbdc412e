import type { Yarn } from '../../colour/yarn.js';
import { under } from '../../input/given.js';
import { type KeyValues, readKeys } from '../../input/key.js';
import { parseSource, placed } from '../../input/source.js';
import type { Draft } from '../draft.js';
import { letters, readElements } from '../notation.js';
import { cycle } from '../repeat.js';
import { DRAFT_TABLE } from './draft-table.js';
import { repeatOf, unitsOver } from './repeats.js';
import { type Sheds, tiedUp } from './strands-given.js';
import { DEFAULT_SETT, DEFAULT_YARNS } from './yarns-given.js';

export { writeDraft } from './write-draft.js';
export { DEFAULT_SETT, DEFAULT_YARNS } from './yarns-given.js';

/**
 * Reads a draft that a person wrote (YAML; `file` is its name, for messages) and reduces it to one whole repeat.
 * Throws a Problem with file, line and column on any error, and on repeats of more than 2000 ends or picks.
 */
export function readDraft(text: string, file: string): Draft {
  const source = parseSource(text, file);
  return placed(source, () => wholeDraft(readKeys(DRAFT_TABLE, source.value)));
}

function wholeDraft(written: KeyValues<typeof DRAFT_TABLE>): Draft {
  const { name, threading, 'pick kinds': kinds, yarns = DEFAULT_YARNS, sett = DEFAULT_SETT, widths } = written;
  const warp = colours('warp', written.warp, yarns, 0);
  const weft = colours('weft', written.weft, yarns, yarns.length - 1);
  const { tieUp, treadling }: Sheds = tiedUp(written);
  const ends = repeatOf('ends', 'warp', threading, warp);
  const picks = repeatOf('picks', 'weft', treadling, kinds, weft);
  return {
    ...(name !== undefined && { name }),
    threading: cycle(threading, ends),
    tieUp,
    treadling: cycle(treadling, picks),
    pickKinds: cycle(kinds, picks),
    endUnits: under('units', () => unitsOver(written.units, threading, ends, 'ends')),
    pickUnits: under('pick units', () => unitsOver(written['pick units'], treadling, picks, 'picks')),
    widths,
    yarns,
    warp: cycle(warp, ends),
    weft: cycle(weft, picks),
    sett,
  };
}

/** Reads a colour order as palette indices; if there is none, every thread has the yarn `absent`. */
function colours(key: 'warp' | 'weft', text: string | undefined, yarns: readonly Yarn[], absent: number): number[] {
  if (text === undefined) return [absent];
  const alphabet = letters(yarns.map((yarn) => yarn.letter));
  return under(key, () => readElements(text, alphabet));
}
