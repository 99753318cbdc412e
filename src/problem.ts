/** Something a person gave is wrong. The message is one clear sentence: place, what was found, what was expected. */
export class Problem extends Error {
  override readonly name = 'Problem';

  /** The same problem with the name of the file before the message. */
  inFile(file: string): Problem {
    return new Problem(`${file}: ${this.message}`);
  }
}

/** The disk or the machine failed; nothing is wrong with the input. The message is one clear sentence. */
export class MachineFault extends Error {
  override readonly name = 'MachineFault';
}

/** Most characters of a quotation in a message. */
const LONGEST_QUOTE = 80;

/** Shortens a text for a message: on one line, without invisible characters, at most {@link LONGEST_QUOTE} long. */
export function brief(text: string): string {
  const seen = [
    ...text
      .slice(0, LONGEST_QUOTE * 4)
      .replace(/[\s\p{Cc}\p{Cf}]+/gu, ' ')
      .trim(),
  ];
  return seen.length > LONGEST_QUOTE ? `${seen.slice(0, LONGEST_QUOTE - 1).join('')}…` : seen.join('');
}

/** Shortens a text for a message, and puts it in quotation marks. */
export function quote(text: string): string {
  return `“${brief(text)}”`;
}

/** The known word nearest to a misspelt one, for "did you mean"; undefined if none is near. */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Math.max(2, Math.floor(word.length / 3)) + 1;
  for (const candidate of known) {
    // At least this many letters must be added or removed, so the distance cannot be smaller.
    if (Math.abs(word.length - candidate.length) >= least) continue;
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase());
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

/** All the known words, the nearest first. One word of a name of several is nearly as good as the whole. */
export function nearestFirst(word: string, known: readonly string[]): string[] {
  const given = word.slice(0, LONGEST_QUOTE).toLowerCase();
  const far = (other: string): number => {
    const name = other.toLowerCase();
    const parts = name.split(' ').map((part) => editDistance(given, part) + 1);
    return Math.min(editDistance(given, name), ...parts.filter((steps) => steps <= 3));
  };
  return known
    .map((each) => [far(each), each] as const)
    .sort(([a], [b]) => a - b)
    .map(([, each]) => each);
}

/** " (did you mean “x”?)", or nothing where no known word is near. */
export function didYouMean(word: string, known: readonly string[]): string {
  const near = nearestWord(word, known);
  return near === undefined ? '' : ` (did you mean “${near}”?)`;
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(change, previous[j]! + 1, row[j - 1]! + 1));
    }
    previous = row;
  }
  return previous[b.length]!;
}
