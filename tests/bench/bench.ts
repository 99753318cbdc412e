// Speed and memory, as a table: `npm run bench` (all, some minutes) or `npm run bench -- quick`.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { drawdown, isUp } from '../../src/cloth/drawdown.js';
import { colourAt, colourFace, type Face } from '../../src/cloth/face.js';
import { floatsOf } from '../../src/cloth/floats.js';
import { hangsTogether } from '../../src/cloth/holds-together.js';
import { writeGallery } from '../../src/gallery/write.js';
import { contrastMeter } from '../../src/score/contrast/contrast.js';
import { analyse } from '../../src/score/symmetry/analysis.js';
import { clothKey } from '../../src/score/symmetry/canonical-cloth.js';
import { symmetryOf } from '../../src/score/symmetry/symmetry.js';
import { BoundedScan } from '../../src/search/bounded/bounded-scan.js';
import { explore } from '../../src/search/explore.js';
import type { Question } from '../../src/search/question/question.js';
import { draftOf } from '../../src/search/space/candidate.js';
import { familiesOf } from '../../src/search/space/families.js';
import { spaceOf } from '../../src/search/space/space.js';
import { strataOf } from '../../src/search/space/stratum.js';
import { findStructure, weaveOf } from '../../src/structure/catalogue/catalogue.js';
import * as plainContrast from '../plain/contrast.js';
import * as plainFloats from '../plain/floats.js';
import { search as plainSearch } from '../plain/search.js';
import * as plainSymmetry from '../plain/symmetry.js';
import { QUESTION } from '../search/question.js';
import { evolveTable } from './evolve.js';
import { pageAnswers } from './page.js';
import { type Grown, growth, measured, plot } from './spaces.js';

const quick = process.argv.includes('quick');
const VALUES = Float64Array.of(0, 1);
const rows: [string, string, string][] = [];
const say = (what: string, figure: string, beside = ''): void => {
  rows.push([what, figure, beside]);
  console.log(`${what.padEnd(58)} ${figure.padStart(16)}  ${beside}`);
};

/** Microseconds a call, of a warm function. */
function microseconds(times: number, work: (k: number) => void): number {
  for (let k = 0; k < Math.min(times, 200); k++) work(k);
  const began = process.hrtime.bigint();
  for (let k = 0; k < times; k++) work(k);
  return Number(process.hrtime.bigint() - began) / 1e3 / times;
}

/** Candidates of one size: their drafts' colours and interlacement, ready to be scored. */
function sample(change: Partial<Question>, count: number) {
  const question: Question = { ...QUESTION, ...change };
  const space = spaceOf(question);
  return Array.from({ length: count }, (_, k) => {
    const draft = draftOf(space.at(Math.floor((space.numbers * (k + 0.5)) / count)), question);
    return { draft, cloth: drawdown(draft) };
  });
}

function fullScoring(name: string, candidates: ReturnType<typeof sample>, plainOnes: number): void {
  const meter = contrastMeter(1);
  const fast = microseconds(1500, (k) => {
    const { draft, cloth } = candidates[k % candidates.length]!;
    const face = colourFace(cloth, draft.warp, draft.weft);
    meter.measure(face, VALUES);
    const analysis = analyse(face);
    symmetryOf(face, true, analysis);
    clothKey(face, QUESTION.same, 2, analysis);
    floatsOf(cloth, draft.sett);
    hangsTogether(cloth);
  });
  if (plainOnes === 0) {
    say(
      `full scoring, ${name}`,
      `${fast.toFixed(0)} µs`,
      `${Math.round(1e6 / fast).toLocaleString('en')} a second, one thread`,
    );
    return;
  }
  const began = process.hrtime.bigint();
  for (const { draft, cloth } of candidates.slice(0, plainOnes)) {
    const face = colourFace(cloth, draft.warp, draft.weft);
    const cells = cellsOf(face);
    const lifts = draft.weft.map((_, j) =>
      draft.warp.map((__, i) => cloth.up[cloth.pickKind[j]! * cloth.endKinds + cloth.endKind[i]!]!),
    );
    plainContrast.tone(cells, 1);
    plainContrast.line(cells, 1);
    plainContrast.figure(cells, 1);
    plainSymmetry.symmetry(cells, true);
    for (const value of [0, 1]) plainFloats.longest(lifts, value);
    for (const value of [0, 1]) plainFloats.longest(plainFloats.columns(lifts), value);
    plainFloats.layers(lifts);
  }
  const plain = Number(process.hrtime.bigint() - began) / 1e3 / plainOnes;
  say(
    `full scoring, ${name}`,
    `${fast.toFixed(0)} µs`,
    `${Math.round(plain / fast)} × plain (${(plain / 1000).toFixed(0)} ms)`,
  );
  say(`  candidates a second, one thread`, Math.round(1e6 / fast).toLocaleString('en'));
}

const cellsOf = (face: Face): number[][] =>
  Array.from({ length: face.picks }, (_, j) => Array.from({ length: face.ends }, (_, i) => colourAt(face, j, i)));

/** Pairs of orders whose tone is found and held against a bound, a second. */
function toneAlone(): void {
  const question: Question = { ...QUESTION, lengths: [16] };
  const stratum = strataOf(question, familiesOf(question)).at(-1)!;
  const scan = new BoundedScan(question, stratum);
  const none = (): number => Number.POSITIVE_INFINITY;
  scan.scan(0, 1, none, () => {});
  const from = Math.floor(stratum.warps.length / 3);
  const some = 200;
  const began = process.hrtime.bigint();
  const passed = scan.scan(from, from + some, none, () => {});
  const seconds = Number(process.hrtime.bigint() - began) / 1e9;
  const pairs = some * stratum.wefts.length * stratum.starts.length;
  say(
    'tone alone, orders of 16',
    `${Math.round(pairs / seconds / 1e6)} M pairs/s`,
    `one thread, ${passed.toLocaleString('en')} passed`,
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
  let began = process.hrtime.bigint();
  const { counts } = await explore(question, { workers: 1 });
  const fast = Number(process.hrtime.bigint() - began) / 1e6;
  began = process.hrtime.bigint();
  const { cloths } = plainSearch({
    weave: rows,
    lengths: question.lengths,
    weft: 'own',
    times: 1,
    unit: 1,
    weights: question.rank,
    floatLimit: 7,
  });
  const plain = Number(process.hrtime.bigint() - began) / 1e6;
  if (cloths.length !== counts.cloths) throw new Error(`${counts.cloths} cloths, but plainly ${cloths.length}`);
  say(
    '2/2 twill, own orders of 2 and 3: the whole ranking',
    `${fast.toFixed(0)} ms`,
    `${Math.round(plain / fast)} × plain (${(plain / 1000).toFixed(1)} s), one thread`,
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
    rank: { ...QUESTION.rank, contrast: 0 },
  };
  let began = process.hrtime.bigint();
  const { counts } = await explore(many);
  let seconds = Number(process.hrtime.bigint() - began) / 1e9;
  say(
    'explore, every candidate scored',
    `${seconds.toFixed(1)} s`,
    `${counts.examined.toLocaleString('en')} candidates`,
  );
  const outcome = await explore(demo);
  const folder = mkdtempSync(join(tmpdir(), 'shedlight-bench-'));
  try {
    began = process.hrtime.bigint();
    await writeGallery(join(folder, 'demo'), demo, outcome);
    seconds = Number(process.hrtime.bigint() - began) / 1e9;
    say(`writing ${outcome.found.length} swatches, sheets and page`, `${seconds.toFixed(1)} s`);
    const command = (...args: string[]): number => {
      const start = process.hrtime.bigint();
      spawnSync(process.execPath, ['bin/shedlight.js', ...args], { stdio: 'ignore' });
      return Number(process.hrtime.bigint() - start) / 1e9;
    };
    command('--help');
    say('shedlight --help', `${command('--help').toFixed(2)} s`);
    const out = join(folder, 'whole');
    say(
      'the demo, from command to gallery',
      `${command('explore', 'gallery/turned-twill.yaml', '--out', out).toFixed(1)} s`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

console.log(`Node ${process.version}, ${availableParallelism()} threads of ${cpus()[0]?.model.trim()}\n`);
fullScoring('80 × 80 (orders of five, ×16)', sample({ lengths: [5], times: [16] }, 16), 2);
fullScoring('80 × 80 (orders of 16, ×5)', sample({ lengths: [16], times: [5], weft: { rule: 'same' } }, 16), 0);
fullScoring('20 × 20 (orders of five)', sample({ lengths: [5] }, 16), 4);
toneAlone();
await wholeRanking();
await galleries();
const answers = await pageAnswers();
if (answers === undefined) say('the page of 400 cloths', 'no browser');
else for (const [what, ms] of Object.entries(answers)) say(`the page of 400 cloths, ${what}`, `${ms.toFixed(0)} ms`);
spaces();
if (!quick) console.log(`\n${await evolveTable()}`);
