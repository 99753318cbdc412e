import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { structures } from '../../../src/structure/catalogue/catalogue.js';
import { inFolder, run } from '../run.js';

const BIN = fileURLToPath(new URL('../../../bin/shedlight.js', import.meta.url));
const scriptFor = (shell: string): string =>
  execFileSync(process.execPath, [BIN, 'completion', shell], { encoding: 'utf8' });

/** What bash offers for the last of some words, as its Tab key does. */
function offered(cwd: string, ...words: string[]): string[] {
  const script = `${scriptFor('bash')}
COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); COMPREPLY=()
"$(complete -p shedlight | sed 's/.*-F \\([^ ]*\\).*/\\1/')"
printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { stdout, stderr, status } = spawnSync('bash', ['-c', script, 'bash', 'shedlight', ...words], {
    cwd,
    encoding: 'utf8',
  });
  expect([stderr, status]).toEqual(['', 0]);
  return stdout.split('\n').filter((line) => line !== '');
}

test('bash completes commands, flags, the words of flags, structures and files', () =>
  inFolder(async (folder) => {
    mkdirSync(join(folder, 'my warps'));
    writeFileSync(join(folder, 'my question.yaml'), '');
    expect(offered(folder, '')).toEqual(expect.arrayContaining(['explore', 'plan', 'completion']));
    expect(offered(folder, 'pl')).toEqual(['plan']);
    expect(offered(folder, 'explore', '--unl')).toEqual(['--unlike-done']);
    expect(offered(folder, 'plan', '--paper', '')).toEqual(['a4', 'letter']);
    expect(offered(folder, 'explore', '--by', 'u')).toEqual(['unit']);
    // A name of several words is one word to the shell.
    expect(offered(folder, 'explore', '--structure', 'summ')).toEqual(['summer\\ and\\ winter']);
    expect(offered(folder, 'explore', '--structure', '"summ')).toEqual(['summer and winter']);
    expect(offered(folder, 'structures', '')).toHaveLength(structures.length);
    expect(offered(folder, 'explore', 'my')).toEqual(expect.arrayContaining(['my warps', 'my question.yaml']));
    expect(offered(folder, 'explore', '--out', 'my w')).toEqual(['my warps']);
    expect(offered(folder, 'explore', '--lengths', '')).toEqual([]);
    expect(offered(folder, 'completion', '')).toEqual(['bash', 'zsh', 'fish']);
    // Flags of earlier versions are refused, and so not offered.
    expect(offered(folder, 'explore', '--limit-')).toEqual([]);
  }));

test.each(['bash', 'zsh', 'fish'])('%s finds no fault in its script', (shell) =>
  inFolder(async (folder) => {
    const file = join(folder, 'script');
    writeFileSync(file, scriptFor(shell));
    const { status, stderr, error } = spawnSync(shell, ['-n', file], { encoding: 'utf8' });
    if (error === undefined) expect([status, stderr]).toEqual([0, '']);
    else expect(shell).not.toBe('bash');
  }),
);

test('fish, where it is installed, completes flags and structures', async (context) => {
  const asked = [
    "complete -C 'shedlight explore --str'",
    "complete -C 'shedlight structures huc'",
    "complete -C 'shedlight plan --paper '",
  ];
  const { stdout, error } = spawnSync('fish', ['--no-config', '-c', [scriptFor('fish'), ...asked].join('\n')], {
    encoding: 'utf8',
  });
  if (error) return context.skip('fish is not installed');
  expect(stdout.split('\n').map((line) => line.split('\t')[0])).toEqual(
    expect.arrayContaining(['--structure', 'huck', 'a4', 'letter']),
  );
});

test('another shell is refused with those there are', async () => {
  expect(await run('completion', 'csh')).toEqual({
    code: 2,
    out: '',
    err: 'shedlight: completion: found “csh”; expected bash, zsh or fish\n',
  });
});
