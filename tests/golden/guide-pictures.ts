import { readFileSync } from 'node:fs';
import { seenInWords } from '../../src/draft/point-of-view.js';
import { enlargedSheet } from '../../src/gallery/sheet/enlarge-sheet.js';
import { caption } from '../../src/gallery/sheet/sheet-caption.js';
import { LEADING, Pen, POINTS, SMALL } from '../../src/gallery/sheet/sheet-text.js';
import { readPlanOptions } from '../../src/plan/options/plan-options.js';
import { planWarps } from '../../src/plan/piece/warp-plan.js';
import { type Picture, paintCloth } from '../../src/render/cloth.js';
import { draftSvg } from '../../src/render/draft-svg.js';
import { toPng } from '../../src/render/png.js';
import { textWidth } from '../../src/render/text.js';
import { explore } from '../../src/search/explore.js';
import { readQuestion } from '../../src/search/question/read-question.js';
import { enlarge } from '../../src/search/report/enlarge.js';
import { planSheets } from '../../src/sheets/sheets.js';
import { towel } from '../plan/cloths.js';
import { belt, classOfEight, figuresSideBySide, gampKey, onThisWarp, pointDraft, put } from './guide-strips.js';
import { pdfPage, pngPicture, svgPicture } from './raster.js';

/** The contact sheet of the demo as it is in the gallery. */
export const DEMO_SHEET = new URL('../../gallery/turned-twill/contact-sheet.png', import.meta.url);

/** Size of the card with its notes, and of its picture, in millimetres. */
const CARD = { width: 140, height: 62, margin: 5, side: 44.5 };

const question = (flags: Record<string, string>) =>
  readQuestion({ flags: { structure: 'turned twill', sett: '24/24', ...flags } }, () => {
    throw new Error('no picture here begins with a draft of a file');
  });

/** One cloth of the contact sheet, and what each line under it says. */
async function card(): Promise<Picture> {
  const asked = question({ orders: 'DLDDL', weft: 'same', by: 'thread', times: '4', starts: 'first' });
  const [found] = (await explore(asked, { workers: 0 })).found;
  const { margin, side } = CARD;
  const { reads, lines } = caption(found!, 'blocks A B, 4 threads each', side, 4);
  const pen = new Pen();
  pen.box(margin, margin, side, side);
  const notes = [
    'code, the same in every run · how far away the pattern is still clear, in metres',
    'how it is made: blocks of the weave, and what each element of the order covers',
    'the threads to wind, in order: four dark, four light, eight dark, four light',
    'the longest float, counted in threads and measured at this sett',
  ];
  const first = margin + side + 3.1;
  const place = (line: string, at: number) => pen.text(line, margin, first + at * LEADING);
  [found!.code, ...lines].forEach(place);
  pen.text(reads, margin + side, first, { align: 'right' });
  const aside = margin + side + 4;
  notes.forEach((note, at) => {
    const from = at === 0 ? margin + side : margin + textWidth(lines[at - 1]!, SMALL);
    const y = first + at * LEADING;
    pen.line(from + 1, y - 0.8, aside - 1, y - 0.8);
    pen.text(note, aside, y, { quiet: true });
  });
  pen.text(`the cloth at half its size: ${seenInWords(asked.seen)}`, aside, margin + 3, { quiet: true });
  return onPage(
    paintCloth(found!.draft, {
      seen: asked.seen,
      millimetres: { width: 2 * side, height: 2 * side },
      perMillimetre: POINTS / 2,
    }),
    pen,
  );
}

/** A picture at the margin of a white page, with what is written on the page. */
async function onPage(picture: Picture, pen: Pen): Promise<Picture> {
  const [width, height] = [CARD.width, CARD.height].map((mm) => Math.round(mm * POINTS)) as [number, number];
  const page = { width, height, rgb: new Uint8Array(width * height * 3).fill(255) };
  put(picture, page, CARD.margin, CARD.margin);
  return pngPicture(await toPng(page, POINTS, pen.layer(width, height)));
}

/** One motif at every size. */
async function motif(): Promise<Picture> {
  const asked = question({ orders: 'DLDDL' });
  const head = { title: 'DLDDL on turned twill', limit: asked.limits.float, shrinkage: 0.1, seen: asked.seen };
  return pngPicture((await enlargedSheet(enlarge(asked, [20, 40, 80], 0.1), head, 'png')) as Buffer, 2);
}

/** The first page of the sheets for one warp. */
async function sheet(): Promise<Picture> {
  const options = readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', width: '10 in' });
  return pdfPage(await planSheets(planWarps([towel()], options), options), 1);
}

/** The pictures of the guide, by name. */
export const GUIDE: Readonly<Record<string, () => Promise<Picture>>> = {
  'unlike-cloths': async () => pngPicture(readFileSync(DEMO_SHEET), 2),
  'how-to-read-a-card': card,
  draft: async () => svgPicture(draftSvg(towel().draft, { title: '2/2 twill, DDLDL, 4 threads each' })),
  'motif-at-every-size': motif,
  'printed-sheet': sheet,
  'belt-at-every-size': belt,
  'on-this-warp': onThisWarp,
  'class-of-eight': classOfEight,
  'gamp-key': gampKey,
  'point-draft': pointDraft,
  'figures-side-by-side': figuresSideBySide,
};
