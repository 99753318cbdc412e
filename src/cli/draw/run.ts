import type { Yarn } from '../../colour/yarn.js';
import type { Draft } from '../../draft/draft.js';
import { draftSeenInWords, type Seen, seenInWords } from '../../draft/point-of-view.js';
import { drawnInLetters, fitsAPage } from '../../draft/text-draft.js';
import { writeDraft } from '../../draft/yaml/read-draft.js';
import { Problem, quote } from '../../problem.js';
import { scoreDraft } from '../../score/score.js';
import type { Question } from '../../search/question/question.js';
import { readQuestion } from '../../search/question/read-question.js';
import { type OneDraft, oneDraft } from '../../search/report/one-draft.js';
import { inTheUsualWay } from '../../search/report/usual-colours.js';
import { obstacles, tieUpOn } from '../../structure/loom/loom-fit.js';
import { capital } from '../../words/counts.js';
import { draftAsWritten, draftLoader } from '../shell/files.js';
import { EXIT, type Io, say, sayJson, sayLines, sayWrong } from '../shell/io.js';
import { onlyShown } from '../shell/only-shown.js';
import { loomLines } from './draw-loom.js';
import { pictureKind, writePicture } from './draw-picture.js';
import { asData, faultsOf, figureLines } from './words.js';

/** The arguments of the command. */
export interface DrawArguments {
  readonly file?: string | undefined;
  readonly flags: Readonly<Record<string, string>>;
  /** End and pick (or units) on which the orders begin, counted from 1: `2/3`. */
  readonly start?: string;
  readonly out?: string;
  readonly json?: boolean;
}

/** Shows one draft: its figures, its faults, the draft itself; and a picture if asked for. */
export async function runDraw(given: DrawArguments, io: Io): Promise<number> {
  const { out } = given;
  const kind = out === undefined ? undefined : pictureKind(out);
  const question = questionOf(given, io);
  const { name, draft } = shownOf(given, question);
  const floatLimit = question.limits.float;
  const scored = scoreDraft(draft, { weights: question.rank, floatLimit, classics: [] });
  const { loom, seen } = question;
  const faults = faultsOf(draft, scored, floatLimit);
  if (out !== undefined && kind !== undefined) await writePicture(out, kind, name, draft, seen);
  if (given.json) {
    const onLoom = loom && { loom: { ...tieUpOn(draft, loom), obstacles: obstacles(draft, loom) } };
    sayJson(io, { ...asData(name, draft, scored, faults), ...onLoom, ...(out !== undefined && { picture: out }) });
  } else {
    for (const line of [
      ...figureLines(name, draft, scored, floatLimit),
      ...faults.map((fault) => `wrong: ${fault}`),
      '',
    ]) {
      say(io.stdout, line);
    }
    for (const line of drawingLines(draft, seen)) say(io.stdout, line);
    sayLines(io.stdout, writeDraft(draft));
    if (loom !== undefined) for (const line of ['', ...loomLines(draft, loom)]) say(io.stdout, line);
    if (out !== undefined)
      sayLines(io.stdout, `\nOpen ${out}\n${capital(kind === 'svg' ? draftSeenInWords(seen) : seenInWords(seen))}.`);
  }
  return EXIT.done;
}

/** The draft in letters, where it is small enough for a page, and what the file after it begins with. */
function drawingLines(draft: Draft, seen: Seen): string[] {
  const drawing = fitsAPage(draft)
    ? drawnInLetters(draft, { seen })
    : ['The draft is too large to be drawn in letters here: --out draft.svg draws it.', ''];
  return [...drawing, 'To write in, from end 1 and pick 1 on:', ''];
}

function questionOf({ file, flags }: DrawArguments, io: Io): Question {
  onlyShown(flags);
  if (file !== undefined && flags.structure !== undefined) {
    throw new Problem('--structure: found it beside the draft of a file; expected one or the other');
  }
  const draft = file === undefined ? {} : { draft: file };
  const { warp, ...rest } = flags;
  return readQuestion(
    { flags: { ...rest, ...draft, ...(warp !== undefined && { orders: warp }) }, flagNames: { orders: '--warp' } },
    // A draft that is shown in its own colours is read as written.
    (warp === undefined ? draftAsWritten : draftLoader)((note) => sayWrong(io, note)),
  );
}

/**
 * The draft to show: the file's draft in its own colours, or the given orders laid in the one way asked for. A
 * structure without orders gets its usual colours.
 */
function shownOf({ flags, start }: DrawArguments, read: Question): OneDraft {
  const given = read.draft?.draft;
  const question = flags.warp === undefined && given === undefined ? inTheUsualWay(read, flags) : read;
  if (flags.warp === undefined && start !== undefined) {
    throw new Problem('--start: found it without --warp; expected an order that begins there');
  }
  if (given !== undefined && flags.warp === undefined) {
    const yarns = flags.yarns === undefined ? given.yarns : recoloured(given.yarns, question.yarns);
    return { name: given.name ?? read.draft!.file, draft: { ...given, yarns, sett: question.sett } };
  }
  return oneDraft(question, startOf(start));
}

/** Reads the starts of the orders, `2/3`; both on the first thread by default. */
function startOf(text = '1/1'): readonly [number, number] {
  const found = /^([1-9]\d{0,4})\/([1-9]\d{0,4})$/.exec(text);
  if (found === null) throw new Problem(`--start: found ${quote(text)}; expected an end and a pick (or units), as 2/3`);
  return [Number(found[1]) - 1, Number(found[2]) - 1];
}

/** Replaces the colours of yarns by those of other yarns with the same letter. */
function recoloured(yarns: readonly Yarn[], others: readonly Yarn[]): Yarn[] {
  return yarns.map((yarn) => others.find(({ letter }) => letter === yarn.letter) ?? yarn);
}
