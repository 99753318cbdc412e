import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import seedrandom from 'seedrandom';
import { beforeAll, describe, expect, it } from 'vitest';
import { codeOf } from '../../../src/score/symmetry/cloth-code.js';
import { type Checkpoint, checkpointed, type Shard, sharded } from '../../../src/search/checkpoint/checkpoint.js';
import type { CheckpointFile } from '../../../src/search/checkpoint/checkpoint-file.js';
import { openingBytes, readCheckpoint } from '../../../src/search/checkpoint/checkpoint-format.js';
import { openParts, shardFile } from '../../../src/search/checkpoint/shards.js';
import { searchEvolved } from '../../../src/search/evolve/evolve-search.js';
import { explore, exploreShard } from '../../../src/search/explore.js';
import { workerPool } from '../../../src/search/pool/worker-pool.js';
import type { Question } from '../../../src/search/question/question.js';
import { draftOf } from '../../../src/search/space/candidate.js';
import { Archive } from '../../../src/search/strategy/archive.js';
import { type Searched, searchBounded, searchListed } from '../../../src/search/strategy/strategies.js';
import { runs } from '../../long.js';
import { QUESTION } from '../question.js';
import { BOUNDED, CHANGED, checkpointFolder, headerOf, kept, LISTED, spaceFor } from './searches.js';

const folder = checkpointFolder();

/** Takes the power away after some jobs. */
function killedAfter(jobs: number, checkpoint: CheckpointFile, kill: AbortController): Checkpoint {
  let left = jobs;
  return {
    has: (key) => checkpoint.has(key),
    result: (key) => checkpoint.result(key),
    record: (key, result) => {
      checkpoint.record(key, result);
      if (--left === 0) kill.abort(new Error('killed'));
    },
  };
}

/** Everything that a search came to, as text. */
function told(question: Question, { archive, at, ...rest }: Searched): string {
  const best = archive.best(40, (index) => codeOf(draftOf(at(index), question)));
  return JSON.stringify({ best, cloths: archive.cloths, equals: archive.duplicates, ...rest });
}

interface Given {
  readonly checkpoint?: Checkpoint;
  readonly shard?: Shard;
  readonly signal?: AbortSignal;
  readonly enough?: AbortSignal;
}

/** Searches in one way, on this thread. */
async function searched(way: typeof searchBounded, question: Question, given: Given = {}): Promise<Searched> {
  const { checkpoint, shard, signal, enough } = given;
  const all = workerPool(question, 1, signal);
  const rest = checkpoint ? checkpointed(all, checkpoint) : all;
  const pool = shard ? sharded(rest, shard) : rest;
  const newArchive = (): Archive => new Archive((a, b) => a - b);
  return way({ question, space: spaceFor(question), pool, shard, newArchive, progress: undefined, enough });
}

const WAYS = [
  ['all listed', searchListed, LISTED],
  ['held against bounds', searchBounded, BOUNDED],
] as const;

const ALL_WAYS = [...WAYS, ['changed, try by try', searchEvolved, CHANGED]] as const;

describe.each(ALL_WAYS)('a search that was killed goes on to the same end: %s', (name, way, question) => {
  let undisturbed = '';
  beforeAll(async () => {
    undisturbed = told(question, await searched(way, question));
  });

  it.each(Array.from({ length: 25 }, (_, k) => [k]))('kill %i', async (trial) => {
    const chance = seedrandom.alea(`${name} ${trial}`);
    const path = join(folder, `${way.name}-${trial}`);
    for (let kills = 0; kills < 2; kills++) {
      const kill = new AbortController();
      const checkpoint = kept(path, question, kills > 0);
      const killed = killedAfter(
        1 + Math.floor(chance() * ({ searchListed: 3, searchEvolved: 12 }[way.name] ?? 30)),
        checkpoint,
        kill,
      );
      await expect(searched(way, question, { checkpoint: killed, signal: kill.signal })).rejects.toThrow('killed');
      checkpoint.close();
      // The last record may have been on its way to the disk.
      const bytes = readFileSync(path);
      const header = openingBytes(headerOf(question)).length;
      const torn = Math.floor(chance() ** 2 * (bytes.length - header));
      writeFileSync(path, bytes.subarray(0, bytes.length - torn));
    }
    const checkpoint = kept(path, question, true);
    expect(told(question, await searched(way, question, { checkpoint }))).toBe(undisturbed);
    checkpoint.remove();
    expect(existsSync(path)).toBe(false);
  });
});

describe('a search beyond listing', () => {
  const question: Question = { ...QUESTION, lengths: [24], show: 3 };
  /** Its outcome after so many pieces of work, whether they are done now or known. */
  const outcomeAfter = async (pieces: number, checkpoint?: CheckpointFile): Promise<string> => {
    const enough = new AbortController();
    let left = pieces;
    const count = (): void => {
      if (--left === 0) enough.abort();
    };
    const counting: Checkpoint = {
      has: (key) => checkpoint?.has(key) ?? false,
      result: (key) => {
        count();
        return checkpoint!.result(key);
      },
      record: (key, result) => {
        count();
        checkpoint?.record(key, result);
      },
    };
    return JSON.stringify(await explore(question, { workers: 1, enough: enough.signal, checkpoint: () => counting }));
  };

  it('goes on as if it had not been killed', async () => {
    const undisturbed = await outcomeAfter(30);
    for (const killed of [1, 5, 17]) {
      const path = join(folder, `evolved-${killed}`);
      const first = kept(path, question, false);
      await outcomeAfter(killed, first);
      first.close();
      const again = kept(path, question, true);
      expect(await outcomeAfter(30, again)).toBe(undisturbed);
      again.close();
    }
  });

  it('is divided by its tries, and so not where they are fewer than the parts', () =>
    expect(exploreShard({ ...question, tries: 2 }, { part: 1, of: 3 }, {})).rejects.toThrow(
      'found more to try than can be listed, and tries 2: each step of a try needs the one before; ' +
        'expected tries 3 or more, so that each part has its own',
    ));

  it('tries again with other chances, and what it finds is what all tries find', async () => {
    const one = await searched(searchEvolved, CHANGED);
    const parts = await Promise.all(
      [1, 2, 3, 4, 5, 6, 7].map((part) => searched(searchEvolved, CHANGED, { shard: { part, of: 7 } })),
    );
    const bests = parts.map(({ archive }) => archive.scoreOfPlace(1));
    expect(new Set(bests).size).toBeGreaterThan(1);
    expect(one.archive.scoreOfPlace(1)).toBe(Math.max(...bests));
    const rounds = parts.reduce((sum, { evolved }) => sum + evolved!.rounds, 0);
    expect(one.evolved!.rounds).toBe(rounds);
    expect(one.evolved!.niches).toBeGreaterThanOrEqual(Math.max(...parts.map(({ evolved }) => evolved!.niches)));
  });
});

describe('what is done is not done again', () => {
  it('takes every job from a journal that has all', async () => {
    const path = join(folder, 'whole');
    const first = kept(path, BOUNDED, false);
    const undisturbed = told(BOUNDED, await searched(searchBounded, BOUNDED, { checkpoint: first }));
    first.close();
    const again = kept(path, BOUNDED, true);
    const recorded: string[] = [];
    const checkpoint: Checkpoint = {
      has: (key) => again.has(key),
      result: (key) => again.result(key),
      record: (key) => recorded.push(key),
    };
    expect(told(BOUNDED, await searched(searchBounded, BOUNDED, { checkpoint }))).toBe(undisturbed);
    expect(recorded).toEqual([]);
    again.close();
  });
});

describe('a search in parts', () => {
  it.each(ALL_WAYS)('comes to the same as in one, merged in any order: %s', async (_, way, question) => {
    const undisturbed = told(question, await searched(way, question));
    for (const of of [1, 2, 3, 7]) {
      const files: string[] = [];
      for (let part = 1; part <= of; part++) {
        const place = shardFile(join(folder, way.name), { part, of });
        const checkpoint = kept(`${place}.progress`, question, false, { part, of });
        await searched(way, question, { checkpoint, shard: { part, of } });
        checkpoint.finish(place);
        files.push(place);
      }
      const order = fc.shuffledSubarray(files, { minLength: of });
      await fc.assert(
        fc.asyncProperty(order, async (shuffled) => {
          const parts = openParts(shuffled);
          const checkpoint = {
            ...parts.checkpoint,
            record: () => expect.unreachable('every job is in one of the parts'),
          };
          expect(told(question, await searched(way, question, { checkpoint }))).toBe(undisturbed);
          parts.close();
        }),
        { numRuns: runs(3) },
      );
    }
  });

  it('divides the work: no two parts score the same candidates', async () => {
    const files = [1, 2].map((part) => shardFile(join(folder, 'searchListed'), { part, of: 2 }));
    const keys = files.map((file) => {
      const parts = readCheckpoint(inMemory(readFileSync(file)));
      return [...parts.places.keys()];
    });
    expect(new Set(keys.flat()).size).toBe(keys.flat().length);
  });

  it('explores on threads to the same outcome', async () => {
    const question = { ...LISTED, weft: { rule: 'same' } as const, lengths: [10, 11, 12, 13] };
    const one = JSON.stringify(await explore(question, { workers: 2 }));
    const files: string[] = [];
    for (const part of [2, 1]) {
      const place = shardFile(join(folder, 'explored'), { part, of: 2 });
      const checkpoint = kept(`${place}.progress`, question, false, { part, of: 2 });
      expect(await exploreShard(question, { part, of: 2 }, { workers: 2, checkpoint: () => checkpoint })).toBe(true);
      checkpoint.finish(place);
      files.push(place);
    }
    const parts = openParts(files);
    expect(JSON.stringify(await explore(question, { workers: 2, checkpoint: () => parts.checkpoint }))).toBe(one);
    parts.close();
  });
});

describe('a search that is told that it is enough', () => {
  it.each(WAYS)('finishes with what is found, and counts it once: %s', async (_, way, question) => {
    const whole = await searched(way, question);
    for (const after of [0, 1, 20, 38, 50]) {
      const enough = new AbortController();
      if (after === 0) enough.abort();
      let left = after;
      const checkpoint = {
        has: () => false,
        result: () => expect.unreachable(),
        record: () => --left || enough.abort(),
      };
      const part = await searched(way, question, { checkpoint, enough: enough.signal });
      if (part.whole) continue;
      const count = ({ archive, setAside, pruned }: Searched): number =>
        archive.cloths + archive.duplicates + setAside.flat + pruned;
      expect(count(part)).toBeLessThan(count(whole));
      expect(part.archive.scoreOfPlace(1)).toBeLessThanOrEqual(whole.archive.scoreOfPlace(1));
      // By then the promising are scored: the best is among them.
      if (after >= 38) expect(part.archive.scoreOfPlace(1)).toBe(whole.archive.scoreOfPlace(1));
    }
  });

  it('on threads, at once where nothing is under way', async () => {
    const { counts, found } = await explore(LISTED, { workers: 2, enough: AbortSignal.abort() });
    expect(counts).toMatchObject({ examined: 0, exhaustive: false, stopped: true });
    expect(found).toEqual([]);
  });
});

function inMemory(bytes: Buffer) {
  return { size: bytes.length, read: (from: number, length: number) => bytes.subarray(from, from + length) };
}
