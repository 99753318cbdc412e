import { describe, expect, it } from 'vitest';
import { readDraft } from '../../../src/draft/yaml/read-draft.js';
import { Problem } from '../../../src/problem.js';
import { PRESET_NAMES, PRESETS } from '../../../src/score/rank/presets.js';
import type { Question } from '../../../src/search/question/question.js';
import { readQuestion, resolvedQuestion } from '../../../src/search/question/read-question.js';

const TWILL = 'threading: 1 2 3 4\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 1 2 3 4\nsett: 8/8 per cm\n';

const loaded: string[] = [];
const load = (path: string) => {
  loaded.push(path);
  return readDraft(path.includes('units') ? `${TWILL}units: 4\n` : TWILL, path);
};

const ask = (text: string): Question => readQuestion({ text, file: 'q.yaml', flags: {} }, load);

const wrong = (read: () => unknown): string => {
  try {
    read();
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
    return (error as Problem).message;
  }
  return 'nothing was wrong';
};

describe('a way of looking', () => {
  it.each(PRESET_NAMES)('is asked for by its word: %s', (view) => {
    const question = ask(`structure: plain\nrank: ${view}`);
    expect(question.rank).toEqual(PRESETS[view]);
    expect(resolvedQuestion(question).rank).toBe(view);
  });

  it('is offered where the word is wrong', () => {
    expect(wrong(() => ask('structure: plain\nrank: unexpectd'))).toMatch(/did you mean “unexpected”/);
  });
});
