import { escapeText } from '../../render/svg.js';

/** Markup that may stand in a page as it is. Made by `html` and, for our own drawings, by `safe`. */
export class Safe {
  readonly markup: string;

  constructor(markup: string) {
    this.markup = markup;
  }
}

/**
 * A value in a template: text and numbers are escaped, `Safe` markup is not; undefined, null and false are left out.
 */
export type Hole = string | number | Safe | readonly Hole[] | undefined | null | false;

/**
 * Makes a piece of a page from a template. Every value is escaped unless it is `Safe` or a list of `Safe` values; a
 * value may be between tags or inside a quoted attribute.
 */
export function html(fixed: TemplateStringsArray, ...holes: readonly Hole[]): Safe {
  return new Safe(fixed.reduce((page, part, at) => page + filled(holes[at - 1]) + part));
}

/** Marks markup of our own making, such as a drawing, as safe. Never for anything that a person gave. */
export function safe(markup: string): Safe {
  return new Safe(markup);
}

function filled(hole: Hole): string {
  if (hole === undefined || hole === null || hole === false) return '';
  if (hole instanceof Safe) return hole.markup;
  if (typeof hole === 'object') return hole.map(filled).join('');
  return escapeText(String(hole));
}
