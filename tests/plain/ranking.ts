// Every cloth of a question, ranked by whatever it asks: every word, every start, every cell, from the definitions.
import { values } from '../../src/colour/yarn.js';
import type { PickKind } from '../../src/draft/draft.js';
import type { Classic } from '../../src/score/likeness/novelty.js';
import { PARTS, type Part } from '../../src/score/parts/parts.js';
import { leastContrast, type Question } from '../../src/search/question/question.js';
import { findStructure, weaveOf } from '../../src/structure/catalogue/catalogue.js';
import { figure, line, mean, tone } from './contrast.js';
import * as plainFloats from './floats.js';
import { bits, outline, piece, shapes, solid, unlike } from './look.js';
import { type Cells, symmetry } from './symmetry.js';

export interface RankedCloth {
  readonly score: number;
  /** The name that all faces of the cloth share. */
  readonly name: string;
}

interface Strands {
  readonly units: readonly number[];
  readonly carries: readonly boolean[];
}

const ARC_MINUTE_AT_TWO_METRES = (2000 * Math.PI) / 10800;

const lcm = (a: number, b: number): number => {
  let multiple = a;
  while (multiple % b !== 0) multiple += a;
  return multiple;
};

const modulo = (a: number, b: number): number => ((a % b) + b) % b;

const wordsOf = (length: number, colours: number): number[][] =>
  length === 0
    ? [[]]
    : wordsOf(length - 1, colours).flatMap((word) => Array.from({ length: colours }, (_, c) => [...word, c]));

/** Smallest period that divides the length. */
const period = (word: readonly unknown[]): number => {
  let n = 1;
  while (word.length % n !== 0 || word.some((letter, s) => letter !== word[s % n])) n++;
  return n;
};

/** The colours of threads, over as many repeats of the weave as the order needs to begin again. */
function laid(
  { units, carries }: Strands,
  word: readonly number[],
  how: { by: string; fill: string; times: number; start: number; colours: number; tabby: number },
): number[] {
  const repeat = carries.length;
  const unitOf = units.flatMap((size, unit) => new Array<number>(size).fill(unit));
  const perRepeat = how.by === 'unit' ? units.length : carries.filter(Boolean).length;
  const span = word.length * how.times;
  const laps = lcm(perRepeat, span) / perRepeat;
  let carried = 0;
  const places: { element: number; carries: boolean }[] = [];
  for (let s = 0; s < laps * repeat; s++) {
    const thread = s % repeat;
    const unit = Math.floor(s / repeat) * units.length + unitOf[thread]!;
    const place = modulo((how.by === 'unit' ? unit : carried) - how.start, span);
    places.push({ element: Math.floor(place / how.times), carries: carries[thread]! });
    if (carries[thread]) carried++;
  }
  /** Threads that the order colours, back to where this element began. */
  const before = (s: number): number => {
    let count = 0;
    for (let back = 1; back < how.times * Math.max(...units) * 2; back++) {
      const at = modulo(s - back, places.length);
      if (places[at]!.carries && places[at]!.element !== places[s]!.element) break;
      if (places[at]!.carries) count++;
    }
    return count;
  };
  // One yarn does not alternate with another.
  const alternates = how.fill === 'alternate' && word.some((colour) => colour !== word[0]);
  return places.map(({ element, carries: runs }, s) => {
    if (!runs) return how.tabby;
    return (word[element]! + (alternates ? before(s) % 2 : 0)) % how.colours;
  });
}

/** One name for all faces that shifts, and what counts as the same, carry to one another. */
export function nameOf(cells: Cells, question: Question): string {
  const across = period(cells[0]!.map((_, i) => cells.map((row) => row[i]).join()));
  const down = period(cells.map((row) => row.join()));
  const small = cells.slice(0, down).map((row) => row.slice(0, across));
  const shown = [...new Set(small.flat())].sort((a, b) => a - b);
  const { same, yarns } = question;
  const mirror = same.includes('mirror');
  const quarter = same.includes('quarter-turn');
  // By the two directions of ends and picks, and whether these change places.
  const maps = [true, false].flatMap((straight) =>
    [1, -1].flatMap((a) =>
      [1, -1].flatMap((b) => {
        const mirrors = straight === (a !== b);
        const turns = !straight || a < 0;
        return (mirrors && !mirror) ||
          (!straight && !quarter) ||
          (turns && !mirror && !quarter && !same.includes('half-turn'))
          ? []
          : [{ straight, a, b }];
      }),
    ),
  );
  const swap = same.includes('exchange') && (yarns.length === 2 || shown.length === 2);
  const [low, high] = yarns.length === 2 ? [0, 1] : [shown[0]!, shown[1]!];
  let least = '';
  for (const { straight, a, b } of maps) {
    const turned = straight ? small : small[0]!.map((_, i) => small.map((row) => row[i]!));
    const [wide, tall] = [turned[0]!.length, turned.length];
    for (const exchange of swap ? [false, true] : [false]) {
      for (let y = 0; y < tall; y++) {
        for (let x = 0; x < wide; x++) {
          const name = turned
            .map((row, j) =>
              row
                .map((_, i) => {
                  const colour = turned[modulo(b * j + y, tall)]![modulo(a * i + x, wide)]!;
                  return exchange ? (colour === low ? high : low) : colour;
                })
                .join(''),
            )
            .join('/');
          if (least === '' || name < least) least = name;
        }
      }
    }
  }
  return least;
}

/** Mean runs, with a line without a change as one run. */
function runs(cells: Cells): { across: number; down: number } {
  const count = (line: readonly number[]): number =>
    Math.max(1, line.filter((colour, s) => colour !== line[modulo(s - 1, line.length)]).length);
  const columns = cells[0]!.map((_, i) => cells.map((row) => row[i]!));
  const all = cells.length * cells[0]!.length;
  const sum = (lines: Cells): number => lines.reduce((total, each) => total + count(each), 0);
  return { across: all / sum(cells), down: all / sum(columns) };
}

/** A structure as the program lays it out, cell by cell. */
interface PlainWeave {
  readonly name: string;
  readonly up: Cells;
  readonly longest: number;
  readonly ends: Strands;
  readonly picks: Strands;
  readonly endPeriod: number;
  readonly pickPeriod: number;
  readonly pickKinds: readonly PickKind[];
}

/** The structures of a question whose floats are within the limit and which hang together. */
function weavesOf({ structures, limits }: Question): PlainWeave[] {
  return structures.flatMap((name) => {
    const { threading, tieUp, treadling, pickKinds, endUnits, pickUnits } = weaveOf(
      findStructure(name),
      findStructure(name).profile,
    );
    const lifts = treadling.map((treadles) => new Set(treadles.flatMap((treadle) => tieUp[treadle - 1]!)));
    const up = lifts.map((shafts) => threading.map((own) => (own.some((shaft) => shafts.has(shaft)) ? 1 : 0)));
    const floats = [0, 1].flatMap((side) => [
      plainFloats.longest(up, side),
      plainFloats.longest(plainFloats.columns(up), side),
    ]);
    const longest = Math.max(...floats.map((float) => float ?? Infinity));
    if (longest > floatLimit(limits) || plainFloats.layers(up) > 1) return [];
    const pattern = pickKinds.some((kind) => kind !== 'tabby');
    return {
      name,
      up,
      longest,
      ends: { units: endUnits, carries: threading.map(() => true) },
      picks: { units: pickUnits, carries: pickKinds.map((kind) => !pattern || kind !== 'tabby') },
      endPeriod: period(threading.map(String)),
      pickPeriod: period(treadling.map((treadles, j) => `${treadles} ${pickKinds[j]}`)),
      pickKinds,
    };
  });
}

const floatLimit = ({ float }: Question['limits']): number => ('threads' in float ? float.threads : Number.NaN);

/** The colours of warp and weft over one whole repeat, for every word laid in every way from every start. */
function* layings(question: Question, weave: PlainWeave): Generator<{ warp: number[]; weft: number[] }> {
  const { lengths, weft, yarns, starts } = question;
  const colours = yarns.length;
  // From the first thread alone, the word of each rotation class that sorts first.
  const asked = lengths
    .flatMap((n) => wordsOf(n, colours))
    .filter(
      (word) => starts === 'all' || word.every((_, r) => [...word.slice(r), ...word.slice(0, r)].join() >= word.join()),
    );
  for (const by of question.by) {
    for (const fill of question.fill) {
      for (const times of question.times) {
        const every = (strands: Strands, word: readonly number[], repeat: number): number[][] => {
          const places = by === 'unit' ? strands.units.length : strands.carries.filter(Boolean).length;
          const count = starts === 'all' ? lcm(word.length * times, places) : 1;
          return Array.from({ length: count }, (_, start) => {
            const threads = laid(strands, word, { by, fill, times, start, colours, tabby: question.tabby });
            return Array.from({ length: lcm(repeat, period(threads)) }, (__, s) => threads[s % threads.length]!);
          });
        };
        for (const word of asked) {
          const exchanged = word.map((colour) => (colour + 1) % colours);
          const wefts =
            weft.rule === 'own'
              ? asked
              : [weft.rule === 'fixed' ? weft.order : weft.rule === 'same' ? word : exchanged];
          const warps = every(weave.ends, word, weave.endPeriod);
          for (const other of wefts) {
            const all = every(weave.picks, other, weave.pickPeriod);
            for (const warp of warps) for (const filling of all) yield { warp, weft: filling };
          }
        }
      }
    }
  }
}

/** The parts that the face decides, of a face that shows a pattern; those that nothing weighs are left 0. */
function partsOf(
  cells: Cells,
  question: Question,
  { name, up, longest }: PlainWeave,
  classics: Classics,
): Omit<Record<Part, number>, 'ease'> | undefined {
  const { sett, rank, limits } = question;
  const value = values(question.yarns);
  const squareness = sett.picks / sett.ends;
  const across = (sett.per === 'inch' ? 25.4 : 10) / sett.ends;
  const v = cells.map((row) => row.map((colour) => value[colour]!));
  const [T, N] = [tone(v, squareness), line(v, squareness)];
  const contrast = Math.min(1, Math.hypot(T, N));
  // A cloth of one yarn is no texture, however fine.
  if (contrast < leastContrast(question) || cells.flat().every((yarn) => yarn === cells[0]![0])) return undefined;
  const asks = (...parts: Part[]): boolean => parts.some((part) => rank[part] > 0);
  const S = symmetry(cells, squareness === 1).symmetry;
  const F = asks('figure', 'figured', 'novelty', 'newness') ? figure(v, squareness) : 0;
  const dark = 1 - mean(v);
  const run = runs(cells);
  const traits = [T, N, F, S, dark, 1 - 1 / run.across, 1 - 1 / run.down];
  const apart = (from: readonly number[]): number =>
    traits.reduce((sum, trait, k) => sum + Math.abs(trait - from[k]!), 0) / traits.length;
  const novelty = asks('novelty', 'newness') ? Math.min(1, ...classics(name).map((one) => apart(one.traits))) : 0;
  const areas = asks('solid') ? solid(v, squareness) : { dark: 0, light: 0 };
  const eye = ARC_MINUTE_AT_TWO_METRES / across;
  const busy = asks('calm', 'lively')
    ? (bits(v) / 4 + Math.min(1, shapes(v, eye, eye * squareness).closed / 8)) / 2
    : 0;
  return {
    contrast,
    symmetry: S,
    float: Math.min(1, Math.max(0, (floatLimit(limits) - longest) / (floatLimit(limits) - 1))),
    figure: F,
    figured: Math.max(0, Math.min(1, (F - 0.1) / 0.15, (1 - F) / 0.4)),
    novelty,
    newness: Math.min(1, novelty / 0.1),
    balance: 1 - Math.abs(2 * dark - 1),
    solid: 2 * Math.min(areas.dark, areas.light),
    sharp: asks('sharp') ? outline(v, squareness).slope : 0,
    calm: 1 - busy,
    lively: busy,
    unlike: asks('unlike') ? unlike(v, up, squareness) : 0,
    fine: asks('fine') ? Math.max(0, Math.min(1, Math.log(400 / piece(cells)) / Math.log(200))) : 0,
  };
}

type Classics = (structure: string) => readonly Classic[];

/** All cloths of a question about structures that orders do not change, best first. */
export function ranked(question: Question, classics: Classics): RankedCloth[] {
  const { limits, rank } = question;
  const best = new Map<string, RankedCloth>();
  const measured = new Map<string, ReturnType<typeof partsOf>>();
  const names = new Map<string, string>();
  const changes = (colours: readonly number[]): number =>
    colours.filter((colour, s) => colour !== colours[modulo(s - 1, colours.length)]).length;
  const weights = PARTS.reduce((sum, part) => sum + rank[part], 0);
  for (const weave of weavesOf(question)) {
    const { up } = weave;
    for (const { warp, weft } of layings(question, weave)) {
      const [warpChanges, weftChanges] = [changes(warp), changes(weft)];
      const shuttles = new Set(weft.map((colour, j) => `${colour} ${weave.pickKinds[j % weave.pickKinds.length]}`))
        .size;
      const within =
        Math.max(warp.length, weft.length) <= limits.repeat &&
        warpChanges <= (limits.warpChanges ?? Infinity) &&
        weftChanges <= (limits.weftChanges ?? Infinity) &&
        shuttles <= (limits.shuttles ?? Infinity);
      if (!within) continue;
      const cells = weft.map((pick, j) =>
        warp.map((end, i) => (up[j % up.length]![i % up[0]!.length] === 1 ? end : pick)),
      );
      const exact = cells.map((row) => row.join('')).join('/');
      if (!names.has(exact)) names.set(exact, nameOf(cells, question));
      const name = names.get(exact)!;
      // What shifts and mirrors carry to one another measures alike; exchanged colours of three, and cloths turned, may not.
      const alike =
        question.yarns.length === 2 &&
        question.sett.ends === question.sett.picks &&
        !question.same.includes('quarter-turn');
      const face = `${weave.name} ${alike ? name : exact}`;
      if (!measured.has(face)) measured.set(face, partsOf(cells, question, weave, classics));
      const parts = measured.get(face);
      if (parts === undefined) continue;
      const ease = 1 / (1 + (5 * warpChanges) / warp.length + (5 * weftChanges) / weft.length + (shuttles - 1) / 2);
      const all: Record<Part, number> = { ...parts, ease };
      const score = PARTS.reduce((sum, part) => sum + rank[part] * all[part], 0) / weights;
      if (score > (best.get(name)?.score ?? Number.NEGATIVE_INFINITY)) best.set(name, { score, name });
    }
  }
  return [...best.values()].sort((x, y) => y.score - x.score);
}
