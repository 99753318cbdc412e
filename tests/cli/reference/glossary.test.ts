import { expect, test } from 'vitest';
import { GLOSSARY } from '../../../src/cli/reference/glossary.js';
import { reference } from '../../../src/cli/reference/reference.js';
import { FIGURES } from '../../../src/cli/reference/reference-words.js';
import { PART, PARTS } from '../../../src/score/parts/parts.js';
import { PRESET_NAMES } from '../../../src/score/rank/presets.js';
import { QUESTION_TABLE } from '../../../src/search/question/question-table.js';
import { run } from '../run.js';

const text = reference();
const part = (heading: string): string => text.split(`## ${heading}\n`)[1]!.split('\n## ')[0]!;
const times = (inside: string, words: string): number => inside.split(words).length - 1;
const terms = Object.keys(GLOSSARY).flatMap((words) => words.split(', '));

test('a word is explained once in the glossary, and not otherwise than in a table', () => {
  expect(terms).toHaveLength(new Set(terms).size);
  for (const term of terms) expect(PRESET_NAMES).not.toContain(term);
  for (const name of PARTS.filter((each) => terms.includes(each))) expect(GLOSSARY[name]).toBe(`${PART[name].means}.`);
});

test('every ranking, figure and choice that the help names is explained once', async () => {
  const { out } = await run('explore', '--help', 'all');
  const said = out.replace(/\s+/g, ' ');
  for (const name of PRESET_NAMES) {
    expect(said).toContain(name);
    expect(times(part('What cloths are ranked by'), `| \`${name}\` |`), name).toBeGreaterThan(0);
  }
  // “calm” and “lively” are figures and ready-made rankings by them.
  for (const name of PARTS) {
    const rows = times(part('What cloths are ranked by'), `| \`${name}\` |`);
    expect(rows, name).toBe((PRESET_NAMES as readonly string[]).includes(name) ? 2 : 1);
  }
  for (const name of Object.keys(FIGURES)) expect(times(part('Other figures of a cloth'), `- **${name}**: `)).toBe(1);
  for (const [name, key] of Object.entries(QUESTION_TABLE.keys)) {
    expect(times(part('A question'), `\n| \`${name}\` | ${key.about}`), name).toBe(1);
  }
});

test('words of the trade that stand alone as keys, and in the help of plan and draw, are in the glossary', async () => {
  const all = await Promise.all(['explore', 'draw', 'plan', 'keep'].map((command) => run(command, '--help', 'all')));
  const help = all.map(({ out }) => out.replace(/\s+/g, ' ')).join(' ');
  const used = [
    'sett',
    'reed',
    'dents',
    'take-up',
    'put-up',
    'draw-in',
    'tabby',
    'block',
    'unit',
    'shortlist',
    'codes',
  ];
  const more = [
    'floating selvedges',
    'threading',
    'treadling',
    'structure',
    'picks',
    'ends',
    'heddles',
    'shafts',
    'draft',
  ];
  for (const word of [...used, ...more]) {
    expect(help).toContain(word);
    expect(terms).toContain(word.replace(/s$/, ''));
  }
});
