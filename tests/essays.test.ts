import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { faceFromRows } from '../src/cloth/face.js';
import { countNecklaces, distinctOrdersOf } from '../src/order/necklace.js';
import { blurWeights, overlapWeights, SIGMA } from '../src/score/contrast/blur.js';
import { contrastMeter } from '../src/score/contrast/contrast.js';
import { gatherEven } from '../src/score/contrast/line-samples.js';
import { UNWEIGHED } from '../src/score/parts/parts.js';
import { analyse } from '../src/score/symmetry/analysis.js';
import { clothKey, type Sameness } from '../src/score/symmetry/canonical-cloth.js';
import { groundAt } from '../src/search/bounded/bound-ground.js';
import { BoundedScan } from '../src/search/bounded/bounded-scan.js';
import { toneForm } from '../src/search/bounded/pair-form.js';
import { busyMost, solidMost } from '../src/search/bounded/part-most.js';
import { ScoreBound } from '../src/search/bounded/score-bound.js';
import { sharded } from '../src/search/checkpoint/checkpoint.js';
import { type Header, openingBytes } from '../src/search/checkpoint/checkpoint-format.js';
import { NICHES, nicheOf } from '../src/search/evaluate/niche.js';
import { Aims } from '../src/search/evaluate/reach.js';
import { mutationEmitter } from '../src/search/evolve/emitters.js';
import { MutationSpace } from '../src/search/evolve/mutation-space.js';
import type { Jobs } from '../src/search/pool/jobs.js';
import type { WorkerPool } from '../src/search/pool/pool.js';
import type { Question } from '../src/search/question/question.js';
import { readQuestion } from '../src/search/question/read-question.js';
import { orbitsOf } from '../src/search/space/orbit.js';
import { spaceOf } from '../src/search/space/space.js';
import { weaveSymmetries } from '../src/search/space/weave-symmetries.js';
import { toneSquared } from './plain/tone-squared.js';
import { QUESTION } from './search/question.js';

const SOURCE = new URL('../src/', import.meta.url);
const FILES = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' });
const ESSAYS = FILES.filter((file) => /(^|\/)[A-Z-]+\.md$/.test(file) && file !== 'score/FIGURES.md');

/** Fails unless an essay says this, so that a number changed there or here is noticed. */
function says(essay: string, words: string): void {
  const text = readFileSync(new URL(`../src/${essay}`, import.meta.url), 'utf8');
  expect(text.replace(/\s+/g, ' ')).toContain(words);
}

const SQUARES = faceFromRows([
  [0, 0, 1, 1],
  [0, 0, 1, 1],
  [1, 1, 0, 0],
  [1, 1, 0, 0],
]);

/** How much of a wave of period 4 the blur leaves, one way. */
function leftOfFour(): number {
  const weights = blurWeights(4, SIGMA);
  return weights[0]! - weights[2]!;
}

describe('what an essay names is there', () => {
  const code = FILES.filter((file) => file.endsWith('.ts')).map((file) => readFileSync(new URL(file, SOURCE), 'utf8'));
  const words = new Set(code.flatMap((text) => text.match(/\w+/g)!));

  test.each(ESSAYS)('%s', (essay) => {
    const named = Array.from(readFileSync(new URL(essay, SOURCE), 'utf8').matchAll(/`([^`]+)`/g), ([, name]) => name!);
    expect(named.length).toBeGreaterThan(5);
    const files = named.filter((name) => /^[\w./-]+\.(ts|md)$/.test(name));
    const lost = files.filter((file) => {
      const from = file.startsWith('tests/') ? new URL('../', SOURCE) : new URL(essay, SOURCE);
      return !existsSync(new URL(file, from));
    });
    // Names of functions, types and members: they have a capital inside or in front.
    const names = named
      .filter((name) => !files.includes(name) && /^\w*[A-Z]\w+(\.\w+)?$/.test(name))
      .flatMap((name) => name.split('.'));
    expect([...lost, ...names.filter((name) => !words.has(name))]).toEqual([]);
  });
});

describe('the worked examples of the essays', () => {
  test('kinds: squares of 2 × 2 by a blur that is done by hand, and by the real one', () => {
    const essay = 'cloth/KINDS.md';
    const overlap = overlapWeights(Float64Array.of(0.5, 0.25, 0, 0.25));
    expect([...overlap]).toEqual([0.375, 0.25, 0.125, 0.25]);
    const V = gatherEven(overlap, SQUARES.column, SQUARES.columnKinds);
    expect([...V]).toEqual([1.25, 0.75, 0.75, 1.25]);
    // Σ W[r][r']·G[r'][c]·V[c][c']·G[r][c'] written out, with W = V.
    const G = [-0.5, 0.5, 0.5, -0.5];
    let energy = 0;
    for (const r of [0, 1]) {
      for (const s of [0, 1]) {
        for (const c of [0, 1]) {
          for (const d of [0, 1]) energy += V[2 * r + s]! * G[2 * s + c]! * V[2 * c + d]! * G[2 * r + d]!;
        }
      }
    }
    expect(energy).toBe(0.25);
    says(essay, 'the energy is 4 · 0.0625 = 0.25');
    const { tone } = contrastMeter(1).measure(SQUARES, Float64Array.of(0, 1));
    expect(tone).toBeCloseTo(leftOfFour() ** 2, 12);
    says(essay, `${leftOfFour().toFixed(4)}² = ${tone.toFixed(5)}`);
  });

  test('canonical form: letters of dark, dark, light, and which cloths it equals', () => {
    const essay = 'score/symmetry/CANONICAL-CLOTH.md';
    const { forward, backward } = analyse(faceFromRows([[0, 0, 1]])).columns;
    const distances = (letters: Int32Array): number[] => [...letters.subarray(0, 3)].map((letter) => letter & 0xffff);
    expect(distances(forward.letters)).toEqual([1, 2, 3]);
    expect(distances(backward.letters)).toEqual([2, 3, 1]);
    expect([forward.start, backward.start]).toEqual([0, 2]);
    says(essay, '→ letters 1 2 3');
    says(essay, '→ letters 2 3 1');
    const key = (row: number[], same: Sameness[]): string => clothKey(faceFromRows([row]), same, 2).join();
    expect(key([1, 0, 0], [])).toBe(key([0, 0, 1], []));
    expect(key([1, 1, 0], [])).not.toBe(key([0, 0, 1], []));
    expect(key([1, 1, 0], ['exchange'])).toBe(key([0, 0, 1], ['exchange']));
  });

  test('symmetry: the bound of plain weave with two elements each way', () => {
    const question: Question = { ...QUESTION, structures: ['plain weave'], lengths: [2] };
    const stratum = spaceOf(question).strata.find(({ warps, wefts }) => warps[0]!.length * wefts[0]!.length === 4)!;
    expect(stratum.warps).toEqual([[0, 1]]);
    expect(new BoundedScan(question, stratum).symmetryAtMost(0, 0, 0)).toBe(0.75);
    says('search/bounded/SYMMETRY.md', '(2 + 1)/4 = 0.75');
  });

  test('bounds: the tone of hopsack as a form, and the contrast that a score needs', () => {
    const essay = 'search/bounded/BOUNDS.md';
    const question: Question = { ...QUESTION, structures: ['2/2 hopsack'], lengths: [1] };
    const form = toneForm(groundAt(spaceOf(question).families[0]!, 1, 1, [0, 0]), 1);
    const shrunk = leftOfFour() ** 2;
    expect(form.A[0]).toBeCloseTo(shrunk ** 2 / 4, 15);
    expect(form.B[0]).toBeCloseTo(form.A[0]!, 15);
    expect(form.C[0]).toBeCloseTo(-form.A[0]!, 15);
    expect(toneSquared(form, [1], [1, 1])).toBeCloseTo(0, 15);
    expect(Math.sqrt(toneSquared(form, [1], [-1, 1]))).toBeCloseTo(shrunk, 9);
    says(essay, `A = B = −C = ${form.A[0]!.toFixed(8)}`);
    says(essay, `for s = −t, T = ${shrunk.toFixed(6)}`);
    const all = distinctOrdersOf(
      Array.from({ length: 16 }, (_, n) => n + 1),
      2,
    ).length;
    says(essay, `there are ${all} orders, ${Math.round(all ** 2 / 1e6)} million pairs`);
    says(essay, `0.03/0.1225 = ${solidMost(0.03).toFixed(3)}`);
    says(essay, `${(8 * (1 - busyMost(0.5, 0.25, 0.25).calm)).toFixed(3)} bits`);
    const needed = new ScoreBound(QUESTION, 5 / 6).needed(0.4, 0.5);
    says(essay, `M² ≥ ${needed.toFixed(5)}`);
    const niches = [0.25, 0.4, 0.5, 1, 1];
    const aims = new Aims({ score: 1, niches }, { rank: { ...UNWEIGHED, contrast: 2, symmetry: 1 } });
    says(essay, `its bound with ½ must be ${aims.foreseen(2).toFixed(4)} or more`);
    says(essay, `√${(needed - 0.01).toFixed(5)} = ${Math.sqrt(needed - 0.01).toFixed(4)}`);
  });

  test('counting: necklaces of four, and 2/2 twill with orders of five', () => {
    const essay = 'search/space/COUNTING.md';
    expect(countNecklaces(4, 2)).toBe(6);
    const words = distinctOrdersOf([4], 2).map((order) => order.map((colour) => 'DL'[colour]).join(''));
    expect(words).toEqual(['D', 'L', 'DL', 'DDDL', 'DDLL', 'DLLL']);
    const space = spaceOf(QUESTION);
    expect([space.written, space.numbers, space.count]).toEqual([1024, 64, 32]);
    says(essay, '`written` is 1024, `numbers` 64, `count` 32');
    expect(weaveSymmetries(QUESTION, space.families[0]!)).toHaveLength(3);
    expect(space.strata.map((stratum) => [stratum.count, orbitsOf(QUESTION, stratum).count()])).toEqual([
      [4, 2],
      [12, 6],
      [12, 6],
      [36, 18],
    ]);
    const lengths = { profile: 'search', 'profile lengths': '2-6' };
    const searched = readQuestion({ flags: { structure: 'turned twill', blocks: '4', ...lengths } }, () => {
      throw new Error('no draft is asked for');
    });
    says(essay, `= ${spaceOf(searched).written} words and ${spaceOf(searched).count} block orders`);
    // Each orbit is met once: as many candidates stand for themselves as are counted.
    expect(Array.from({ length: space.numbers }, (_, k) => space.isRepresentative(k)).filter(Boolean)).toHaveLength(32);
  });

  test('evolve: the number of a niche, and the chance of a step that has filled a new one', () => {
    const essay = 'search/evolve/EVOLVE.md';
    const niche = nicheOf({ ends: 20, picks: 20, darkShare: 0.4, symmetry: 0.5 }, true);
    says(essay, `(5 · 10 + 4) · 5 + 2 = ${niche}`);
    says(essay, `${NICHES} niches`);
    // One order given for each side: the only steps are to take another's warp or weft.
    const question: Question = { ...QUESTION, orders: [[0], [0, 1]], starts: 'first' };
    const { families } = spaceOf(question);
    const mutations = new MutationSpace(question, families);
    expect(mutations.steps).toHaveLength(2);
    const emitter = mutationEmitter(mutations, 'best');
    const candidate = { family: families[0]!, warp: [0], weft: [0, 1], start: [0, 0] as const };
    emitter.tell({ candidate, steps: [0] }, 'new');
    const share = 1.52 / 2.54;
    says(essay, `1.52/2.54 = ${Math.round(100 * share)} %`);
    const stepAt = (draw: number): number => {
      // The first number takes the parent, the second the step; the last ends the proposal.
      const draws = [0, draw, 0, 0, 0];
      return emitter.ask({ kinds: [candidate], best: [candidate] }, () => draws.shift() ?? 0.9).steps[0]!;
    };
    expect(stepAt(share - 0.001)).toBe(0);
    expect(stepAt(share + 0.001)).toBe(1);
  });

  test('checkpoints: the bytes of a record, and the jobs of a shard', async () => {
    const essay = 'search/checkpoint/CHECKPOINTS.md';
    const header: Header = {
      program: '1',
      question: QUESTION,
      space: { way: 'scored', written: 1024, numbers: 64 },
    };
    const bytes = openingBytes(header);
    const title = 'shedlight progress of a search, form 4';
    says(essay, `"${title}"`);
    const at = title.length + 1;
    expect(bytes.subarray(0, at).toString()).toBe(`${title}\n`);
    const contents = bytes.subarray(at + 12);
    expect(bytes.readUInt32LE(at)).toBe(contents.length);
    expect(bytes.subarray(at + 4, at + 12)).toEqual(createHash('sha256').update(contents).digest().subarray(0, 8));
    expect(JSON.parse(contents.toString())).toEqual(header);
    const done: number[] = [];
    const pool: WorkerPool = {
      run: async (jobs, take) => {
        for (let job = 0; job < jobs.count; job++) take(jobs.at(job) as never, job);
        return jobs.count;
      },
      close: () => {},
    };
    const jobs: Jobs = { count: 7, divisible: true, at: (job) => ({ kind: 'score', indices: [job] }) };
    await sharded(pool, { part: 2, of: 3 }).run(jobs, (_, job) => done.push(job));
    expect(done).toEqual([1, 4]);
    says(essay, `shard 2 does jobs ${done.join(' and ')}`);
  });
});
