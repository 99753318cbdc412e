import { closeSync, existsSync, fsyncSync, ftruncateSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { explained } from '../../files/faults.js';
import { judgeFile, syncFolder, writeAll, writeWhole } from '../../files/whole.js';
import { Problem } from '../../problem.js';
import type { JobResult } from '../pool/jobs.js';
import type { Checkpoint } from './checkpoint.js';
import { differences, entryBytes, type Header, openingBytes, resultAt } from './checkpoint-format.js';
import { type OpenCheckpoint, openCheckpoint } from './open-checkpoint.js';

/** Milliseconds between two times that progress is kept. */
const EVERY = 3000;

/** How a checkpoint is kept. */
interface Keeping {
  /** Goes on with what the file has. */
  readonly resume: boolean;
  /** Says one line to the person who waits. */
  readonly say: (line: string) => void;
  /** Milliseconds between two times that it is written; absent: a few seconds. */
  readonly every?: number;
}

/**
 * The progress of one search in a file. The file comes into being whole with the first few seconds' work, then grows by
 * what is done since, each record with its checksum: whenever it is cut off, what is whole counts and the rest is done
 * again. A search that is over before the first few seconds writes none.
 */
export class CheckpointFile implements Checkpoint {
  private readonly path: string;
  private readonly header: Header;
  private readonly keeping: Keeping;
  private readonly found: OpenCheckpoint | undefined;
  private readonly recorded = new Set<string>();
  private pending: Buffer[] = [];
  private file: number | undefined;
  private size = 0;
  private written: number;
  /** Why nothing more is kept. */
  private fault: Error | undefined;
  /** What is open. */
  private readonly closing: (() => void)[] = [];
  /** Whether the file that lies there is this search's. */
  private ours = false;

  /**
   * @throws Problem where it is to go on with a file that is of another search, or of none
   */
  constructor(path: string, header: Header, keeping: Keeping) {
    this.path = path;
    this.header = header;
    this.keeping = keeping;
    this.written = performance.now();
    this.found = keeping.resume ? this.takenUp() : this.noticed();
    if (this.found) this.continueAfter(this.found);
  }

  has(key: string): boolean {
    return this.found?.places.has(key) ?? false;
  }

  result(key: string): JobResult {
    return resultAt(this.found!.bytes, this.found!.places.get(key)!);
  }

  record(key: string, result: JobResult): void {
    if (this.recorded.has(key) || this.fault) return;
    this.recorded.add(key);
    this.pending.push(entryBytes({ key, result }));
    if (performance.now() - this.written >= (this.keeping.every ?? EVERY)) this.keep();
  }

  /** Writes what has been recorded. A disk that fails does not end the search: it is said, and progress is lost. */
  keep(): void {
    if (this.fault) return;
    try {
      this.write();
    } catch (error) {
      this.pending = [];
      this.fault = explained(error, this.path) as Error;
      this.keeping.say(`${this.fault.message}; the search goes on, but its progress is not kept`);
    }
  }

  /** Whether there is a file from which the search may be gone on with. */
  get kept(): boolean {
    return this.ours;
  }

  /** The file goes: what it was for is done. A file of another search stays. */
  remove(): void {
    this.close();
    if (this.ours) rmSync(this.path, { force: true });
  }

  /** The part of a search is finished: it is marked as such and moved to its place; a link there is followed. */
  finish(place: string): void {
    this.pending.push(entryBytes({ end: this.recorded.size + (this.found?.places.size ?? 0) }));
    this.keep();
    this.close();
    if (this.fault) throw this.fault;
    const target = judgeFile(place);
    try {
      renameSync(this.path, target);
      syncFolder(dirname(target));
    } catch (error) {
      throw explained(error, place);
    }
  }

  /** Lets the file be, as it was last written. */
  close(): void {
    for (const close of this.closing.splice(0)) close();
  }

  private takenUp(): OpenCheckpoint | undefined {
    const found = this.there();
    if (found === undefined) {
      this.keeping.say(`--resume: found no ${this.path}; the search begins anew`);
      return undefined;
    }
    const other = differences(found.header, this.header);
    if (other.length === 0) {
      this.keeping.say(`${this.path}: goes on after ${found.places.size} finished pieces of work`);
      return found;
    }
    found.close();
    throw new Problem(
      `${this.path}: found the progress of another search (different: ${other.join(', ')}); ` +
        'expected the same question, or no such file',
    );
  }

  /** Nothing is taken from a file that nobody asked to go on with, but a person should know of it. */
  private noticed(): undefined {
    let found: OpenCheckpoint | undefined;
    let other: string[] = [];
    try {
      found = this.there();
      if (found === undefined) return;
      other = differences(found.header, this.header);
      this.ours = other.length === 0;
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      other = ['it cannot be read'];
    } finally {
      found?.close();
    }
    const whose = this.ours ? 'this search; --resume goes on with it' : `another search (${other.join(', ')})`;
    this.keeping.say(`${this.path}: unfinished progress of ${whose}; a new search of some length takes its place`);
  }

  private there(): OpenCheckpoint | undefined {
    return existsSync(this.path) ? openCheckpoint(this.path) : undefined;
  }

  private continueAfter({ bytes, whole, close }: OpenCheckpoint): void {
    this.closing.push(close);
    this.file = this.opened(whole);
    const torn = bytes.size - whole;
    if (torn === 0) return;
    ftruncateSync(this.file, whole);
    this.keeping.say(`${this.path}: found ${torn} damaged bytes at its end; what they held is done again`);
  }

  /** Opens the file to write after its first `size` bytes. */
  private opened(size: number): number {
    const file = openSync(this.path, 'r+');
    this.closing.push(() => closeSync(file));
    this.ours = true;
    this.size = size;
    return file;
  }

  private write(): void {
    const fresh = Buffer.concat(this.pending);
    if (this.file === undefined) {
      mkdirSync(dirname(this.path), { recursive: true });
      const whole = Buffer.concat([openingBytes(this.header), fresh]);
      writeWhole(this.path, whole);
      this.file = this.opened(whole.length);
    } else {
      writeAll(this.file, fresh, this.size);
      fsyncSync(this.file);
      this.size += fresh.length;
    }
    this.pending = [];
    this.written = performance.now();
  }
}
