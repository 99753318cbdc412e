import { createHash } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { MachineFault, Problem } from '../../problem.js';
import { CANDIDATE_COLUMNS } from '../evaluate/columns.js';
import type { JobResult } from '../pool/jobs.js';
import type { Question } from '../question/question.js';
import type { Space } from '../space/space.js';
import type { Shard } from './checkpoint.js';

/** The first line of the file, readable in any editor. */
const TITLE = Buffer.from('shedlight progress of a search, form 4\n');
const CHECKSUM = 8;
/** Before each record: its length and the start of its SHA-256. */
const LEAD = 4 + CHECKSUM;
/** Longest record, in bytes: many times as long as any job's. */
const LONGEST_RECORD = 100_000_000;

/** Why a job sets candidates aside. */
const SET_ASIDE = ['float', 'unsound', 'flat', 'limits'] as const;

/** What identifies the search of a checkpoint. Its results are valid for the same header only. */
export interface Header {
  readonly program: string;
  readonly question: Question;
  readonly space: Pick<Space, 'way' | 'written' | 'numbers'>;
  readonly shard?: Shard;
}

/** A job's key and result; or, at the end of a finished shard, the number of jobs in the file. */
type Entry = { readonly key: string; readonly result: JobResult } | { readonly end: number };

/** A file, or anything whose bytes can be read at a position. */
export interface Bytes {
  readonly size: number;
  read(from: number, length: number): Buffer;
}

/** A checkpoint file as read. */
export interface FoundCheckpoint {
  readonly header: Header;
  /** Where the record of each job lies, by the job's key. */
  readonly places: ReadonlyMap<string, RecordPlace>;
  /** Bytes up to the end of the last whole record. */
  readonly whole: number;
  /** Whether the file ends with the record of a finished shard, and holds as many jobs as this says. */
  readonly ended: boolean;
}

/** Where the contents of a record lie. */
interface RecordPlace {
  readonly from: number;
  readonly length: number;
}

/** The bytes of a checkpoint without jobs: title and header. */
export function openingBytes(header: Header): Buffer {
  return Buffer.concat([TITLE, record(header)]);
}

/** The bytes of one more entry, to be appended to the file. */
export function entryBytes(entry: Entry): Buffer {
  return record(entry);
}

/**
 * Reads where everything lies. It ends at the first record that is not whole, as a crash leaves it: what follows counts
 * as not done.
 *
 * @throws Problem where it is no checkpoint, or not even its header is whole
 */
export function readCheckpoint(bytes: Bytes): FoundCheckpoint {
  const isOurs = bytes.size >= TITLE.length && bytes.read(0, TITLE.length).equals(TITLE);
  if (!isOurs) throw new Problem('found something else; expected the progress of a search');
  const first = placeAt(bytes, TITLE.length);
  const header = first && contents<Header>(bytes, first);
  if (header === undefined || !isHeader(header)) {
    throw new Problem('found it damaged from its beginning; expected the progress of a search');
  }
  const places = new Map<string, RecordPlace>();
  let whole = first!.from + first!.length;
  let ended = false;
  for (let place = placeAt(bytes, whole); place !== undefined && !ended; place = placeAt(bytes, whole)) {
    const entry = contents<Entry>(bytes, place);
    if (entry === undefined || !isEntry(entry)) break;
    if ('end' in entry) ended = entry.end === places.size;
    else places.set(entry.key, place);
    whole = place.from + place.length;
  }
  return { header, places, whole, ended: ended && whole === bytes.size };
}

/** The result in a record. */
export function resultAt(bytes: Bytes, place: RecordPlace): JobResult {
  return contents<{ result: JobResult }>(bytes, place)!.result;
}

/**
 * Names the keys of the question, or other parts of the header, in which two searches differ. Empty if results of one
 * are valid for the other.
 */
export function differences(one: Header, other: Header): string[] {
  const [a, b] = [asKept(one), asKept(other)];
  const keys = [...new Set([...Object.keys(a.question), ...Object.keys(b.question)])] as (keyof Question)[];
  const asked = keys
    .filter((key) => !isDeepStrictEqual(a.question[key], b.question[key]))
    .map((key) => NAMES[key] ?? key);
  if (a.program !== b.program) return [...asked, `version (${a.program}, ${b.program})`];
  return asked.length === 0 && !isDeepStrictEqual(a.space, b.space) ? ['space'] : asked;
}

/** Keys of a question under the names that a person writes. */
const NAMES: Readonly<Partial<Record<keyof Question, string>>> = {
  structures: 'structure',
  treadlings: 'treadling',
  limits: 'limits',
};

/** What a header is once it was written and read: keys without a value are gone. */
const asKept = (header: Header): Header => fromText(asText(header)) as Header;

const fromBase64 = (text: string): ArrayBuffer => Uint8Array.from(Buffer.from(text, 'base64')).buffer;

/** What JSON has no form for: columns of numbers, as their bytes in base64, and numbers without end. */
const TAGGED: Readonly<Record<string, (text: string) => unknown>> = {
  Float64Array: (text) => new Float64Array(fromBase64(text)),
  Uint32Array: (text) => new Uint32Array(fromBase64(text)),
  Number,
};

/**
 * A value as JSON, where {@link TAGGED} ones are under the name of their type. JSON, since what `node:v8` writes depends
 * on how numbers happen to lie in memory: the files of two runs would differ.
 */
function asText(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) => {
    if (typeof part === 'number' && !Number.isFinite(part)) return { Number: String(part) };
    if (!ArrayBuffer.isView(part)) return part;
    return { [part.constructor.name]: Buffer.from(part.buffer, part.byteOffset, part.byteLength).toString('base64') };
  });
}

function fromText(text: string): unknown {
  return JSON.parse(text, (_, part: unknown) => {
    const [[name, value] = ['', '']] = isObject(part) ? Object.entries(part as object) : [];
    return Object.hasOwn(TAGGED, name) ? TAGGED[name]!(value) : part;
  });
}

function record(value: unknown): Buffer {
  const contents = Buffer.from(asText(value));
  const lead = Buffer.alloc(LEAD);
  lead.writeUInt32LE(contents.length);
  checksum(contents).copy(lead, 4);
  return Buffer.concat([lead, contents]);
}

/** Where the contents of the record at `at` lie; undefined if the record is cut off or its checksum is wrong. */
function placeAt(bytes: Bytes, at: number): RecordPlace | undefined {
  if (at + LEAD > bytes.size) return undefined;
  const lead = bytes.read(at, LEAD);
  const place = { from: at + LEAD, length: lead.readUInt32LE() };
  if (place.length > LONGEST_RECORD || place.from + place.length > bytes.size) return undefined;
  return checksum(bytes.read(place.from, place.length)).equals(lead.subarray(4)) ? place : undefined;
}

/** What a record holds; undefined if it is no object, whatever its checksum says. */
function contents<T extends object>(bytes: Bytes, { from, length }: RecordPlace): T | undefined {
  try {
    const value: unknown = fromText(bytes.read(from, length).toString());
    return typeof value === 'object' && value !== null ? (value as T) : undefined;
  } catch (error) {
    if (error instanceof MachineFault) throw error;
    return undefined;
  }
}

const isObject = (value: unknown): boolean => typeof value === 'object' && value !== null;

function isHeader({ program, question, space }: Partial<Header>): boolean {
  return typeof program === 'string' && isObject(question) && isObject(space);
}

function isEntry(entry: Partial<{ key: unknown; result: unknown; end: unknown }>): boolean {
  return typeof entry.end === 'number' || (typeof entry.key === 'string' && isResult(entry.result));
}

/** Whether a value has all that a job's result has, each of its kind and of the right length. */
function isResult(value: unknown): boolean {
  const { batch, pruned, limits, promising } = Object(value) as Partial<JobResult>;
  const { length, setAside } = Object(batch) as Partial<JobResult['batch']>;
  const counts = [pruned, limits, length, ...SET_ASIDE.map((why) => setAside?.[why])];
  return (
    counts.every((count) => Number.isSafeInteger(count) && count! >= 0) &&
    Object.entries(CANDIDATE_COLUMNS).every(([name, [type, width]]) => {
      const column = batch![name as keyof typeof CANDIDATE_COLUMNS];
      return column instanceof type && column.length === length! * width;
    }) &&
    Array.isArray(promising) &&
    promising.every(
      ({ index, hope, place }) =>
        Number.isSafeInteger(index) && Number.isSafeInteger(place) && typeof hope === 'number',
    )
  );
}

function checksum(contents: Buffer): Buffer {
  return createHash('sha256').update(contents).digest().subarray(0, CHECKSUM);
}
