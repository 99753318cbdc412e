import type { Draft } from '../../src/draft/draft.js';
import { readDraft } from '../../src/draft/yaml/read-draft.js';
import { keptOf } from '../../src/formats/shortlist.js';
import { enlargedSheet } from '../../src/gallery/sheet/enlarge-sheet.js';
import { GUTTER, LEADING, Pen, POINTS, wrapped } from '../../src/gallery/sheet/sheet-text.js';
import { dealOut } from '../../src/plan/deal/deal.js';
import { readWeavers } from '../../src/plan/deal/weavers.js';
import { gampNeeds, gampOf } from '../../src/plan/gamp/gamp-plan.js';
import { readPlanOptions } from '../../src/plan/options/plan-options.js';
import { planWarps } from '../../src/plan/piece/warp-plan.js';
import { type Picture, paintCloth } from '../../src/render/cloth.js';
import { draftSvg } from '../../src/render/draft-svg.js';
import { toPng } from '../../src/render/png.js';
import { FLOAT_LIMIT } from '../../src/score/model/float-limit.js';
import { DEFAULT_RANK } from '../../src/score/parts/parts.js';
import { measuredClassics, scoreDraft } from '../../src/score/score.js';
import { explore } from '../../src/search/explore.js';
import { readQuestion } from '../../src/search/question/read-question.js';
import { enlarge } from '../../src/search/report/enlarge.js';
import { recipesApart } from '../../src/search/report/recipes-apart.js';
import type { Found } from '../../src/search/strategy/outcome.js';
import { planSheets } from '../../src/sheets/sheets.js';
import { withUnits } from '../../src/structure/recognise/with-units.js';
import { commandsOf, filesOf, GUIDE_PAGES, type Page } from '../guide-pages.js';
import { kept } from '../plan/cloths.js';
import { pdfPage, pngPicture, svgPicture } from './raster.js';

/** A cloth of a strip: its bold heading, and what stands under it. */
interface Shown {
  readonly draft: Draft;
  readonly heading: string;
  readonly words: readonly string[];
}

const SIDE = 32;
const COLUMNS = 4;
const MARGIN = 4;
const MOST_LINES = 3;

/** Puts a picture on a white page, its corner so many millimetres from the left and from the top. */
export function put(picture: Picture, page: Picture, x: number, y: number): void {
  const [left, top] = [Math.round(x * POINTS), Math.round(y * POINTS)];
  for (let row = 0; row < picture.height; row++) {
    const from = row * picture.width * 3;
    page.rgb.set(picture.rgb.subarray(from, from + picture.width * 3), ((top + row) * page.width + left) * 3);
  }
}

/** Cloths in rows, at true size or smaller, with what is said of each. */
async function strip(shown: readonly Shown[], smaller = 1): Promise<Picture> {
  const pen = new Pen();
  const said = shown.map(({ words }) => words.flatMap((line) => wrapped(line, SIDE, MOST_LINES)));
  const most = Math.max(...said.map((lines) => lines.length));
  const cell = { width: SIDE + GUTTER, height: SIDE + (most + 1) * LEADING + GUTTER };
  const rows = Math.ceil(shown.length / COLUMNS);
  const across = 2 * MARGIN + COLUMNS * cell.width - GUTTER;
  const down = 2 * MARGIN + rows * cell.height - GUTTER;
  const [width, height] = [Math.round(across * POINTS), Math.round(down * POINTS)];
  const page = { width, height, rgb: new Uint8Array(width * height * 3).fill(255) };
  shown.forEach(({ draft, heading }, at) => {
    const [x, y] = [MARGIN + (at % COLUMNS) * cell.width, MARGIN + Math.floor(at / COLUMNS) * cell.height];
    const millimetres = { width: SIDE * smaller, height: SIDE * smaller };
    put(paintCloth(draft, { millimetres, perMillimetre: POINTS / smaller }), page, x, y);
    pen.text(heading, x, y + SIDE + LEADING + 0.4, { bold: true });
    for (const [k, line] of said[at]!.entries()) pen.text(line, x, y + SIDE + (k + 2) * LEADING + 0.4);
  });
  return pngPicture(await toPng(page, POINTS, pen.layer(width, height)), 1.25);
}

function page(name: string): Page {
  return GUIDE_PAGES.find(({ path }) => path.endsWith(`/${name}.md`))!;
}

/** What a command of a page asks, its flags being the whole question or above a file of the page. */
async function foundBy(own: Page, [, ...words]: readonly string[]): Promise<Found[]> {
  const files = filesOf(own);
  const pairs = words.flatMap((word, at) =>
    word.startsWith('--') ? [[word.slice(2).replaceAll('-', ' '), words[at + 1]!]] : [],
  );
  const flags = Object.fromEntries(pairs.filter(([key]) => key !== 'out'));
  const file = words.find((word) => word in files && !Object.values(flags).includes(word));
  const source = file === undefined ? {} : { text: files[file]!, file };
  const asked = readQuestion({ ...source, flags }, (name) => withUnits(name, readDraft(files[name]!, name), () => {}));
  return [...(await explore(asked, { workers: 0 })).found];
}

/** Eight ways of going on with one warp. */
export async function onThisWarp(): Promise<Picture> {
  const own = page('on-this-warp');
  const found = (await foundBy(own, commandsOf(own)[1]!)).slice(0, 8);
  const recipes = recipesApart(found, ({ shortRecipe }) => shortRecipe);
  return strip(
    found.map((each) => {
      const [, manner, tieUp] = /treadled (.+?)(?: on (tie-up \S+?))?(?:,|$)/.exec(recipes.apart.get(each)!)!;
      const weft = `weft ${each.order.weft.split('').join(' ')}`;
      return { draft: each.draft, heading: manner!, words: [tieUp === undefined ? weft : `${tieUp}; ${weft}`] };
    }),
  );
}

/** What each weaver of the class was dealt, at half size, so that the widest repeat is seen whole. */
export async function classOfEight(): Promise<Picture> {
  const own = page('class');
  const [ask, keep, deal] = commandsOf(own);
  const found = await foundBy(own, ask!);
  const cloths = found.filter(({ code }) => keep!.includes(code)).map(keptOf);
  const width = deal![deal!.indexOf('--width') + 1]!;
  const { shares } = dealOut(
    cloths,
    readWeavers(filesOf(own)['group.yaml']!, 'group.yaml'),
    readPlanOptions('', 'class', { width }),
  );
  return strip(
    shares.map(({ weaver, cloth }) => ({ draft: cloth.draft, heading: weaver.name, words: [cloth.recipe] })),
    2,
  );
}

/** The key of the gamp, without the foot of its page. */
export async function gampKey(): Promise<Picture> {
  const own = page('gamp');
  const [ask, , plan] = commandsOf(own);
  const cloths = (await foundBy(own, ask!)).map(keptOf);
  const options = readPlanOptions('', 'gamp', {
    width: plan![plan!.indexOf('--width') + 1]!,
    'yarn size': '8/2 cotton',
  });
  const gamp = gampOf(cloths, options, {});
  const needs = gampNeeds(gamp, options);
  const { width, height, rgb } = await pdfPage(await planSheets(planWarps([gamp.cloth], needs), needs, gamp), 1);
  // The foot of the page is blank but for its rules.
  const upper = Math.round(height * 0.62);
  return { width, height: upper, rgb: rgb.subarray(0, upper * width * 3) };
}

/** The point twill of the page on WIF. */
export async function pointDraft(): Promise<Picture> {
  const draft = readDraft(filesOf(page('wif'))['point.yaml']!, 'point.yaml');
  return svgPicture(draftSvg(draft, { title: '2/2 point twill, D L D D L' }));
}

const FAMILIAR: readonly (readonly [name: string, structure: string, made: Parameters<typeof kept>[1]])[] = [
  ['plaid', 'plain weave', { warp: 'DDDDDDDDLLLLLLLL' }],
  ['log cabin', 'plain weave', { warp: 'DLDLDLDLLDLDLDLD' }],
  ['hound’s tooth', '2/2 twill', { warp: 'DDDDLLLL' }],
  ['D L D D L', '2/2 twill', { warp: 'DLDDL' }],
  ['the same ×4', '2/2 twill', { warp: 'DLDDL', times: 4 }],
  ['blocks A B', 'turned twill', { warp: 'D', weft: 'L' }],
  ['two and two', 'plain weave', { warp: 'DDLL' }],
  ['crackle', 'crackle', { warp: 'D', weft: 'L' }],
];

/** Familiar cloths with their figures. */
export async function figuresSideBySide(): Promise<Picture> {
  return strip(
    FAMILIAR.map(([heading, structure, made]) => {
      const { draft } = kept(structure, made);
      const { scores } = scoreDraft(draft, {
        weights: DEFAULT_RANK,
        floatLimit: FLOAT_LIMIT.read('7'),
        classics: measuredClassics(draft, draft.sett),
      });
      const said = (['tone', 'line', 'figure', 'symmetry'] as const).map(
        (name) => `${name} ${scores[name].toFixed(2)}`,
      );
      return { draft, heading, words: [said.slice(0, 2).join(', '), said.slice(2).join(', ')] };
    }),
  );
}

/** A motif on a structure whose floats grow with it. */
export async function belt(): Promise<Picture> {
  const asked = readQuestion(
    { flags: { structure: "monk's belt", orders: 'DLDDL', sett: '20/40', limits: 'float 1/2 in' } },
    () => {
      throw new Error('no draft is asked for');
    },
  );
  const head = { title: 'DLDDL on monk’s belt', limit: asked.limits.float, shrinkage: 0.1, seen: asked.seen };
  return pngPicture((await enlargedSheet(enlarge(asked, [20, 40, 80], 0.1), head, 'png')) as Buffer, 2.5);
}
