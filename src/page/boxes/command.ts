import type { Found } from '../../search/strategy/outcome.js';
import { asArgument } from '../../words/shell.js';

/** The command that draws a cloth again, at its own size or at another. */
export function redrawCommand({ redraw, order }: Pick<Found, 'redraw' | 'order'>, times = order.times): string {
  const flags = redraw.filter(([flag]) => flag !== 'times');
  const all = times > 1 ? [...flags, ['times', String(times)] as const] : flags;
  return [
    'shedlight draw',
    ...all.map(([flag, value]) => (flag === 'draft' ? asArgument(value) : `--${flag} ${asArgument(value)}`)),
  ].join(' ');
}

/** Where the command is to be run, if it names a draft by its last name alone. */
export function runIn({ redraw }: Pick<Found, 'redraw'>): string | undefined {
  const draft = redraw.find(([flag]) => flag === 'draft')?.[1];
  return draft === undefined || /[/\\]/.test(draft) ? undefined : `Run it in the folder of ${draft}.`;
}
