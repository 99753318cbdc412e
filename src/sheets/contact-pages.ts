import type { Draft } from '../draft/draft.js';
import { seenInWords } from '../draft/point-of-view.js';
import type { KeptCloth } from '../formats/shortlist.js';
import type { Paper, Pictures, PlanOptions } from '../plan/options/plan-options.js';
import { highlights, measured } from '../plan/piece/highlights.js';
import { readsTo } from '../score/contrast/viewing-distance.js';
import type { Scored } from '../score/score.js';
import { lengthInWords } from '../score/words/figure-words.js';
import { counted } from '../words/counts.js';
import { MARGIN, type Pdf, SIZES } from './paper/paper.js';

/** One cloth on a contact sheet. */
export interface Contact {
  /** Number of its sheet. */
  readonly number: number;
  /** Its weaver, if cloths were dealt. */
  readonly weaver?: string;
  readonly cloth: KeptCloth;
  /** The draft with the plan's sett. */
  readonly draft: Draft;
}

/** What a contact sheet says at its head, and how it is laid out. */
interface ContactOptions extends Pick<PlanOptions, 'columns' | 'pictures'> {
  readonly title: string;
  /** The order of the cloths, in words. */
  readonly sorted: string;
}

/** Places of the pictures on a page. Millimetres. */
interface ContactLayout {
  readonly columns: number;
  readonly rows: number;
  /** Width of a picture, its height with the grey strip, and the room for a picture with its words. */
  readonly width: number;
  readonly height: number;
  readonly room: number;
  /** Lines of words under a picture. */
  readonly lines: number;
}

const GUTTER = 4;
const LEADING = 3.7;
const HEAD = 13;
/** Base line of the title, and the distances from it to the base lines of the two lines below, in millimetres. */
const TITLE = 3.9;
const SOLID = 3.6;
/** Least height of a picture with its words, in millimetres. */
const LEAST_ROOM = 50;
/** Further lines of words where a page is not full. */
const SPARE_LINES = 4;
/** Share of a picture's height that shows the same cloth in grey. */
const STRIP = 1 / 6;
const GAP = 0.7;
/**
 * Millimetres of cloth per millimetre of paper, and words for it. A sheet is held half a metre away, so cloth seen from
 * six metres is drawn twelve times smaller.
 */
const SCALES: Readonly<Record<Pictures, { readonly times: number; readonly said: string }>> = {
  half: { times: 2, said: 'all at half size' },
  actual: { times: 1, said: 'all at actual size' },
  far: { times: 12, said: 'as seen from 6 m, with the sheet held at 50 cm' },
};

/**
 * Four columns or five; as many rows as leave room for the words: 16 or 25 on A4, 16 or 20 on Letter. Where `count`
 * cloths leave rows empty, their room goes to the words.
 */
export function contactLayout(paper: Paper, columns: 4 | 5, count = Number.POSITIVE_INFINITY): ContactLayout {
  const { width, height } = SIZES[paper];
  const free = height - 2 * MARGIN - HEAD;
  const most = Math.min(columns, Math.floor(free / LEAST_ROOM));
  const rows = Math.min(most, Math.ceil(count / columns));
  const room = free / rows;
  const wide = (width - 2 * MARGIN - (columns - 1) * GUTTER) / columns;
  // A narrow column takes its figures in two lines.
  const lines = (columns === 4 ? 6 : 7) + (rows < most ? SPARE_LINES : 0);
  return { columns, rows, width: wide, height: Math.min(wide, room - lines * LEADING - 2.6), room, lines };
}

/** Adds contact sheets: pictures all at one scale, a strip in grey, words, a box to tick, a line for a remark. */
export async function addContactSheets(
  pdf: Pdf,
  paper: Paper,
  contacts: readonly Contact[],
  options: ContactOptions,
): Promise<void> {
  const layout = contactLayout(paper, options.columns, contacts.length);
  const { times, said } = SCALES[options.pictures];
  const cloths = contacts.map((contact) => ({ ...contact, scored: measured(contact.draft) }));
  const why = highlights(cloths);
  const shared = beginningOf(contacts.map(({ cloth }) => cloth.recipe));
  const each = layout.columns * layout.rows;
  const pages = Math.ceil(contacts.length / each);
  for (let page = 0; page < pages; page++) {
    pdf.page();
    const right = pdf.width - MARGIN;
    const common = shared.slice(0, -2);
    const type = { size: 14, bold: true };
    const full = `${options.title}: ${common}`;
    const isInTitle = common === '' || pdf.textWidth(full, type.size, true) <= right - MARGIN - 40;
    pdf.text(isInTitle && common !== '' ? full : options.title, MARGIN, MARGIN + TITLE, type);
    pdf.text(`contact sheet ${page + 1} of ${pages}`, right, MARGIN + TITLE, { align: 'right' });
    const seen = `${options.sorted}; ${said}; ${seenInWords(pdf.seen)}; the strips show the cloths in grey`;
    pdf.text(seen, MARGIN, MARGIN + TITLE + SOLID);
    if (!isInTitle) pdf.text(pdf.fitted([`all are ${common}`], right - MARGIN), MARGIN, MARGIN + TITLE + 2 * SOLID);
    for (let at = 0; at < each && page * each + at < cloths.length; at++) {
      const x = MARGIN + (at % layout.columns) * (layout.width + GUTTER);
      const y = MARGIN + HEAD + Math.floor(at / layout.columns) * layout.room;
      const contact = cloths[page * each + at]!;
      await addPictures(pdf, contact.draft, layout, times, x, y);
      const recipe = contact.cloth.recipe.slice(shared.length);
      addWords(pdf, contact, recipe, why[page * each + at]!, layout, x, y + layout.height);
    }
  }
}

/** The leading clauses that all recipes share, with the comma after them; they are written once, in the heading. */
function beginningOf(recipes: readonly string[]): string {
  const [first, ...others] = recipes.map((recipe) => recipe.split(', '));
  if (first === undefined || others.length === 0) return '';
  const common = first.findIndex((clause, at) =>
    others.some((other) => other[at] !== clause || other.length === at + 1),
  );
  return first
    .slice(0, common < 0 ? first.length - 1 : common)
    .map((clause) => `${clause}, `)
    .join('');
}

async function addPictures(
  pdf: Pdf,
  draft: Draft,
  { width, height }: ContactLayout,
  times: number,
  x: number,
  y: number,
): Promise<void> {
  const strip = height * STRIP;
  const colour = { x, y, width, height: height - strip - GAP };
  const grey = { x, y: y + height - strip, width, height: strip };
  await pdf.cloth(draft, colour, { times });
  await pdf.cloth(draft, grey, { times, grey: true });
  for (const frame of [colour, grey]) pdf.box(frame.x, frame.y, frame.width, frame.height, undefined, 0.1);
}

/**
 * Writes number and code, the cloth's own part of the recipe, figures, highlights, and the person's note or a blank
 * line.
 */
function addWords(
  pdf: Pdf,
  { number, weaver, cloth, draft, scored }: Contact & { readonly scored: Scored },
  own: string,
  why: readonly string[],
  { width, lines }: ContactLayout,
  x: number,
  y: number,
): void {
  const name = weaver === undefined ? String(number) : `${number} ${weaver}`;
  const named = pdf.fitted([name], width - pdf.textWidth(cloth.code) - 6, { bold: true });
  pdf.text(named, x, y + LEADING, { bold: true });
  pdf.text(cloth.code, x + pdf.textWidth(named, undefined, true) + 2, y + LEADING);
  pdf.box(x + width - 3, y + LEADING - 2.7, 3, 3);
  const { longestMm } = scored.scores.floats;
  const far = readsTo(scored.scores.reads);
  const float = longestMm === null ? 'a thread never interlaces' : `float ${lengthInWords(longestMm, draft.sett)}`;
  const shuttles = `${counted(scored.ease.shuttles, 'shuttle')}`;
  const [figures, more] = pdf.wrapped(
    `${float}, ${shuttles}, ${far === null ? 'one tone at 0.6 m' : `clear at ${far} m`}`,
    width,
  );
  const lasting = pdf.fitted(more === undefined ? why : [more, ...why], width);
  const recipe = pdf.wrapped(own, width);
  const free = lines - 4;
  if (recipe.length > free) recipe[free - 1] = pdf.fitted([`${recipe[free - 1]} ${recipe[free]}`], width);
  const note = cloth.note === '' ? '' : pdf.fitted([cloth.note], width);
  [...recipe.slice(0, free), figures!, lasting, note].forEach((line, at, all) => {
    // The person's remark stands on its line, whatever is above it.
    pdf.text(line, x, y + (at === all.length - 1 ? lines : at + 2) * LEADING);
  });
  const foot = y + lines * LEADING + 1;
  pdf.line(x, foot, x + width, foot, 0.1);
}
