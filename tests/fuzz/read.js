/** The child of run.js: makes files, reads them, checks what is promised, reports. */
import { Problem } from '../../dist/problem.js';
import { commandsOf } from './commands.js';
import { kindsOf } from './kinds.js';

const TELL_EVERY = 500;
/** One file in so many is a whole command, with the files and flags that it reads. */
const COMMAND_EVERY = 1000;

// Most files are refused, and the trace of each refusal costs more than the reading.
Error.stackTraceLimit = 3;
const [files, start] = process.argv.slice(2, 4).map(Number);
const only = process.argv[4];
const { makes, kinds, draw } = kindsOf(start);
await draw();
const commands = commandsOf(makes);
const inherited = Object.getOwnPropertyNames(Object.prototype).join();
const drawn = Object.keys(kinds).flatMap((kind) => new Array(kinds[kind].share).fill(kind));
const counts = Object.fromEntries(Object.keys(kinds).map((kind) => [kind, { read: 0, refused: 0, further: 0 }]));
const messages = new Set();
let [slowestMs, slowest] = [0, ''];
const began = process.hrtime.bigint();

for (let file = 1; file <= files; file++) {
  const before = process.hrtime.bigint();
  const isCommand = only === undefined ? file % COMMAND_EVERY === 0 : only === 'command';
  const kind = isCommand ? 'command' : (only ?? makes.pick(drawn));
  if (isCommand) process.send({ file, mib: memory(), at: await commands.run(file, fail) });
  else await readOne(kind, file);
  if (Object.getOwnPropertyNames(Object.prototype).join() !== inherited)
    fail('changed what all objects inherit', kind, file);
  const ms = Number(process.hrtime.bigint() - before) / 1e6;
  if (ms > slowestMs) [slowestMs, slowest] = [ms, `${kind} ${file}`];
  if (file % TELL_EVERY === 0) process.send({ file, mib: memory() });
}
commands.end();
const seconds = Number(process.hrtime.bigint() - began) / 1e9;
const tried = Object.entries(counts).filter(([, { read, refused }]) => read + refused > 0);
const report = {
  files,
  start,
  kinds: Object.fromEntries(tried),
  commands: commands.counts,
  kindsOfMessage: messages.size,
};
process.send({ report: { ...report, slowestMs, slowest, seconds } }, () => process.disconnect());

/** Makes and reads one file; one in a few that were read goes further. */
async function readOne(kind, file) {
  const { make, read, hold, every, further } = kinds[kind];
  const made = make();
  const found = await attempt(() => read(made), made, kind, file);
  counts[kind][found === undefined ? 'refused' : 'read']++;
  if (found === undefined) return;
  try {
    hold?.(found);
  } catch (error) {
    fail(error.stack, kind, file, made);
  }
  if (counts[kind].read % every > 0) return;
  await attempt(() => further(found) ?? true, made, kind, file);
  counts[kind].further++;
}

/** Runs a reader; undefined where it refused. Whatever it throws must be a sentence. */
async function attempt(work, made, kind, file) {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof Problem)) fail(`threw ${error.stack}`, kind, file, made);
    const { message } = error;
    if (message.length > 1000 || /[\x00-\x08\x0a-\x1f]/.test(message)) {
      fail(`said more than a sentence: ${JSON.stringify(message.slice(0, 200))}`, kind, file, made);
    }
    if (messages.size < 10_000) messages.add(message.replace(/\d+|“[^”]*”/g, '#').slice(0, 80));
    return undefined;
  }
}

function memory() {
  return Math.round(process.memoryUsage.rss() / 2 ** 20);
}

function fail(what, kind, file, made) {
  const shown = Buffer.isBuffer(made)
    ? made.toString('latin1')
    : typeof made === 'string'
      ? made
      : JSON.stringify(made);
  console.error(`${kind} ${file}: ${what}\n${shown?.slice(0, 4000)}`);
  process.exit(1);
}
