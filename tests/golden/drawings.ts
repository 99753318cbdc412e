import type { Draft } from '../../src/draft/draft.js';
import { AT_THE_LOOM, type Seen } from '../../src/draft/point-of-view.js';
import type { KeptCloth } from '../../src/formats/shortlist.js';
import { quarter } from '../../src/gallery/html/page-quarter.js';
import { contactSheetPages } from '../../src/gallery/sheet/contact-sheet.js';
import { enlargedSheet } from '../../src/gallery/sheet/enlarge-sheet.js';
import { swatch } from '../../src/gallery/sheet/swatch.js';
import { structureSheet } from '../../src/gallery/structures/structure-sheet.js';
import { clothFrom } from '../../src/page/paint/step-back.js';
import { needsFor, warpFor } from '../../src/plan/deal/deal.js';
import { gampNeeds, gampOf } from '../../src/plan/gamp/gamp-plan.js';
import { readPlanOptions } from '../../src/plan/options/plan-options.js';
import { planWarps, type WarpPlan } from '../../src/plan/piece/warp-plan.js';
import type { Picture } from '../../src/render/cloth.js';
import { draftSvg } from '../../src/render/draft-svg.js';
import { readQuestion } from '../../src/search/question/read-question.js';
import { enlarge } from '../../src/search/report/enlarge.js';
import { draftOf, weftOf } from '../../src/search/space/candidate.js';
import { familiesOf } from '../../src/search/space/families.js';
import type { Found } from '../../src/search/strategy/outcome.js';
import { albumSheets, dealSheets, planSheets, teacherSheets } from '../../src/sheets/sheets.js';
import { findStructure } from '../../src/structure/catalogue/catalogue.js';
import { draftWith, HOUNDS_TOOTH, trialOutcome } from '../gallery/trial.js';
import { kept } from '../plan/cloths.js';
import { FROM_THE_RIGHT, gampSheets, HARD, hardSheet, tied } from '../sheets/warp-sheet/hard-cloths.js';
import { inGrey, pdfPage, pngPicture, svgPicture } from './raster.js';

/** Sheets of 200 points to the inch are looked at with 100. */
const SMALLER = 2;

const question = (flags: Record<string, string>) =>
  readQuestion({ flags }, () => {
    throw new Error('no drawing here begins with a draft of a file');
  });

/** The one draft of a question. */
function drafted(flags: Record<string, string>): Draft {
  const asked = question(flags);
  const [warp] = asked.orders;
  const [family] = familiesOf(asked);
  return draftOf({ family: family!, warp: warp!, weft: weftOf(asked, warp!), start: [0, 0] }, asked);
}

/** Overshot in three yarns: the pattern weft on a ground of warp and tabby. */
const OVERSHOT = drafted({
  structure: 'overshot',
  orders: 'L',
  weft: 'D',
  tabby: 'M',
  yarns: 'D #1f2a44, L #efe6d2, M #a8452c',
});

/** A broken twill whose lifts are said shaft by shaft, as on a table loom. */
const LIFT_PLAN = draftWith([[1], [2], [3], [4]], 'DDDDLLLLDLDL', 'DDDDLLLLDLDL', {
  treadling: [1, 2, 4, 3, 1, 2, 4, 3, 1, 2, 4, 3].map((lift) => [lift, (lift % 4) + 1]),
});

/** Cloths that share a weave, the first of them on sheets of its own. */
export const TWILL = kept('2/2 twill', { warp: 'DDLDL' });
export const SHARED = [TWILL, ...['DDDDLLLL', 'DDDLL', 'DL'].map((warp) => kept('2/2 twill', { warp }))];
const SUMMER = kept('summer and winter', { warp: 'DLDDL', by: 'unit' });

const needsOf = (flags: Record<string, string> = {}) =>
  readPlanOptions('', 'needs', { 'yarn size': '8/2 cotton', width: '10 in', ...flags });

/** A page of the sheets of one cloth; `changed` puts another plan on paper. */
export async function warpSheet(
  cloth: KeptCloth,
  page: number,
  {
    flags = {},
    changed = (warp) => warp,
  }: { flags?: Record<string, string>; changed?: (warp: WarpPlan) => WarpPlan } = {},
): Promise<Picture> {
  const options = needsOf(flags);
  return pdfPage(await planSheets(planWarps([cloth], options).map(changed), options), page);
}

/** The gallery's contact sheet. */
export async function contactSheet(found: readonly Found[]): Promise<Picture> {
  const ranking = 'Ranked by contrast 3, symmetry 2, float 1';
  const [page] = await contactSheetPages(found, { title: 'Trial weaves in two yarns', ranking, seen: AT_THE_LOOM });
  return pngPicture(page!, SMALLER);
}

/** Weavers A, B, C … each with a cloth, and the warp of each. */
function dealt(cloths: readonly KeptCloth[]) {
  const options = needsOf();
  const weavers = cloths.map((_, at) => ({ name: 'ABCDEFGH'[at]!, loom: options.loom }));
  const warps = weavers.map((weaver, at) => {
    const warp = warpFor(cloths[at]!, needsFor(weaver, options), weaver.loom);
    return { ...warp, number: at + 1, pieces: warp.pieces.map((piece) => ({ ...piece, number: at + 1 })) };
  });
  return { options, weavers, warps };
}

/** The sheet of one weaver of a group. */
async function weaverSheet(): Promise<Picture> {
  const { options, weavers, warps } = dealt(SHARED);
  const shares = weavers.map((weaver, at) => ({ weaver, cloth: SHARED[at]!, apart: 1 }));
  return pdfPage(await dealSheets(shares, warps, options), 3);
}

/** A page of the teacher's sheets of cloths in the order of the weavers. */
export async function teacherSheet(cloths: readonly KeptCloth[], page: number): Promise<Picture> {
  const { options, weavers, warps } = dealt(cloths);
  const names = weavers.map(({ name }) => name);
  return pdfPage(await teacherSheets('Lamp-room round', warps, options, { weavers: names }), page);
}

async function gampSheet(page: number): Promise<Picture> {
  const options = needsOf({ width: '5 in' });
  const gamp = gampOf(SHARED.slice(0, 2), options, { separator: 4 });
  const own = gampNeeds(gamp, options);
  return pdfPage(await planSheets(planWarps([gamp.cloth], own), own, gamp), page);
}

async function albumSheet(): Promise<Picture> {
  const warps = planWarps(SHARED.slice(0, 3), needsOf());
  return pdfPage(await albumSheets(warps, needsOf(), ['A', 'B', 'C']), 1);
}

async function enlargeSheet(kind: 'png' | 'svg'): Promise<string | Buffer> {
  const asked = question({ structure: 'turned twill', orders: 'DLDDL' });
  const head = { title: 'DLDDL on turned twill', limit: asked.limits.float, shrinkage: 0.1, seen: asked.seen };
  return enlargedSheet(enlarge(asked, [20, 40], 0.1), head, kind);
}

/** The squares of a gamp, as the overview shows them. */
async function gampOverview(): Promise<Picture> {
  const options = needsOf({ width: '5 in' });
  const gamp = gampOf(SHARED.slice(0, 2), options, { separator: 4 });
  const warps = planWarps([gamp.cloth], gampNeeds(gamp, options));
  return pdfPage(await teacherSheets('Sample warps', warps, options, { gamp }), 1);
}

/** The overview on the other paper, five cloths in a row, as seen from afar. */
async function farOverview(): Promise<Picture> {
  const options = needsOf({ paper: 'letter', columns: '5', pictures: 'far' });
  return pdfPage(await teacherSheets('Sample warps', planWarps(SHARED, options), options), 1);
}

/** Cloth as the page paints it on a common screen. */
const ON_THE_PAGE = { millimetres: { width: 60, height: 60 }, perMillimetre: 4, seen: AT_THE_LOOM };

/** Threaded from the right, drawn below, with the project's title at the head of each page. */
const RIGHT_TO_LEFT: Seen = { pick: 'bottom', end: 'right', threading: 'below' };
const SEEN_FROM_THE_RIGHT = { seen: 'bottom, right, below', project: 'Kitchen towels, spring' };

/** The mirrored sheet's needs, on a loom whose shafts are lifted one by one. */
const MIRRORED = { flags: { mirror: 'single', 'mirror weft': 'single', border: '8 D', loom: 'table' } };

/** A page of a sheet of every kind, in greys. */
export async function pinned(
  name: keyof typeof HARD,
  page: number,
  changed?: (warp: WarpPlan) => WarpPlan,
  paper = 'a4',
): Promise<Picture> {
  return inGrey(await pdfPage(await hardSheet(HARD[name]!, paper, changed), page));
}

/** Every golden picture by its name. */
export const DRAWINGS: Readonly<Record<string, () => Promise<Picture>>> = {
  'swatch-two-yarns': async () => pngPicture(await swatch(HOUNDS_TOOTH)),
  'swatch-overshot-back': async () => pngPicture(await swatch(OVERSHOT, { side: 'back' })),
  'swatch-overshot': async () => pngPicture(await swatch(OVERSHOT)),
  'swatch-quarter': async () => pngPicture(await quarter(OVERSHOT, AT_THE_LOOM)),
  ...Object.fromEntries(
    [0, 0.6, 6].map((metres) => [`page-from-${metres}-m`, async () => clothFrom(OVERSHOT, ON_THE_PAGE, metres)]),
  ),
  'page-back-in-grey': async () => clothFrom(OVERSHOT, { ...ON_THE_PAGE, side: 'back', grey: true }, 0),
  'contact-sheet': () => contactSheet(trialOutcome().found),
  'draft-tie-up': () => svgPicture(draftSvg(HOUNDS_TOOTH, { title: 'Draft of a trial cloth' })),
  'draft-lift-plan': () => svgPicture(draftSvg(LIFT_PLAN, { title: 'Draft of a trial cloth' })),
  'draft-overshot': () => svgPicture(draftSvg(OVERSHOT, { title: 'Draft of a trial cloth' })),
  'draft-right-to-left': () => svgPicture(draftSvg(OVERSHOT, { title: 'Draft of a trial cloth', seen: RIGHT_TO_LEFT })),
  'enlarge-sheet': async () => pngPicture(Buffer.from(await enlargeSheet('png')), SMALLER),
  'enlarge-drawing': async () => svgPicture(String(await enlargeSheet('svg'))),
  'structure-sheet': async () => pngPicture(await structureSheet(findStructure('huck')), SMALLER),
  'warp-sheet-1': () => warpSheet(TWILL, 1),
  'warp-sheet-2': () => warpSheet(TWILL, 2),
  'mirrored-sheet-1': () => warpSheet(SUMMER, 1, MIRRORED),
  'mirrored-sheet-2': () => warpSheet(SUMMER, 2, MIRRORED),
  'right-to-left-sheet-1': () => warpSheet(SUMMER, 1, { flags: SEEN_FROM_THE_RIGHT }),
  'right-to-left-sheet-2': () => warpSheet(SUMMER, 2, { flags: SEEN_FROM_THE_RIGHT }),
  'gamp-key': () => gampSheet(1),
  'gamp-sheet': () => gampSheet(2),
  'weaver-sheet': weaverSheet,
  'teacher-contact-sheet': () => teacherSheet(SHARED, 1),
  'teacher-yarn-order': () => teacherSheet(SHARED, 2),
  'teacher-labels': () => teacherSheet(SHARED, 3),
  'overview-gamp': gampOverview,
  'overview-far': farOverview,
  album: albumSheet,
  ...Object.fromEntries(Object.keys(HARD).map((name) => [`pinned-${name}`, () => pinned(name, 1)])),
  ...Object.fromEntries(
    (['mirrored-bordered', 'three-yarns', 'lift-plan-twelve', 'lift-plan-long'] as const).map((name) => [
      `pinned-${name}-lists`,
      () => pinned(name, 2),
    ]),
  ),
  'pinned-lift-plan-long-letter': () => pinned('lift-plan-long', 2, undefined, 'letter'),
  'pinned-four-hundred-ends-lists': () => pinned('four-hundred-ends', 3),
  'pinned-four-hundred-ends-threading': () => pinned('four-hundred-ends', 5),
  'pinned-tie-up': async () => inGrey(await pdfPage(await hardSheet({ cloth: tied }), 1)),
  'pinned-right-to-left-threading': async () => {
    const { cloth } = HARD['four-hundred-ends']!;
    return inGrey(await pdfPage(await hardSheet({ cloth, flags: SEEN_FROM_THE_RIGHT }), 5));
  },
  'pinned-names-from-the-right': async () => inGrey(await pdfPage(await hardSheet(FROM_THE_RIGHT), 1)),
  'pinned-gamp': async () => inGrey(await pdfPage(await gampSheets(), 2)),
};
