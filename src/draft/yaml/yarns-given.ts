import { hexOf, type Yarn } from '../../colour/yarn.js';
import { describe, type Given, isKeys, Misread, textOf, under } from '../../input/given.js';
import { type Kind, needed, nested, optional, readKeys, table, withDefault } from '../../input/key.js';
import { kind, name, number, word } from '../../input/kinds.js';
import { Problem } from '../../problem.js';
import { DENSEST, type Sett } from '../draft.js';

/** The default yarns, one dark and one light. */
export const DEFAULT_YARNS: readonly Yarn[] = [
  { letter: 'D', name: 'dark', hex: '#1f2a44' },
  { letter: 'L', name: 'light', hex: '#efe6d2' },
];

export const DEFAULT_SETT: Sett = { ends: 20, picks: 20, per: 'inch' };

const THICKEST = 100_000;
const EXPECTED_YARNS = 'letters with colours, as { D: "#1f2a44", L: "#efe6d2" }';
const EXPECTED_SETT = 'a sett such as 20, 20/18 per cm or { ends: 20, picks: 18, per: inch }';

const yarnTable = table({
  colour: needed(kind('a colour, as "#1f2a44" in quotation marks, or navy', colourOf), {
    about: 'its colour: a hex number, or a name of CSS',
    example: '"#1f2a44"',
  }),
  name: optional(name('a name'), { about: 'what the weaver calls it', example: 'navy' }),
  tex: optional(number('grams per 1000 m', 0.1, THICKEST), { about: 'grams per 1000 m', example: '150' }),
});

/** A palette: letters with a colour, or with colour, name and tex. As one text: `D #1f2a44, L #efe6d2`. */
export const YARNS = {
  ...kind(EXPECTED_YARNS, (given): readonly Yarn[] => {
    const yarns = typeof given === 'string' ? yarnsOfText(given) : given;
    if (!isKeys(yarns) || Object.keys(yarns).length === 0) {
      throw new Misread(`found ${describe(given)}; expected ${EXPECTED_YARNS}`);
    }
    return Object.entries(yarns).map(([letter, yarn]) => yarnOf(letter, yarn));
  }),
  table: yarnTable,
  byLetter: true as const,
};

const density = number('threads', 0.1, DENSEST);
const settTable = table({
  ends: needed(density, { about: 'ends to the inch or centimetre', example: '20' }),
  picks: optional(density, { about: 'picks to the inch or centimetre', example: '18', usual: 'as many as ends' }),
  per: withDefault(word<Sett['per']>(['inch', 'cm']), 'inch', {
    about: 'the length they are counted in',
    example: 'cm',
  }),
});
const settKeys = nested(settTable, EXPECTED_SETT, settOfText);

/** A sett: ends, picks and the length they are counted in. As one text: `20`, `20/18`, `8/8 per cm`. */
export const SETT: Kind<Sett> & { readonly table: typeof settTable } = {
  ...settKeys,
  read(given) {
    const { ends, picks = ends, per } = settKeys.read(given);
    return { ends, picks, per };
  },
};

function yarnOf(letter: string, given: Given): Yarn {
  if (!/^[A-Z]$/.test(letter)) {
    const hint = /^[a-z]$/.test(letter) ? ` (did you mean “${letter.toUpperCase()}”?)` : '';
    const spot = { within: [letter], key: true };
    throw new Misread(`found the yarn ${describe(letter)}; expected one capital letter${hint}`, spot);
  }
  return under(letter, () => {
    if (!isKeys(given)) return { letter, name: letter, hex: colourOf(given) };
    const { colour, name = letter, tex } = readKeys(yarnTable, given);
    return { letter, name, hex: colour, ...(tex !== undefined && { tex }) };
  });
}

function colourOf(given: Given): string {
  const expected = 'a colour in quotation marks, as "#1f2a44"';
  const text = textOf(given, `${expected} (without them, # begins a remark)`);
  try {
    return hexOf(text);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    throw new Misread(`found ${describe(text)}, which is no colour; expected ${expected}`);
  }
}

function yarnsOfText(text: string): Given {
  const pairs = textOf(text, EXPECTED_YARNS)
    .split(',')
    .map((part) => /^\s*(\S)\s*[\s:=]\s*(.+?)\s*$/.exec(part));
  if (pairs.includes(null))
    throw new Misread(`found ${describe(text)}; expected ${EXPECTED_YARNS} or “D #1f2a44, L #efe6d2”`);
  return Object.fromEntries(pairs.map((pair) => [pair![1]!, pair![2]!]));
}

function settOfText(text: string): Given {
  const number = String.raw`(\d+(?:[.,]\d+)?)`;
  const form = new RegExp(String.raw`^${number}(?:\s*[/x×]\s*${number})?(?:\s*(?:per\s+|/)(\D+)|\s*epi)?$`);
  const found = form.exec(textOf(text, EXPECTED_SETT));
  if (found === null) throw new Misread(`found ${describe(text)}; expected ${EXPECTED_SETT}`);
  const [ends, picks] = found.slice(1, 3).map((each) => each?.replace(',', '.'));
  const per = found[3];
  return { ends: ends!, ...(picks && { picks }), ...(per && { per }) };
}
