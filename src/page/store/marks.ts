import { type KeptCloth, keptOf, parseShortlist, shortlistText } from '../../formats/shortlist.js';
import type { Source } from '../../gallery/manifest/origin.js';
import { Problem } from '../../problem.js';
import type { Found } from '../../search/strategy/outcome.js';
import { NO_SHELF, type Shelf } from './shelf.js';

/**
 * The kept cloths of one question, in the order in which they were kept, with stars and notes. They are stored at every
 * change, on top of what is stored by then: another tab may have changed it.
 */
export class Marks {
  /** The kept cloths, some perhaps from other galleries. Every change makes a new list. */
  all: readonly KeptCloth[] = [];
  /** What the last change removed or wrote over, which can be put back. */
  lost: readonly KeptCloth[] = [];
  /** Why what is kept is not stored, in a sentence. */
  trouble: string | undefined;
  private readonly shelf: Shelf;
  /** What the list says of where the cloths of this gallery come from. */
  readonly source: Source;

  constructor(shelf: Shelf = NO_SHELF, source: Source = {}) {
    this.shelf = shelf;
    this.source = source;
    this.reload();
  }

  has(code: string): boolean {
    return this.of(code) !== undefined;
  }

  of(code: string): KeptCloth | undefined {
    return this.all.find((each) => each.code === code);
  }

  /** Keeps a cloth, or removes it if it is kept. */
  toggle(found: Found): void {
    if (this.has(found.code)) this.drop(found.code);
    else {
      const kept = keptOf({ ...found, ...this.source });
      this.change((all) => (all.some(({ code }) => code === found.code) ? all : [...all, kept]));
    }
  }

  drop(code: string): void {
    this.change((all) => all.filter((each) => each.code !== code));
  }

  /** Sets stars or note of a kept cloth. */
  mark(code: string, mark: Partial<Pick<KeptCloth, 'stars' | 'note'>>): void {
    const { lost } = this;
    this.change((all) => all.map((each) => (each.code === code ? { ...each, ...mark } : each)));
    this.lost = lost;
  }

  /** Puts back what the last change removed or wrote over. */
  undo(): void {
    const back = new Map(this.lost.map((cloth) => [cloth.code, cloth]));
    this.change((all) => merged(all, back));
    this.lost = [];
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
    this.add(cloths);
    return cloths.length;
  }

  /** Takes over the list of the question that was asked before, with its stars and notes. */
  take(kept: readonly KeptCloth[]): void {
    if (kept.length === 0) return;
    this.add(kept);
    this.lost = [];
  }

  /** Texts that were stored here and cannot be read: damaged, or of a newer version. */
  get aside(): readonly string[] {
    return this.shelf.aside();
  }

  /** Reads what is stored. What cannot be read is set aside, never written over. */
  reload(): void {
    const text = this.shelf.read();
    if (text === undefined) return;
    try {
      this.all = parseShortlist(text, 'what this browser stored');
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      this.all = [];
      this.trouble = this.shelf.setAside(text);
    }
  }

  private add(cloths: readonly KeptCloth[]): void {
    this.change((all) => merged(all, new Map(cloths.map((cloth) => [cloth.code, cloth]))));
  }

  private change(how: (all: readonly KeptCloth[]) => readonly KeptCloth[]): void {
    // Where the last change could not be stored, what is stored is older than what is here.
    if (this.trouble === undefined) this.reload();
    const before = this.all;
    this.all = how(before);
    this.lost = before.filter((cloth) => differs(cloth, this.of(cloth.code)));
    this.trouble = this.shelf.write(this.text());
  }
}

/** A list with these cloths in it: in the place of those with the same code, the others at its end. */
function merged(all: readonly KeptCloth[], more: ReadonlyMap<string, KeptCloth>): KeptCloth[] {
  const known = new Set(all.map(({ code }) => code));
  return [
    ...all.map((cloth) => more.get(cloth.code) ?? cloth),
    ...[...more.values()].filter((c) => !known.has(c.code)),
  ];
}

function differs(before: KeptCloth, after: KeptCloth | undefined): boolean {
  return after === undefined || before.note !== after.note || before.stars !== after.stars;
}
