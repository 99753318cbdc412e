import { basename, dirname, extname, join, relative } from 'node:path';
import { writeGallery } from '../gallery/write.js';
import { MachineFault, Problem } from '../problem.js';
import { inWords } from '../score/words.js';
import type { Outcome } from '../search/found.js';
import type { Question } from '../search/question.js';
import { readQuestion } from '../search/read-question.js';
import { explore } from '../search/run.js';
import { draftLoader, readText } from './files.js';
import { bold, EXIT, type Io, say, sayJson, sayWrong } from './io.js';
import { progressOn } from './progress.js';

/** What a person gave on the command line. */
export interface ExploreArguments {
  readonly file?: string | undefined;
  readonly flags: Readonly<Record<string, string>>;
  readonly out?: string;
  readonly workers?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** Searches what is asked and writes the gallery. Returns the exit code. */
export async function runExplore(given: ExploreArguments, io: Io): Promise<number> {
  const { file, flags } = given;
  const workers = given.workers === undefined ? undefined : workersOf(given.workers);
  const text = file === undefined ? {} : { text: readText(file, 'a question'), file };
  const question = readQuestion(
    { ...text, flags },
    draftLoader((note) => sayWrong(io, note)),
  );
  const folder = given.out ?? folderOf(file, question);
  const stop = new AbortController();
  const interrupt = (): void => {
    // Asked a second time, a person does not want to wait for anything.
    if (stop.signal.aborted) process.exit(EXIT.interrupted);
    stop.abort();
  };
  process.on('SIGINT', interrupt);
  const progress = progressOn(io.stderr, given.quiet === true);
  try {
    const { signal } = stop;
    const outcome = await explore(question, { ...(workers && { workers }), progress: progress.tell, signal });
    if (outcome.found.length === 0) {
      progress.end();
      return sayNothing(outcome, given, io);
    }
    const written = await writeGallery(folder, question, outcome, progress.tell, signal);
    progress.end();
    sayFound(
      question,
      outcome,
      { folder: shown(written.folder), index: shown(written.index), bytes: written.bytes },
      given,
      io,
    );
    return EXIT.done;
  } catch (error) {
    progress.end();
    const failed = error instanceof Problem || error instanceof MachineFault;
    if (failed || !stop.signal.aborted) throw error;
    sayWrong(io, 'stopped; nothing was written');
    return EXIT.interrupted;
  } finally {
    process.off('SIGINT', interrupt);
  }
}

/** A folder beside the question and named after it; without a question file, in `gallery`, named after the weave. */
function folderOf(file: string | undefined, question: Question): string {
  if (file !== undefined) {
    const name = basename(file, extname(file));
    return join(dirname(file), extname(file) === '' ? `${name}-gallery` : name);
  }
  const woven = question.draft
    ? basename(question.draft.file, extname(question.draft.file))
    : question.structures.join(' ');
  const plain = woven
    .normalize('NFD')
    .toLowerCase()
    .replace(/[\p{M}'’]/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return join('gallery', plain.slice(0, 60) || 'gallery');
}

function workersOf(text: string): number {
  const workers = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  if (workers < 1 || workers > 256) throw new Problem(`--workers: found “${text}”; expected a number from 1 to 256`);
  return workers;
}

/** Two lines: what was found, and which file to open. */
function sayFound(
  question: Question,
  outcome: Outcome,
  written: { readonly folder: string; readonly index: string; readonly bytes: number },
  { json }: ExploreArguments,
  io: Io,
): void {
  const { counts, found } = outcome;
  const best = found[0]!;
  const words = inWords(best.scores, { ...best.draft, floatLimit: question.limits.float });
  if (json) {
    const first = { code: best.code, recipe: best.recipe, words, score: best.scores.score };
    sayJson(io, { format: 'shedlight-explore', version: 1, counts, shown: found.length, best: first, ...written });
    return;
  }
  say(io.stdout, `${countsInWords(outcome)} Best: ${bold(io.stdout, best.code)} ${best.recipe}: ${words}.`);
  say(io.stdout, `Open ${bold(io.stdout, written.index)}`);
}

function sayNothing(outcome: Outcome, { json }: ExploreArguments, io: Io): number {
  if (json) sayJson(io, { format: 'shedlight-explore', version: 1, counts: outcome.counts, shown: 0, best: null });
  sayWrong(io, `nothing fits the question. ${countsInWords(outcome)}`);
  return EXIT.nothingFits;
}

/** How many were tried, what was set aside and why, how many cloths are left. */
function countsInWords({ counts, found }: Outcome): string {
  const { setAside } = counts;
  const reasons = [
    [setAside.float, 'float too far'],
    [setAside.unsound, 'do not hang together'],
    [setAside.flat, 'show no pattern'],
    [setAside.limits, 'pass another limit'],
  ] as const;
  const aside = reasons.filter(([count]) => count > 0).map(([count, why]) => `${grouped(count)} ${why}`);
  const tried = counts.exhaustive ? 'all tried' : 'a sample';
  const weave = `${grouped(counts.cloths)} different cloth${counts.cloths === 1 ? '' : 's'}`;
  return `${grouped(counts.examined)} candidates (${tried}): ${[weave, ...aside].join(', ')}; ${found.length} shown.`;
}

const grouped = (count: number): string => count.toLocaleString('en');

/** A path as a person would type it from here, where it lies below. */
function shown(path: string): string {
  const near = relative(process.cwd(), path);
  return near.startsWith('..') ? path : near;
}
