import * as v from 'valibot';
import { hexOf, type Yarn } from '../../colour/yarn.js';
import {
  describe,
  type Given,
  isKeys,
  keys,
  Misread,
  nameOf,
  numberOf,
  readAs,
  reading,
  textOf,
  under,
  wordOf,
} from '../../input/given.js';
import { Problem } from '../../problem.js';
import { DENSEST, type Sett } from '../draft.js';

/** The default yarns, one dark and one light. */
export const DEFAULT_YARNS: readonly Yarn[] = [
  { letter: 'D', name: 'dark', hex: '#1f2a44' },
  { letter: 'L', name: 'light', hex: '#efe6d2' },
];

export const DEFAULT_SETT: Sett = { ends: 20, picks: 20, per: 'inch' };

const THICKEST = 100_000;
const YARNS = 'letters with colours, as { D: "#1f2a44", L: "#efe6d2" }';
const SETT = 'a sett such as 20, 20/18 per cm or { ends: 20, picks: 18, per: inch }';

const yarnKeys = keys({
  colour: reading(colourOf),
  name: v.optional(reading((given) => nameOf(given, 'a name'))),
  tex: v.optional(reading((given) => numberOf(given, `grams per 1000 m, 0.1 to ${THICKEST}`, 0.1, THICKEST))),
});

/** Schema of a palette: letters with a colour, or with colour, name and tex. As one text: `D #1f2a44, L #efe6d2`. */
export const yarnsSchema = reading((given): readonly Yarn[] => {
  const yarns = typeof given === 'string' ? yarnsOfText(given) : given;
  if (!isKeys(yarns) || Object.keys(yarns).length === 0) {
    throw new Misread(`found ${describe(given)}; expected ${YARNS}`);
  }
  return Object.entries(yarns).map(([letter, yarn]) => yarnOf(letter, yarn));
});

const density = reading((given) => numberOf(given, `threads from 0.1 to ${DENSEST}`, 0.1, DENSEST));

const settKeys = keys({
  ends: density,
  picks: v.optional(density),
  per: v.optional(reading((given) => wordOf<Sett['per']>(given, ['inch', 'cm']))),
});

/** Schema of a sett: ends, picks and the length they are counted in. As one text: `20`, `20/18`, `8/8 per cm`. */
export const settSchema = reading((given): Sett => {
  const { ends, picks = ends, per = 'inch' } = readAs(settKeys, typeof given === 'string' ? settOfText(given) : given);
  return { ends, picks, per };
});

function yarnOf(letter: string, given: Given): Yarn {
  if (!/^[A-Z]$/.test(letter)) {
    const hint = /^[a-z]$/.test(letter) ? ` (did you mean “${letter.toUpperCase()}”?)` : '';
    const spot = { within: [letter], key: true };
    throw new Misread(`found the yarn ${describe(letter)}; expected one capital letter${hint}`, spot);
  }
  return under(letter, () => {
    if (!isKeys(given)) return { letter, name: letter, hex: colourOf(given) };
    const { colour, name = letter, tex } = readAs(yarnKeys, given);
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
  const pairs = textOf(text, YARNS)
    .split(',')
    .map((part) => /^\s*(\S)\s*[\s:=]\s*(.+?)\s*$/.exec(part));
  if (pairs.includes(null)) throw new Misread(`found ${describe(text)}; expected ${YARNS} or “D #1f2a44, L #efe6d2”`);
  return Object.fromEntries(pairs.map((pair) => [pair![1]!, pair![2]!]));
}

function settOfText(text: string): Given {
  const found = /^([\d.]+)(?:\s*\/\s*([\d.]+))?(?:\s+per\s+(\S+))?$/.exec(textOf(text, SETT));
  if (found === null) throw new Misread(`found ${describe(text)}; expected ${SETT}`);
  const [, ends, picks, per] = found;
  return { ends: ends!, ...(picks && { picks }), ...(per && { per }) };
}
