/** A whole number with its thousands apart, as in 67,108,864. */
export function grouped(value: number): string {
  return value < 1e15 ? String(value).replace(/\B(?=(\d{3})+$)/g, ',') : value.toExponential(3);
}

/** The word for one, or the word for more. */
export function plural(count: number, one: string, more = `${one}s`): string {
  return count === 1 ? one : more;
}

/** `1 unit`, `3 units`. */
export function counted(count: number, one: string, more?: string): string {
  return `${count} ${plural(count, one, more)}`;
}

/** `a, b and c`. */
export function andList(words: readonly (string | number)[]): string {
  return joined(words, ' and ');
}

/** `a, b or c`. */
export function orList(words: readonly (string | number)[]): string {
  return joined(words, ' or ');
}

function joined(words: readonly (string | number)[], last: string): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')}${last}${words.at(-1)}`;
}

/** A sentence with a capital at its beginning. */
export function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
