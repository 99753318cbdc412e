import { isKeys, under } from './given.js';
import type { Table } from './key.js';
import type { Given } from './misread.js';
import { placed, type Source } from './source.js';

/** The flag of a key: `--warp-changes`. */
export function flagOf(key: string): string {
  return `--${key.replaceAll(' ', '-')}`;
}

/**
 * Lays flags over what a file says: flags win. Where a value consists of keys, as a loom does, they win key by key.
 *
 * @param source what the file says, if there is one
 * @param flags the text of each flag, by its key
 * @param words where the source or a flag is said otherwise: the name of what was read without a file, flags by key
 * @throws Problem, with its place, if the text of a value with keys cannot be split into them
 */
export function overlaid(
  { keys }: Table,
  source: Source | undefined,
  flags: Readonly<Record<string, string>>,
  { nothing, named = {} }: { readonly nothing: string; readonly named?: Readonly<Record<string, string>> },
): Source {
  const given = (source?.value ?? {}) as { readonly [key: string]: Given };
  /** Paths, joined by dots, of the values that flags gave. */
  const won = new Set<string>();
  const place: Source['place'] = (path, spot) => {
    const key = String(path[0]);
    if (won.has(key) || won.has(path.slice(0, 2).join('.'))) return named[key] ?? flagOf(key);
    return source?.place(path, spot) ?? nothing;
  };
  const split = (key: string, value: Given | undefined): Given | undefined => {
    const { parts } = keys[key]?.kind ?? {};
    return typeof value === 'string' && parts !== undefined ? under(key, () => parts(value)) : value;
  };
  const value = placed({ value: given, place }, () => {
    const all: Record<string, Given> = { ...given };
    for (const [key, text] of Object.entries(flags)) {
      const below = split(key, given[key]);
      won.add(key);
      const above = split(key, text)!;
      if (isKeys(above)) {
        won.delete(key);
        for (const name of Object.keys(above)) won.add(`${key}.${name}`);
      }
      all[key] = isKeys(above) && below !== undefined && isKeys(below) ? { ...below, ...above } : above;
    }
    return all;
  });
  return { value, place };
}
