import { describe, expect, test } from 'vitest';
import { run } from '../run.js';

/** The flags that a command's help shows. */
async function flagsShown(...words: string[]): Promise<string[]> {
  const { out } = await run(...words);
  return [...out.matchAll(/^ {2}(-\w, )?(--[a-z-]+)/gm)].map((line) => line[2]!);
}

describe('help', () => {
  test.each([
    ['explore', 25],
    ['plan', 22],
    ['deal', 18],
    ['draw', 14],
  ])('of %s shows at most %i options; --help all shows the others too', async (command, most) => {
    const shown = await flagsShown(command, '--help');
    expect(shown.length).toBeLessThanOrEqual(most);
    expect(shown.length).toBeGreaterThan(10);
    const all = await flagsShown(command, '--help', 'all');
    expect(all).toEqual(expect.arrayContaining(shown));
    const { out } = await run(command, '--help');
    expect(out).toContain(`${all.length - shown.length} more options, seldom needed: shedlight ${command} --help all`);
  });
});

test.each([
  [['explore', '--structure', 'crackle', '--limit-warp-changes', '4'], '--limits "warp changes 40"'],
  [['draw', '--structure', 'crackle', '--limit-float', '3/8 in'], '--limits "float 1/2 in"'],
  [['explore', '--name', 'INDIGO'], '--name-draft "INDIGO"'],
  [['plan', 'kept.json', '--yarns', '8/2 cotton'], '--yarn-size "8/2 cotton"'],
  [['deal', 'kept.json', '--weavers', '3', '--shafts', '8'], '--loom "rising, 4 shafts"'],
  [['plan', 'kept.json', '--gamp', '--warps', '5'], '--gamp "5 by 5"'],
])('%j: the flag of today is told', async (words, now) => {
  const { code, err } = await run(...words);
  expect(code).toBe(2);
  expect(err).toMatch(/^shedlight: --[a-z-]+: found a former flag; expected --/);
  expect(err).toContain(`; expected ${now}\n`);
});
