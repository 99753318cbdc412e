import { brief, Problem } from '../problem.js';

/** What a person gives, in a file or as a flag: single values are text as it was written. */
export type Given = string | readonly Given[] | { readonly [key: string]: Given };

/** Keys and list places (from 0) on the way down to a value. */
export type Path = readonly (string | number)[];

/** Which part of a value is meant. */
export interface Spot {
  /** From the value down to the faulty one. */
  readonly within?: Path;
  /** Characters into its text. */
  readonly offset?: number;
  /** The key itself, and not its value. */
  readonly key?: boolean;
}

/** A value that does not read: what was found and what was expected, before file and place are put in front. */
export class Misread extends Problem {
  readonly spot: Spot;

  constructor(message: string, spot: Spot = {}) {
    super(message);
    this.spot = spot;
  }
}

/** Words for a value as it was found: its text in quotation marks, or what kind of thing it is. */
export function describe(given: Given): string {
  if (typeof given === 'string') {
    const shown = brief(given);
    return shown === '' ? 'nothing' : `“${shown}”`;
  }
  if (!Array.isArray(given)) return 'keys with values';
  return given.length === 0 ? 'an empty list' : 'a list';
}
