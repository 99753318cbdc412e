import { brief, Problem } from '../problem.js';

/** A value that a person gave, in a file or as a flag. Single values are text, exactly as written. */
export type Given = string | readonly Given[] | { readonly [key: string]: Given };

/** Keys and list indices (from 0) that lead down to a value. */
export type Path = readonly (string | number)[];

/** The faulty part of a value. */
export interface Spot {
  /** Path from the value down to the faulty one. */
  readonly within?: Path;
  /** Character in its text, from 0. */
  readonly offset?: number;
  /** True if the key is at fault and not its value. */
  readonly key?: boolean;
}

/** A value that cannot be read: found and expected. {@link placed} puts file and place before the message. */
export class Misread extends Problem {
  readonly spot: Spot;

  constructor(message: string, spot: Spot = {}) {
    super(message);
    this.spot = spot;
  }
}

/** Words for a value that was found: its text in quotation marks, or its kind. */
export function describe(given: Given): string {
  if (typeof given === 'string') {
    const shown = brief(given);
    return shown === '' ? 'nothing' : `“${shown}”`;
  }
  if (!Array.isArray(given)) return 'keys with values';
  return given.length === 0 ? 'an empty list' : 'a list';
}
