/** Fills the disk while commands write: at one of their writes, by a limit on files, and as a small disk of its own. */
import { spawnSync } from 'node:child_process';
import { lstatSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { copyOf, differing, ended, everythingIn, processOf, run } from './place.js';

const SMALL_DISK = fileURLToPath(new URL('small-disk.js', import.meta.url));
const BLOCK = 512;
/** Sizes of disks that are tried for one command, and limits on the size of a file. */
const SIZES = 8;
const LIMITS = 3;
/** From so many kills on, every disk is filled that there is; of fewer, a share. */
const MOST = 150;
const SAYS_WHY =
  /^shedlight: .*(: could not be written: (the disk is full|it is larger than a file may be here|the disk did not take all of it)|its progress is not kept)$/;

/** Fills so many disks at the most; checks that each command says so, and leaves what was there. */
export function fullDisks(all, most, random, tell) {
  const tally = { atAWrite: 0, limitedFile: 0, smallDisk: 0, hadRoom: 0, noSmallDisk: undefined };
  const chosen = (each) => each.filter(() => random() < most / MOST);
  for (const ready of all) {
    const { work } = ready;
    tell(`full disks, ${work.name}`);
    for (const fullAt of chosen(Array.from({ length: ready.writes }, (_, at) => at + 1))) {
      const home = copyOf(ready.home);
      checked(ready, `full at write ${fullAt}`, run(home, work.now, { fullAt }), home, tally);
      tally.atAWrite++;
      rmSync(home, { recursive: true });
    }
    for (const limit of chosen(limitsFor(ready))) {
      const home = copyOf(ready.home);
      const { args, env } = processOf(work.now);
      const script = `ulimit -f ${limit}; exec "$0" "$@"`;
      const ran = spawnSync('sh', ['-c', script, process.execPath, ...args], { cwd: home, env, encoding: 'utf8' });
      checked(ready, `files up to ${limit} blocks`, ended(ran), home, tally);
      tally.limitedFile++;
      rmSync(home, { recursive: true });
    }
    const needed = sizeOf(ready.after) - sizeOf(ready.home) + sizeOf(join(ready.after, work.made[0].replace('/*', '')));
    for (const part of chosen(Array.from({ length: SIZES }, (_, at) => (at + 0.5) / SIZES))) {
      const free = String(Math.ceil(Math.max(8192, needed) * part));
      const given = [SMALL_DISK, ready.home, free, JSON.stringify(work.now), String(work.resumes === true)];
      const { status, stdout, stderr } = spawnSync('unshare', ['-rm', process.execPath, ...given], {
        encoding: 'utf8',
      });
      if (status !== 0) {
        tally.noSmallDisk ??= stderr?.trim().split('\n').at(-1) ?? 'no unshare';
        break;
      }
      const { ran, found, later, afterwards } = JSON.parse(stdout);
      const what = `${free} bytes free`;
      judge(ready, what, ran, found, tally);
      const wrong = later.code === 0 ? differing(afterwards, ready.now) : [`ended with ${later.code}: ${later.stderr}`];
      if (wrong.length > 0) throw new Error(`${work.name}, ${what}, then enough: ${wrong.join(', ')}`);
      tally.smallDisk++;
    }
  }
  return tally;
}

function checked(ready, what, ran, home, tally) {
  judge(ready, what, ran, everythingIn(home), tally);
}

/** The command did all or nothing, and said which. Progress that it kept may stay, so that a search can go on. */
function judge({ work, old, now }, what, { code, signal, stderr }, found, tally) {
  const wrong = (words) => {
    throw new Error(`${work.name}, ${what}: ended with ${signal ?? code}: ${words}: ${stderr.trim()}`);
  };
  const said = stderr.trim().split('\n').at(-1);
  if (work.resumes) delete found['box.progress'];
  if (work.resumes) delete found[`${work.made[0]}.progress`];
  if (code === 0) {
    tally.hadRoom++;
    if (differing(found, now).length > 0) wrong(`has not made all: ${differing(found, now)}`);
  } else if (code !== 3) wrong('expected 3');
  else if (!SAYS_WHY.test(said)) wrong('expected a sentence that says why');
  else if (!work.made.some((made) => made.endsWith('/*')) && differing(found, old).length > 0)
    wrong(`left ${differing(found, old)}`);
}

/** Limits, in blocks, at which some file that a command makes is too large. */
function limitsFor({ after, old, now }) {
  const fresh = Object.keys(now).filter((name) => now[name] !== old[name] && lstatSync(join(after, name)).isFile());
  const blocks = fresh.map((name) => Math.ceil(lstatSync(join(after, name)).size / BLOCK)).sort((a, b) => a - b);
  const at = (share) => blocks[Math.floor((blocks.length - 1) * share)] - 1;
  return [...new Set(Array.from({ length: LIMITS }, (_, k) => at(k / (LIMITS - 1))))].filter((limit) => limit > 0);
}

/** Bytes of a file, or of everything in a folder, in whole pages as a disk gives them. */
function sizeOf(path) {
  const stats = lstatSync(path);
  if (!stats.isDirectory()) return Math.ceil(stats.size / 4096) * 4096;
  return readdirSync(path).reduce((sum, name) => sum + sizeOf(join(path, name)), 0);
}
