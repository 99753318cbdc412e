import { expect } from 'vitest';
import { readDraft } from '../../../src/draft/yaml/read-draft.js';
import { Problem } from '../../../src/problem.js';
import type { Question } from '../../../src/search/question/question.js';
import { readQuestion } from '../../../src/search/question/read-question.js';

const TWILL = 'threading: 1 2 3 4\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 1 2 3 4\nsett: 8/8 per cm\n';

/** The paths of drafts that questions asked for. */
export const loaded: string[] = [];
/** Gives a twill for every path; its units are of four threads if the path says so. */
export const load = (path: string) => {
  loaded.push(path);
  return readDraft(path.includes('units') ? `${TWILL}units: 4\n` : TWILL, path);
};

/** The question of a file's text. */
export const ask = (text: string): Question => readQuestion({ text, file: 'q.yaml', flags: {} }, load);

/** What a Problem says. */
export const wrong = (read: () => unknown): string => {
  try {
    read();
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
    return (error as Problem).message;
  }
  return 'nothing was wrong';
};
