/** Run in name spaces of its own (unshare -rm): a command on a disk with little room, then again with enough. */
import { spawnSync } from 'node:child_process';
import { cpSync, readdirSync, statfsSync } from 'node:fs';
import { join } from 'node:path';
import { everythingIn, newHome, run } from './place.js';

const [from, free, words, resumes] = process.argv.slice(2);
const now = JSON.parse(words);
const disk = newHome();
mount('-t', 'tmpfs', '-o', 'size=64m', 'tmpfs', disk);
for (const name of readdirSync(from)) cpSync(join(from, name), join(disk, name), { recursive: true });
const { blocks, bfree, bsize } = statfsSync(disk);
mount('-o', `remount,size=${(blocks - bfree) * bsize + Number(free)}`, disk);
const ran = run(disk, now);
const found = everythingIn(disk);
mount('-o', 'remount,size=64m', disk);
const later = run(disk, [...now, ...(resumes === 'true' ? ['--resume'] : [])]);
console.log(JSON.stringify({ ran, found, later, afterwards: everythingIn(disk) }));

function mount(...given) {
  const { status, stderr } = spawnSync('mount', given, { encoding: 'utf8' });
  if (status === 0) return;
  console.error(stderr.trim());
  process.exit(1);
}
