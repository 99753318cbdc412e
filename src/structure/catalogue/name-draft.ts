import { LONGEST_NAME } from '../../input/given.js';
import { Problem, quote } from '../../problem.js';
import type { Structure } from '../model/structure.js';
import { layClosed, perBlock, type Unit } from '../model/unit.js';
import { RING_BLOCKS, RING_STEPS } from './overshot.js';

/** An overshot threading made of the letters of a name. */
interface NameDraft {
  /** The letters used, from A to Z: accents taken off, Ø as O, ß as SS; spaces, signs and numbers left out. */
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

/** An end of the threading: its shaft, and whether it belongs to no letter. */
interface End {
  readonly shaft: number;
  readonly incidental: boolean;
}

interface NameDraftOptions {
  /** Which of the 2^gaps drafts, from 0: read as binary, the first gap first, 0 for the lower shaft. */
  readonly alternative?: number;
  /** Mirror the threading; the first and the last end are not repeated. */
  readonly mirrored?: boolean;
  /** Shafts of letters (A to Z) that differ from the usual table: some weavers put Y and Z on shaft 4. */
  readonly letters?: Readonly<Record<string, number>>;
}

/** Base letters of those that are not a letter and its accent (common practice, no source). */
const BASE_LETTERS: Readonly<Record<string, string>> = {
  Ø: 'O',
  Ł: 'L',
  Æ: 'AE',
  Œ: 'OE',
  Þ: 'TH',
  Ð: 'D',
  Đ: 'D',
  Ħ: 'H',
  Ŧ: 'T',
  Ŋ: 'NG',
  Ə: 'E',
  Ɛ: 'E',
  Ɔ: 'O',
  Ɓ: 'B',
  Ɗ: 'D',
  Ƙ: 'K',
  ĸ: 'K',
};

/** Longest float that the usual choice allows, in ends: what household setts bear (common practice, no source). */
const FLOAT_LIMIT = 7;
/** Length of a run that never ends: longer than any other. */
const ENDLESS = 1e6;
/** Most gaps that are tried in every combination; in names with more, each gap takes the lower shaft. */
const GAPS_TRIED = 12;

/** Letters to shafts in rotation: A 1, B 2, C 3, D 4, E 1 … (Mitchell 1982 by way of a guild note; van der Hoogt). */
function letterShaft(letter: string): number {
  return ((letter.charCodeAt(0) - 65) % 4) + 1;
}

/**
 * The letters of a name in any Latin alphabet, from A to Z; spaces, signs and numbers are left out.
 *
 * @throws Problem on a letter of another alphabet, or if there is none
 */
function lettersOf(text: string): string {
  const letters = [...text.normalize('NFKD').toUpperCase()]
    .map((sign) => BASE_LETTERS[sign] ?? sign)
    .filter((sign) => /^\p{L}+$/u.test(sign));
  const strange = letters.find((letter) => !/^[A-Z]+$/.test(letter));
  if (strange !== undefined)
    throw new Problem(`name draft ${quote(text)}: found ${quote(strange)}; expected letters of a Latin alphabet`);
  const all = letters.join('');
  if (all === '') throw new Problem(`name draft ${quote(text)}: found no letter from A to Z`);
  if (all.length > LONGEST_NAME)
    throw new Problem(`name draft ${quote(text)}: found ${all.length} letters; expected ${LONGEST_NAME} at most`);
  return all;
}

/** The blocks that the letters of a name stand for, in rotation: of two blocks A C E … are the first. */
export function letterBlocks(text: string, blocks: readonly string[]): string[] {
  return [...lettersOf(text)].map((letter) => blocks[(letter.charCodeAt(0) - 65) % blocks.length]!);
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
 * one that holds together if there is one, with floats within seven ends, then the fewest one-step blocks, then the lower
 * shafts.
 *
 * @throws Problem if the text has no letter, or there is no draft of that number
 */
export function nameDraft(text: string, options: NameDraftOptions = {}): NameDraft {
  const letters = lettersOf(text);
  const letterShafts = [...letters].map((letter) => options.letters?.[letter] ?? letterShaft(letter));
  const gapAfter = letterShafts.map((shaft, i) => (shaft - letterShafts[(i + 1) % letterShafts.length]!) % 2 === 0);
  const gaps = gapAfter.filter(Boolean).length;
  const { alternative = usual(letterShafts, gapAfter, gaps), mirrored = false } = options;
  if (!Number.isInteger(alternative) || alternative < 0 || alternative >= 2 ** gaps) {
    throw new Problem(`name draft ${quote(text)}: no draft ${alternative + 1}; there are ${2 ** gaps}`);
  }
  const ends = widened(lay(letterShafts, gapAfter, gaps, alternative), gaps, letterShafts.length);
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

function lay(letterShafts: readonly number[], gapAfter: readonly boolean[], gaps: number, alternative: number): End[] {
  let passed = 0;
  const choices = gapAfter.map((gap) => (gap ? Math.floor(alternative / 2 ** (gaps - 1 - passed++)) % 2 : 0));
  const before = (element: number): number => choices.at(element - 1)!;
  return layClosed(LETTERS, letterShafts.map(String), before).map(({ name, incidental }) => ({
    shaft: name,
    incidental,
  }));
}

/**
 * One letter, or two that only take turns on neighbouring shafts, would make one endless float; so the walk goes one
 * shaft further at its end, and back.
 */
function widened(ends: readonly End[], gaps: number, letters: number): readonly End[] {
  const last = ends.at(-1)!.shaft;
  if ((gaps > 0 && letters > 1) || new Set(ends.map(({ shaft }) => shaft)).size > 2) return ends;
  const beyond = [(last % 4) + 1, ((last + 2) % 4) + 1].find((shaft) => shaft !== ends[0]!.shaft)!;
  return [...ends, { shaft: beyond, incidental: true }, { shaft: last, incidental: true }];
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
  // Of a long name the lower shafts are tried, and the last gap on the upper one.
  const tried = gaps > GAPS_TRIED ? 2 : 2 ** gaps;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let alternative = 0; alternative < tried; alternative++) {
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

/** Lengths of the runs of equal words in a cyclic list; one that is all the same runs on without end. */
function runsOf(ring: readonly string[]): number[] {
  const from = ring.findIndex((word, i) => word !== ring.at(i - 1));
  if (from < 0) return [ENDLESS];
  const runs: number[] = [];
  for (let i = 0; i < ring.length; i++) {
    const at = (from + i) % ring.length;
    if (ring[at] === ring.at(at - 1)) runs[runs.length - 1]!++;
    else runs.push(1);
  }
  return runs;
}

/** Whether a structure is a straight twill on four shafts, whose threading a name may lead from shaft to shaft. */
function isStraightTwill({ shafts, threading, tieUp }: Structure): boolean {
  const [unit, ...others] = Object.values(threading.blocks);
  return shafts === 4 && others.length === 0 && unit!.lay.join() === '1,2,3,4' && '4' in tieUp;
}

/** How a structure takes a name: steps from shaft to shaft, or a block for each letter. */
export type Spelling = 'steps' | 'blocks';

/** The structure to be woven from a name, and how; undefined if it has neither steps nor blocks. */
export function spelledStructure(structure: Structure): { structure: Structure; by: Spelling } | undefined {
  // The letters lead round a ring of four shafts; on more of them each names a block.
  if (structure.name === 'overshot' && structure.shafts === 4) return { structure, by: 'steps' };
  if (isStraightTwill(structure)) {
    const manners = structure.manners.map((manner) => ({
      ...manner,
      blocks: perBlock(RING_BLOCKS, () => manner.blocks.A!),
    }));
    return { structure: { ...structure, blocks: RING_BLOCKS, threading: RING_STEPS, manners }, by: 'steps' };
  }
  return structure.blocks.length > 1 ? { structure, by: 'blocks' } : undefined;
}
