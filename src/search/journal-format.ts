import { createHash } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { deserialize, serialize } from 'node:v8';
import { Problem } from '../problem.js';
import type { JobResult } from './jobs.js';
import type { Shard } from './journal.js';
import type { Question } from './question.js';
import type { Space } from './space.js';

/** The first line, for whoever opens the file. */
const TITLE = Buffer.from('shedlight progress of a search, form 1\n');
const CHECKSUM = 8;
/** Before each record: its length and the start of its SHA-256. */
const LEAD = 4 + CHECKSUM;

/** What a journal is of. Its jobs are of use to nothing else. */
export interface Header {
  readonly program: string;
  readonly question: Question;
  readonly space: Pick<Space, 'way' | 'written' | 'numbers'>;
  readonly shard?: Shard;
}

/** A job's result, or at the end of a finished part, how many there are. */
export type Entry = { readonly key: string; readonly result: JobResult } | { readonly end: number };

/** Bytes that can be asked for by their place. */
export interface Bytes {
  readonly size: number;
  read(from: number, length: number): Buffer;
}

/** A journal as it was found. */
export interface Read {
  readonly header: Header;
  /** Where the record of each job lies. */
  readonly places: ReadonlyMap<string, Place>;
  /** Bytes up to the end of the last whole record. */
  readonly whole: number;
  /** Whether it says of itself that it is finished. */
  readonly ended: boolean;
}

/** Where the contents of a record lie. */
export interface Place {
  readonly from: number;
  readonly length: number;
}

/** The bytes of a new journal with nothing done. */
export function opening(header: Header): Buffer {
  return Buffer.concat([TITLE, record(header)]);
}

/** The bytes of one more entry, which follow what is there. */
export function entryBytes(entry: Entry): Buffer {
  return record(entry);
}

/**
 * Reads where everything lies. It ends at the first record that is not whole, as a crash leaves it: what follows counts
 * as not done.
 *
 * @throws Problem where it is no journal, or not even its header is whole
 */
export function readJournal(bytes: Bytes): Read {
  const isOurs = bytes.size >= TITLE.length && bytes.read(0, TITLE.length).equals(TITLE);
  if (!isOurs) throw new Problem('found something else; expected the progress of a search');
  const first = placeAt(bytes, TITLE.length);
  if (first === undefined) throw new Problem('found it torn from its beginning; expected the progress of a search');
  const places = new Map<string, Place>();
  let whole = first.from + first.length;
  let ended = false;
  for (let place = placeAt(bytes, whole); place !== undefined && !ended; place = placeAt(bytes, whole)) {
    const entry = contents<Entry>(bytes, place);
    if ('end' in entry) ended = entry.end === places.size;
    else places.set(entry.key, place);
    whole = place.from + place.length;
  }
  return { header: contents<Header>(bytes, first), places, whole, ended: ended && whole === bytes.size };
}

/** The result in a record. */
export function resultAt(bytes: Bytes, place: Place): JobResult {
  return contents<{ result: JobResult }>(bytes, place).result;
}

/**
 * Wherein two searches differ, as a person names it; nothing where what one has done is done for the other.
 */
export function differences(a: Header, b: Header): string[] {
  const keys = [...new Set([...Object.keys(a.question), ...Object.keys(b.question)])] as (keyof Question)[];
  const asked = keys
    .filter((key) => !isDeepStrictEqual(a.question[key], b.question[key]))
    .map((key) => NAMES[key] ?? key);
  if (a.program !== b.program) return [...asked, `version (${a.program}, ${b.program})`];
  return asked.length === 0 && !isDeepStrictEqual(a.space, b.space) ? ['space'] : asked;
}

/** Keys of a question that a person writes otherwise. */
const NAMES: Readonly<Partial<Record<keyof Question, string>>> = {
  structures: 'structure',
  treadlings: 'treadling',
  limits: 'limits',
};

function record(value: unknown): Buffer {
  const contents = serialize(value);
  const lead = Buffer.alloc(LEAD);
  lead.writeUInt32LE(contents.length);
  checksum(contents).copy(lead, 4);
  return Buffer.concat([lead, contents]);
}

/** The record that begins here; undefined where there is no whole one. */
function placeAt(bytes: Bytes, at: number): Place | undefined {
  if (at + LEAD > bytes.size) return undefined;
  const lead = bytes.read(at, LEAD);
  const place = { from: at + LEAD, length: lead.readUInt32LE() };
  if (place.from + place.length > bytes.size) return undefined;
  return checksum(bytes.read(place.from, place.length)).equals(lead.subarray(4)) ? place : undefined;
}

function contents<T>(bytes: Bytes, { from, length }: Place): T {
  return deserialize(bytes.read(from, length)) as T;
}

function checksum(contents: Buffer): Buffer {
  return createHash('sha256').update(contents).digest().subarray(0, CHECKSUM);
}
