import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import type { Shard } from '../../../src/search/checkpoint/checkpoint.js';
import { CheckpointFile } from '../../../src/search/checkpoint/checkpoint-file.js';
import type { Header } from '../../../src/search/checkpoint/checkpoint-format.js';
import type { JobResult } from '../../../src/search/pool/jobs.js';
import type { Question } from '../../../src/search/question/question.js';
import { type Space, spaceOf } from '../../../src/search/space/space.js';
import { QUESTION } from '../question.js';

/** Makes a folder where the tests of one file keep their checkpoints; removed when they end. */
export function checkpointFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'shedlight-checkpoint-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Some jobs each of either way of searching. */
export const LISTED: Question = { ...QUESTION, lengths: [2, 3, 4, 5, 6, 7, 8], show: 5 };
export const BOUNDED: Question = { ...QUESTION, lengths: [2, 3, 4, 5, 6], show: 5 };

/** Seven tries of some rounds each. */
export const CHANGED: Question = { ...QUESTION, lengths: [24], show: 5, tries: 7 };
const SCORED_A_TRY = 100;

const spaces = new Map<Question, Space>();

export function spaceFor(question: Question): Space {
  const all = spaces.get(question) ?? spaceOf(question);
  const space = question === CHANGED ? { ...all, numbers: SCORED_A_TRY } : all;
  spaces.set(question, space);
  return space;
}

export function headerOf(question: Question, shard?: Shard): Header {
  const { way, written, numbers } = spaceFor(question);
  return { program: '0', question, space: { way, written, numbers }, ...(shard && { shard }) };
}

/** A checkpoint that writes down every job at once. */
export function kept(
  path: string,
  question: Question,
  resume: boolean,
  shard?: Shard,
  said: string[] = [],
): CheckpointFile {
  return new CheckpointFile(path, headerOf(question, shard), { resume, every: 0, say: (line) => said.push(line) });
}

/** The result of job `n`. */
export const result = (n: number): JobResult => ({
  batch: {
    length: 1,
    index: Float64Array.of(n),
    score: Uint32Array.of(n * 7),
    area: Uint32Array.of(1),
    preference: Uint32Array.of(0, 1, 2, 3),
    niche: Uint32Array.of(0),
    key: Uint32Array.of(1, 2, 3, 4),
    setAside: { float: 0, unsound: 0, flat: n, limits: 0 },
  },
  pruned: n,
  limits: 0,
  promising: [{ index: n, hope: Number.NEGATIVE_INFINITY, place: 0 }],
});
