import { LONGEST_NAME } from '../../input/given.js';
import { Problem, quote } from '../../problem.js';
import { layClosed, perBlock, type Unit } from '../model/unit.js';
import { RING_BLOCKS } from './overshot.js';

/** An overshot threading made of the letters of a name. */
interface NameDraft {
  /** The letters used: accents taken off, spaces and signs left out. */
  readonly letters: string;
  /** Shaft of each letter. */
  readonly letterShafts: readonly number[];
  /**
   * Number of places, the seam included, where two neighbours are both odd or both even; each takes an incidental end.
   */
  readonly gaps: number;
  /** Which of the 2^gaps drafts this is, from 0. */
  readonly alternative: number;
  readonly threading: readonly number[];
  /** Whether each end is incidental. */
  readonly incidental: readonly boolean[];
  /** The threading as a profile of overshot: for each end, the block of the step that leads to it. */
  readonly profile: readonly string[];
}

interface NameDraftOptions {
  /** Which of the 2^gaps drafts, from 0: read as binary, the first gap first, 0 for the lower shaft. */
  readonly alternative?: number;
  /** Mirror the threading; the first and the last end are not repeated. */
  readonly mirrored?: boolean;
  /** Shafts of letters (A to Z) that differ from the usual table: some weavers put Y and Z on shaft 4. */
  readonly letters?: Readonly<Record<string, number>>;
}

/** Longest float that the usual choice allows, in ends: what household setts bear (common practice, no source). */
const FLOAT_LIMIT = 7;
/** Most gaps that are tried in every combination; in names with more, each gap takes the lower shaft. */
const GAPS_TRIED = 12;

/** Letters to shafts in rotation: A 1, B 2, C 3, D 4, E 1 … (Mitchell 1982 by way of a guild note; van der Hoogt). */
function letterShaft(letter: string): number {
  return ((letter.charCodeAt(0) - 65) % 4) + 1;
}

/** The shafts as blocks: after a shaft of the same parity, an incidental end on one of two shafts goes first. */
const LETTERS = {
  blocks: perBlock(['1', '2', '3', '4'], (letter): Unit<number> => {
    const between = Number(letter) % 2 === 1 ? [[2], [4]] : [[1], [3]];
    const same = Number(letter) % 2 === 1 ? [1, 3] : [2, 4];
    return { lay: [Number(letter)], after: Object.fromEntries(same.map((shaft) => [shaft, { first: between }])) };
  }),
};

/**
 * Drafts a name, to be woven as overshot with the returned `profile`. Without `alternative`, the usual draft is chosen:
 * floats within seven ends, then the fewest one-step blocks, then the lower shafts.
 *
 * @throws Problem if the text has no letter, or there is no draft of that number
 */
export function nameDraft(text: string, options: NameDraftOptions = {}): NameDraft {
  const letters = text
    .normalize('NFD')
    .toUpperCase()
    .replace(/[^A-Z]/g, '');
  if (letters === '') throw new Problem(`name draft ${quote(text)}: found no letter from A to Z`);
  if (letters.length > LONGEST_NAME) {
    throw new Problem(`name draft ${quote(text)}: found ${letters.length} letters; expected ${LONGEST_NAME} at most`);
  }
  const letterShafts = [...letters].map((letter) => options.letters?.[letter] ?? letterShaft(letter));
  const gapAfter = letterShafts.map((shaft, i) => (shaft - letterShafts[(i + 1) % letterShafts.length]!) % 2 === 0);
  const gaps = gapAfter.filter(Boolean).length;
  const { alternative = usual(letterShafts, gapAfter, gaps), mirrored = false } = options;
  if (!Number.isInteger(alternative) || alternative < 0 || alternative >= 2 ** gaps) {
    throw new Problem(`name draft ${quote(text)}: no draft ${alternative + 1}; there are ${2 ** gaps}`);
  }
  const ends = lay(letterShafts, gapAfter, gaps, alternative);
  const all = mirrored ? [...ends, ...ends.slice(1, -1).reverse()] : ends;
  const threading = all.map((end) => end.shaft);
  return {
    letters,
    letterShafts,
    gaps,
    alternative,
    threading,
    incidental: all.map((end) => end.incidental),
    profile: stepsOf(threading),
  };
}

function lay(
  letterShafts: readonly number[],
  gapAfter: readonly boolean[],
  gaps: number,
  alternative: number,
): { shaft: number; incidental: boolean }[] {
  let passed = 0;
  const choices = gapAfter.map((gap) => (gap ? Math.floor(alternative / 2 ** (gaps - 1 - passed++)) % 2 : 0));
  const before = (element: number): number => choices.at(element - 1)!;
  return layClosed(LETTERS, letterShafts.map(String), before).map(({ name, incidental }) => ({
    shaft: name,
    incidental,
  }));
}

/** The block of the step that leads to each end. */
function stepsOf(threading: readonly number[]): string[] {
  return threading.map((shaft, i) => {
    const before = threading.at(i - 1)!;
    const low = shaft % 4 === before - 1 || shaft === before - 1 ? shaft : before;
    return RING_BLOCKS[low - 1]!;
  });
}

function usual(letterShafts: readonly number[], gapAfter: readonly boolean[], gaps: number): number {
  if (gaps > GAPS_TRIED) return 0;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let alternative = 0; alternative < 2 ** gaps; alternative++) {
    const ends = lay(letterShafts, gapAfter, gaps, alternative);
    const runs = runsOf(stepsOf(ends.map((end) => end.shaft)));
    const excess = Math.max(0, Math.max(...runs) + 1 - FLOAT_LIMIT);
    const cost = excess * 1000 + runs.filter((run) => run === 1).length;
    if (cost < least) {
      least = cost;
      best = alternative;
    }
  }
  return best;
}

/** Lengths of the runs of equal words in a cyclic list. */
function runsOf(ring: readonly string[]): number[] {
  const from = Math.max(
    0,
    ring.findIndex((word, i) => word !== ring.at(i - 1)),
  );
  const runs: number[] = [];
  for (let i = 0; i < ring.length; i++) {
    const at = (from + i) % ring.length;
    if (i > 0 && ring[at] === ring.at(at - 1)) runs[runs.length - 1]!++;
    else runs.push(1);
  }
  return runs;
}
