import { describe, expect, it } from 'vitest';
import { PRESET_NAMES, PRESETS } from '../../../src/score/rank/presets.js';
import { resolvedQuestion } from '../../../src/search/question/read-question.js';
import { ask, wrong } from './asked.js';

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
