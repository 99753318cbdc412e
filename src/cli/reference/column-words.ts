import { clothsTable } from '../../gallery/manifest/cloths-table.js';
import { LOOK_FIGURES } from '../../score/parts/look-figures.js';
import { PART } from '../../score/parts/parts.js';
import { tableText } from '../../sheets/plan-table.js';
import { FIGURES } from './reference-words.js';

/** What the cells of a column hold: text, or numbers, or one of some words. */
type Holds = 'text' | 'whole' | 'number' | readonly string[];
type Means = readonly [holds: Holds, means: string];

/** Every column of the tables of cloths, by its heading. */
export const COLUMN_WORDS: Readonly<Record<string, Means>> = {
  rank: ['whole', 'place in the ranking, from 1'],
  number: ['whole', 'number of the cloth in the plan, or of the square in a gamp'],
  weaver: ['text', 'who weaves it'],
  code: ['text', 'code of the cloth, the same wherever it is found'],
  recipe: ['text', 'how it is made, in words'],
  structure: ['text', 'weave structure, or name of the draft'],
  'near twin of': ['text', 'code of a better cloth that differs in a thread or two only; empty where there is none'],
  'woven by other orders': ['whole', 'other candidates that weave the same cloth'],
  stars: ['whole', 'your stars, 0 to 5'],
  note: ['text', 'your note'],
  'warp number': ['whole', 'warp of the plan on which it is woven'],
  score: ['number', FIGURES.score!],
  'warp order': ['text', 'colour order of the warp, one repeat'],
  'weft order': ['text', 'colour order of the weft, one repeat'],
  'ends in a repeat': ['whole', 'ends of one repeat of the cloth'],
  'picks in a repeat': ['whole', 'picks of one repeat of the cloth'],
  'repeat across': ['number', 'width of one repeat at the sett'],
  'repeat along': ['number', 'height of one repeat at the sett'],
  'lengths in': [['in', 'cm'], 'unit of the lengths in this line'],
  'dark share': ['number', FIGURES.darkShare!],
  contrast: ['number', PART.contrast.means],
  figure: ['number', PART.figure.means],
  symmetry: ['number', PART.symmetry.means],
  'clear to, m': [
    'number',
    'farthest of 0.6, 2 and 6 m from which the pattern is clear; 0 where it is clear from none',
  ],
  'repeat easy to see to, m': ['number', FIGURES.easyTo!],
  'longest float, threads': ['whole', FIGURES['floats.longest']!],
  'longest float': ['number', 'length of the longest float'],
  'warp float on the face, picks': ['whole', 'longest warp float on the face'],
  'warp float on the back, picks': ['whole', 'longest warp float on the back'],
  'weft float on the face, ends': ['whole', 'longest weft float on the face'],
  'weft float on the back, ends': ['whole', 'longest weft float on the back'],
  tone: ['number', FIGURES.tone!],
  line: ['number', FIGURES.line!],
  ...Object.fromEntries(LOOK_FIGURES.map(({ heading, means }): [string, Means] => [heading, ['number', means]])),
  'nearest classic': ['text', FIGURES.nearest!],
  novelty: ['number', PART.novelty.means],
  'plane group': ['text', FIGURES.planeGroup!.replaceAll('`', '')],
  'in two colours': ['text', FIGURES.colourGroup!.replaceAll('`', '')],
  ...Object.fromEntries(
    ['0.6', '2', '6'].map((m): [string, Means] => [
      `contrast left at ${m} m, L*`,
      ['number', `contrast left at ${m} m, in units of L*`],
    ]),
  ),
  'repeat gone by, m': ['number', FIGURES.goneBy!],
  'warp changes': ['whole', 'colour changes in one repeat of the warp'],
  'weft changes': ['whole', 'colour changes in one repeat of the weft'],
  shafts: ['whole', 'shafts that the warp is threaded on'],
  treadles: ['whole', 'treadles that are tied up; 0 for a lift plan'],
  shuttles: ['whole', 'shuttles at work'],
  'longest carry': ['number', 'how far a weft runs up the edge at the most'],
  'shuttles end where they began': [['yes', 'no'], 'whether each shuttle is back on its side after a repeat'],
  'ends in the warp': ['whole', 'ends to wind, floating ends included'],
  'width in the reed': ['number', 'width of the warp in the reed'],
};

/** The tables of cloths, each by the line with its headings. */
const TABLES: Readonly<Record<string, readonly [title: string, headings: string]>> = {
  'gallery-cloths': ['All cloths of a gallery, cloths.csv of explore', clothsTable([])],
  'plan-cloths': ['The cloths of a plan, cloths.csv of plan', tableText([])],
  'deal-cloths': ['The cloths of a deal, cloths.csv of deal', tableText([], [])],
};

/** What describes each table to programs (CSV on the Web, W3C 2015), by the name of its own file. */
export function tableDescriptions(): Record<string, string> {
  const all = Object.entries(TABLES).map(([name, [title, headings]]): [string, string] => {
    const description = {
      '@context': ['http://www.w3.org/ns/csvw', { '@language': 'en' }],
      url: 'cloths.csv',
      'dc:title': title,
      'dc:identifier': `urn:shedlight:${name}:1`,
      tableSchema: { columns: headingsIn(headings).map(described) },
    };
    return [`${name}.csv-metadata.json`, `${JSON.stringify(description, null, 1)}\n`];
  });
  return Object.fromEntries(all);
}

function described(heading: string) {
  const [holds, means] = COLUMN_WORDS[heading]!;
  return {
    name: heading.replace(/[^a-z0-9]+/gi, '_').replace(/_$/, ''),
    titles: heading,
    datatype: datatypeOf(holds),
    // Where a thread never interlaces, its float has no length.
    ...(heading.includes('float') && { null: 'never interlaces' }),
    'dc:description': means,
  };
}

function datatypeOf(holds: Holds): string | object {
  if (holds === 'whole') return 'nonNegativeInteger';
  if (holds === 'number') return 'decimal';
  return holds === 'text' ? 'string' : { base: 'string', format: holds.join('|') };
}

/** The headings of a table; those with a comma stand in quotation marks. */
function headingsIn(line: string): string[] {
  return [...line.trim().matchAll(/"([^"]*)"|[^,]+/g)].map(([whole, quoted]) => quoted ?? whole);
}
