import { type Command, Option } from 'commander';
import { flagOf } from '../../input/flags.js';
import type { Kind, Table } from '../../input/key.js';
import { Problem } from '../../problem.js';

/** Flags of a command for keys of a file, under one heading. */
interface FlagGroup<T extends Table> {
  readonly [heading: string]: {
    readonly usual: readonly (keyof T['keys'] & string)[];
    /** Keys whose flags only `--help all` shows. */
    readonly seldom?: readonly (keyof T['keys'] & string)[];
  };
}

/** Flags that only `--help all` shows. */
const seldomFlags = new WeakSet<Option>();
/** The words that a flag takes, where they are known. */
const wordsTaken = new WeakMap<Option, readonly string[]>();

/** A flag as completion and the manual need it. */
export interface Flag {
  readonly name: string;
  readonly about: string;
  /** What stands for its value, without brackets: `file`; absent if it takes none. */
  readonly value?: string;
  readonly words: readonly string[];
}

/** The flags of a command, the seldom ones too; those of earlier versions are left out. */
export function flagsOf(command: Command): Flag[] {
  const options = command.options.filter((option) => !option.hidden || seldomFlags.has(option));
  return options.map((option) => {
    const value = /[<[](.+?)(\.{3})?[>\]]$/.exec(option.flags)?.[1];
    return {
      name: option.long!,
      about: option.description,
      ...(value !== undefined && { value }),
      words: wordsTaken.get(option) ?? [],
    };
  });
}

/**
 * Adds flags for keys of a file. Flags of earlier versions are refused, with the flag of today.
 *
 * @param many whether the command takes several values where the key does
 * @param instead words for keys that the command takes otherwise than the file
 */
export function addFlags<T extends Table>(
  command: Command,
  known: T,
  groups: FlagGroup<T>,
  { many = false, instead = {} }: { readonly many?: boolean; readonly instead?: Readonly<Record<string, string>> } = {},
): void {
  for (const [heading, { usual, seldom: rest = [] }] of Object.entries(groups)) {
    command.optionsGroup(heading);
    const option = (name: string): Option => {
      const key = known.keys[name]!;
      const several = many && key.many !== undefined ? `; ${key.many}` : '';
      const absent = key.usual === undefined ? '' : ` (default: ${key.usual})`;
      const about = instead[name] ?? `${key.about}${several}${absent}`;
      const value = several === '' && key.many !== undefined ? key.argument?.replace(/s>$/, '>') : key.argument;
      const made = new Option(`${flagOf(name)} ${value}`, about);
      wordsTaken.set(made, wordsOf(key.kind.schema));
      return made;
    };
    for (const name of usual) command.addOption(option(name));
    for (const name of rest) command.addOption(seldom(option(name)));
  }
  for (const [former, [key, value]] of Object.entries(known.former)) {
    const isThere = command.options.some(({ long }) => long === flagOf(former));
    if (Object.hasOwn(known.keys, key) && !isThere)
      command.addOption(refused(flagOf(former), `${flagOf(key)} "${value}"`));
  }
}

/** The words that a value may be, or consist of. */
function wordsOf(schema: Kind<unknown>['schema'] = {}): string[] {
  const { enum: known, items } = schema as { enum?: readonly unknown[]; items?: { enum?: readonly unknown[] } };
  return (known ?? items?.enum ?? []).filter((word) => typeof word === 'string');
}

/** Makes a flag one that only `--help all` shows. */
export function seldom(option: Option): Option {
  seldomFlags.add(option);
  return option.hideHelp();
}

/** A flag of an earlier version, which is refused with what is written today. */
export function refused(flag: string, now: string): Option {
  const refuse = (): never => {
    throw new Problem(`${flag}: found a former flag; expected ${now}`);
  };
  return new Option(`${flag} [value]`).argParser(refuse).hideHelp();
}

/** Shows the seldom flags of a command in its help; or says how many there are, and where. */
export function tellSeldom(command: Command, all: boolean): void {
  const hidden = command.options.filter((option) => seldomFlags.has(option));
  if (all) for (const option of hidden) option.hideHelp(false);
  else if (hidden.length > 0) {
    command.addHelpText(
      'after',
      `\n${hidden.length} more options, seldom needed: shedlight ${command.name()} --help all`,
    );
  }
}

/** The given values of flags, by key. */
export function flagsGiven(options: Readonly<Record<string, unknown>>, { keys }: Table): Record<string, string> {
  const given: Record<string, string> = {};
  for (const key of Object.keys(keys)) {
    const value = options[new Option(flagOf(key)).attributeName()];
    if (typeof value === 'string') given[key] = value;
  }
  return given;
}
