import sharp from 'sharp';
import { drawdown } from '../cloth/drawdown.js';
import { colourFace } from '../cloth/face.js';
import { floatsOf } from '../cloth/floats.js';
import { luminance } from '../colour/yarn.js';
import { type Draft, spacing } from '../draft/draft.js';
import { paintCloth } from '../render/cloth.js';
import { DISTANCES, READS, readsOf } from '../score/distance.js';
import { sayLength } from './measure.js';
import { MARGIN, type Sheets } from './paper.js';
import type { KeptCloth } from './shortlist.js';
import { shuttlesOf } from './shuttles.js';

/** One cloth on a contact sheet. */
export interface Contact {
  /** Number of its sheet. */
  readonly number: number;
  /** Who weaves it, where it was dealt. */
  readonly weaver?: string;
  readonly cloth: KeptCloth;
  /** The draft with the plan's sett. */
  readonly draft: Draft;
}

const COLUMNS = 4;
const ROWS = 4;
const GUTTER = 4;
const LEADING = 3.8;
const LINES = 5;
const HEAD = 12;
/** Height of the strip that shows the same cloth in grey. */
const STRIP = 7;
/** Pictures are drawn at half size, at 200 points to the inch of paper. */
const TIMES = 2;
const POINTS = 200 / 25.4;

/** Adds contact sheets of sixteen: pictures all at half size, a strip in grey, words, a box to tick, a line for a remark. */
export async function addContactSheets(sheets: Sheets, title: string, contacts: readonly Contact[]): Promise<void> {
  const pages = Math.ceil(contacts.length / (COLUMNS * ROWS));
  for (let page = 0; page < pages; page++) {
    sheets.page();
    const right = sheets.width - MARGIN;
    sheets.text(title, MARGIN, MARGIN + 4.5, { size: 14, bold: true });
    sheets.text(`contact sheet ${page + 1} of ${pages}`, right, MARGIN + 4.5, { align: 'right' });
    const said =
      'all at half size, end 1 left, first pick at the top; the lower strip in grey; in the order of the list';
    sheets.text(said, MARGIN, MARGIN + 9);
    const shown = contacts.slice(page * COLUMNS * ROWS, (page + 1) * COLUMNS * ROWS);
    for (const [at, contact] of shown.entries()) await addContact(sheets, contact, at);
  }
}

async function addContact(sheets: Sheets, { number, weaver, cloth, draft }: Contact, at: number): Promise<void> {
  const width = (sheets.width - 2 * MARGIN - (COLUMNS - 1) * GUTTER) / COLUMNS;
  const room = (sheets.height - 2 * MARGIN - HEAD) / ROWS;
  const height = Math.min(width, room - LINES * LEADING - 2.4);
  const x = MARGIN + (at % COLUMNS) * (width + GUTTER);
  const y = MARGIN + HEAD + Math.floor(at / COLUMNS) * room;
  const colour = { width, height: height - STRIP };
  sheets.picture(await picture(draft, colour, false), x, y, colour.width, colour.height);
  sheets.picture(await picture(draft, { width, height: STRIP }, true), x, y + colour.height, width, STRIP);
  sheets.box(x, y, width, height, undefined, 0.1);
  let line = y + height + LEADING;
  const name = weaver === undefined ? String(number) : `${number} ${weaver}`;
  sheets.text(name, x, line, { bold: true });
  sheets.text(cloth.code, x + sheets.textWidth(name, undefined, true) + 2, line);
  sheets.box(x + width - 3, line - 2.8, 3, 3);
  const recipe = sheets.wrapped(cloth.recipe, width);
  const two = recipe.length > 2 ? [recipe[0]!, `${recipe[1]} …`] : recipe;
  for (const part of two) {
    line += LEADING;
    sheets.text(part, x, line);
  }
  const shuttles = shuttlesOf(draft).length;
  const floats = floatsOf(drawdown(draft), draft.sett).longestMm;
  const float =
    floats === null ? 'float without end' : `float ${sayLength(floats, draft.sett.per).replace(/ \(.*/, '')}`;
  const count = `${shuttles} shuttle${shuttles === 1 ? '' : 's'}`;
  line += LEADING;
  sheets.text(`${float}, ${count}, ${readsTo(draft)}`, x, line);
  const remark = cloth.note === '' ? '' : sheets.wrapped(cloth.note, width)[0]!;
  sheets.text(remark, x, line + LEADING);
  sheets.line(x, y + height + LINES * LEADING + 1, x + width, y + height + LINES * LEADING + 1, 0.1);
}

async function picture(draft: Draft, size: { width: number; height: number }, grey: boolean): Promise<Buffer> {
  const millimetres = { width: size.width * TIMES, height: size.height * TIMES };
  const { width, height, rgb } = paintCloth(draft, { millimetres, perMillimetre: POINTS / TIMES, grey });
  return sharp(rgb, { raw: { width, height, channels: 3 } })
    .png({ compressionLevel: 9 })
    .toBuffer();
}

/** From how far a cloth still reads, in the words of a caption. */
function readsTo(draft: Draft): string {
  const { across, along } = spacing(draft.sett);
  const face = colourFace(drawdown(draft), draft.warp, draft.weft);
  const reads = readsOf(
    face,
    draft.yarns.map((yarn) => luminance(yarn.hex)),
    across,
    along,
  );
  const far = DISTANCES.findLast((metres) => reads[metres] >= READS);
  return far === undefined ? 'melts' : `to ${far} m`;
}
