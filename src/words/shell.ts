/** A word as a shell takes it: in quotation marks where it needs them. */
export function asArgument(word: string): string {
  if (/^[\p{L}\d_./:,@%+=-]+$/u.test(word) && !word.startsWith('-')) return word;
  return /["$`\\!]/.test(word) ? `'${word.replaceAll("'", `'\\''`)}'` : `"${word}"`;
}
