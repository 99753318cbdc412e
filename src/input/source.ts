import { Problem } from '../problem.js';
import { describe, type Given, isKeys, Misread, type Path, type Spot } from './given.js';
import { type KeyValues, readKeys, type Table } from './key.js';
import { isMap, isScalar, isSeq, Lexer, LineCounter, type Node, parseDocument } from './yaml.js';

/** Values that a person gave, with the place of each in words. */
export interface Source {
  readonly value: Given;
  /** `file:line:column` of a value, or of the nearest enclosing value if it was not written. */
  place(path: Path, spot?: Omit<Spot, 'within'>): string;
}

/** Largest file that is read, in bytes. */
export const LARGEST_FILE = 1_000_000;
/** Deepest nesting that is read; our own files need three. */
const DEEPEST = 32;

/** Plain words for the commonest errors of the YAML parser, by its error code. */
const SLIPS: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'found a tab before a key; expected spaces',
  MULTIPLE_DOCS: 'found a second part after ---; expected one list of keys',
  MISSING_CHAR: 'found a quotation mark or bracket that is not closed; expected its partner',
  BAD_INDENT: 'found a line that is set in too little or a bracket that is not closed; expected its partner',
  BLOCK_AS_IMPLICIT_KEY: 'found a second “:” in one line; expected one key a line',
  BLOCK_IN_FLOW: 'found a list or keys without brackets inside brackets; expected commas between values',
  BAD_ALIAS: 'found “*”; expected a value',
  UNEXPECTED_TOKEN: 'found something after the end of a value; expected a new line with a key',
};

/**
 * Parses YAML that consists of keys with values. Every single value stays text as written (the failsafe schema), and
 * its position is kept for messages. Throws a Problem on invalid YAML, files over 1 MB, several documents, deep
 * nesting, duplicate keys and aliases.
 */
export function parseSource(text: string, file: string): Source {
  if (new TextEncoder().encode(text).length > LARGEST_FILE)
    throw new Problem(`${file}: found more than 1 MB; expected a short text`);
  if (isDeep(text)) throw new Problem(`${file}: found values nested more than ${DEEPEST} deep; expected at most three`);
  const lines = new LineCounter();
  const at = (offset: number): string => {
    const { line, col } = lines.linePos(offset);
    return `${file}:${Math.max(1, line)}:${Math.max(1, col)}`;
  };
  // toGiven finds duplicate keys: the library takes quadratic time for that.
  const document = parseDocument(text, {
    schema: 'failsafe',
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: false,
  });
  const wrong = document.errors[0];
  if (wrong !== undefined) throw new Problem(`${at(wrong.pos[0])}: ${slip(text, wrong.code, wrong.pos[0])}`);
  const top = document.contents;
  if (top === null) throw new Problem(`${file}: found nothing; expected keys with values, one a line`);
  const value = toGiven(top, at);
  if (!isKeys(value)) {
    throw new Problem(`${at(top.range![0])}: found ${describe(value)}; expected keys with values, one a line`);
  }
  return { value, place: (path, spot) => at(positionOf(text, top, path, spot)) };
}

/** Reads a source by a table of keys; throws the first fault as a Problem with its place. */
export function readSource<T extends Table>(known: T, source: Source): KeyValues<T> {
  return placed(source, () => readKeys(known, source.value));
}

/** Runs a reader of the source's value; a Misread that it throws becomes a Problem with its place. */
export function placed<T>(source: Source, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Misread)) throw error;
    throw new Problem(`${source.place(error.spot.within ?? [], error.spot)}: ${error.message}`);
  }
}

/** Whether brackets, or list and key marks in one line, nest deeper than {@link DEEPEST}; found without recursion. */
function isDeep(text: string): boolean {
  let brackets = 0;
  let marks = 0;
  for (const token of new Lexer().lex(text)) {
    if (token === '[' || token === '{') brackets++;
    else if (token === ']' || token === '}') brackets--;
    else if (token === '-' || token === '?') marks++;
    else if (token === '\n' || token === '\r\n') marks = 0;
    if (brackets > DEEPEST || marks > DEEPEST) return true;
  }
  return false;
}

function slip(text: string, code: string, offset: number): string {
  const before = text.lastIndexOf('\n', offset - 1);
  const lines = text.slice(
    Math.max(0, text.lastIndexOf('\n', before - 1)),
    text.indexOf('\n', offset) + 1 || undefined,
  );
  const colour = /[\s:,{]#([0-9a-f]{6}|[0-9a-f]{3})\b/i.exec(lines);
  if (colour !== null) {
    const hex = `#${colour[1]}`;
    return `found ${hex} without quotation marks; expected "${hex}", since # begins a remark`;
  }
  return SLIPS[code] ?? 'found a line that is not YAML; expected “key: value”';
}

/** Converts a parsed node to plain values. All keys become own properties, even `__proto__`. */
function toGiven(node: Node, at: (offset: number) => string, depth = 0): Given {
  const here = at(node.range?.[0] ?? 0);
  if (depth > DEEPEST) throw new Problem(`${here}: found values nested more than ${DEEPEST} deep`);
  const inside = (child: unknown): Given => (child === null ? '' : toGiven(child as Node, at, depth + 1));
  if (isScalar(node)) return String(node.value ?? '');
  if (isSeq(node)) return node.items.map(inside);
  if (!isMap(node)) throw new Problem(`${here}: found an alias (“*”); expected the value written out`);
  const seen = new Set<string>();
  return Object.fromEntries(
    node.items.map(({ key, value }) => {
      if (!isScalar(key)) throw new Problem(`${here}: found a list as a key; expected a word`);
      const word = String(key.value ?? '');
      if (seen.has(word)) throw new Problem(`${at(key.range![0])}: found ${describe(word)} twice; expected it once`);
      seen.add(word);
      return [word, inside(value)];
    }),
  );
}

/** Offset in the text at which a value begins, or its key if `spot.key` is set. */
function positionOf(text: string, top: Node, path: Path, spot: Omit<Spot, 'within'> = {}): number {
  let node = top;
  let start = top.range![0];
  for (const [step, key] of path.entries()) {
    let next: unknown;
    if (isSeq(node)) next = node.items[key as number];
    else if (isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value ?? '') === key);
      if (pair === undefined) return start;
      start = (pair.key as Node).range![0];
      if (spot.key === true && step === path.length - 1) return start;
      next = pair.value;
    }
    if (next === null || next === undefined) return start;
    node = next as Node;
    // An empty value has no position of its own; the position of its key is used.
    if (!(isScalar(node) && node.value === '' && node.range![0] === node.range![1])) start = node.range![0];
  }
  if (spot.offset === undefined || !isScalar(node)) return start;
  const shift = text.slice(...(node.range!.slice(0, 2) as [number, number])).indexOf(String(node.value));
  return shift < 0 ? start : start + shift + spot.offset;
}
