/** Where the marks of one question are stored. */
export interface Shelf {
  /** What is stored; undefined if nothing is, or if the browser stores nothing. */
  read(): string | undefined;
  /** Stores a text; returns the reason in a sentence if that was refused. */
  write(text: string): string | undefined;
  /** The texts that were set aside. */
  aside(): readonly string[];
  /** Stores a text that cannot be read where nothing will write over it; a reason as for `write`. */
  setAside(text: string): string | undefined;
}

/** The shelf of a page that stores nothing. */
export const NO_SHELF: Shelf = {
  read: () => undefined,
  write: () => undefined,
  aside: () => [],
  setAside: () => undefined,
};

/** The parts of a browser's storage that are used; each may throw. */
type Storage = { getItem(key: string): string | null; setItem(key: string, text: string): void };

const REFUSED =
  'This browser does not store what is kept on this page. Save the list as a file before you close the page.';

/**
 * A shelf in a browser's storage.
 *
 * @param storage gives the storage; browsers that store nothing for a page throw here already
 */
export function shelfIn(storage: () => Storage, key: string): Shelf {
  const asideKey = `${key} aside`;
  const read = (at: string): string | undefined => {
    try {
      return storage().getItem(at) ?? undefined;
    } catch {
      // Nothing can be stored; the first change says so.
      return undefined;
    }
  };
  const write = (at: string, text: string): string | undefined => {
    try {
      storage().setItem(at, text);
      return undefined;
    } catch {
      return REFUSED;
    }
  };
  const aside = (): readonly string[] => {
    const stored = read(asideKey);
    return stored === undefined ? [] : (JSON.parse(stored) as string[]);
  };
  return {
    read: () => read(key),
    write: (text) => write(key, text),
    aside,
    setAside: (text) => {
      const known = aside();
      return known.includes(text) ? undefined : write(asideKey, JSON.stringify([...known, text]));
    },
  };
}
