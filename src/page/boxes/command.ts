import type { Found } from '../../search/strategy/outcome.js';

/** The command that draws a cloth again, at its own size or at another. */
export function drawCommand({ redraw, order }: Pick<Found, 'redraw' | 'order'>, times = order.times): string {
  const flags = redraw.filter(([flag]) => flag !== 'times');
  const all = times > 1 ? [...flags, ['times', String(times)] as const] : flags;
  return [
    'shedlight draw',
    ...all.map(([flag, value]) => (flag === 'draft' ? quoted(value) : `--${flag} ${quoted(value)}`)),
  ].join(' ');
}

/** Quotes a word for a shell, if it needs quotation marks. */
function quoted(word: string): string {
  if (/^[\p{L}\d_./:,@%+=-]+$/u.test(word) && !word.startsWith('-')) return word;
  return /["$`\\!]/.test(word) ? `'${word.replaceAll("'", `'\\''`)}'` : `"${word}"`;
}
