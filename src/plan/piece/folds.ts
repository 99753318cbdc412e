/** A group of lines that occurs one or more times in a row. */
export interface Fold<T> {
  readonly lines: readonly T[];
  readonly times: number;
}

/**
 * Folds repeated groups of up to `most` lines, from the top down, taking the group that saves most lines at each step.
 */
export function folded<T>(lines: readonly T[], key: (line: T) => string, most = 8): Fold<T>[] {
  const words = lines.map(key);
  const folds: Fold<T>[] = [];
  let at = 0;
  while (at < lines.length) {
    let best = { size: 1, times: 1 };
    for (let size = 1; size <= most; size++) {
      let times = 1;
      while (sameBlock(words, at, at + size * times, size)) times++;
      if (times > 1 && size * (times - 1) > best.size * (best.times - 1)) best = { size, times };
    }
    folds.push({ lines: lines.slice(at, at + best.size), times: best.times });
    at += best.size * best.times;
  }
  return folds;
}

function sameBlock(words: readonly string[], first: number, second: number, size: number): boolean {
  if (second + size > words.length) return false;
  for (let k = 0; k < size; k++) if (words[first + k] !== words[second + k]) return false;
  return true;
}
