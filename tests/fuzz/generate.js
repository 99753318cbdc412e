import { chance } from './chance.js';
import { TEXTS, WORDS } from './hostile.js';

/** Share of the values that are as a person would write them; keys that are written of those that may be left out. */
const SOUND = 0.9;
const WRITTEN = 3;
const MOST_ITEMS = 4;

/**
 * Makes files and flags from tables of keys, so that a new key is tried without another line: mostly sound values, mixed
 * with numbers at the edge, values of other keys and hostile texts. The same start gives the same ones in the same order.
 */
export function generator(start, tables) {
  const { random, below, pick } = chance(`generate ${start}`);
  const examples = tables.flatMap((table) => allKeys(table)).map(({ example }) => example);

  /** A number in a text exchanged for another. */
  const renumbered = (text) => {
    const numbers = [...text.matchAll(/\d+/g)];
    if (numbers.length === 0) return text;
    const { index, 0: number } = pick(numbers);
    const other = random() < 0.5 ? String(below(40)) : pick(WORDS);
    return text.slice(0, index) + other + text.slice(index + number.length);
  };
  const hostile = () => {
    const roll = random();
    if (roll < 0.5) return JSON.stringify(pick(TEXTS));
    if (roll < 0.7) return JSON.stringify(pick(WORDS));
    if (roll < 0.8) return pick(WORDS);
    return pick(['[]', '{}', '', '[[[]]]', '{ a: { b: { c: d } } }', '~', '-', '[1, [2, 3], { a: 4 }]']);
  };

  /** The value of a key, in YAML on one line. */
  const value = (key) => {
    const roll = random();
    if (roll > SOUND) {
      if (roll > 0.975) return pick(examples);
      return roll > 0.95 ? renumbered(key.example) : hostile();
    }
    const { kind } = key;
    if (kind.table === undefined || random() < 0.4) return random() < 0.3 ? renumbered(key.example) : key.example;
    if (!kind.isList) return keys(kind.table);
    return `[${Array.from({ length: 1 + below(MOST_ITEMS) }, () => keys(kind.table)).join(', ')}]`;
  };
  const chosen = ({ keys: all }) => {
    const share = WRITTEN / Object.keys(all).length;
    return Object.entries(all).filter(([, key]) => random() < (key.isNeeded ? 0.98 : share));
  };
  const keys = (table) =>
    `{ ${chosen(table)
      .map(([name, key]) => `${name}: ${value(key)}`)
      .join(', ')} }`;

  /** A file of a table's keys; `always` are keys that are there with their example unless others take their place. */
  const file = (table, always = []) => {
    const lines = chosen(table).map(([name, key]) => [name, value(key)]);
    const there = lines.map(([name]) => name);
    const more = always.filter((name) => !there.includes(name)).map((name) => [name, table.keys[name].example]);
    return [...more, ...lines].map(([name, text]) => `${name}: ${text}\n`).join('');
  };
  /** Flags of a table by their keys, as a person types them. */
  const flags = (table) => {
    const few = Object.entries(table.keys).filter(() => random() < 1 / Object.keys(table.keys).length);
    return Object.fromEntries(few.map(([name, key]) => [name, unquoted(value(key))]));
  };

  /** Data with one value in it exchanged, left out, or said many times. */
  const disturbed = (data) => {
    const copy = structuredClone(data);
    for (let left = random() < 0.5 ? 1 : 1 + below(4); left > 0; left--) disturb(copy);
    return copy;
  };
  const disturb = (data) => {
    let inner = data;
    for (;;) {
      const name = pick(Object.keys(inner));
      if (name === undefined) return;
      const below = inner[name];
      const isInner = typeof below === 'object' && below !== null && Object.keys(below).length > 0;
      if (isInner && random() < 0.85) {
        inner = below;
        continue;
      }
      const roll = random();
      if (roll < 0.15) delete inner[name];
      else if (roll < 0.3 && Array.isArray(inner))
        inner.push(...Array.from({ length: pick([1, 5, 300]) }, () => below));
      else inner[name] = pick(ODD)();
      return;
    }
  };
  const ODD = [
    () => pick(TEXTS),
    () => pick(WORDS),
    () => below(12),
    () => pick([-1, 0.5, 1e9, 1e308, 2 ** 53, Number.NaN, 401, 65_536]),
    () => pick([null, true, [], {}, [[]], [[1, 2], [3]], { ['__proto__']: 1 }]),
    () => Array.from({ length: 1 + below(30) }, () => [1 + below(9)]),
    () => Array.from({ length: 1 + below(30) }, () => pick('DLAB')).join(''),
  ];
  /** Cells of a cloth in rows, mostly all of one length. */
  const cells = () => {
    const [ends, picks] = [1 + below(12), 1 + below(12)];
    const row = () => Array.from({ length: ends }, () => pick('#.')).join('');
    const rows = Array.from({ length: picks }, row);
    const times = 1 + below(3);
    const all = Array.from({ length: times }, () => rows).flat();
    if (random() < 0.2) all[below(all.length)] = pick([...TEXTS, ...WORDS]);
    return `${all.join('\n')}\n`;
  };
  return { random, below, pick, file, flags, disturbed, cells, text: () => pick(TEXTS) };
}

/** All keys of a table, and of the tables of their values. */
function allKeys({ keys }) {
  return Object.values(keys).flatMap((key) => [key, ...(key.kind.table ? allKeys(key.kind.table) : [])]);
}

/** A value of YAML as it is typed after a flag: without the quotation marks around it. */
function unquoted(text) {
  try {
    return String(JSON.parse(text));
  } catch {
    return text;
  }
}
