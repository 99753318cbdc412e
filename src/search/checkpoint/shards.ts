import { Problem, quote } from '../../problem.js';
import { couldBeAsked } from '../question/could-be-asked.js';
import type { Checkpoint, Shard } from './checkpoint.js';
import { differences, type Header, resultAt } from './checkpoint-format.js';
import { type OpenCheckpoint, openCheckpoint } from './open-checkpoint.js';

/** The shard that a person asks for, such as 2/4. */
export function shardOf(text: string): Shard {
  const [, part, of] = (/^(\d{1,4})\/(\d{1,4})$/.exec(text) ?? []).map(Number);
  if (part === undefined || of === undefined || part < 1 || part > of) {
    throw new Problem(`--shard: found ${quote(text)}; expected a part and how many there are, such as 2/4`);
  }
  return { part, of };
}

/** The name of the file that a shard leaves, beside the folder of the gallery. */
export function shardFile(folder: string, { part, of }: Shard): string {
  return `${folder}.shard-${part}-of-${of}`;
}

/** The folder of the gallery after which a shard's file is named; undefined where the name says nothing of it. */
export function folderOfShard(file: string): string | undefined {
  return /^(.+)\.shard-\d+-of-\d+$/.exec(file)?.[1];
}

/** All parts of one search together. */
interface Parts {
  /** What they are parts of. */
  readonly header: Header;
  /** The file of the first part. */
  readonly first: string;
  readonly checkpoint: Checkpoint;
  readonly close: () => void;
}

/**
 * Opens the files of all shards of one search, in whatever order they are named.
 *
 * @throws Problem that names the file: no part, not finished, of another search or of none, there twice; or the parts
 *   that lack
 */
export function openParts(files: readonly string[]): Parts {
  const open: OpenCheckpoint[] = [];
  const close = (): void => {
    for (const each of open) each.close();
  };
  try {
    const byPart = new Map<number, { readonly file: string; readonly journal: OpenCheckpoint }>();
    for (const file of files) {
      const journal = openCheckpoint(file);
      open.push(journal);
      const { part } = checkedPart(file, journal, files[0]!, open[0]!.header);
      const twin = byPart.get(part);
      if (twin) throw new Problem(`${file}: found part ${part} a second time, beside ${twin.file}; expected each once`);
      byPart.set(part, { file, journal });
    }
    const { of } = open[0]!.header.shard!;
    const lacking = Array.from({ length: of }, (_, k) => k + 1).filter((part) => !byPart.has(part));
    if (lacking.length > 0) {
      throw new Problem(
        `--merge: found no shard ${lacking.map((part) => `${part}/${of}`).join(', ')}; expected all ${of}`,
      );
    }
    const { file, journal } = byPart.get(1)!;
    if (!couldBeAsked(journal.header.question)) {
      throw new Problem(`${file}: found a question that nobody could ask; expected a part as --shard writes it`);
    }
    return { header: journal.header, first: file, checkpoint: together(open), close };
  } catch (error) {
    close();
    throw error;
  }
}

/** The shard of a file that is a finished part of the same search as the first. */
function checkedPart(file: string, journal: OpenCheckpoint, first: string, header: Header): Shard {
  const { shard } = journal.header;
  if (shard === undefined) throw new Problem(`${file}: found the progress of a whole search; expected a shard’s part`);
  if (!journal.ended) {
    throw new Problem(
      `${file}: found it damaged or unfinished; expected a whole part: run --shard ${shard.part}/${shard.of} again`,
    );
  }
  const other = differences(journal.header, header);
  if (other.length > 0) {
    throw new Problem(`${file}: found a part of another search than ${first} (different: ${other.join(', ')})`);
  }
  if (shard.of !== header.shard!.of) {
    throw new Problem(
      `${file}: found part ${shard.part} of ${shard.of}; expected one of ${header.shard!.of}, as ${first}`,
    );
  }
  return shard;
}

/** The checkpoints of all parts as one. It takes no notes: there is nothing left to do. */
function together(parts: readonly OpenCheckpoint[]): Checkpoint {
  const where = new Map(
    parts.flatMap((part) => [...part.places].map(([key, place]) => [key, { part, place }] as const)),
  );
  return {
    has: (key) => where.has(key),
    result: (key) => {
      const { part, place } = where.get(key)!;
      return resultAt(part.bytes, place);
    },
    record: () => {},
  };
}
