import { sharpPart, solidPart } from './records/area-parts.js';
import { balancePart } from './records/balance-part.js';
import { contrastPart } from './records/contrast-part.js';
import { easePart } from './records/ease-part.js';
import { figuredPart, figurePart } from './records/figure-parts.js';
import { finePart } from './records/fine-part.js';
import { floatPart } from './records/float-part.js';
import { calmPart, livelyPart } from './records/lively-parts.js';
import { newnessPart, noveltyPart } from './records/novelty-parts.js';
import type { Measured, ScorePart } from './records/score-part.js';
import { symmetryPart } from './records/symmetry-part.js';
import { unlikePart } from './records/unlike-part.js';

/** All parts of a score. Rankings, questions, tables, pages and galleries are made from this list, in its order. */
const LIST = [
  contrastPart,
  symmetryPart,
  floatPart,
  figurePart,
  figuredPart,
  easePart,
  noveltyPart,
  newnessPart,
  balancePart,
  solidPart,
  sharpPart,
  calmPart,
  livelyPart,
  unlikePart,
  finePart,
] as const;

type AnyPart = (typeof LIST)[number];
export type Part = AnyPart['name'];
export type Weights = Readonly<Record<Part, number>>;

/** The figures that are measured for the sake of a part. */
export type Look = Readonly<Record<Extract<AnyPart, { readonly looks: unknown }>['looks'][number]['key'], number>>;

/** A record with a value for each part. */
export function ofEachPart<T>(value: (part: AnyPart) => T): Record<Part, T> {
  const all: Partial<Record<Part, T>> = {};
  for (const part of LIST) all[part.name] = value(part);
  return all as Record<Part, T>;
}

/** The names of the parts. */
export const PARTS: readonly Part[] = LIST.map(({ name }) => name);

/** Each part by its name. */
export const PART: Readonly<Record<Part, Omit<ScorePart, 'of'> & { of(measured: Measured & Look): number }>> =
  ofEachPart((part) => part);

/** The name of each part in sentences. */
export const PART_WORDS: Readonly<Record<Part, string>> = ofEachPart(({ words }) => words);

/** Weights of which none counts. */
export const UNWEIGHED: Weights = ofEachPart(() => 0);

/** The weights where a question does not say what to rank by. */
export const DEFAULT_RANK: Weights = ofEachPart((part) => ('weight' in part ? part.weight : 0));

/** The value of every part, from 0 to 1. */
export function partsOf(measured: Measured & Look): Record<Part, number> {
  return ofEachPart((part) => part.of(measured));
}
