import { PassThrough } from 'node:stream';
import { afterEach, expect, test, vi } from 'vitest';
import { progressOn } from '../../../src/cli/explore/progress.js';

afterEach(() => vi.unstubAllEnvs());

/** What is written on a terminal of a kind while a search goes on and ends, or the process does. */
function shownOn(term: string, end: 'end' | 'exit'): string {
  vi.stubEnv('TERM', term);
  const stream = Object.assign(new PassThrough(), {
    isTTY: true,
    columns: 80,
    cursorTo: () => true,
    clearLine: () => true,
  });
  const progress = progressOn(stream as unknown as NodeJS.WriteStream, false);
  const before = new Set(process.listeners('exit'));
  progress.tell({ name: 'search', done: 1, of: 3 });
  if (end === 'end') progress.end();
  else for (const heard of process.listeners('exit')) if (!before.has(heard)) heard.call(process, 0);
  progress.end();
  expect(process.listeners('exit').filter((heard) => !before.has(heard))).toEqual([]);
  return String(stream.read() ?? '');
}

test('a terminal has its cursor again, however the process ends', () => {
  for (const end of ['end', 'exit'] as const) {
    const shown = shownOn('xterm', end);
    expect(shown.lastIndexOf('\x1b[?25h')).toBeGreaterThan(shown.lastIndexOf('\x1b[?25l'));
    expect(shown).toContain('\x1b[?25l');
  }
});

test('one that cannot move its cursor is told nothing', () => expect(shownOn('dumb', 'end')).toBe(''));
