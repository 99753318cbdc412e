/** Folders in which the program is run, what lies in them, and what it says. */
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  lstatSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  utimesSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { putInputs, WORKS } from './works.js';

export const BIN = fileURLToPath(new URL('../../bin/shedlight.js', import.meta.url));
const DISTURB = new URL('disturb.mjs', import.meta.url).href;
/** A search keeps its progress every few seconds; on this clock nearly at once. */
const QUICK_CLOCK = new URL('../cli/explore/quick-clock.mjs', import.meta.url).href;
const LONGEST_MS = 300_000;

/** The words of a process that runs a command; with `fault`, disturbed by it; `quick`, on the quick clock. */
export function processOf(words, fault, quick = false) {
  const env = { ...process.env, ...(fault && { SHEDLIGHT_FAULT: JSON.stringify(fault) }) };
  const loaded = [...(quick ? [QUICK_CLOCK] : []), ...(fault ? [DISTURB] : [])];
  return { args: [...loaded.flatMap((file) => ['--import', file]), BIN, ...words], env };
}

/** Runs a command to its end. */
export function run(home, words, fault) {
  const { args, env } = processOf(words, fault);
  return ended(spawnSync(process.execPath, args, { cwd: home, env, encoding: 'utf8', timeout: LONGEST_MS }));
}

export function ended({ status, signal, stdout, stderr }) {
  return { code: status, signal, stdout, stderr };
}

/** Runs a command that must succeed. */
function sure(home, words) {
  const ran = run(home, words);
  if (ran.code !== 0) throw new Error(`${words.join(' ')}: ended with ${ran.code}: ${ran.stderr}`);
  return ran;
}

/** Starts a command; `over` is fulfilled when it ends. */
export function begin(home, words, fault, quick) {
  const { args, env } = processOf(words, fault, quick);
  const child = spawn(process.execPath, args, { cwd: home, env, stdio: ['ignore', 'ignore', 'pipe'] });
  let stderr = '';
  child.stderr.on('data', (text) => {
    stderr += text;
  });
  const over = new Promise((resolve) => {
    child.on('close', (status, signal) => resolve(ended({ status, signal, stdout: '', stderr })));
  });
  return { child, over };
}

/** Everything below a folder: of each file a hash of what it says, of each link where it leads. */
export function everythingIn(home) {
  const all = readdirSync(home, { recursive: true })
    .sort()
    .map((name) => {
      const path = join(home, name);
      const stats = lstatSync(path);
      if (stats.isSymbolicLink()) return [name, `link to ${readlinkSync(path)}`];
      if (!stats.isFile()) return [name, stats.isDirectory() ? 'folder' : 'device'];
      return [name, createHash('sha256').update(readFileSync(path)).digest('hex').slice(0, 16)];
    });
  return Object.fromEntries(all);
}

/** Lets some seconds pass for locks: one that was killed while it was made counts as being made for so long. */
export function later(home) {
  const then = new Date(Date.now() - 10_000);
  for (const name of readdirSync(home)) if (name.endsWith('.shedlight-lock')) utimesSync(join(home, name), then, then);
}

/** The names that differ between two states of a folder, in short. */
export function differing(found, expected) {
  const names = [...new Set([...Object.keys(found), ...Object.keys(expected)])];
  const other = names.filter((name) => found[name] !== expected[name]);
  return other.slice(0, 6).map((name) => `${name} (${found[name] ?? 'gone'}; expected ${expected[name] ?? 'nothing'})`);
}

export const newHome = () => mkdtempSync(join(tmpdir(), 'shedlight-faults-'));

/** Every work made ready: the folder as it is before the command, and what the undisturbed command makes of it. */
export function preparedAll(tell) {
  const inputs = newHome();
  putInputs(inputs, (words) => sure(inputs, words));
  const all = WORKS.map((work) => {
    tell(`made ready: ${work.name}`);
    return prepared(work, inputs);
  });
  rmSync(inputs, { recursive: true });
  return all;
}

function prepared(work, inputs) {
  const home = copyOf(inputs);
  for (const words of work.before ?? []) sure(home, words);
  if (work.old.length > 0) sure(home, work.old);
  work.meanwhile?.(home);
  const old = everythingIn(home);
  const after = copyOf(home);
  const counts = newHome();
  const count = join(counts, 'counts.json');
  const started = performance.now();
  const ran = run(after, work.now, { count });
  const ms = performance.now() - started;
  if (ran.code !== 0) throw new Error(`${work.name}: ended with ${ran.code}: ${ran.stderr}`);
  const { changes, writes } = JSON.parse(readFileSync(count, 'utf8'));
  rmSync(counts, { recursive: true });
  return { work, home, old, after, now: everythingIn(after), ms, changes, writes };
}

/** A copy of a folder, to be disturbed. */
export function copyOf(home) {
  const copy = newHome();
  cpSync(home, copy, { recursive: true, preserveTimestamps: true, verbatimSymlinks: true });
  return copy;
}

/**
 * What a work has made of the folder `home` that is neither old nor new as a whole. A folder may have been moved aside,
 * from where the next run puts it back.
 */
export function halves({ work, old, now }, home) {
  const found = everythingIn(home);
  const wholes = work.made.flatMap((made) =>
    made.endsWith('/*') ? Object.keys(now).filter((name) => name.startsWith(made.slice(0, -1))) : [made],
  );
  return wholes.flatMap((made) => {
    const aside = join(dirname(made), `.${basename(made)}.shedlight-old`);
    const from = !existsSync(join(home, made)) && existsSync(join(home, aside)) ? aside : made;
    const [seen, before, after] = [part(found, from), part(old, made), part(now, made)];
    return same(seen, before) || same(seen, after) ? [] : differing(seen, after);
  });
}

/** What lies at a name and below it, by the path from there. */
function part(all, name) {
  const below = Object.entries(all).filter(([each]) => each === name || each.startsWith(`${name}/`));
  return Object.fromEntries(below.map(([each, what]) => [each.slice(name.length), what]));
}

const same = (one, other) => differing(one, other).length === 0;
