/** Kills commands (SIGKILL): at a random moment, or half-way through a random change that they make on the disk. */
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { begin, copyOf, differing, everythingIn, halves, later, run } from './place.js';

/** Share of the runs after a kill that are killed too; of those on a clock that is wrong, and by how much. */
const TWICE = 0.25;
const WRONG_CLOCK = 0.3;
const BACK_MS = [3_600_000, 40 * 86_400_000];

/**
 * Kills so many runs, and checks after each: what was made is old or new, as a whole; the next run, which goes on where it
 * can, ends well, with the same bytes as an undisturbed run, and leaves nothing behind.
 */
export async function kills(all, count, random, tell) {
  const drawn = all.flatMap((ready) => new Array(ready.work.often).fill(ready));
  const tally = { runs: 0, killed: 0, betweenTwoRenames: 0, stillOld: 0, already: 0, byWork: {} };
  for (let trial = 1; trial <= count; trial++) {
    if (trial % 10 === 1) tell(`kill ${trial} of ${count}`);
    await killed(drawn[Math.floor(random() * drawn.length)], random, tally);
  }
  return tally;
}

async function killed(ready, random, tally) {
  const { work, now, old } = ready;
  const home = copyOf(ready.home);
  const told = [];
  const check = (what, wrong) => {
    if (wrong.length > 0)
      throw new Error(`${work.name}: ${what}: ${wrong.join(', ')}; ${told.join('; ')}; see ${home}`);
  };
  for (let again = false; ; again = true) {
    const resume = again && work.resumes ? ['--resume'] : [];
    told.push(await killOnce(ready, home, resume, random, tally));
    check('neither old nor new', halves(ready, home));
    later(home);
    if (again || random() > TWICE) break;
  }
  tally.betweenTwoRenames += Number(existsSync(join(home, '.box.shedlight-old')));
  const found = everythingIn(home);
  tally.stillOld += Number(work.made.every((name) => found[name] === old[name]));
  const back = random() < WRONG_CLOCK ? BACK_MS[Math.floor(random() * BACK_MS.length)] : 0;
  const last = run(home, [...work.now, ...(work.resumes ? ['--resume'] : [])], back > 0 ? { back } : undefined);
  told.push(`then ended with ${last.code}, its clock ${back} ms back: ${last.stderr.trim()}`);
  check('the next run failed', last.code === 0 ? [] : [String(last.code)]);
  check('not as without kills', differing(everythingIn(home), now));
  rmSync(home, { recursive: true });
}

/** Kills one run; says how, in words. */
async function killOnce({ work, ms, changes }, home, more, random, tally) {
  const killAt = random() < 0.5 ? 1 + Math.floor(random() * changes) : undefined;
  const after = random() * ms;
  const { child, over } = begin(home, [...work.now, ...more], killAt && { killAt }, work.resumes);
  if (killAt === undefined) void setTimeout(after).then(() => child.kill('SIGKILL'));
  const { code, signal, stderr } = await over;
  tally.runs++;
  if (signal === 'SIGKILL') {
    tally.killed++;
    tally.byWork[work.name] = (tally.byWork[work.name] ?? 0) + 1;
  } else if (code === 0) tally.already++;
  else throw new Error(`${work.name}: ended with ${code} before it was killed: ${stderr}`);
  return killAt === undefined ? `killed after ${after.toFixed()} ms` : `killed at change ${killAt} of ${changes}`;
}
