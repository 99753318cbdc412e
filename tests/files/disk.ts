import type * as Fs from 'node:fs';
import { join } from 'node:path';

/** Calls that change something on the disk. */
const CHANGES = [
  'openSync',
  'writeSync',
  'fsyncSync',
  'renameSync',
  'rmSync',
  'mkdirSync',
  'mkdtempSync',
  'rmdirSync',
  'cpSync',
  'chmodSync',
  'fchmodSync',
] as const;

/** What a test asks of the disk. */
export const disk: {
  /** Called before every change with its name and the paths or numbers given; what it throws is the disk's answer. */
  before: ((call: (typeof CHANGES)[number], ...given: unknown[]) => void) | undefined;
  /** Bytes that one call writes at the most. */
  most: number;
  /** Bytes are lost that the disk says it has. */
  loses: boolean;
  /** The change at which the process is killed: it is half done, and nothing after it reaches the disk. */
  killedAt: number;
  /** Changes so far. */
  changes: number;
} = {
  before: undefined,
  most: Number.POSITIVE_INFINITY,
  loses: false,
  killedAt: Number.POSITIVE_INFINITY,
  changes: 0,
};

/** The disk as it is. */
export function heal(): void {
  Object.assign(disk, { before: undefined, most: Number.POSITIVE_INFINITY, loses: false });
  Object.assign(disk, { killedAt: Number.POSITIVE_INFINITY, changes: 0 });
}

/** An error of the disk, as Node gives it. */
export const fault = (code: string): Error =>
  Object.assign(new Error(`${code}: as the disk says`), { code, syscall: 'open' });

/** The calls of Node on a disk of which the tests say how it does. */
export function hooked(real: typeof Fs): typeof Fs {
  const calls = real as unknown as Record<string, (...given: unknown[]) => unknown>;
  const changing = CHANGES.map((name) => [
    name,
    (...given: unknown[]): unknown => {
      if (name === 'openSync' && given[1] === 'r') return calls[name]!(...given);
      disk.changes++;
      if (disk.changes >= disk.killedAt) {
        if (disk.changes === disk.killedAt) half(real, name, given);
        throw new Error('killed');
      }
      disk.before?.(name, ...given);
      if (name !== 'writeSync') return calls[name]!(...given);
      const [file, bytes, at, length, from] = given as [number, Buffer, number, number, number];
      const count = real.writeSync(file, bytes, at, Math.min(length, disk.loses ? 3 : disk.most), from);
      return disk.loses ? length : count;
    },
  ]);
  return { ...real, ...Object.fromEntries(changing) };
}

/** Does the part of a change that is done when it is cut off: of a rename, nothing. */
function half(real: typeof Fs, name: string, given: unknown[]): void {
  if (name === 'writeSync') {
    const [file, bytes, at, length, from] = given as [number, Buffer, number, number, number];
    real.writeSync(file, bytes, at, length >> 1, from);
  }
  const [path, to] = given as [string, string];
  if (name === 'rmSync' && real.existsSync(path) && real.statSync(path).isDirectory()) {
    const [first] = real.readdirSync(path);
    if (first !== undefined) real.rmSync(join(path, first), { recursive: true });
  }
  if (name === 'cpSync' && real.statSync(path).isFile()) real.writeFileSync(to, '');
}
