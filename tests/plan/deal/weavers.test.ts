import { describe, expect, test } from 'vitest';
import { readWeavers } from '../../../src/plan/deal/weavers.js';

const listed = (names: readonly string[]): string =>
  `weavers:\n${names.map((name) => `  - { name: ${name} }\n`).join('')}`;
const numbered = (count: number): string[] => Array.from({ length: count }, (_, w) => `W${w}`);

describe('the weavers of a group', () => {
  test('are read with their looms, and widths where they have their own', () => {
    const text =
      'weavers:\n  - { name: A }\n  - { name: B, width: 13 in, loom: "table, 8 shafts, 60 cm" }\n' +
      '  - { name: C, loom: { kind: countermarch } }\n';
    expect(readWeavers(text, 'group.yaml')).toEqual([
      { name: 'A', loom: { kind: 'rising' } },
      { name: 'B', width: 330.2, loom: { kind: 'table', shafts: 8, width: 600 } },
      { name: 'C', loom: { kind: 'countermarch' } },
    ]);
  });

  test('are 1 to 200', () => {
    expect(readWeavers(listed(['A']), 'group.yaml')).toHaveLength(1);
    expect(readWeavers(listed(numbered(200)), 'group.yaml')).toHaveLength(200);
    expect(() => readWeavers(listed(numbered(201)), 'group.yaml')).toThrow(/^group.yaml:2:\d+: .*200/);
    expect(() => readWeavers('weavers: []\n', 'group.yaml')).toThrow(/^group.yaml:1:\d+: /);
  });

  test('have a name each, at whatever place the second stands', () => {
    expect(() => readWeavers(listed(['A', 'A', 'B']), 'group.yaml')).toThrow(
      /^group.yaml:3:\d+: found A twice; expected each name once$/,
    );
    expect(() => readWeavers(listed(['C', 'A', 'B', 'A', 'C']), 'group.yaml')).toThrow(
      /^group.yaml:5:\d+: found A twice/,
    );
  });
});
