import { stringify } from '../../input/yaml.js';
import type { Draft } from '../draft.js';
import { writeNumbers } from '../notation.js';
import { periodOf, unitStarts } from './repeats.js';

/** Writes a draft that holds one whole repeat as the YAML that `readDraft` reads back to the same draft. */
export function writeDraft(draft: Draft): string {
  const { name, threading, tieUp, treadling, pickKinds, yarns, sett, widths } = draft;
  const letters = (order: readonly number[]): string => order.map((yarn) => yarns[yarn]!.letter).join(' ');
  const ends = written(threading, draft.endUnits);
  const picks = written(treadling, draft.pickUnits);
  const lines = [
    'version: 1',
    ...(name === undefined ? [] : [`name: ${quoted(name)}`]),
    `threading: ${writeNumbers(ends.threads)}`,
    `tie-up: [${tieUp.map((shafts) => (shafts.length === 0 ? '0' : shafts.join(' '))).join(', ')}]`,
    `treadling: ${writeNumbers(picks.threads)}`,
    ...(pickKinds.every((kind) => kind === 'ground') ? [] : [`pick kinds: ${shortest(pickKinds).join(' ')}`]),
    ...(ends.units.every((unit) => unit === 1) ? [] : [`units: ${ends.units.join(' ')}`]),
    ...(picks.units.every((unit) => unit === 1) ? [] : [`pick units: ${picks.units.join(' ')}`]),
    `warp: ${letters(shortest(draft.warp))}`,
    `weft: ${letters(shortest(draft.weft))}`,
    'yarns:',
    ...yarns.map(({ letter, name, hex, tex }) => {
      const size = tex === undefined ? '' : `, tex: ${tex}`;
      return `  ${letter}: { colour: "${hex}", name: ${quoted(name)}${size} }`;
    }),
    `sett: { ends: ${sett.ends}, picks: ${sett.picks}, per: ${sett.per} }`,
    ...(Object.values(widths).every((width) => width === 1) ? [] : [`widths: ${inBraces(widths)}`]),
  ];
  return `${lines.join('\n')}\n`;
}

/** The shortest stretch of threads, with its units, that gives all threads when it is repeated. */
function written<T>(
  threads: readonly T[],
  units: readonly number[],
): { threads: readonly T[]; units: readonly number[] } {
  const starts = unitStarts(units);
  const period = periodOf(threads.map((thread, at) => `${thread} ${starts[at]}`));
  const count = starts.slice(0, period).filter(Boolean).length;
  return { threads: threads.slice(0, period), units: shortest(units.slice(0, count)) };
}

const shortest = <T>(list: readonly T[]): readonly T[] => list.slice(0, periodOf(list));

const quoted = (text: string): string => stringify(text, { defaultStringType: 'QUOTE_DOUBLE', lineWidth: 0 }).trimEnd();

const inBraces = (widths: Draft['widths']): string =>
  `{ ${Object.entries(widths)
    .map(([kind, width]) => `${kind}: ${width}`)
    .join(', ')} }`;
