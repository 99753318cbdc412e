import { DRAFT_TABLE } from '../../draft/yaml/draft-table.js';
import type { Key, Table } from '../../input/key.js';
import { WEAVERS_TABLE } from '../../plan/deal/weavers.js';
import { PLAN_TABLE } from '../../plan/options/plan-options.js';
import { RESULTS_TABLE } from '../../plan/results/results-form.js';
import { PART, PARTS } from '../../score/parts/parts.js';
import { PRESET_NAMES, PRESETS } from '../../score/rank/presets.js';
import { weightsInWords } from '../../score/rank/why.js';
import { QUESTION_TABLE } from '../../search/question/question-table.js';
import { capital } from '../../words/counts.js';
import { EXIT, EXIT_WORDS } from '../shell/io.js';
import { COLUMN_WORDS } from './column-words.js';
import { GLOSSARY } from './glossary.js';
import { FIGURES, FILES, LIMITS, NOTATION } from './reference-words.js';

/** The reference in Markdown, made from the tables by which files and flags are read. */
export function reference(): string {
  return [
    '# Reference',
    lines(
      'Made by `npm run reference` from the tables by which shedlight reads files and flags; do not edit it by hand.',
      'Files that a person writes are YAML: one `key: value` a line, lists in square brackets, remarks after `#`. Where a',
      'value has keys of its own, it may also be one text: `limits: float 1/2 in, repeat 200`. A flag is called as its key',
      'is: `on the loom` is `--on-the-loom`. Flags win over the file, in a value with keys key by key.',
      'For editors and programs there is a JSON Schema of every file, and of what commands print with `--json`, in',
      '[gallery/schemas](../schemas) and in the package: `shedlight/schemas/question.schema.json`. They know words in small',
      'letters only.',
    ),
    contents(),
    section(
      'A question',
      'What `shedlight explore` reads. Every key but `draft text` is a flag of `explore` too.',
      QUESTION_TABLE,
    ),
    section('A draft', 'A threading of your own, for `draft` and `on the loom`, `draw` and `convert`.', DRAFT_TABLE),
    section('A setup', 'Loom, yarns and usual figures, for `plan` and `deal`. Every key is a flag too.', PLAN_TABLE),
    section('Weavers', 'The weavers of a group, for `deal --weavers`.', WEAVERS_TABLE),
    section('Results', 'What was found in weaving: the form that `plan` and `deal` write, filled in.', RESULTS_TABLE),
    '## How orders, blocks and threadings are written',
    list(NOTATION),
    '## What cloths are ranked by',
    lines(
      'Each part is from 0 to 1. A ranking is a list of parts with weights, `rank: contrast 3, symmetry 2`; the score is',
      'their weighted mean. The exact definitions are in [FIGURES.md](../../src/score/FIGURES.md).',
    ),
    rows(
      ['part', 'what 1 means', 'usual weight'],
      PARTS.map((name) => [`\`${name}\``, PART[name].means, String(PART[name].weight ?? 0)]),
    ),
    'Ready-made rankings, by one word:',
    rows(
      ['word', 'weights'],
      PRESET_NAMES.map((name) => [`\`${name}\``, weightsInWords(PRESETS[name])]),
    ),
    '## Other figures of a cloth',
    'As in `gallery.json` and, most of them, in `cloths.csv`.',
    list(FIGURES),
    '## Columns of cloths.csv',
    lines(
      'CSV as in RFC 4180, UTF-8. Read columns by their headings: there may be new ones anywhere. One that goes, or comes to',
      'mean something else, is a new version of its description in [gallery/schemas](../schemas) (CSV on the Web).',
    ),
    list(Object.fromEntries(Object.entries(COLUMN_WORDS).map(([heading, [, means]]) => [heading, means]))),
    '## Files that are written',
    'Files and folders are written whole or not at all; what a person has put beside them stays.',
    ...Object.entries(FILES).flatMap(([by, files]) => [`### ${by}`, list(files)]),
    '## Limits',
    'What is larger is refused with a sentence. Nothing is written outside the output, nor read from a file not named.',
    rows(['what', 'at the most'], Object.entries(LIMITS)),
    '## Exit codes',
    rows(
      ['code', 'meaning'],
      Object.entries(EXIT).map(([name, code]) => [String(code), EXIT_WORDS[name as keyof typeof EXIT]]),
    ),
    '## Words',
    list(GLOSSARY),
    '',
  ]
    .join('\n\n')
    .trimEnd()
    .concat('\n');
}

function lines(...all: readonly string[]): string {
  return all.join('\n');
}

const HEADINGS = [
  'A question',
  'A draft',
  'A setup',
  'Weavers',
  'Results',
  'How orders, blocks and threadings are written',
  'What cloths are ranked by',
  'Other figures of a cloth',
  'Columns of cloths.csv',
  'Files that are written',
  'Limits',
  'Exit codes',
  'Words',
];

function contents(): string {
  const anchor = (heading: string): string =>
    heading
      .toLowerCase()
      .replace(/[^a-z ]/g, '')
      .replaceAll(' ', '-');
  return HEADINGS.map((heading) => `- [${heading}](#${anchor(heading)})`).join('\n');
}

/** The keys of one kind of file; after them, the keys of the values that have some. */
function section(heading: string, about: string, table: Table): string {
  return [`## ${heading}`, about, keyRows(table), ...below(table)].join('\n\n');
}

function below(table: Table): string[] {
  return Object.entries(table.keys).flatMap(([name, { kind }]) => {
    if (kind.table === undefined) return [];
    const each = kind.isList ? 'each entry of ' : '';
    return [`Keys of ${each}\`${name}\`:`, keyRows(kind.table), ...below(kind.table)];
  });
}

function keyRows({ keys }: Table): string {
  return rows(
    ['key', 'what it is', 'expected', 'usual', 'example'],
    Object.entries(keys).map(([name, key]) => [
      `\`${name}\``,
      key.many === undefined ? key.about : `${key.about}; ${key.many}`,
      key.kind.expected,
      usualOf(key),
      exampleOf(name, key),
    ]),
  );
}

function usualOf({ isNeeded, usual }: Key<unknown>): string {
  return isNeeded ? 'needed' : (usual ?? '');
}

function exampleOf(name: string, { example }: Key<unknown>): string {
  return `\`${name}: ${example}\``;
}

/** A list of things with what they are. */
function list(entries: Readonly<Record<string, string>>): string {
  return Object.entries(entries)
    .map(([thing, words]) => `- **${thing}**: ${words}`)
    .join('\n');
}

/** A table in Markdown. */
function rows(heads: readonly string[], cells: readonly (readonly string[])[]): string {
  const line = (row: readonly string[]): string => `| ${row.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(heads.map(capital)), line(heads.map(() => '---')), ...cells.map(line)].join('\n');
}
