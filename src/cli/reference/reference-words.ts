import type { Floats } from '../../cloth/floats.js';
import { LARGEST_WIF, LONGEST_DRAFT, MOST_SHAFTS, MOST_THREADS, MOST_TREADLES } from '../../draft/limits.js';
import { LARGEST_LIST, LONGEST, MOST_KEPT } from '../../formats/shortlist.js';
import { LONGEST_NAME } from '../../input/given.js';
import { LARGEST_FILE } from '../../input/source.js';
import { MOST_WEAVERS } from '../../plan/deal/weavers.js';
import { MOST_ENDS } from '../../plan/piece/repeats-across.js';
import { MOST_PLANNED } from '../../plan/piece/warp-plan.js';
import { LOOK_FIGURES } from '../../score/parts/look-figures.js';
import type { Look, Part } from '../../score/parts/parts.js';
import type { Scores } from '../../score/parts/scores.js';
import { MOST_SHOWN } from '../../search/question/question-table.js';
import { grouped } from '../../words/counts.js';
import { LARGEST_PICTURE_FILE } from '../convert/run.js';

/** How orders, profiles and threadings are written. */
export const NOTATION: Readonly<Record<string, string>> = {
  'A colour order':
    'letters of yarns, `DLDDL` or `D L D D L`. A count stands right before or after what it counts: `D4 L4`, `4D 4L`, ' +
    '`(DL)4 (LD)4`, `4(DL)`, `4x(DL)`. shedlight prints `D4 L4` and `(DL)4`.',
  'A profile':
    'letters of blocks in the same way: `A A B`, `AAB`, `2A B`, `(AB)3`. In a treadling `A+C` is blocks that show ' +
    'together, where the structure can weave them, and `.` is none; in the threading of a lace `.` is a plain unit.',
  'A threading or treadling':
    'numbers: `1 2 3 4`, a run `1-4` or `4-1`, repeats `4x(1 2 3 4)` or `(1 2 3 4)x4`, `1+3` for two at once, `0` for none.',
  'A tie-up or lift plan': 'a list, the shafts of each treadle or pick: `[1 2, 2 3, 3 4, 4 1]`.',
  'A length': '`20 in`, `1 1/2 in`, `50 cm`, `2.5 m`, `3 yd`, `10 mm`; for floats also a number of threads.',
  'A sett': '`20` (ends and picks per inch), `20/18`, `8/8 per cm`.',
  'A yarn size': '`8/2 cotton`, `16/2 linen`, `Nm 28/2`, `300 tex`, `3360 yd/lb`.',
};

/** Figures of a cloth that are no part of a score by their own name. */
type Other = Exclude<keyof Scores, Part | keyof Look | 'floats'> | `floats.${keyof Floats}`;

const OTHER: Readonly<Record<Other, string>> = {
  score: 'the weighted mean of the parts asked for, 0 to 1',
  tone: 'contrast of areas of dark and light, 0 to 1',
  line: 'contrast of upright lines beside level lines, 0 to 1',
  darkShare: 'share of dark on the face, 0 to 1',
  operations: 'turns and mirrors that carry the cloth to itself, with or without dark and light swapped',
  shiftExchange: 'whether dark and light swap when the cloth is shifted',
  planeGroup:
    'plane group of the pattern, in the notation of the International Tables for Crystallography: `p1` to `p4g`',
  colourGroup: 'the same with dark and light swapped, `G/H`; empty where nothing swaps them',
  nearly: 'the turn or mirror that nearly holds, and the share of crossings that agree, from 0.8',
  nearest: 'the classic order on the same structure that is nearest in its figures',
  'floats.warpFace': 'longest warp float on the face, in picks; null where an end never interlaces',
  'floats.warpBack': 'longest warp float on the back, in picks',
  'floats.weftFace': 'longest weft float on the face, in ends; null where a pick never interlaces',
  'floats.weftBack': 'longest weft float on the back, in ends',
  'floats.longest': 'longest float of all, in threads',
  'floats.longestMm': 'longest float of all, in millimetres at the sett',
  reads:
    'contrast left at 0.6, 2 and 6 m, in units of L* (0 to 100): from 12 the pattern is clear, below 6 it is one tone',
  easyTo: 'distance in metres up to which one repeat is easy to see',
  goneBy: 'distance in metres from which one repeat is too small to see',
};

export const FIGURES: Readonly<Record<string, string>> = {
  ...OTHER,
  ...Object.fromEntries(LOOK_FIGURES.map(({ key, means }) => [key, means])),
};

const megabytes = (bytes: number): string => `${bytes / 1_000_000} MB`;

/** How much is read and written at the most; anything larger is refused with a sentence. */
export const LIMITS: Readonly<Record<string, string>> = {
  'a file in YAML': megabytes(LARGEST_FILE),
  'a WIF file, the cells of a cloth as text': `${megabytes(LARGEST_WIF)}, ${megabytes(2 * LARGEST_WIF)}; ${grouped(MOST_THREADS)} ends and as many picks, ${MOST_SHAFTS} shafts, ${MOST_TREADLES} treadles`,
  'a picture of cells': megabytes(LARGEST_PICTURE_FILE),
  'a gallery, a shortlist': megabytes(LARGEST_LIST),
  'a draft to draw, search or plan': `${grouped(LONGEST_DRAFT)} ends and as many picks`,
  'a name': `${LONGEST_NAME} letters, on one line; characters that steer a terminal or turn text are read as spaces`,
  'a note': `${grouped(LONGEST.note)} letters`,
  'cloths of a gallery': `${grouped(MOST_SHOWN)}; two pictures each, about 25 kB a cloth in all`,
  'cloths of a shortlist': grouped(MOST_KEPT),
  'cloths of a plan': `${MOST_PLANNED}; two or more pages each, about 350 kB a cloth in all`,
  'weavers of a group': String(MOST_WEAVERS),
  'ends of a warp': grouped(MOST_ENDS),
};

/** Files that each command writes. */
export const FILES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  '`explore`, a folder': {
    'index.html': 'the page: every cloth, from the disk and without a network',
    'contact-sheet.png': 'the best of each kind, to print; more pages are `contact-sheet-2.png` and so on',
    'gallery.json': 'the question with its defaults, the counts, every cloth with its draft and figures',
    'cloths.csv': 'all cloths with their figures, as a table',
    'swatches/CODE.png': 'each cloth at its true size; CODE-quarter.png is the same at a quarter of it',
    'FOLDER.progress': 'beside the folder, while a search runs or after Ctrl-C: what `--resume` goes on from',
  },
  '`keep`': {
    'kept.json': 'the shortlist, with stars and notes',
    'kept-wif/CODE.wif': 'with `--wif`: each cloth as a WIF 1.1 draft',
  },
  '`plan`, a folder': {
    'sheets.pdf': 'a sheet for the loom for each warp and cloth',
    'overview.pdf': 'all cloths, the yarn to order, labels for chains',
    'album.pdf': 'pages to keep swatches on',
    'plan.json': 'every figure of the plan',
    'cloths.csv': 'all cloths with their measures, as a table',
    'results.yaml': 'the form to fill in after weaving; what you wrote into it stays',
    '.shedlight.json': 'what the folder holds, by which the next plan knows its own files',
  },
  '`deal`, a folder': {
    'sheets.pdf': 'a sheet for each weaver',
    'teacher.pdf': 'who weaves what, the yarn to order, labels for chains',
    'deal.json': 'who weaves what, and how far the cloths are apart',
    'album.pdf, plan.json, cloths.csv, results.yaml': 'as in a plan',
  },
  '`draw`, `enlarge`, `structures`, `convert`': {
    'FILE.png': 'a cloth at its true size, a sheet of sizes, a sheet of a structure',
    'FILE.svg': 'a draft, or a sheet of sizes, to print',
    'FILE.yaml, FILE.wif, FILE.txt': 'with `convert`: a draft to write in, a WIF 1.1 draft, a draft in letters',
  },
};
