import type { Question } from '../../search/question/question.js';
import { sureness } from '../../search/report/trials.js';
import type { Counts } from '../../search/strategy/outcome.js';
import { andList, grouped, plural } from '../../words/counts.js';
import { pastLimitInWords } from './page-limits.js';

/** Says whether every candidate was tried, and if not, why. */
function extentOf({ exhaustive, stopped, evolved }: Counts): string {
  if (stopped)
    return 'The search was stopped before its end: this is a part of the answer, and the rest may hold better.';
  if (exhaustive) return 'Every one was tried: nothing is missing.';
  const until = evolved?.settled ? 'until they stopped improving' : 'for as long as the search allows';
  return `There are too many to try them all: the best found were varied ${until}; better ones may exist, and more tries or another seed may find them.`;
}

/** The reason for setting aside cloths already woven, and similar ones if the question asks for that. */
function doneInWords({ done }: Question): string {
  const near = done?.unlike === undefined ? '' : `, or are less than ${done.unlike} unlike a cloth that was`;
  return `because they were woven before${near}`;
}

/** The counts of all candidates, in whole sentences. */
export function countsOf(question: Question, counts: Counts, shown: number): string[] {
  const { setAside } = counts;
  const arePairs = question.weft.rule === 'own' && question.warp === undefined;
  const [order, orders] = arePairs ? ['pair of orders', 'pairs of orders'] : ['order', 'orders'];
  const reasons = [
    [setAside.float, 'for a float above the limit'],
    [setAside.unsound, 'because the threads would not hold together as one cloth'],
    [setAside.flat, 'because their texture is too fine: light and dark melt into one another'],
    [setAside.limits, pastLimitInWords(question)],
    [setAside.done ?? 0, doneInWords(question)],
  ] as const;
  const aside = reasons.filter(([n]) => n > 0).map(([n, why]) => `${grouped(n)} ${why}`);
  return [
    `As asked, ${grouped(counts.written)} ${plural(counts.written, order, orders)} can be written. Leaving out what only ` +
      `repeats another and laying the rest in every way asked, ${grouped(counts.examined)} ` +
      `${plural(counts.examined, 'candidate was', 'candidates were')} tried.`,
    extentOf(counts),
    ...[sureness(counts)].filter((sentence) => sentence !== undefined),
    ...(counts.cutOff > 0
      ? [
          `${grouped(counts.cutOff)} are proved not to reach those shown and were not measured to the end; ` +
            'so it is not known how many different cloths they weave, nor which of them show no pattern.',
        ]
      : []),
    `${counts.cutOff > 0 ? 'The others' : 'They'} weave ${grouped(counts.cloths)} different ` +
      `${plural(counts.cloths, 'cloth')}; ${grouped(counts.equals)} more ` +
      `${plural(counts.equals, 'weaves', 'weave')} one of these again.`,
    aside.length === 0
      ? `${counts.cutOff > 0 ? 'Of the others none' : 'None'} was set aside.`
      : `Set aside: ${andList(aside)}.`,
    question.oneOfEachKind
      ? `Shown here: the best of each of ${grouped(shown)} kinds: any two of them look unlike.`
      : `Shown here: ${shown === counts.cloths ? (shown === 1 ? 'the only one' : `all ${grouped(shown)}`) : `the best ${grouped(shown)}`}.`,
    ...(question.done?.unlike !== undefined && shown < counts.cloths
      ? ['Cloths further down the list were not compared with what was woven before.']
      : []),
  ];
}
