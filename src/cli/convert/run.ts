import { existsSync, readFileSync } from 'node:fs';
import { extname } from 'node:path';
import { type Cells, cellsFromText, factor } from '../../cloth/factor.js';
import { cellsFromPicture } from '../../cloth/factor-picture.js';
import type { Draft } from '../../draft/draft.js';
import { SEEN } from '../../draft/point-of-view.js';
import { textDraft } from '../../draft/text-draft.js';
import {
  type KeptSections,
  keptMisfits,
  LARGEST_WIF,
  readWif,
  refuseLarge,
  writeWif,
} from '../../draft/wif/read-wif.js';
import { DEFAULT_SETT, DEFAULT_YARNS, readDraft, writeDraft } from '../../draft/yaml/read-draft.js';
import { judgeFile, writeWhole } from '../../files/whole.js';
import { Problem, quote } from '../../problem.js';
import { recognise, understood } from '../../structure/recognise/recognise.js';
import { readBytes, readText } from '../shell/files.js';
import { EXIT, type Io, say } from '../shell/io.js';

/** The arguments of the command. */
export interface ConvertArguments {
  readonly input: string;
  readonly output: string;
  /** Write the recognised units into the draft, so that colours can be laid by unit. */
  readonly units?: boolean;
  /** Write a WIF file with a lift plan and no treadles. */
  readonly liftPlan?: boolean;
  /** From where a draft in letters is drawn. */
  readonly seen?: string;
  /** Dots each way of one cell in a picture. */
  readonly dots?: string;
}

interface Loaded {
  readonly draft: Draft;
  readonly kept?: KeptSections;
  readonly notes: readonly string[];
}

const FROM = ['.yaml', '.yml', '.wif', '.txt', '.png'] as const;
const TO = ['.yaml', '.yml', '.wif', '.txt'] as const;
/** Largest picture file of cells, in bytes. */
export const LARGEST_PICTURE_FILE = 16_000_000;
const MOST_DOTS = 100;

/**
 * Converts a draft between kinds of files, told by their endings: YAML and WIF in both directions, both to a text draft
 * for print, and a cloth known only by its cells (text or picture) to any of these. From WIF to WIF every thread is
 * kept; otherwise the draft is reduced to one repeat. Notes on what was changed or left out go to stderr.
 */
export async function runConvert(given: ConvertArguments, io: Io): Promise<number> {
  const from = kindOf(given.input, FROM, 'a draft (.yaml, .wif) or the cells of a cloth (.txt, .png)');
  const to = kindOf(given.output, TO, 'a name that ends in .yaml, .wif or .txt');
  judgeFile(given.output);
  const loaded = await load(given, from, to === '.wif' && given.units !== true);
  const notes = [...loaded.notes];
  const draft = given.units === true ? withUnits(given.input, loaded.draft, notes) : loaded.draft;
  // With units the draft may begin at another thread, so lists of single threads no longer fit.
  const kept = given.units === true && loaded.kept ? { ...loaded.kept, ends: 0, picks: 0 } : loaded.kept;
  const text = written(given, to, draft, kept, notes);
  if (existsSync(given.output)) notes.push(`${given.output} was there before; it is written anew`);
  writeWhole(given.output, text);
  for (const note of notes) say(io.stderr, `note: ${note}`);
  say(io.stdout, given.output);
  return EXIT.done;
}

async function load(given: ConvertArguments, kind: (typeof FROM)[number], whole: boolean): Promise<Loaded> {
  const { input } = given;
  if (given.dots !== undefined && kind !== '.png') {
    throw new Problem(`--dots: found it with ${input}; expected it with a picture of cells (.png)`);
  }
  if (kind === '.yaml' || kind === '.yml') return { draft: readDraft(readText(input, 'a draft'), input), notes: [] };
  if (kind === '.wif') return inFile(input, () => readWif(readBytes(input, 'a WIF file', LARGEST_WIF), { whole }));
  if (kind === '.txt') {
    const text = readBytes(input, 'the cells of a cloth', LARGEST_WIF * 2).toString('utf8');
    return inFile(input, () => ({ draft: draftOfCells(cellsFromText(text)), notes: [] }));
  }
  const dots = given.dots === undefined ? 1 : Number(given.dots);
  if (!Number.isInteger(dots) || dots < 1 || dots > MOST_DOTS) {
    throw new Problem(`--dots: found ${quote(given.dots ?? '')}; expected a whole number from 1 to ${MOST_DOTS}`);
  }
  const bytes = readBytes(input, 'a picture of cells', LARGEST_PICTURE_FILE);
  const { cells, couldBe } = await inFileAsync(input, cellsFromPicture(bytes, dots));
  const drawnLarger = `every run of cells is a multiple of ${couldBe}: if a cell measures ${couldBe} dots, add --dots ${couldBe}`;
  return inFile(input, () => ({ draft: draftOfCells(cells), notes: couldBe > 1 ? [drawnLarger] : [] }));
}

/** A draft with dark warp and light weft, whose picture is the same as the given picture. */
function draftOfCells(cells: Cells): Draft {
  const weave = factor(cells);
  return {
    ...weave,
    yarns: DEFAULT_YARNS,
    warp: weave.threading.map(() => 0),
    weft: weave.treadling.map(() => 1),
    sett: DEFAULT_SETT,
  };
}

function withUnits(file: string, draft: Draft, notes: string[]): Draft {
  const found = inFile(file, () => recognise(draft));
  notes.push(...found.words);
  if (found.ends.from > 0) notes.push(`the draft now begins at end ${found.ends.from + 1} of the file`);
  if (found.picks.from > 0) notes.push(`the draft now begins at pick ${found.picks.from + 1} of the file`);
  return understood(draft, found);
}

function written(
  { input, output, liftPlan, seen }: ConvertArguments,
  to: (typeof TO)[number],
  draft: Draft,
  kept: KeptSections | undefined,
  notes: string[],
): string {
  if (to === '.wif') {
    if (kept !== undefined) notes.push(...keptMisfits(draft, kept));
    return writeWif(draft, {
      version: ownVersion(),
      ...(kept !== undefined && { kept }),
      ...(liftPlan === true && { liftPlan }),
    });
  }
  if (liftPlan === true) throw new Problem(`--lift-plan: found it with ${output}; expected it with a WIF file (.wif)`);
  inFile(input, () => refuseLarge(draft));
  if (kept !== undefined && kept.sections.size > 0) {
    notes.push(`left out, as ${to} has no place for them: ${[...kept.sections.keys()].slice(0, 12).join(', ')}`);
  }
  if (to === '.txt') return textDraft(draft, { seen: inFile('--seen', () => SEEN.read(seen)) });
  if (seen !== undefined)
    throw new Problem(`--seen: found it with ${output}; expected it with a draft for print (.txt)`);
  return readable(input, draft);
}

/** Writes a draft as YAML and checks that it can be read back: YAML has narrower limits than the draft type. */
function readable(input: string, draft: Draft): string {
  const text = writeDraft(draft);
  inFile(input, () => readDraft(text, 'as YAML'));
  return text;
}

function kindOf<K extends string>(path: string, kinds: readonly K[], expected: string): K {
  const kind = kinds.find((ending) => ending === extname(path).toLowerCase());
  if (kind === undefined) throw new Problem(`found ${quote(path)}; expected ${expected}`);
  return kind;
}

function inFile<T>(file: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw error instanceof Problem && !error.message.startsWith(`${file}:`) ? error.inFile(file) : error;
  }
}

async function inFileAsync<T>(file: string, reading: Promise<T>): Promise<T> {
  try {
    return await reading;
  } catch (error) {
    throw error instanceof Problem ? error.inFile(file) : error;
  }
}

function ownVersion(): string {
  const own = JSON.parse(readFileSync(new URL('../../../package.json', import.meta.url), 'utf8')) as {
    version: string;
  };
  return own.version;
}
