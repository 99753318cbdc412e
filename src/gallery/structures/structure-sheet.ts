import { spacing } from '../../draft/draft.js';
import { AT_THE_LOOM, type Seen, seenInWords } from '../../draft/point-of-view.js';
import { paintCloth } from '../../render/cloth.js';
import { findStructure, type Structure } from '../../structure/catalogue/catalogue.js';
import { counted } from '../../words/counts.js';
import { PAGE, type Placed, pngOf } from '../sheet/picture-sheet.js';
import { GUTTER, LEADING, Pen, POINTS, TITLE, wrapped } from '../sheet/sheet-text.js';
import { picturesOf } from './structure-pictures.js';

const COLUMNS = 4;
const SIDE = 44.5;
/** All pictures show cloth at half its size. */
const REDUCTION = 2;
const HEAD = 24;
const BOX = SIDE + 2 * LEADING + 4;

/** One structure on a sheet of a few cloths, all at half size: PNG at 200 points to the inch. */
export function structureSheet(structure: Structure, seen: Seen = AT_THE_LOOM): Promise<Buffer> {
  const shown = picturesOf(structure).slice(0, 3 * COLUMNS);
  const pen = new Pen();
  const full = PAGE.width - 2 * PAGE.side;
  const { name, shafts, blocks } = structure;
  const isUsual = blocks.length === findStructure(name).blocks.length;
  const title = isUsual ? name : `${name}, ${counted(blocks.length, 'block')} on ${counted(shafts, 'shaft')}`;
  pen.text(title, PAGE.side, PAGE.top + 4, { size: TITLE, bold: true });
  wrapped(structure.about, full, 2).forEach((line, at) => {
    pen.text(line, PAGE.side, PAGE.top + 9 + at * LEADING);
  });
  const { sett } = shown[0]!.draft;
  const size = `at half size · ${sett.ends} ends and ${sett.picks} picks per ${sett.per}`;
  const said = `${size} · ${seenInWords(seen)} · floats: ${structure.floatLaw}`;
  wrapped(said, full, 2).forEach((line, at) => {
    pen.text(line, PAGE.side, PAGE.top + 9 + (2 + at) * LEADING, { quiet: true });
  });
  const pictures = shown.map(({ draft, words }, at): Placed => {
    const x = PAGE.side + (at % COLUMNS) * (SIDE + GUTTER);
    const y = PAGE.top + HEAD + Math.floor(at / COLUMNS) * BOX;
    const millimetres = { width: SIDE * REDUCTION, height: SIDE * REDUCTION };
    const { across, along } = spacing(draft.sett);
    const [wide, high] = [draft.warp.length * across, draft.weft.length * along].map((mm) => (mm / 25.4).toFixed(2));
    pen.box(x, y, SIDE, SIDE);
    pen.text(wrapped(words, SIDE, 1)[0]!, x, y + SIDE + LEADING + 0.6, { bold: true });
    const size = `repeat ${draft.warp.length} × ${draft.weft.length}, ${wide} × ${high} in`;
    pen.text(size, x, y + SIDE + 2 * LEADING + 0.6, { quiet: true });
    return { picture: paintCloth(draft, { seen, millimetres, perMillimetre: POINTS / REDUCTION }), x, y };
  });
  return pngOf(pictures, pen, PAGE.top + HEAD + Math.ceil(shown.length / COLUMNS) * BOX);
}
