import { writeWhole } from '../../files/whole.js';
import { enlargedSheet } from '../../gallery/sheet/enlarge-sheet.js';
import { sizeLines, sizesAsData } from '../../gallery/sheet/enlarge-words.js';
import { formatOrder } from '../../order/order.js';
import { Problem, quote } from '../../problem.js';
import type { Question } from '../../search/question/question.js';
import { readQuestion } from '../../search/question/read-question.js';
import { enlarge, usualTargets } from '../../search/report/enlarge.js';
import { parseShare } from '../../words/measure.js';
import { pictureKind } from '../draw/draw-picture.js';
import { draftLoader } from '../shell/files.js';
import { bold, EXIT, type Io, say, sayJson, sayLines, sayWrong } from '../shell/io.js';
import { onlyShown } from '../shell/only-shown.js';

/** The arguments of the command. */
export interface EnlargeArguments {
  readonly order: string;
  readonly flags: Readonly<Record<string, string>>;
  readonly sizes?: string;
  readonly shrinkage?: string;
  readonly out?: string;
  readonly json?: boolean;
}

/** Default shrinkage: usual for cotton in the first wash (common practice, no source). */
const USUAL_SHRINKAGE = '10 %';
const MOST_ENDS = 1000;

/** Shows one motif at every size. Returns the exit code. */
export async function runEnlarge(given: EnlargeArguments, io: Io): Promise<number> {
  const { order, flags, out } = given;
  onlyShown(flags);
  const kind = out === undefined ? undefined : pictureKind(out, 'a sheet of pictures', 'the same, to print');
  const question = readQuestion(
    { flags: { ...flags, orders: order }, flagNames: { orders: 'the motif' } },
    draftLoader((note) => sayWrong(io, note)),
  );
  const motif = motifOf(question);
  const shrinkage = shareOf(given.shrinkage ?? USUAL_SHRINKAGE);
  const targets = given.sizes === undefined ? usualTargets(motif) : sizesOf(given.sizes);
  const enlarged = enlarge(question, targets, shrinkage);
  const letters = formatOrder(motif, question.yarns);
  const woven = question.structures[0] ?? question.draft!.draft.name ?? question.draft!.file;
  const title = `${letters} on ${woven}`;
  const limit = question.limits.float;
  if (out !== undefined && kind !== undefined) {
    writeWhole(out, await enlargedSheet(enlarged, { title, limit, shrinkage, seen: question.seen }, kind));
  }
  if (given.json) {
    const asked = { order: letters, structure: woven, sett: question.sett, shrinkage, limit };
    const picture = out === undefined ? {} : { picture: out };
    sayJson(io, { format: 'shedlight-enlarge', version: 1, ...asked, ...sizesAsData(enlarged), ...picture });
    return EXIT.done;
  }
  const { ends, picks, per } = question.sett;
  const lost = `less ${given.shrinkage ?? USUAL_SHRINKAGE} for shrinkage${given.shrinkage === undefined ? ', as usual for cotton' : ''}`;
  say(io.stdout, bold(io.stdout, title));
  sayLines(io.stdout, `${ends} ends and ${picks} picks per ${per}; finished width: ${lost}\n\n`);
  for (const line of sizeLines(enlarged, question)) say(io.stdout, line);
  if (out !== undefined) say(io.stdout, `Open ${bold(io.stdout, out)}`);
  return EXIT.done;
}

function motifOf({ orders, structures, weft }: Question): readonly number[] {
  const [motif, more] = orders;
  if (motif === undefined || more !== undefined) throw new Problem('found several orders; expected one, such as DLDDL');
  if (structures.length > 1) throw new Problem('--structure: found several; expected one');
  if (weft.rule === 'own') throw new Problem('--weft: found “own”; expected same, exchange, a letter or an order');
  return motif;
}

function shareOf(text: string): number {
  try {
    return parseShare(text);
  } catch (problem) {
    throw problem instanceof Problem ? new Problem(`--shrinkage: ${problem.message}`) : problem;
  }
}

/** Reads `20, 40, 80`. */
function sizesOf(text: string): number[] {
  const sizes = text.split(/[\s,;]+/).filter((part) => part !== '');
  if (sizes.length === 0 || !sizes.every((size) => /^[1-9]\d{0,3}$/.test(size) && Number(size) <= MOST_ENDS)) {
    throw new Problem(`--sizes: found ${quote(text)}; expected ends of the motif up to ${MOST_ENDS}, as 20, 40, 80`);
  }
  return [...new Set(sizes.map(Number))].sort((a, b) => a - b);
}
