import { didYouMean } from '../problem.js';
import { orList } from '../words/counts.js';
import { describe, expectedAmong, isKeys, MOST_LISTED, under } from './given.js';
import { type Given, Misread } from './misread.js';

/** A kind of value: what it looks like, and how it is read. */
export interface Kind<T> {
  /** What is expected, as messages and the reference say it: `lengths from 1 to 64, as 5, 2-6 or 2,3,5`. */
  readonly expected: string;
  /** Throws a Problem on anything else. */
  read(given: Given): T;
  /** The keys that the value consists of, if it does. */
  readonly table?: Table;
  /** Whether the value is a list, or one for each letter, of values with the keys of `table`. */
  readonly isList?: true;
  readonly byLetter?: true;
  /** What a JSON Schema can say of a single value; absent where that is more than it can. */
  readonly schema?: Readonly<Record<string, unknown>>;
  /** Turns the text form of a value with keys into these keys. */
  parts?(text: string): Given;
}

/** All about one key, except its name: the reader, help, messages and the reference come from it. */
export interface Key<T> {
  readonly kind: Kind<unknown>;
  /** What it is. */
  readonly about: string;
  /** How more than one value is written, where a command takes several. */
  readonly many?: string;
  /** What each word means, where the value is one of a few words, or some of them. */
  readonly choices?: Choices;
  /** What may stand in place of one of these words. */
  readonly other?: string;
  /** What the value says, where it is one word about each of a few things: the words for each, the usual one first. */
  readonly oneOfEach?: Readonly<Record<string, readonly string[]>>;
  /** A value as a person would write it in YAML. */
  readonly example: string;
  /** The argument of its flag: `<range>`. */
  readonly argument?: string;
  /** The value where it is not given, as text or keys; or what holds then, in words. */
  readonly usual?: string;
  readonly isNeeded: boolean;
  /** Reads a value; undefined is one that was not given. */
  read(given: Given | undefined): T;
}

/** Words that may be chosen, each with its meaning. */
export type Choices = Readonly<Record<string, string>>;

/** The keys of one kind of file, in the order of the reference. */
export interface Table<K extends Keys = Keys> {
  readonly keys: K;
  /** Keys and flags of earlier versions, each with the key that is written now and a value for it. */
  readonly former: Former;
}
export type Former = Readonly<Record<string, readonly [key: string, value: string]>>;
type Keys = Readonly<Record<string, Key<unknown>>>;

/** The value of a key after reading. */
type Value<K> = K extends Key<infer V> ? V : never;
/** The values of a table after reading; those that were not given are absent. */
export type KeyValues<T extends Table> = {
  readonly [N in keyof T['keys'] as undefined extends Value<T['keys'][N]> ? never : N]: Value<T['keys'][N]>;
} & {
  readonly [N in keyof T['keys'] as undefined extends Value<T['keys'][N]> ? N : never]?: Exclude<
    Value<T['keys'][N]>,
    undefined
  >;
};

interface Words {
  readonly about: string;
  readonly many?: string;
  readonly choices?: Choices;
  readonly other?: string;
  readonly oneOfEach?: Readonly<Record<string, readonly string[]>>;
  readonly example: string;
  readonly argument?: string;
}

/** Words that may be chosen, with their meanings, in one line: `solid (all one colour), nest (…)`. */
export function choicesInWords(choices: Choices): string {
  return Object.entries(choices)
    .map(([word, meaning]) => `${word} (${meaning})`)
    .join(', ');
}

/** Makes a key that must be given. */
export function needed<T>(kind: Kind<T>, words: Words): Key<T> {
  return {
    ...words,
    kind,
    isNeeded: true,
    read(given) {
      if (given === undefined) throw new Misread('found nothing; expected a value');
      return kind.read(given);
    },
  };
}

/** Makes a key with a default, which is read as if it had been written. `usual`: the default in words. */
export function withDefault<T>(kind: Kind<T>, value: Given, words: Words & { readonly usual?: string }): Key<T> {
  const usual = words.usual ?? (typeof value === 'string' ? value : undefined);
  return {
    ...words,
    ...(usual !== undefined && { usual }),
    kind,
    isNeeded: false,
    read: (given) => kind.read(given ?? value),
  };
}

/** Makes a key that may be left out. `usual`: what holds then, in words. */
export function optional<T>(kind: Kind<T>, words: Words & { readonly usual?: string }): Key<T | undefined> {
  return { ...words, kind, isNeeded: false, read: (given) => (given === undefined ? undefined : kind.read(given)) };
}

export function table<K extends Keys>(keys: K, former: Former = {}): Table<K> {
  return { keys, former };
}

/** Reads keys with values. Throws a Misread on unknown and missing keys, and on the first value that cannot be read. */
export function readKeys<T extends Table>(known: T, given: Given): KeyValues<T> {
  const names = Object.keys(known.keys);
  if (!isKeys(given)) {
    const keys = names.length > MOST_LISTED ? 'keys' : orList(names);
    throw new Misread(`found ${describe(given)}; expected ${keys}, each with its value`);
  }
  for (const name of Object.keys(given)) if (!names.includes(name)) refuse(name, known);
  const missing = names.find((name) => known.keys[name]!.isNeeded && !Object.hasOwn(given, name));
  if (missing !== undefined) throw new Misread(`found no “${missing}”; expected it among the keys`);
  const read = names.flatMap((name) => {
    const value = under(name, () => known.keys[name]!.read(Object.hasOwn(given, name) ? given[name] : undefined));
    return value === undefined ? [] : [[name, value] as const];
  });
  return Object.fromEntries(read) as KeyValues<T>;
}

function refuse(name: string, { keys, former }: Table): never {
  const names = Object.keys(keys);
  const now = Object.hasOwn(former, name) ? former[name] : undefined;
  const message =
    now === undefined
      ? `found the unknown key ${describe(name)}; ${expectedAmong(name, names, 'a key')}`
      : `found the former key ${describe(name)}; expected ${now.join(': ')}`;
  throw new Misread(message, { within: [name], key: true });
}

/** Makes the kind of a value with keys. `parts`: the keys of its text form. */
export function nested<T extends Table>(
  inner: T,
  expected: string,
  parts?: (text: string) => Given,
): Kind<KeyValues<T>> & { readonly table: T } {
  return {
    expected,
    table: inner,
    ...(parts && { parts }),
    read: (given) =>
      readKeys(inner, typeof given === 'string' && parts !== undefined && given.trim() !== '' ? parts(given) : given),
  };
}

/** Makes the kind of a list of 1 to `most` values with keys. */
export function listOf<T extends Table, R>(
  inner: T,
  expected: string,
  most: number,
  each: (values: KeyValues<T>) => R,
): Kind<R[]> {
  return {
    expected,
    table: inner,
    isList: true,
    read(given) {
      if (!Array.isArray(given) || given.length === 0 || given.length > most) {
        throw new Misread(`found no list of 1 to ${most}; expected ${expected}`);
      }
      return given.map((item: Given, at) => under(at, () => each(readKeys(inner, item))));
    },
  };
}

/**
 * Splits a text such as `float 1/2 in, warp changes 40` into the keys of a table and their values.
 *
 * @throws Misread on a part that begins with no key
 */
export function namedParts(text: string, { keys }: Table, expected: string): Given {
  const names = Object.keys(keys).sort((a, b) => b.length - a.length);
  return Object.fromEntries(
    text
      .split(/[,;]/)
      .map((part) => part.trim())
      .filter((part) => part !== '')
      .map((part) => {
        const name = names.find((each) => [' ', ':'].some((after) => part.toLowerCase().startsWith(each + after)));
        if (name === undefined) {
          if (/^\d/.test(part) && /\d,\d/.test(text)) {
            throw new Misread(`found ${describe(text)}; expected a point, as in 0.5: a comma stands between two`);
          }
          throw new Misread(
            `found ${describe(part)}; expected ${expected}${didYouMean(part.replace(/\s*\d.*$/, ''), names)}`,
          );
        }
        return [name, part.slice(name.length).replace(/^:/, '').trim()];
      }),
  );
}
