import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CheckpointFile } from '../../../src/search/checkpoint/checkpoint-file.js';
import type { Question } from '../../../src/search/question/question.js';
import { BOUNDED, checkpointFolder, headerOf, kept, result } from './searches.js';

const folder = checkpointFolder();

describe('the file', () => {
  it('is written by no search that is over before its time', () => {
    const path = join(folder, 'short');
    const checkpoint = new CheckpointFile(path, headerOf(BOUNDED), { resume: false, say: () => {} });
    checkpoint.record('a', result(1));
    checkpoint.close();
    expect(existsSync(path)).toBe(false);
  });

  it('that cannot be written ends no search, but is told once', () => {
    const said: string[] = [];
    writeFileSync(join(folder, 'no-folder'), '');
    const checkpoint = kept(join(folder, 'no-folder', 'x'), BOUNDED, false, undefined, said);
    checkpoint.record('a', result(1));
    checkpoint.record('b', result(1));
    checkpoint.close();
    expect(said).toEqual([
      expect.stringMatching(
        /no-folder\/x: found a file in the way; .*; the search goes on, but its progress is not kept$/,
      ),
    ]);
  });
});

describe('a file that is not this search’s', () => {
  const path = join(folder, 'foreign');
  const other: Question = { ...BOUNDED, lengths: [3], limits: { ...BOUNDED.limits, shuttles: 2 } };
  const leave = (question: Question): void => {
    const checkpoint = kept(path, question, false);
    checkpoint.keep();
    checkpoint.close();
  };

  it('is refused with what differs', () => {
    leave(other);
    expect(() => kept(path, BOUNDED, true)).toThrow(
      `${path}: found the progress of another search (different: lengths, limits); expected the same question, or no such file`,
    );
  });

  it('is refused where the program is another', () => {
    leave(BOUNDED);
    const header = { ...headerOf(BOUNDED), program: '1' };
    expect(() => new CheckpointFile(path, header, { resume: true, say: () => {} })).toThrow(
      '(different: version (0, 1))',
    );
  });

  it('is told of where nobody asked to go on, and stays', () => {
    leave(other);
    const said: string[] = [];
    kept(path, BOUNDED, false, undefined, said).remove();
    expect(said).toEqual([
      `${path}: unfinished progress of another search (lengths, limits); a new search of some length takes its place`,
    ]);
    expect(existsSync(path)).toBe(true);
  });

  it('is told of where it is the same search, and goes with its end', () => {
    leave(BOUNDED);
    const said: string[] = [];
    kept(path, BOUNDED, false, undefined, said).remove();
    expect(said).toEqual([expect.stringContaining('unfinished progress of this search; --resume goes on with it')]);
    expect(existsSync(path)).toBe(false);
  });

  it('is refused where it is something else altogether', () => {
    writeFileSync(path, 'structure: 2/2 twill\n');
    expect(() => kept(path, BOUNDED, true)).toThrow(`${path}: found something else; expected the progress of a search`);
  });
});
