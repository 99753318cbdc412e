// Speed and memory, as a table: `npm run bench` (all, some minutes) or `npm run bench -- quick` (a minute); with
// `-- questions` or another name of PARTS, that part alone.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { drawdown, isUp } from '../../src/cloth/drawdown.js';
import { writeGallery } from '../../src/gallery/write.js';
import { answer } from '../../src/search/answer.js';
import { BoundedScan } from '../../src/search/bounded/bounded-scan.js';
import { explore } from '../../src/search/explore.js';
import { workerPool } from '../../src/search/pool/worker-pool.js';
import type { Question } from '../../src/search/question/question.js';
import { familiesOf } from '../../src/search/space/families.js';
import { spaceOf } from '../../src/search/space/space.js';
import { strataOf } from '../../src/search/space/stratum.js';
import { findStructure, weaveOf } from '../../src/structure/catalogue/catalogue.js';
import { search as plainSearch } from '../plain/search.js';
import { QUESTION } from '../search/question.js';
import { evolveTable } from './evolve.js';
import { userSeconds } from './measure.js';
import { pageRows } from './page.js';
import { questionRows, wayRows } from './questions.js';
import { scoringRows } from './scoring.js';
import { type Grown, growth, measured, plot } from './spaces.js';

const quick = process.argv.includes('quick');
const say = (what: string, figure: string, beside = ''): void => {
  console.log(`${what.padEnd(66)} ${figure.padStart(12)}  ${beside}`.trimEnd());
};

/** Seconds until work is done, and the user time of all threads meanwhile, in words. */
async function timed<T>(work: () => Promise<T>): Promise<{ result: T; seconds: string; user: string }> {
  const [from, began] = [userSeconds(), process.hrtime.bigint()];
  const result = await work();
  const seconds = Number(process.hrtime.bigint() - began) / 1e9;
  return { result, seconds: `${seconds.toFixed(1)} s`, user: `${(userSeconds() - from).toFixed(1)} s of user time` };
}

/**
 * Pairs of orders that are held against a bound which none reaches, a second. Few of them are looked at one by one: a
 * class of wefts whose largest tone is too small falls at once.
 */
function toneAlone(): void {
  const question: Question = { ...QUESTION, lengths: [16] };
  const stratum = strataOf(question, familiesOf(question)).at(-1)!;
  const scan = new BoundedScan(question, stratum);
  const none = (): number => Number.POSITIVE_INFINITY;
  scan.scan(0, 1, none, { reached: () => {} });
  const from = Math.floor(stratum.warps.length / 3);
  const some = 200;
  const began = userSeconds();
  scan.scan(from, from + some, none, { reached: () => {} });
  const seconds = userSeconds() - began;
  const pairs = some * stratum.wefts.length * stratum.starts.length;
  say(
    'pairs of orders of 16 ruled out by tone',
    `${Math.round(pairs / seconds / 1e6)} M/s`,
    'by classes, not one by one',
  );
}

function spaces(): void {
  const all: Grown[] = [];
  for (const longest of quick ? [8, 10, 12] : [8, 9, 10, 11, 12, 13, 14, 15, 16]) {
    const grown = measured(longest);
    all.push(grown);
    say(
      `2/2 twill, own orders of 2 to ${longest}: exact first 100`,
      `${grown.seconds.toFixed(1)} s`,
      `${grown.written.toLocaleString('en')} written, ${grown.differ.toLocaleString('en')} differ, ` +
        `${grown.scored.toLocaleString('en')} scored, ${Math.round(grown.mebibytes)} MiB at most`,
    );
  }
  console.log(`\n${plot(all)}\n`);
  const [from, to] = [all.at(-3)!, all.at(-1)!];
  say(
    `time grows as pairs that differ to the power of`,
    growth(from, to).toFixed(2),
    `${from.longest} to ${to.longest}`,
  );
}

/** The same small question answered by the search, and by the plain version without any shortcut. */
async function wholeRanking(): Promise<void> {
  const question: Question = { ...QUESTION, lengths: [2, 3], show: 1 };
  const weave = drawdown(weaveOf(findStructure('2/2 twill'), ['A']));
  const rows = Array.from({ length: weave.picks }, (_, j) =>
    Array.from({ length: weave.ends }, (__, i) => (isUp(weave, j, i) ? 1 : 0)),
  );
  await explore(question, { workers: 1 });
  let from = userSeconds();
  const { counts } = await explore(question, { workers: 1 });
  const fast = userSeconds() - from;
  from = userSeconds();
  const { cloths } = plainSearch({
    weave: rows,
    lengths: question.lengths,
    weft: 'own',
    times: 1,
    unit: 1,
    weights: question.rank,
    floatLimit: 7,
  });
  const plain = userSeconds() - from;
  if (cloths.length !== counts.cloths) throw new Error(`${counts.cloths} cloths, but plainly ${cloths.length}`);
  say(
    '2/2 twill, own orders of 2 and 3, the whole ranking, one thread',
    `${(fast * 1000).toFixed(0)} ms`,
    `cell by cell, every word and shift tried: ${plain.toFixed(1)} s of user time`,
  );
}

async function galleries(): Promise<void> {
  const demo: Question = {
    ...QUESTION,
    structures: ['turned twill'],
    lengths: [2, 3, 4, 5, 6],
    weft: { rule: 'same' },
    by: ['thread', 'unit'],
    fill: ['solid', 'alternate'],
    times: [1, 2, 4],
  };
  const many: Question = {
    ...QUESTION,
    lengths: [11],
    times: [1, 2, 3, 4, 6],
  };
  const listed = { ...spaceOf(many), way: 'scored' } as const;
  const all = await timed(() =>
    answer(many, listed, { pool: (most) => workerPool(many, Math.min(most, availableParallelism())) }),
  );
  const { examined } = all.result.counts;
  say(
    '2/2 twill, own orders of 11 at five sizes: every candidate scored',
    all.seconds,
    `${count(examined)}, ${all.user}`,
  );
  const outcome = await explore(demo);
  const folder = mkdtempSync(join(tmpdir(), 'shedlight-bench-'));
  try {
    const written = await timed(() => writeGallery(join(folder, 'demo'), demo, outcome));
    say(`writing ${outcome.found.length} swatches, sheets and page`, written.seconds, written.user);
    const command = (...args: string[]): number => {
      const start = process.hrtime.bigint();
      spawnSync(process.execPath, ['bin/shedlight.js', ...args], { stdio: 'ignore' });
      return Number(process.hrtime.bigint() - start) / 1e9;
    };
    const help = Math.min(...Array.from({ length: 4 }, () => command('--help')));
    say('shedlight --help, the least of four', `${help.toFixed(2)} s`);
    const out = join(folder, 'whole');
    say(
      'the demo, from command to gallery',
      `${command('explore', 'gallery/turned-twill.yaml', '--out', out).toFixed(1)} s`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const count = (candidates: number): string => `${candidates.toLocaleString('en')} candidates`;

console.log(`Node ${process.version}, ${availableParallelism()} threads of ${cpus()[0]?.model.trim()}\n`);

const PARTS: Readonly<Record<string, () => void | Promise<void>>> = {
  scoring() {
    for (const row of scoringRows(quick)) say(...row);
    toneAlone();
  },
  async galleries() {
    await wholeRanking();
    await galleries();
  },
  async questions() {
    for await (const row of questionRows(quick)) say(...row);
  },
  async ways() {
    if (!quick) for await (const row of wayRows()) say(...row);
  },
  async page() {
    for await (const row of pageRows(quick)) say(...row);
  },
  spaces,
  async changes() {
    if (!quick) for await (const line of evolveTable()) console.log(line);
  },
};

const named = Object.keys(PARTS).filter((part) => process.argv.includes(part));
for (const part of named.length > 0 ? named : Object.keys(PARTS)) await PARTS[part]!();
