import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Drawdown } from '../../src/cloth/drawdown.js';

/** A candidate with its interlacement. */
export interface Coloured {
  readonly cloth: Drawdown;
  readonly warp: readonly number[];
  readonly weft: readonly number[];
}

/** What the peer finds of a cloth: its figures, in the order of figures.c; and a name that equal cloths share. */
export interface PeerFigures {
  readonly figures: readonly number[];
  readonly key: string;
}

export interface Peer {
  /** Microseconds of user time a candidate. */
  run(): number;
  readonly found: readonly PeerFigures[];
  close(): void;
}

let compiled: string | undefined;

/** The peer as a program, compiled once; undefined if this machine has no C compiler. */
function compiledPeer(): string | undefined {
  if (compiled !== undefined) return compiled;
  const folder = mkdtempSync(join(tmpdir(), 'shedlight-peer-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  const program = join(folder, 'figures');
  const made = spawnSync('gcc', ['-O3', '-march=native', '-o', program, 'tests/bench/peer/figures.c', '-lm']);
  if (made.status === 0) compiled = program;
  else if (made.error === undefined) throw new Error(`gcc does not take the peer: ${made.stderr}`);
  return compiled;
}

/** The same figures in C (peer/figures.c), made by the C compiler of this machine; undefined if it has none. `look`: areas too. */
export function peer(candidates: readonly Coloured[], look: boolean): Peer | undefined {
  const program = compiledPeer();
  if (program === undefined) return undefined;
  const folder = mkdtempSync(join(tmpdir(), 'shedlight-peer-'));
  const file = join(folder, 'candidates');
  const numbers = candidates.flatMap(({ cloth, warp, weft }) => [
    ...[warp.length, weft.length, cloth.endKinds, cloth.pickKinds],
    ...warp.map((_, i) => cloth.endKind[i]!),
    ...weft.map((_, j) => cloth.pickKind[j]!),
    ...[...cloth.up, ...warp, ...weft],
  ]);
  writeFileSync(file, Int32Array.from([candidates.length, ...numbers]));
  const ran = (): string[] => {
    const { stdout, stderr, status } = spawnSync(program, [file, '0.1', ...(look ? ['look'] : [])], {
      encoding: 'utf8',
    });
    if (status !== 0) throw new Error(`the peer ended with ${status}: ${stderr}`);
    return stdout.trimEnd().split('\n');
  };
  const found = ran()
    .slice(1)
    .map((line) => {
      const words = line.split(' ');
      return { figures: words.slice(0, -1).map(Number), key: words.at(-1)! };
    });
  return {
    run: () => Number(ran()[0]),
    found,
    close: () => rmSync(folder, { recursive: true, force: true }),
  };
}
