/**
 * Throws hostile files at all readers, and at whole commands: `npm run fuzz [files] [start] [kind]`, a million files of all
 * kinds unless told otherwise. They are read in a child process; this one watches it. It fails where the child ends of itself, says nothing for
 * 20 seconds, or takes more than 512 MiB; where a reader throws anything but a Problem; and where what it gives breaks
 * its promises. The same start makes the same files.
 */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const SILENCE_MS = 20_000;
const MEMORY_MIB = 512;
const [files = '1000000', start = '1', ...kind] = process.argv.slice(2);
if (![files, start].every((number) => /^\d+$/.test(number))) {
  console.error('expected whole numbers: npm run fuzz -- FILES START KIND');
  process.exit(2);
}

const child = spawn(
  process.execPath,
  ['--max-old-space-size=384', fileURLToPath(new URL('read.js', import.meta.url)), files, start, ...kind],
  { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] },
);
let last = { file: 0, mib: 0 };
let most = 0;
let ended = false;
let fault;
let heard = Date.now();

const watch = setInterval(() => {
  if (Date.now() - heard > SILENCE_MS) stop(`no answer for ${SILENCE_MS / 1000} s after file ${last.file}`);
}, 1000);

child.on('message', (message) => {
  heard = Date.now();
  if (message.report !== undefined) {
    ended = true;
    console.log(JSON.stringify({ ...message.report, mostMiB: most }, null, 2));
    return;
  }
  last = message;
  most = Math.max(most, message.mib);
  if (message.mib > MEMORY_MIB) stop(`${message.mib} MiB after file ${message.file}; expected ${MEMORY_MIB} at most`);
});
child.on('exit', (code) => {
  clearInterval(watch);
  if (fault === undefined && (code !== 0 || !ended)) fault = `the child ended with ${code} after file ${last.file}`;
  if (fault !== undefined) console.error(`fuzz: ${fault} (start ${start})`);
  process.exitCode = fault === undefined ? 0 : 1;
});

function stop(why) {
  fault ??= why;
  child.kill('SIGKILL');
}
