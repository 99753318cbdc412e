import type { Eye } from '../look/look.js';
import { type Look, PART, PARTS, type Weights } from './parts.js';
import type { LookFigure } from './records/score-part.js';

type LookKey = keyof Look;

/** The figures that are measured for the sake of a part, each once, in the order of the parts. */
export const LOOK_FIGURES = [...new Set(PARTS.flatMap((part) => PART[part].looks ?? []))] as readonly (LookFigure & {
  readonly key: LookKey;
})[];

/** A record with a value for each of these figures. */
export function ofEachLook<T>(value: (figure: LookFigure) => T): Record<LookKey, T> {
  return Object.fromEntries(LOOK_FIGURES.map((figure) => [figure.key, value(figure)])) as Record<LookKey, T>;
}

/** Measures all of these figures. */
export function lookOf(seen: Eye): Look {
  return ofEachLook(({ measure }) => measure(seen));
}

/** The figures that have to be measured for a ranking, of those that take time. */
export function figuresFor(weights: Weights): ReadonlySet<LookKey | 'figure' | 'novelty'> {
  const weighed = PARTS.filter((part) => weights[part] > 0).map((part) => PART[part]);
  const looks = weighed.flatMap(({ looks = [] }) => looks.map(({ key }) => key as LookKey));
  return new Set([...looks, ...weighed.flatMap(({ needs = [] }) => needs)]);
}
