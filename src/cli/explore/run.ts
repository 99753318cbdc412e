import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, extname } from 'node:path';
import { judgeFolder } from '../../files/folder.js';
import { checkWritable } from '../../files/place.js';
import { programVersion } from '../../files/program-version.js';
import { judgeFile } from '../../files/whole.js';
import { GALLERY } from '../../gallery/gallery-folder.js';
import { writeGallery } from '../../gallery/write.js';
import { MachineFault, Problem, quote } from '../../problem.js';
import type { Checkpoint, Shard } from '../../search/checkpoint/checkpoint.js';
import { CheckpointFile } from '../../search/checkpoint/checkpoint-file.js';
import { differences } from '../../search/checkpoint/checkpoint-format.js';
import { folderOfShard, openParts, shardFile, shardOf } from '../../search/checkpoint/shards.js';
import { explore, exploreShard } from '../../search/explore.js';
import type { Question } from '../../search/question/question.js';
import { readQuestion } from '../../search/question/read-question.js';
import type { Space } from '../../search/space/space.js';
import { structures } from '../../structure/catalogue/catalogue.js';
import { asArgument } from '../../words/shell.js';
import { besideFile, draftLoader, readText } from '../shell/files.js';
import { EXIT, type Io, sayWrong } from '../shell/io.js';
import { doneLoader } from './done-files.js';
import { type Interrupt, onInterrupt } from './interrupt.js';
import { bare, ownFolder, sayReplaced } from './own-folder.js';
import { type Progress, progressOn } from './progress.js';
import { onTheLoomInWords, sayFound, sayNothing, sayShard, waitInWords } from './words.js';

/** The arguments of the command. */
export interface ExploreArguments {
  readonly file?: string | undefined;
  readonly flags: Readonly<Record<string, string>>;
  readonly out?: string;
  readonly workers?: string;
  readonly resume?: boolean;
  readonly shard?: string;
  readonly merge?: readonly string[];
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** Output, progress and signals of a search that a person waits for. */
interface Waiting {
  readonly given: ExploreArguments;
  readonly io: Io;
  readonly progress: Progress;
  readonly interrupt: Interrupt;
  /** Prints one line, whatever the progress display shows. */
  readonly say: (line: string) => void;
}

/** Runs a search and writes its gallery, or runs one shard, or merges shards. Returns the exit code. */
export async function runExplore(given: ExploreArguments, io: Io): Promise<number> {
  const progress = progressOn(io.stderr, given.quiet === true);
  const say = (line: string): void => {
    progress.end();
    sayWrong(io, line);
  };
  const interrupt = onInterrupt(() => say('finishing with what is found; once more stops at once'));
  const waiting = { given, io, progress, interrupt, say };
  try {
    if (given.merge !== undefined) return await merge(given.merge, waiting);
    const question = asked(given, io);
    const folder = given.out ?? ownFolder(given.file, question, say);
    if (given.shard !== undefined) {
      const shard = shardOf(given.shard);
      const place = shardFile(bare(folder), shard);
      if (existsSync(dirname(place))) judgeFile(place);
      else checkWritable(place);
      return await searchShard(question, folder, shard, waiting);
    }
    await judgeFolder(folder, GALLERY);
    if (given.out !== undefined) sayReplaced(folder, question, say);
    return await search(question, folder, waiting);
  } catch (error) {
    const failed = error instanceof Problem || error instanceof MachineFault;
    if (failed || !interrupt.signal.aborted) throw error;
    say('stopped; no gallery was written');
    return EXIT.interrupted;
  } finally {
    progress.end();
    interrupt.end();
  }
}

/**
 * Runs a whole search. If it is interrupted, it keeps its checkpoint, and leaves the gallery of a whole search alone.
 */
async function search(question: Question, folder: string, waiting: Waiting): Promise<number> {
  const path = `${bare(folder)}.progress`;
  let kept: CheckpointFile | undefined;
  try {
    const code = await answer(question, folder, waiting, (space) => {
      kept = journalFile(path, question, space, waiting);
      return kept;
    });
    if (code === EXIT.interrupted) kept?.keep();
    else kept?.remove();
    return code;
  } finally {
    kept?.close();
  }
}

/** Runs one shard of a search, and writes it to a file beside the place of the gallery. */
async function searchShard(question: Question, folder: string, shard: Shard, waiting: Waiting): Promise<number> {
  const place = shardFile(bare(folder), shard);
  let kept: CheckpointFile | undefined;
  try {
    const whole = await exploreShard(question, shard, {
      ...searching(waiting),
      checkpoint: (space) => {
        kept = journalFile(`${place}.progress`, question, space, waiting, shard);
        return kept;
      },
    });
    waiting.progress.end();
    if (!whole) {
      kept?.keep();
      waiting.say(`stopped; part ${shard.part} of ${shard.of} is not done; --resume goes on with it`);
      return EXIT.interrupted;
    }
    kept?.finish(place);
    sayShard(shard, place, waiting.given.json === true, waiting.io);
    return EXIT.done;
  } finally {
    kept?.close();
  }
}

/** Merges shards, and writes the gallery of the whole search. */
async function merge(files: readonly string[], waiting: Waiting): Promise<number> {
  const { given, io, say } = waiting;
  if (given.shard !== undefined) throw new Problem('--merge: found --shard beside it; expected one or the other');
  const parts = openParts(files);
  try {
    const { question } = parts.header;
    const named = given.file !== undefined || Object.keys(given.flags).length > 0;
    const folder = given.out ?? folderOfShard(parts.first) ?? ownFolder(given.file, question, say);
    await judgeFolder(folder, GALLERY);
    return await answer(question, folder, waiting, (space) => {
      const wanted = headerOf(named ? asked(given, io) : question, space);
      const other = differences(parts.header, wanted);
      if (other.length === 0) return parts.checkpoint;
      throw new Problem(`${parts.first}: found a part of another search than asked (different: ${other.join(', ')})`);
    });
  } finally {
    parts.close();
  }
}

/** Searches and writes the gallery; an interrupted search writes it beside its place. */
async function answer(
  question: Question,
  folder: string,
  waiting: Waiting,
  checkpoint: (space: Space) => Checkpoint,
): Promise<number> {
  const { given, io, progress, interrupt, say } = waiting;
  const json = given.json === true;
  const outcome = await explore(question, { ...searching(waiting), checkpoint });
  const { stopped } = outcome.counts;
  if (outcome.found.length === 0) {
    progress.end();
    sayNothing(question, outcome, json, io);
  } else {
    const place = stopped ? `${bare(folder)}-partial` : folder;
    const written = await writeGallery(place, question, outcome, progress.tell, interrupt.signal);
    progress.end();
    sayFound(question, outcome, written, json, io);
  }
  if (stopped) {
    say('stopped before the end: this is a part of the answer; the same command with --resume goes on to the whole');
    return EXIT.interrupted;
  }
  return outcome.found.length === 0 ? EXIT.nothingFits : EXIT.done;
}

function searching({ given, progress, interrupt, say }: Waiting) {
  const { enough, signal } = interrupt;
  const workers: { workers?: number } = given.workers === undefined ? {} : { workers: workersOf(given.workers) };
  const onSpace = (space: Space): void => {
    const wait = waitInWords(space, workers.workers ?? availableParallelism());
    if (wait !== undefined && given.quiet !== true) say(wait);
  };
  return { ...workers, progress: progress.tell, enough, signal, onSpace };
}

function journalFile(
  path: string,
  question: Question,
  space: Space,
  { given, say }: Waiting,
  shard?: Shard,
): CheckpointFile {
  const header = { ...headerOf(question, space), ...(shard && { shard }) };
  return new CheckpointFile(path, header, { resume: given.resume === true, say });
}

function headerOf(question: Question, { way, written, numbers }: Space) {
  return { program: programVersion(), question, space: { way, written, numbers } };
}

/** Reads the question from file and flags. */
function asked({ file, flags }: ExploreArguments, io: Io): Question {
  const text = file === undefined ? {} : { text: questionText(file), file };
  const question = readQuestion(
    { ...text, flags, beside: besideFile },
    draftLoader((note) => sayWrong(io, note)),
    doneLoader((note) => sayWrong(io, note)),
  );
  if (question.onTheLoom) sayWrong(io, onTheLoomInWords(question));
  return question;
}

/**
 * The text of a question.
 *
 * @throws Problem that names the flag, if a draft or the name of a structure is given in its place
 */
function questionText(file: string): string {
  const instead = (found: string, flag: string): Problem =>
    new Problem(`${file}: found ${found}; expected a question. For ${found} write ${flag} ${asArgument(file)}`);
  if (extname(file).toLowerCase() === '.wif') throw instead('a draft', '--draft');
  if (!existsSync(file) && structures.some(({ name }) => name === file.toLowerCase())) {
    throw instead('the name of a structure', '--structure');
  }
  const text = readText(file, 'a question');
  if (/^threading\s*:/m.test(text)) throw instead('a draft', '--draft');
  return text;
}

function workersOf(text: string): number {
  const workers = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  if (workers < 1 || workers > 256)
    throw new Problem(`--workers: found ${quote(text)}; expected a number from 1 to 256`);
  return workers;
}
