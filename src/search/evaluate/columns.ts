/** The columns of a scored candidate in a batch and of a kept cloth in the archive. They are declared only here. */
export const CANDIDATE_COLUMNS = {
  /** Index of the candidate in its space (or in its sample). */
  index: [Float64Array, 1],
  /** Score in billionths, rounded to a whole number, in which form scores are compared. */
  score: [Uint32Array, 1],
  /** Number of cells in one repeat. */
  area: [Uint32Array, 1],
  /**
   * Whole numbers that decide which of several candidates for one cloth is kept, most important first; smaller is
   * better.
   */
  preference: [Uint32Array, 4],
  /** Number of the cloth's niche. */
  niche: [Uint32Array, 1],
  /** Key of the cloth, four 32-bit words: equal exactly for equal cloths. */
  key: [Uint32Array, 4],
} as const satisfies ColumnList;

/** Numbers per row in the two columns that have several. */
export const PREFERENCES = CANDIDATE_COLUMNS.preference[1];
export const KEY_WORDS = CANDIDATE_COLUMNS.key[1];

type Numbers = Float64Array<ArrayBuffer> | Uint32Array<ArrayBuffer> | Uint8Array<ArrayBuffer>;
/** A column's type, and how many numbers a row has in it. */
type ColumnList = Readonly<Record<string, readonly [type: new (length: number) => Numbers, width: number]>>;

/** A table with one typed array per column; the numbers of row `at` begin at `at * width`. */
export type Columns<L extends ColumnList> = { -readonly [K in keyof L]: InstanceType<L[K][0]> };

/** Makes columns with room for `rows` rows, all zero. */
export function columnsFor<L extends ColumnList>(list: L, rows: number): Columns<L> {
  return mapped(list, ([type, width]) => new type(rows * width));
}

/** Copies columns to a new number of rows: cut, or followed by zeros. */
export function resized<L extends ColumnList>(list: L, columns: Columns<L>, rows: number): Columns<L> {
  return mapped(list, ([type, width], name) => {
    const column = new type(rows * width);
    column.set(columns[name].subarray(0, rows * width));
    return column;
  });
}

/** Gives columns room for more rows, one after the other, so that never two of all are held. */
export function extend<L extends ColumnList>(list: L, columns: Columns<L>, rows: number): void {
  for (const name in list) {
    const one = { [name]: list[name] } as unknown as L;
    Object.assign(columns, resized(one, columns, rows));
  }
}

/** Copies one row of columns into a row of other columns, which have the same names. */
export function copyRow<L extends ColumnList>(
  list: L,
  { from, at }: { readonly from: Columns<L>; readonly at: number },
  { to, row }: { readonly to: Columns<L>; readonly row: number },
): void {
  for (const name in list) {
    const width = list[name]![1];
    for (let k = 0; k < width; k++) to[name][row * width + k] = from[name][at * width + k]!;
  }
}

function mapped<L extends ColumnList>(list: L, make: (column: L[keyof L], name: keyof L) => Numbers): Columns<L> {
  const names = Object.keys(list) as (keyof L)[];
  return Object.fromEntries(names.map((name) => [name, make(list[name]!, name)])) as Columns<L>;
}
