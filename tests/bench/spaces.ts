// How time and memory grow with the space, each space in a process of its own: `node spaces.js LONGEST` prints one.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { explore } from '../../src/search/explore.js';
import { QUESTION } from '../search/question.js';

/** One exact search for the best hundred, as it went. */
export interface Grown {
  readonly longest: number;
  readonly written: number;
  /** Pairs that differ: what is counted once of all that a symmetry makes equal. */
  readonly differ: number;
  readonly scored: number;
  readonly seconds: number;
  /** The most memory resident at any time. */
  readonly mebibytes: number;
}

/** Searches 2/2 twill, own warp and weft orders of 2 to `longest` elements, in a process of its own. */
export function measured(longest: number): Grown {
  const { stdout, status } = spawnSync(process.execPath, [fileURLToPath(import.meta.url), String(longest)], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  if (status !== 0) throw new Error(`the search of orders up to ${longest} ended with ${status}`);
  return JSON.parse(stdout) as Grown;
}

/** By what power of the pairs that differ the time has grown from one search to another. */
export function growth(from: Grown, to: Grown): number {
  return Math.log(to.seconds / from.seconds) / Math.log(to.differ / from.differ);
}

const COLUMNS = 60;

/** Seconds (s) and memory (m) over the pairs that differ, both axes by powers of ten, in plain text. */
export function plot(all: readonly Grown[]): string {
  const decade = (value: number): number => Math.log10(value);
  const first = Math.floor(decade(all[0]!.differ));
  const last = Math.ceil(decade(all.at(-1)!.differ));
  const column = ({ differ }: Grown): number => Math.round(((decade(differ) - first) / (last - first)) * (COLUMNS - 1));
  // Two lines for every power of ten, from a tenth of a second to a thousand, and from ten mebibytes up.
  const lines = Array.from({ length: 9 }, () => Array.from({ length: COLUMNS }, () => ' '));
  const put = (value: number, at: number, letter: string): void => {
    const line = Math.min(8, Math.max(0, Math.round(2 * (decade(value) + 1))));
    lines[8 - line]![at] = lines[8 - line]![at] === ' ' ? letter : '*';
  };
  for (const each of all) {
    put(each.seconds, column(each), 's');
    put(each.mebibytes / 100, column(each), 'm');
  }
  const labels = lines.map((_, k) =>
    k % 2 === 0 ? `${10 ** (3 - k / 2)} s`.padStart(6) + `${10 ** (5 - k / 2)} MiB`.padStart(12) : ' '.repeat(18),
  );
  return [
    ...lines.map((line, k) => `${labels[k]} |${line.join('')}`.trimEnd()),
    `${' '.repeat(19)}+${'-'.repeat(COLUMNS)}`,
    `${' '.repeat(20)}10^${first}${`pairs that differ   10^${last}`.padStart(COLUMNS - 4)}`,
  ].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const longest = Number(process.argv[2]);
  const lengths = Array.from({ length: longest - 1 }, (_, k) => k + 2);
  const began = process.hrtime.bigint();
  const { counts } = await explore({ ...QUESTION, lengths, show: 100 });
  const grown: Grown = {
    longest,
    written: counts.written,
    differ: counts.examined,
    scored: counts.examined - counts.cutOff,
    seconds: Number(process.hrtime.bigint() - began) / 1e9,
    mebibytes: process.resourceUsage().maxRSS / 1024,
  };
  process.stdout.write(JSON.stringify(grown));
}
