import { escapeText } from '../../render/svg.js';

/** Markup that may stand in a page as it is. Made by `html` and, for our own drawings, by `safe`. */
export class Safe {
  readonly markup: string;

  constructor(markup: string) {
    this.markup = markup;
  }
}

/** What may stand in a hole of a template: text and numbers are escaped, markup stands as it is, nothing is left out. */
export type Hole = string | number | Safe | readonly Hole[] | undefined | null | false;

/**
 * A piece of a page. Every hole is text, never markup, unless it holds a `Safe` value or a list of them; a hole may
 * stand between tags or inside a quoted attribute.
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
