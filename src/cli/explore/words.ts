import { relative } from 'node:path';
import { otherLimits, pastLimitInWords } from '../../gallery/html/page-limits.js';
import type { WrittenGallery } from '../../gallery/write.js';
import { inWords } from '../../score/words/figure-words.js';
import type { Shard } from '../../search/checkpoint/checkpoint.js';
import type { Question } from '../../search/question/question.js';
import { waysCounted } from '../../search/question/treadlings-tried.js';
import { minutesOf } from '../../search/report/minutes.js';
import { floatRemedyInWords } from '../../search/report/remedy-words.js';
import { sureness } from '../../search/report/trials.js';
import type { Space } from '../../search/space/space.js';
import type { Outcome } from '../../search/strategy/outcome.js';
import { counted, grouped, plural } from '../../words/counts.js';
import { asArgument } from '../../words/shell.js';
import { bold, commandLine, type Io, say, sayJson, sayWrong } from '../shell/io.js';

/** Prints what was found, a remedy if most candidates had too long floats, and the file to open. */
export function sayFound(question: Question, outcome: Outcome, written: WrittenGallery, json: boolean, io: Io): void {
  const { counts, found } = outcome;
  const best = found[0]!;
  const words = inWords(best.scores, { ...best.draft, floatLimit: question.limits.float });
  const remedy = floatRemedyInWords(question, outcome);
  const [folder, index] = [shown(written.folder), shown(written.index)];
  if (json) {
    const first = { code: best.code, recipe: best.recipe, words, score: best.scores.score };
    const place = { folder, index, bytes: written.bytes };
    sayJson(io, {
      format: 'shedlight-explore',
      version: 1,
      counts,
      shown: found.length,
      best: first,
      ...(remedy && { remedy }),
      ...place,
    });
    return;
  }
  say(io.stdout, countsInWords(question, outcome));
  const sure = sureness(outcome.counts);
  if (sure) say(io.stdout, sure);
  say(io.stdout, `Best: ${bold(io.stdout, best.code)} ${best.recipe}`);
  say(io.stdout, `  ${words}`);
  if (remedy) say(io.stdout, remedy);
  say(io.stdout, `Open ${bold(io.stdout, index)}`);
  const codes = found.slice(0, 2).map(({ code }) => code);
  say(io.stdout, `Keep what you like by its code: ${commandLine(io, 'keep', asArgument(folder), ...codes)}`);
}

/** Words for what stays unchanged on the loom, and what is tried. */
export function onTheLoomInWords(question: Question): string {
  const { draft, weft, orders, lengths, treadled } = question;
  const blocks = treadled.length > 0 ? ` in blocks ${treadled.join(' ')}` : '';
  const own = orders.length > 0 ? `${orders.length} weft orders` : `weft orders of ${lengths.join(', ')} picks`;
  const tried = weft.rule === 'own' ? own : 'the weft order asked for';
  return `${draft!.file} is on the loom, so its threading and warp colours stay; tried: ${tried}, treadled ${waysCounted(question)}${blocks}`;
}

/** Prints that nothing fits (or nothing yet), the counts of the candidates, and what to change. */
export function sayNothing(question: Question, outcome: Outcome, json: boolean, io: Io): void {
  const { counts } = outcome;
  const help = whatToChange(question, outcome);
  if (json) sayJson(io, { format: 'shedlight-explore', version: 1, counts, shown: 0, best: null, remedy: help });
  const found = counts.stopped ? 'was found yet' : 'fits the question';
  sayWrong(io, `nothing ${found}. ${countsInWords(question, outcome)} ${help}`);
}

/** What to change, for the commonest reason for setting candidates aside. */
function whatToChange(question: Question, outcome: Outcome): string {
  const { done } = question;
  const { float, unsound, flat, limits: others, done: before = 0 } = outcome.counts.setAside;
  const most = Math.max(float, unsound, flat, others, before);
  if (most === 0) return 'Ask for other orders or lengths.';
  if (most === float) return floatRemedyInWords(question, outcome)!;
  if (most === flat)
    return 'A larger size (times 2, 4), other lengths, or weft own may show a pattern; --limits "contrast 0" or --rank fine shows fine textures.';
  if (most === unsound) return 'Another treadling, block order or structure may hold together as one cloth.';
  if (most === before) {
    return `Ask for other orders or lengths${done?.unlike === undefined ? '' : `, or for less than unlike done ${done.unlike}`}.`;
  }
  const blocks =
    question.profile === 'order' ? ' Some orders choose blocks that cannot be neighbours in this structure.' : '';
  return `Shorter orders, a smaller size (times) or a wider limit may allow some; the limits are ${otherLimits(question).join(', ')}.${blocks}`;
}

/** About how long it takes to measure every candidate; undefined where that is under a minute, or not done. */
export function waitInWords(space: Pick<Space, 'way' | 'count' | 'seconds'>, threads: number): string | undefined {
  const minutes = minutesOf(space, threads);
  if (space.way !== 'scored' || minutes < 1) return undefined;
  return `${grouped(space.count)} candidates are measured one by one, about ${counted(Math.round(minutes), 'minute')}`;
}

/** Prints the file of a shard, and the command that merges the shards. */
export function sayShard({ part, of }: Shard, file: string, json: boolean, io: Io): void {
  if (json) {
    sayJson(io, { format: 'shedlight-explore', version: 1, shard: { part, of }, file: shown(file) });
    return;
  }
  say(io.stdout, `Part ${part} of ${of} is done: ${bold(io.stdout, shown(file))}`);
  say(
    io.stdout,
    `When all are: ${commandLine(io, 'explore', '--merge', shown(file).replace(/\d+-of-\d+$/, `*-of-${of}`))}`,
  );
}

/** The counts in words: candidates tried, set aside by reason, cloths left. */
function countsInWords(question: Question, { counts, found }: Outcome): string {
  const { setAside } = counts;
  const reasons = [
    [counts.equals, 'the same as one of these'],
    [setAside.float, 'with floats too long'],
    [setAside.unsound, 'not holding together as one cloth'],
    [setAside.flat, 'too fine a texture'],
    [setAside.limits, pastLimitInWords(question)],
    [setAside.done ?? 0, 'already woven or too similar'],
  ] as const;
  const aside = reasons.filter(([count]) => count > 0).map(([count, why]) => `${grouped(count)} ${why}`);
  const tried = counts.stopped ? 'stopped before the end' : counts.exhaustive ? 'all tried' : 'varying the best found';
  const weave = `${grouped(counts.cloths)} different ${plural(counts.cloths, 'cloth')}`;
  const candidates = `${grouped(counts.examined)} ${plural(counts.examined, 'candidate')}`;
  const proved = `${grouped(counts.cutOff)} proved not to reach those shown, and not measured; of the rest: `;
  const rest = `${counts.cutOff > 0 ? proved : ''}${[weave, ...aside].join(', ')}`;
  return `${candidates} (${tried}): ${rest}; ${found.length} shown.`;
}

/** A path relative to the working folder, if it is inside; else the whole path. */
function shown(path: string): string {
  const near = relative(process.cwd(), path);
  return near.startsWith('..') ? path : near;
}
