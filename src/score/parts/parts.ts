import { sharpPart, solidPart } from './area-parts.js';
import { balancePart } from './balance-part.js';
import { contrastPart } from './contrast-part.js';
import { easePart } from './ease-part.js';
import { figuredPart, figurePart } from './figure-parts.js';
import { floatPart } from './float-part.js';
import { calmPart, livelyPart } from './lively-parts.js';
import { newnessPart, noveltyPart } from './novelty-parts.js';
import type { Costly, Measured, ScorePart } from './score-part.js';
import { symmetryPart } from './symmetry-part.js';
import { unlikePart } from './unlike-part.js';

/** All parts of a score, in the order in which they are listed. Ranking, page, questions and reference use this list. */
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
] as const;

export type Part = (typeof LIST)[number]['name'];
export type Weights = Readonly<Record<Part, number>>;

/** A record with a value for each part. */
function each<T>(value: (part: ScorePart) => T): Record<Part, T> {
  const all: Partial<Record<Part, T>> = {};
  for (const part of LIST) all[part.name] = value(part);
  return all as Record<Part, T>;
}

/** The names of the parts. */
export const PARTS: readonly Part[] = LIST.map(({ name }) => name);

/** Each part by its name. */
export const PART: Readonly<Record<Part, ScorePart>> = each((part) => part);

/** The name of each part in sentences. */
export const PART_WORDS: Readonly<Record<Part, string>> = each(({ words }) => words);

/** Weights of which none counts. */
export const UNWEIGHED: Weights = each(() => 0);

/** The weights where a question does not say what to rank by. */
export const DEFAULT_RANK: Weights = each(({ weight = 0 }) => weight);

/** The value of every part, from 0 to 1. */
export function partsOf(measured: Measured): Record<Part, number> {
  return each((part) => part.of(measured));
}

/** The figures that have to be measured for a ranking. */
export function figuresFor(weights: Weights): ReadonlySet<Costly> {
  return new Set(LIST.flatMap(({ name, needs }): readonly Costly[] => (weights[name] > 0 ? needs : [])));
}
