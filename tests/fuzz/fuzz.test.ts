import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { runs } from '../long.js';

test('no mutated file stops a reader, takes for ever, or breaks what is promised', () => {
  const files = String(runs(3_000, 200_000));
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [fileURLToPath(new URL('run.js', import.meta.url)), files],
    { encoding: 'utf8' },
  );
  expect(`${status} ${stderr}`).toBe('0 ');
  const report = JSON.parse(stdout);
  expect(report.files).toBe(Number(files));
  expect(report.read).toBeGreaterThan(report.files / 20);
});
