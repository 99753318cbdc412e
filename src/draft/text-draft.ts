import { type Draft, liftAt, shaftCount } from './draft.js';

interface TextDraftOptions {
  /** Characters that fit on a line of the paper; 78 on A4 and Letter at 10 points. */
  readonly width?: number;
}

const USUAL_WIDTH = 78;
/** Threads from one written number of an end or pick to the next. */
const COUNT_BY = 10;

/**
 * Writes a draft in plain characters, for print: heading, colours, threading with shaft 1 lowest, tie-up, and for each
 * pick its treadles, colour and row of the drawdown (`#` for an end on the face). End 1 is at the left, pick 1 at the
 * top. A draft wider than the paper is continued below in strips of ends, each with the treadling beside it.
 */
export function textDraft(draft: Draft, options: TextDraftOptions = {}): string {
  const margin = marginOf(draft);
  const room = Math.max(COUNT_BY, (options.width ?? USUAL_WIDTH) - margin.length);
  const strip = Math.floor(room / COUNT_BY) * COUNT_BY;
  const ends = draft.threading.length;
  const lines = [...headLines(draft), ''];
  for (let from = 0; from < ends; from += strip) {
    lines.push(...stripLines(draft, from, Math.min(ends, from + strip), margin), '');
  }
  return `${lines
    .map((line) => line.trimEnd())
    .join('\n')
    .trimEnd()}\n`;
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
function stripLines(draft: Draft, from: number, to: number, margin: Margin): string[] {
  const ends = Array.from({ length: to - from }, (_, index) => from + index);
  const shafts = Array.from({ length: shaftCount(draft) }, (_, index) => index + 1).reverse();
  const row = (label: string, sign: (end: number) => string): string =>
    label.padStart(margin.length) + ends.map(sign).join('');
  return [
    row('ends ', (end) => countSign(end, to)),
    row('warp ', (end) => draft.yarns[draft.warp[end]!]!.letter),
    ...shafts.map((shaft) =>
      row(`shaft ${shaft} `, (end) => (draft.threading[end]!.includes(shaft) ? String(shaft % 10) : '.')),
    ),
    row('', () => ' '),
    `${'pick'.padStart(margin.pick)}  ${'treadles'.padEnd(margin.treadles)} weft `,
    ...draft.treadling.map((treadles, j) => {
      const lift = new Set(liftAt(draft, j));
      const pressed = treadles.length === 0 ? '-' : treadles.join('+');
      const label = `${String(j + 1).padStart(margin.pick)}  ${pressed.padEnd(margin.treadles)}    ${draft.yarns[draft.weft[j]!]!.letter} `;
      return row(label, (end) => (draft.threading[end]!.some((shaft) => lift.has(shaft)) ? '#' : '.'));
    }),
  ];
}

/** One character of the row of end numbers: every tenth number ends above its end, and `.` stands above other ends. */
function countSign(end: number, to: number): string {
  const number = end + 1;
  const next = Math.ceil(number / COUNT_BY) * COUNT_BY;
  if (next > to) return '.';
  const word = String(next);
  const place = number - (next - word.length + 1);
  return place >= 0 ? word[place]! : '.';
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
