import { capital } from '../words/counts.js';
import { type Draft, liftAt, shaftCount } from './draft.js';
import { AT_THE_LOOM, asDrawn, draftSeenInWords, numberAt, type Seen } from './point-of-view.js';

interface TextDraftOptions {
  /** Characters that fit on a line of the paper; 78 on A4 and Letter at 10 points. */
  readonly width?: number;
  /** From where it is drawn. Default: as at the loom. */
  readonly seen?: Seen;
}

const USUAL_WIDTH = 78;
/** Picks of a page, beside threading and words. */
const PAGE_OF_PICKS = 48;
/** Threads from one written number of an end or pick to the next. */
const COUNT_BY = 10;

/**
 * Writes a draft in plain characters, for print: heading, colours, threading with shaft 1 nearest the cloth, tie-up, and
 * for each pick its treadles, colour and row of the drawdown (`#` for an end on the face). A draft wider than the paper is continued below in strips of ends, each with the treadling beside it.
 */
export function textDraft(draft: Draft, options: TextDraftOptions = {}): string {
  return `${[...headLines(draft), ...drawnInLetters(draft, options)].join('\n').trimEnd()}\n`;
}

/** The drawing alone, with a line that says from where it is seen. */
export function drawnInLetters(written: Draft, options: TextDraftOptions = {}): string[] {
  const seen = options.seen ?? AT_THE_LOOM;
  const draft = asDrawn(written, seen);
  const margin = marginOf(draft);
  const strip = stripOf(margin, options.width);
  const ends = draft.threading.length;
  const lines = [`${capital(draftSeenInWords(seen))}.`, ''];
  // The strip with end 1 comes first.
  for (let at = 0; at < ends; at += strip) {
    const size = Math.min(strip, ends - at);
    const from = seen.end === 'right' ? ends - at - size : at;
    lines.push(...stripLines(draft, from, from + size, margin, seen), '');
  }
  return lines.map((line) => line.trimEnd());
}

/** Whether the drawing is one strip, no longer than a page. */
export function fitsAPage(draft: Draft): boolean {
  return draft.threading.length <= stripOf(marginOf(draft)) && draft.treadling.length <= PAGE_OF_PICKS;
}

/** Ends of a strip on paper of this width. */
function stripOf(margin: Margin, width = USUAL_WIDTH): number {
  return Math.floor(Math.max(COUNT_BY, width - margin.length) / COUNT_BY) * COUNT_BY;
}

function headLines(draft: Draft): string[] {
  const { sett, threading, treadling, yarns, tieUp } = draft;
  const loom = `${shaftCount(draft)} shafts, ${tieUp.length} treadles`;
  const repeat = `one repeat: ${threading.length} ends, ${treadling.length} picks`;
  return [
    draft.name ?? 'Draft',
    `${loom}; ${repeat}; ${sett.ends} ends, ${sett.picks} picks per ${sett.per}`,
    ...yarns.map(({ letter, name, hex, tex }) =>
      [`  ${letter}`, name === letter ? '' : name, hex, tex === undefined ? '' : `${tex} tex`]
        .filter(Boolean)
        .join('  '),
    ),
    '',
    'Tie-up (rising shed):',
    ...tieUp.map((shafts, t) => `  treadle ${t + 1}: ${shafts.length === 0 ? 'none' : shafts.join(' ')}`),
  ];
}

/** The lines of the strip with ends `from` to `to`. */
function stripLines(draft: Draft, from: number, to: number, margin: Margin, seen: Seen): string[] {
  const ends = Array.from({ length: to - from }, (_, index) => from + index);
  const below = seen.threading === 'below';
  const up = Array.from({ length: shaftCount(draft) }, (_, index) => index + 1);
  const shafts = below ? up : up.toReversed();
  const row = (label: string, sign: (end: number) => string): string =>
    label.padStart(margin.length) + ends.map(sign).join('');
  const colours = [
    row('ends ', (end) => countSign(end, draft.threading.length, seen.end, from, to)),
    row('warp ', (end) => draft.yarns[draft.warp[end]!]!.letter),
  ];
  const threading = shafts.map((shaft) =>
    row(`shaft ${shaft} `, (end) => (draft.threading[end]!.includes(shaft) ? String(shaft % 10) : '.')),
  );
  const picks = [
    `${'pick'.padStart(margin.pick)}  ${'treadles'.padEnd(margin.treadles)} weft `,
    ...draft.treadling.map((treadles, j, all) => {
      const lift = new Set(liftAt(draft, j));
      const pressed = treadles.length === 0 ? '-' : treadles.join('+');
      const number = String(numberAt(j, all.length, seen.pick)).padStart(margin.pick);
      const label = `${number}  ${pressed.padEnd(margin.treadles)}    ${draft.yarns[draft.weft[j]!]!.letter} `;
      return row(label, (end) => (draft.threading[end]!.some((shaft) => lift.has(shaft)) ? '#' : '.'));
    }),
  ];
  const blank = row('', () => ' ');
  return below ? [...picks, blank, ...threading, ...colours.toReversed()] : [...colours, ...threading, blank, ...picks];
}

/**
 * One character of the row of end numbers: the last figure of every tenth number stands over its end, and `.` over
 * other ends.
 */
function countSign(place: number, ends: number, first: Seen['end'], from: number, to: number): string {
  for (let at = place; at < Math.min(to, place + 6); at++) {
    const number = numberAt(at, ends, first);
    if (number % COUNT_BY !== 0) continue;
    const word = String(number);
    const sign = word.length - 1 - (at - place);
    return sign >= 0 && at - word.length + 1 >= from ? word[sign]! : '.';
  }
  return '.';
}

interface Margin {
  readonly pick: number;
  readonly treadles: number;
  readonly length: number;
}

function marginOf(draft: Draft): Margin {
  const pick = Math.max(4, String(draft.treadling.length).length);
  const treadles = Math.max(8, ...draft.treadling.map((list) => list.join('+').length));
  return { pick, treadles, length: pick + 2 + treadles + 6 };
}
