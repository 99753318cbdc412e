/** The columns that a scored candidate has in a batch and a kept cloth has in the archive, each declared here alone. */
export const CANDIDATE_COLUMNS = {
  /** Number of the candidate in its space (in its sample). */
  index: [Float64Array, 1],
  /** Score as it is compared: rounded to nine decimals, in billionths. */
  score: [Float64Array, 1],
  /** Cells of one repeat. */
  area: [Float64Array, 1],
  /** Whole numbers by which one of equal cloths is kept, most important first; smaller is better. */
  preference: [Float64Array, 4],
  /** Number of the niche that the cloth belongs to. */
  niche: [Float64Array, 1],
  /** Words that are the same exactly for the same cloth. */
  key: [Uint32Array, 4],
} as const satisfies ColumnList;

/** Width of the two columns that hold several numbers a row. */
export const PREFERENCES = CANDIDATE_COLUMNS.preference[1];
export const KEY_WORDS = CANDIDATE_COLUMNS.key[1];

type Numbers = Float64Array<ArrayBuffer> | Uint32Array<ArrayBuffer> | Uint8Array<ArrayBuffer>;
/** A column's type, and how many numbers a row has in it. */
type ColumnList = Readonly<Record<string, readonly [type: new (length: number) => Numbers, width: number]>>;

/** Rows as one typed array a column; row `at` has its numbers from `at * width` on. */
export type Columns<L extends ColumnList> = { -readonly [K in keyof L]: InstanceType<L[K][0]> };

/** Columns with room for so many rows, all zero. */
export function columnsFor<L extends ColumnList>(list: L, rows: number): Columns<L> {
  return mapped(list, ([type, width]) => new type(rows * width));
}

/** The first rows of columns: as many as there are, or room for more. */
export function resized<L extends ColumnList>(list: L, columns: Columns<L>, rows: number): Columns<L> {
  return mapped(list, ([type, width], name) => {
    const column = new type(rows * width);
    column.set(columns[name].subarray(0, rows * width));
    return column;
  });
}

/** Copies one row of these columns into a row of others that have them too. */
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
