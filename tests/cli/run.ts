import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { main } from '../../src/cli/main.js';

/** What a command left behind. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command in this process, its streams being pipes. */
export async function run(...words: string[]): Promise<Ran> {
  const [stdout, stderr] = [new PassThrough(), new PassThrough()];
  const read = (stream: PassThrough): string => (stream.read() as Buffer | null)?.toString('utf8') ?? '';
  const io = { stdout, stderr } as unknown as { stdout: NodeJS.WriteStream; stderr: NodeJS.WriteStream };
  const code = await main(['node', 'shedlight', ...words], io);
  return { code, out: read(stdout), err: read(stderr) };
}

/** Starts the command as a person does, save for what Node itself is told. */
export function start(words: readonly string[], cwd: string, node: readonly string[] = []): ChildProcess {
  const bin = fileURLToPath(new URL('../../bin/shedlight.js', import.meta.url));
  return spawn(process.execPath, [...node, bin, ...words], { cwd, stdio: ['ignore', 'pipe', 'pipe'] });
}

/** Gives work a folder of its own, which is gone afterwards. */
export async function inFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'shedlight-cli-'));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
