/** Gives commands outputs that they must not, or cannot, write: links, devices, folders of others; and two at once. */
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { begin, copyOf, differing, ended, everythingIn, newHome, processOf } from './place.js';

const NOBODY = '65534';

/** What lies in the way of an output, whether a folder or a file is to be written, and the words it is refused with. */
const IN_THE_WAY = [
  ['a file', 'folder', (at) => writeFileSync(at, 'theirs'), 'found a file in the way'],
  ['a folder', 'file', (at) => mkdirSync(at), 'found a folder'],
  ['a device', 'any', (at) => spawnSync('mkfifo', [at]), /found a (device or a pipe|file in the way)/],
  ['a ring of links', 'file', (at) => symlinkSync(at, at), 'found links that lead round in a ring'],
  ['a link to nowhere', 'folder', (at) => symlinkSync('nowhere', at), 'found a link that leads nowhere'],
  [
    'someone’s own folder',
    'folder',
    (at) => {
      mkdirSync(at);
      writeFileSync(join(at, 'letter.txt'), 'dear');
    },
    'found a folder with other things in it',
  ],
];

/** Tries everything in the way of every command; a disk that can only be read; two runs at once. */
export async function outputs(all, tell) {
  const tally = { refused: 0, throughLinks: 0, readOnly: 0, twoAtOnce: 0, toAFullPipe: 0 };
  for (const ready of all) {
    const { work } = ready;
    tell(`outputs, ${work.name}`);
    refusals(ready, tally);
    throughLink(ready, tally);
    readOnly(ready, tally);
    if (existsSync('/dev/full')) fullPipe(ready, tally);
    if (work.old.length > 0) await twoAtOnce(ready, tally);
  }
  return tally;
}

function refusals(ready, tally) {
  const kind = isFolder(ready) ? 'folder' : 'file';
  for (const [what, kinds, put, words] of IN_THE_WAY) {
    if (kinds !== 'any' && kinds !== kind) continue;
    const home = copyOf(ready.home);
    rmSync(join(home, made(ready)), { recursive: true, force: true });
    put(join(home, made(ready)));
    const before = everythingIn(home);
    const { code, stderr } = runIn(home, ready.work.now);
    const isSaid =
      isOneLine(ready, stderr) && (typeof words === 'string' ? stderr.includes(words) : words.test(stderr));
    if (code !== 2 || !isSaid) throw new Error(`${ready.work.name}, ${what} in the way: ended with ${code}: ${stderr}`);
    same(ready, `${what} in the way`, everythingIn(home), before);
    tally.refused++;
    rmSync(home, { recursive: true });
  }
}

/** A link to a folder or a file is followed, and stays a link. */
function throughLink(ready, tally) {
  const home = copyOf(ready.home);
  const elsewhere = newHome();
  const place = join(home, made(ready));
  if (existsSync(place)) renameSync(place, join(elsewhere, 'it'));
  symlinkSync(join(elsewhere, 'it'), place);
  const { code, stderr } = runIn(home, ready.work.now);
  if (code !== 0) throw new Error(`${ready.work.name}, a link: ended with ${code}: ${stderr}`);
  const found = everythingIn(home);
  const kept = `link to ${join(elsewhere, 'it')}`;
  if (found[made(ready)] !== kept) throw new Error(`${ready.work.name}: the link is now ${found[made(ready)]}`);
  rmSync(place);
  renameSync(join(elsewhere, 'it'), place);
  same(ready, 'through a link', everythingIn(home), ready.now);
  if (readdirSync(elsewhere).length > 0) throw new Error(`${ready.work.name}: left ${readdirSync(elsewhere)}`);
  tally.throughLinks++;
  for (const each of [home, elsewhere]) rmSync(each, { recursive: true });
}

/** As a plain person, where the folder above can only be read. */
function readOnly(ready, tally) {
  const home = copyOf(ready.home);
  spawnSync('chown', ['-R', NOBODY, home]);
  chmodSync(home, 0o555);
  const { args, env } = processOf(ready.work.now);
  const asRoot = process.getuid?.() === 0;
  const [command, ...more] = asRoot
    ? ['setpriv', `--reuid=${NOBODY}`, `--regid=${NOBODY}`, '--clear-groups', process.execPath]
    : [process.execPath];
  const ran = spawnSync(command, [...more, ...args], { cwd: home, env, encoding: 'utf8' });
  if (ran.status !== 3 || !isOneLine(ready, ran.stderr) || !ran.stderr.includes('you may not write there')) {
    throw new Error(`${ready.work.name}, a folder that can only be read: ended with ${ran.status}: ${ran.stderr}`);
  }
  same(ready, 'a folder that can only be read', everythingIn(home), ready.old);
  tally.readOnly++;
  chmodSync(home, 0o755);
  rmSync(home, { recursive: true });
}

/** What is said cannot be said: the output is whole or not there, and the exit code tells. */
function fullPipe(ready, tally) {
  const home = copyOf(ready.home);
  const { args, env } = processOf(ready.work.now);
  const script = 'exec "$0" "$@" >/dev/full';
  const ran = spawnSync('sh', ['-c', script, process.execPath, ...args], { cwd: home, env, encoding: 'utf8' });
  if (ran.status !== 3 || !ran.stderr.includes('could not be written (ENOSPC)')) {
    throw new Error(`${ready.work.name}, a full pipe: ended with ${ran.status}: ${ran.stderr}`);
  }
  same(ready, 'a full pipe', everythingIn(home), ready.now);
  tally.toAFullPipe++;
  rmSync(home, { recursive: true });
}

/** Two runs into one place: both end well, and what lies there is one of them, whole. */
async function twoAtOnce(ready, tally) {
  const home = copyOf(ready.home);
  const runs = [ready.work.now, ready.work.now, ready.work.old].map((words) => begin(home, words).over);
  for (const { code, stderr } of await Promise.all(runs)) {
    if (code !== 0) throw new Error(`${ready.work.name}, three at once: ended with ${code}: ${stderr}`);
  }
  const found = everythingIn(home);
  const one = copyOf(home);
  runIn(one, ready.work.now);
  same(ready, 'the run after three at once', everythingIn(one), ready.now);
  const hidden = Object.keys(found).filter((name) => name.includes('.shedlight-'));
  if (hidden.length > 0) throw new Error(`${ready.work.name}, three at once: left ${hidden}`);
  tally.twoAtOnce++;
  for (const each of [home, one]) rmSync(each, { recursive: true });
}

const made = ({ work }) => work.made[0];
const isFolder = ({ now, work }) => now[work.made[0]] === 'folder';
/** Whether one sentence is said, beside what the command always says of its input. */
function isOneLine({ work }, text) {
  const said = text.split('\n').filter((line) => line !== '' && !work.notes?.test(line));
  return said.length === 1 && said[0].startsWith('shedlight: ');
}

function runIn(home, words) {
  const { args, env } = processOf(words);
  return ended(spawnSync(process.execPath, args, { cwd: home, env, encoding: 'utf8' }));
}

function same({ work }, what, found, expected) {
  const other = differing(found, expected);
  if (other.length > 0) throw new Error(`${work.name}, ${what}: ${other.join(', ')}`);
}
