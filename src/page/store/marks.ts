import { type KeptCloth, keptOf, parseShortlist, shortlistText } from '../../formats/shortlist.js';
import type { Found } from '../../search/strategy/outcome.js';

/** What a person has marked: cloths kept, in the order in which they were kept, with stars and a note each. */
export class Marks {
  /** Cloths kept; they may come from other galleries too. A new list with every change. */
  all: readonly KeptCloth[] = [];

  has(code: string): boolean {
    return this.of(code) !== undefined;
  }

  of(code: string): KeptCloth | undefined {
    return this.all.find((each) => each.code === code);
  }

  /** Keeps a cloth, or no longer keeps it. */
  toggle(found: Found): void {
    if (this.has(found.code)) this.drop(found.code);
    else this.all = [...this.all, keptOf(found)];
  }

  drop(code: string): void {
    this.all = this.all.filter((each) => each.code !== code);
  }

  /** Marks a cloth that is kept with stars or a note. */
  mark(code: string, mark: Partial<Pick<KeptCloth, 'stars' | 'note'>>): void {
    this.all = this.all.map((each) => (each.code === code ? { ...each, ...mark } : each));
  }

  /** The whole list as a file. */
  text(): string {
    return shortlistText(this.all);
  }

  /**
   * Adds the cloths of a saved list; the marks of the file win over those that are here.
   *
   * @throws Problem where the text is no shortlist
   */
  read(text: string, file: string): number {
    const cloths = parseShortlist(text, file);
    const given = new Map(cloths.map((cloth) => [cloth.code, cloth]));
    const known = this.all.map((cloth) => given.get(cloth.code) ?? cloth);
    this.all = [...known, ...cloths.filter(({ code }) => !this.has(code))];
    return cloths.length;
  }
}
