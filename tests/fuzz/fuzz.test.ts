import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { runs } from '../long.js';

/** Throws files at the program; what it reports. */
function thrown(files: number, ...kind: string[]) {
  const given = [fileURLToPath(new URL('run.js', import.meta.url)), String(files), '1', ...kind];
  const { status, stdout, stderr } = spawnSync(process.execPath, given, { encoding: 'utf8' });
  expect(`${status} ${stderr}`).toBe('0 ');
  const report = JSON.parse(stdout);
  expect(report.files).toBe(files);
  return report;
}

test('no hostile file stops a reader, takes for ever, or breaks what is promised', () => {
  const { kinds } = thrown(runs(2000, 200_000));
  expect(Object.keys(kinds)).toHaveLength(11);
  for (const [kind, { read, refused }] of Object.entries(kinds as Record<string, { read: number; refused: number }>)) {
    expect([kind, read > (read + refused) / 50]).toEqual([kind, true]);
  }
});

test('no hostile file or flag makes a command end otherwise than documented, or write where it must not', () => {
  const { commands } = thrown(runs(45, 1000), 'command');
  expect(Object.keys(commands).sort()).toEqual(
    ['convert', 'deal', 'draw', 'enlarge', 'explore', 'keep', 'page', 'plan', 'structures'].sort(),
  );
});
