import { type KeptCloth, keptOf, parseShortlist, shortlistText } from '../../formats/shortlist.js';
import type { Found } from '../../search/strategy/outcome.js';

/** The kept cloths, in the order in which they were kept, with stars and notes. */
export class Marks {
  /** The kept cloths, some perhaps from other galleries. Every change makes a new list. */
  all: readonly KeptCloth[] = [];

  has(code: string): boolean {
    return this.of(code) !== undefined;
  }

  of(code: string): KeptCloth | undefined {
    return this.all.find((each) => each.code === code);
  }

  /** Keeps a cloth, or removes it if it is kept. */
  toggle(found: Found): void {
    if (this.has(found.code)) this.drop(found.code);
    else this.all = [...this.all, keptOf(found)];
  }

  drop(code: string): void {
    this.all = this.all.filter((each) => each.code !== code);
  }

  /** Sets stars or note of a kept cloth. */
  mark(code: string, mark: Partial<Pick<KeptCloth, 'stars' | 'note'>>): void {
    this.all = this.all.map((each) => (each.code === code ? { ...each, ...mark } : each));
  }

  /** The list as the text of a shortlist file. */
  text(): string {
    return shortlistText(this.all);
  }

  /**
   * Adds the cloths of a saved list; stars and notes of the file win over those of the page. Returns their number.
   *
   * @throws Problem if the text is no shortlist
   */
  read(text: string, file: string): number {
    const cloths = parseShortlist(text, file);
    const given = new Map(cloths.map((cloth) => [cloth.code, cloth]));
    const known = this.all.map((cloth) => given.get(cloth.code) ?? cloth);
    this.all = [...known, ...cloths.filter(({ code }) => !this.has(code))];
    return cloths.length;
  }
}
