import { PassThrough } from 'node:stream';
import { describe, expect, test, vi } from 'vitest';
import { say, sayJsonText } from '../../../src/cli/shell/io.js';

describe('what is printed can steer no terminal', () => {
  const ESC = '\u001b';
  const hostile = `a${ESC}]0;title\u0007b${ESC}[2Jc\u202Ed\u009b31me\nf\rg`;
  const STEERS = /(?!\n)[\p{Cc}\u202a-\u202e\u2066-\u2069]/u;

  test('lines, on a terminal and off it', () => {
    vi.stubEnv('NO_COLOR', '');
    for (const isTTY of [true, false]) {
      const stream = Object.assign(new PassThrough(), { isTTY, hasColors: () => true });
      say(stream as never, `${ESC}[1m${hostile}${ESC}[22m`);
      const written = String(stream.read());
      const bare = isTTY ? written.replace(`${ESC}[1m`, '').replace(`${ESC}[22m`, '') : written;
      expect(bare).not.toMatch(STEERS);
      expect(bare.match(/\n/g)).toHaveLength(1);
      expect(written.startsWith(`${ESC}[1m`)).toBe(isTTY);
    }
    vi.unstubAllEnvs();
  });

  test('JSON stays JSON, its marks escaped', () => {
    const stdout = new PassThrough();
    sayJsonText({ stdout } as never, `${JSON.stringify({ hostile }, null, 1)}\n`);
    const written = String(stdout.read());
    expect(written).not.toMatch(STEERS);
    expect(JSON.parse(written)).toEqual({ hostile });
  });
});
