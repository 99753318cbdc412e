import type { Draft } from '../../draft/draft.js';
import { smallestPeriod } from '../../order/order.js';
import type { WarpPlan } from './warp-plan.js';

/** One line of a list: a group of ends, or of picks, that is worked and checked by itself. */
export interface GroupLine {
  /** First and last thread, numbered from 1 within the list. */
  readonly from: number;
  readonly to: number;
  /** What is said of each thread of the group: shaft and yarn of an end, `1D 2D 3L 4D`. */
  readonly ends: readonly string[];
  /** How many times in a row the group occurs. */
  readonly times: number;
}

/** A part of the warp as it is threaded; the lines of repeats are those of one repeat. */
export interface ThreadingPart {
  readonly what: 'first border' | 'repeats' | 'balance' | 'last border';
  readonly times: number;
  /** Ends of the part, all its repeats together. */
  readonly ends: number;
  readonly lines: readonly GroupLine[];
}

/** Most threads in a group that the eye takes in at once (common practice, no source). */
export const GROUP = 8;

/** The threading list of one repeat, in groups of whole units or of whole repeats of the threading. */
export function threadingLines({ pieces: [piece], yarns }: Pick<WarpPlan, 'pieces' | 'yarns'>): GroupLine[] {
  const { threading, warp } = piece!.draft;
  const ends = threading.map((shafts, i) => endWords({ shafts, yarn: warp[i]! }, yarns));
  return inGroups(ends, groupSizes(piece!.draft));
}

/** The whole warp in the order in which it is threaded: first border, repeats, balance, last border. */
export function threadingParts(warp: WarpPlan): ThreadingPart[] {
  const { ends, yarns, border, repeat, repeats, balance } = warp;
  const said = ends.map((end) => endWords(end, yarns));
  const plainly = (words: readonly string[]): GroupLine[] => inGroups(words, evenSizes(words.length, GROUP));
  const field = border + repeats * repeat;
  const parts: ThreadingPart[] = [
    { what: 'first border', times: 1, ends: border, lines: plainly(said.slice(0, border)) },
    { what: 'repeats', times: repeats, ends: repeats * repeat, lines: threadingLines(warp) },
    { what: 'balance', times: 1, ends: balance, lines: plainly(said.slice(field, field + balance)) },
    { what: 'last border', times: 1, ends: border, lines: plainly(said.slice(field + balance)) },
  ];
  return parts.filter((part) => part.ends > 0);
}

/** Puts threads into groups of given sizes; equal groups in a row share a line. */
export function inGroups(said: readonly string[], sizes: readonly number[]): GroupLine[] {
  const lines: { from: number; to: number; ends: string[]; times: number }[] = [];
  let at = 0;
  for (const size of sizes) {
    const ends = said.slice(at, at + size);
    const last = lines.at(-1);
    at += size;
    if (last !== undefined && last.ends.join() === ends.join()) {
      last.times++;
      last.to = at;
    } else lines.push({ from: at - size + 1, to: at, ends, times: 1 });
  }
  return lines;
}

/** A stretch of a list with a heading of its own. */
export interface ListSection {
  readonly title: string;
  readonly lines: readonly GroupLine[];
}

/** A section of a gamp: its number, its colour order, its first thread, numbered from 1, and its threads. */
interface Section {
  readonly number: number;
  readonly order: string;
  readonly from: number;
  readonly threads: number;
}

/** Divides a list into the sections of a gamp and the separators between them; what recurs in a section is grouped. */
export function inSections(said: readonly string[], sections: readonly Section[], size: number): ListSection[] {
  const numbered = (from: number, to: number): GroupLine[] => {
    const own = said.slice(from, to);
    const period = smallestPeriod(own.map((word) => own.indexOf(word)));
    const sizes = Array.from({ length: Math.ceil(own.length / period) }, (_, r) =>
      evenSizes(Math.min(period, own.length - r * period), size),
    );
    return inGroups(own, sizes.flat()).map((line) => ({ ...line, from: line.from + from, to: line.to + from }));
  };
  let at = 0;
  const found = sections.flatMap(({ number, order, from, threads }): ListSection[] => {
    const start = from - 1;
    const before = start > at ? [{ title: 'separator', lines: numbered(at, start) }] : [];
    at = start + threads;
    return [...before, { title: `section ${number}, ${order}: ${from} to ${at}`, lines: numbered(start, at) }];
  });
  return at < said.length ? [...found, { title: 'separator', lines: numbered(at, said.length) }] : found;
}

/** The threading of a gamp, section by section. */
export function threadingSections(warp: WarpPlan, sections: readonly Section[]): ListSection[] {
  const said = warp.ends.map((end) => endWords(end, warp.yarns));
  return inSections(said, sections, groupFor(threadingPeriod(warp.pieces[0]!.draft)));
}

/** Sizes of groups of `size` threads, the last of which may be smaller. */
export function evenSizes(threads: number, size: number): number[] {
  return Array.from({ length: Math.ceil(threads / size) }, (_, g) => Math.min(size, threads - g * size));
}

/** The size of groups for threads that recur after `period`: whole periods up to {@link GROUP}, where they fit. */
export function groupFor(period: number): number {
  return period <= GROUP ? period * Math.floor(GROUP / period) : GROUP;
}

/** `3L`: the shaft and the yarn of an end; `1+3L` if it is on two shafts. */
function endWords({ shafts, yarn }: WarpPlan['ends'][number], yarns: WarpPlan['yarns']): string {
  return `${shafts.join('+')}${yarns[yarn]!.letter}`;
}

/** Numbers of ends in the groups in which a repeat is threaded. */
function groupSizes(draft: Draft): number[] {
  const ends = draft.threading.length;
  if (draft.endUnits.some((unit) => unit > 1)) return merged(draft.endUnits);
  return evenSizes(ends, groupFor(threadingPeriod(draft)));
}

/** Merges neighbouring units into groups of at most {@link GROUP} ends. */
function merged(units: readonly number[]): number[] {
  const groups: number[] = [];
  for (const unit of units) {
    const last = groups.at(-1);
    if (last !== undefined && last + unit <= GROUP) groups[groups.length - 1] = last + unit;
    else groups.push(unit);
  }
  return groups.flatMap((size) => (size <= GROUP * 2 ? [size] : evenSizes(size, GROUP)));
}

/** Ends after which the threading recurs. */
function threadingPeriod({ threading }: Draft): number {
  const words = threading.map((shafts) => shafts.join('+'));
  return smallestPeriod(words.map((word) => words.indexOf(word)));
}
