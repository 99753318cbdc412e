import { brief, Problem, quote } from '../../problem.js';
import { type Entry, entriesOf, placeOf, type WifSection, type WifSections } from './wif-sections.js';

/** Most characters of a value: a guard against a line of millions of numbers. Real lists are far shorter. */
const LONGEST_VALUE = 8000;

/** The entries of a section, with readers that name the line of a faulty one. An absent section has no entries. */
export class Fields {
  readonly name: string;
  readonly line: number | undefined;
  readonly entries: ReadonlyMap<string, Entry>;

  constructor(name: string, section: WifSection | undefined) {
    this.name = name;
    this.line = section?.line;
    this.entries = section === undefined ? new Map() : entriesOf(section);
  }

  static of(sections: WifSections, name: string): Fields {
    return new Fields(name, sections.get(name));
  }

  get(key: string): Entry | undefined {
    return this.entries.get(key);
  }

  /** A problem with one entry. */
  wrong(entry: Entry, found: string, expected: string): Problem {
    return new Problem(`${placeOf(this.name, entry.line)}: ${found}; expected ${expected}`);
  }

  /** Whole number of at least `least` under a key; undefined where the key is absent or has no value. */
  whole(key: string, least: number, most: number): number | undefined {
    const entry = this.entries.get(key);
    if (entry === undefined || bare(entry) === '') return undefined;
    const value = bare(entry);
    if (!/^\+?\d{1,9}$/.test(value)) {
      throw this.wrong(entry, `found ${entry.written}=${brief(value)}`, 'a whole number');
    }
    const number = Number(value);
    if (number < least || number > most) {
      throw this.wrong(entry, `found ${entry.written}=${number}`, `from ${least} to ${most}`);
    }
    return number;
  }

  /** `true on yes 1` and `false off no 0`, in any case; undefined where the key is absent or has no value. */
  truth(key: string): boolean | undefined {
    const entry = this.entries.get(key);
    return entry === undefined || bare(entry) === '' ? undefined : this.truthOf(entry);
  }

  truthOf(entry: Entry): boolean {
    const word = bare(entry).toLowerCase();
    if (['true', 'on', 'yes', '1', 't', 'y'].includes(word)) return true;
    if (['false', 'off', 'no', '0', 'f', 'n', ''].includes(word)) return false;
    throw this.wrong(entry, `found ${entry.written}=${brief(word)}`, 'true or false (on, off, yes, no, 1, 0)');
  }

  /** Length or thickness above 0; a comma may stand for the decimal point. */
  measure(entry: Entry): number {
    const value = bare(entry);
    const number = /^\+?(\d{1,9}([.,]\d{0,15})?|[.,]\d{1,15})(e[+-]?\d{1,2})?$/i.test(value)
      ? Number(value.replace(',', '.'))
      : Number.NaN;
    if (!Number.isFinite(number) || number < 0) {
      throw this.wrong(entry, `found ${entry.written}=${brief(value)}`, 'a length, as 0.05');
    }
    return number;
  }

  /** Whole numbers with commas or spaces between them; an empty value is an empty list. */
  list(entry: Entry): number[] {
    const value = bare(entry);
    if (value.length > LONGEST_VALUE) {
      throw this.wrong(entry, `found a value of ${value.length} characters`, `${LONGEST_VALUE} at most`);
    }
    const words = value.split(/[\s,]+/).filter((word) => word !== '');
    return words.map((word) => {
      if (!/^\d{1,9}$/.test(word)) {
        throw this.wrong(entry, `found ${entry.written}=${brief(value)}`, 'whole numbers with commas between them');
      }
      return Number(word);
    });
  }

  /** The entries by number; throws a Problem on a key that is no number from 1 to `most`. */
  *numbered(what: string, most: number, limit: string): Generator<{ number: number; entry: Entry }> {
    for (const entry of this.entries.values()) {
      const number = /^\d{1,9}$/.test(entry.key) ? Number(entry.key) : Number.NaN;
      if (Number.isNaN(number)) {
        throw this.wrong(entry, `found the key ${quote(entry.written)}`, `the number of ${what}`);
      }
      if (number < 1 || number > most)
        throw this.wrong(entry, `found ${words(what)} ${number}`, `1 to ${most}${limit}`);
      yield { number, entry };
    }
  }
}

function words(what: string): string {
  return what.replace(/^an? /, '');
}

/** The value of an entry without the comment that may follow it. */
function bare(entry: Entry): string {
  const comment = entry.value.indexOf(';');
  return comment < 0 ? entry.value : entry.value.slice(0, comment).trimEnd();
}
