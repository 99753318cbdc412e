import { Problem } from '../../problem.js';
import { MOST_SHAFTS, MOST_THREADS, MOST_TREADLES } from '../limits.js';
import { Fields } from './values.js';
import { placeOf, type WifSections } from './wif-sections.js';

type Lists = readonly (readonly number[])[];

/** The interlacement that a file holds, as a rising shed. Its lists are as long as the file says. */
interface WifWeave {
  readonly threading: Lists;
  readonly tieUp: Lists;
  readonly treadling: Lists;
  readonly shafts: number;
}

/** What is counted, and how far it may go. */
interface Counted {
  /** “an end”, and so on. */
  readonly what: string;
  readonly most: number;
  /** Source of the limit, for the message: ` ([WARP] Threads=8, line 9)`. */
  readonly limit: string;
}

/**
 * Reads threading, tie-up and treadling, or the lift plan. As the format says, an end missing from the list is on no
 * shaft, a missing treadle is tied to nothing, and a missing pick has no treadle.
 *
 * @param notes receives sentences about missing counts, a shed turned over, ends on no shaft
 * @throws Problem if a list is missing, or names a shaft, treadle, end or pick that does not exist
 */
export function readWeave(sections: WifSections, notes: string[]): WifWeave {
  const weaving = Fields.of(sections, 'WEAVING');
  const shaft = counted(weaving, 'SHAFTS', 'a shaft', MOST_SHAFTS);
  const end = counted(Fields.of(sections, 'WARP'), 'THREADS', 'an end', MOST_THREADS);
  const given = lists(sections, 'THREADING', end, shaft);
  if (given === undefined) throw new Problem('found no [THREADING]; expected the shaft of each end');
  const ends = length(end, given, '[WARP] Threads', notes);
  const threading = filled(given, ends);
  if (highestOf(threading) === 0) {
    throw new Problem('[THREADING]: found no end on a shaft; expected the shaft of each end');
  }
  const lifting = readLifting(sections, weaving, shaft, notes);
  const highest = Math.max(highestOf(threading), highestOf(lifting.tieUp));
  const shafts = shaft.limit === '' ? highest : shaft.most;
  if (shaft.limit === '') notes.push(`[WEAVING] says no number of shafts; the highest that is used is ${highest}`);
  const idle = threading.filter((on) => on.length === 0).length;
  if (idle > 0) notes.push(`${idle} of ${ends} ends are on no shaft: they always lie under the weft`);
  const rising = weaving.truth('RISING SHED');
  if (rising === undefined) notes.push('[WEAVING] does not say whether the shed rises; it was read as rising');
  if (weaving.truth('PROFILE') === true) {
    notes.push('the file calls itself a profile: its blocks were read as shafts');
  }
  if (rising !== false) return { threading, ...lifting, shafts };
  notes.push('the file is for a sinking shed: its shafts that go down were turned into those that go up');
  if (threading.some((on) => on.length > 1)) {
    notes.push('an end on several shafts was read as up when any of them is up');
  }
  return { threading, ...turnedOver(lifting, shafts), shafts };
}

interface Lifting {
  readonly tieUp: Lists;
  readonly treadling: Lists;
}

/** Reads tie-up and treadling, or else the lift plan as one treadle for each different lift. */
function readLifting(sections: WifSections, weaving: Fields, shaft: Counted, notes: string[]): Lifting {
  const pick = counted(Fields.of(sections, 'WEFT'), 'THREADS', 'a pick', MOST_THREADS);
  const treadle = counted(weaving, 'TREADLES', 'a treadle', MOST_TREADLES);
  const treadling = lists(sections, 'TREADLING', pick, treadle);
  const tieUp = lists(sections, 'TIEUP', treadle, shaft);
  const plan = lists(sections, 'LIFTPLAN', pick, shaft);
  const byTreadle = treadling !== undefined && tieUp !== undefined;
  if (!byTreadle && plan === undefined) {
    const missing = treadling !== undefined ? 'no [TIEUP]' : tieUp !== undefined ? 'no [TREADLING]' : 'no [TREADLING]';
    throw new Problem(`found ${missing} and no [LIFTPLAN]; expected [TIEUP] and [TREADLING], or [LIFTPLAN]`);
  }
  const contents = Fields.of(sections, 'CONTENTS');
  const listed = (name: string): boolean => contents.truth(name) ?? false;
  const planOnly =
    plan !== undefined && (!byTreadle || (listed('LIFTPLAN') && !(listed('TREADLING') && listed('TIEUP'))));
  if (planOnly) {
    if (treadling !== undefined || tieUp !== undefined) notes.push('the lift plan was read, not tie-up and treadling');
    return planned(filled(plan, length(pick, plan, '[WEFT] Threads', notes)).map(ascending));
  }
  const picks = length(pick, treadling!, '[WEFT] Threads', notes);
  const treadles = Math.max(
    treadle.limit === '' ? 0 : treadle.most,
    highestKey(tieUp!),
    highestOf([...treadling!.values()]),
  );
  const lifting = { tieUp: filled(tieUp!, treadles), treadling: filled(treadling!, picks) };
  if (plan !== undefined) compare(lifting, filled(plan, picks).map(ascending), notes);
  return lifting;
}

/** Converts a lift plan: one treadle for each different lift, in order of first use; no treadle for an empty lift. */
function planned(plan: Lists): Lifting {
  const known = new Map<string, number>();
  const tieUp: (readonly number[])[] = [];
  const treadling = plan.map((lift) => {
    if (lift.length === 0) return [];
    const word = lift.join();
    const treadle = known.get(word) ?? tieUp.push(lift);
    known.set(word, treadle);
    return [treadle];
  });
  return { tieUp, treadling };
}

function compare(lifting: Lifting, plan: Lists, notes: string[]): void {
  const differs = plan.findIndex((lift, j) => String(lift) !== String(union(lifting.treadling[j]!, lifting.tieUp)));
  if (differs < 0) return;
  notes.push(
    `pick ${differs + 1}: the lift plan raises other shafts than tie-up and treadling do; tie-up and treadling were read`,
  );
}

/** Converts a sinking shed to a rising one. Two treadles pressed together leave up the shafts that neither lowers. */
function turnedOver({ tieUp, treadling }: Lifting, shafts: number): Lifting {
  const all = Array.from({ length: shafts }, (_, index) => index + 1);
  const rest = (down: readonly number[]): number[] => {
    const below = new Set(down);
    return all.filter((shaft) => !below.has(shaft));
  };
  if (treadling.every((treadles) => treadles.length === 1)) return { tieUp: tieUp.map(rest), treadling };
  return planned(treadling.map((treadles) => rest(union(treadles, tieUp))));
}

function union(treadles: readonly number[], tieUp: Lists): number[] {
  return ascending(treadles.flatMap((treadle) => tieUp[treadle - 1] ?? []));
}

function counted(fields: Fields, key: string, what: string, most: number): Counted {
  // A loom with a lift plan may have no treadle.
  const number = fields.whole(key, key === 'TREADLES' ? 0 : 1, most);
  if (number === undefined) return { what, most, limit: '' };
  const { line, written } = fields.get(key)!;
  return { what, most: number, limit: ` ([${fields.name}] ${written}=${number}, line ${line})` };
}

/** The count in the file, or else the highest number in its list. */
function length(of: Counted, list: ReadonlyMap<number, unknown>, key: string, notes: string[]): number {
  if (of.limit !== '') return of.most;
  const highest = highestKey(list);
  if (highest === 0) throw new Problem(`found no ${key} and an empty list; expected the number of threads`);
  notes.push(`${key} is missing; the list goes to ${highest}`);
  return highest;
}

/** Reads a section of lists of numbers, by entry number; 0 and an empty value are an empty list. */
function lists(
  sections: WifSections,
  name: string,
  of: Counted,
  member: Counted,
): ReadonlyMap<number, readonly number[]> | undefined {
  const section = sections.get(name);
  if (section === undefined) return undefined;
  const fields = new Fields(name, section);
  const found = new Map<number, readonly number[]>();
  for (const { number, entry } of fields.numbered(of.what, of.most, of.limit)) {
    const members = [...new Set(fields.list(entry))].filter((each) => each !== 0);
    const beyond = members.find((each) => each > member.most);
    if (beyond !== undefined) {
      const noun = member.what.replace(/^an? /, '');
      throw new Problem(
        `${placeOf(name, entry.line)}: found ${noun} ${beyond} at ${of.what.replace(/^an? /, '')} ${number}; expected 1 to ${member.most}${member.limit}`,
      );
    }
    found.set(number, members);
  }
  return found;
}

function filled(list: ReadonlyMap<number, readonly number[]>, count: number): Lists {
  return Array.from({ length: count }, (_, index) => list.get(index + 1) ?? []);
}

function highestKey(list: ReadonlyMap<number, unknown>): number {
  let highest = 0;
  for (const key of list.keys()) highest = Math.max(highest, key);
  return highest;
}

function highestOf(list: Lists): number {
  let highest = 0;
  for (const members of list) for (const member of members) highest = Math.max(highest, member);
  return highest;
}

function ascending(numbers: readonly number[]): number[] {
  return [...new Set(numbers)].sort((a, b) => a - b);
}
