/** The child of run.js: makes files, reads them, checks what is promised, reports. */
import { readdirSync, readFileSync } from 'node:fs';
import { liftAt } from '../../dist/draft/draft.js';
import { readWif, writeWif } from '../../dist/draft/wif/read-wif.js';
import { readDraft } from '../../dist/draft/yaml/read-draft.js';
import { Problem } from '../../dist/problem.js';
import { recognise } from '../../dist/structure/recognise/recognise.js';
import { mutator } from './mutate.js';

/** One file in so many is written, read again and compared; is read as YAML; is understood. */
const WRITE_EVERY = 10;
const YAML_EVERY = 50;
const UNDERSTAND_EVERY = 200;
const TELL_EVERY = 500;

// Most files are refused, and the trace of each refusal costs more than the reading.
Error.stackTraceLimit = 1;
const [files, start] = process.argv.slice(2).map(Number);
const FOLDER = new URL('../fixtures/wif/', import.meta.url);
// Three sound files for one that is broken: changes break most of them anyway.
const corpus = ['good', 'good', 'good', 'broken'].flatMap((kind) =>
  readdirSync(new URL(`${kind}/`, FOLDER))
    .sort()
    .map((name) => readFileSync(new URL(`${kind}/${name}`, FOLDER))),
);
const yaml = [
  'threading: 1-4, 4-1\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 4x(1 2 3 4)\nwarp: (DL)4\nweft: D4 L4\n',
  'name: A\nthreading: 1 2 1 2\nlift plan: [1 3, [2, 4]]\nyarns: { D: "#1f2a44", L: { colour: red, tex: 30 } }\nunits: 4\n',
  'threading: 1 2\ntie-up: [1, 2]\ntreadling: 1+2 0\nsinking: true\nsett: { ends: 20, picks: 18, per: inch }\n&a [*a]\n',
].map((text) => Buffer.from(text));

const reset = Object.getOwnPropertyNames(Object.prototype).join();
const mutate = mutator(start, [...corpus, ...yaml]);
const counts = { read: 0, refused: 0, yamlRead: 0, yamlRefused: 0, writtenAgain: 0, understood: 0 };
const messages = new Set();
let slowestMs = 0;
const began = process.hrtime.bigint();

for (let file = 1; file <= files; file++) {
  const bytes = mutate(corpus);
  const before = process.hrtime.bigint();
  const reading = attempt(() => readWif(bytes), bytes, file);
  if (reading === undefined) counts.refused++;
  else {
    counts.read++;
    checkDraft(reading.draft, bytes, file);
    if (file % WRITE_EVERY === 0) checkWritten(reading, bytes, file);
    if (file % UNDERSTAND_EVERY === 0 && attempt(() => recognise(reading.draft), bytes, file)) counts.understood++;
  }
  slowestMs = Math.max(slowestMs, Number(process.hrtime.bigint() - before) / 1e6);
  if (file % YAML_EVERY === 0) {
    const text = mutate(yaml).toString('utf8');
    const draft = attempt(() => readDraft(text, 'fuzz.yaml'), Buffer.from(text), file);
    counts[draft === undefined ? 'yamlRefused' : 'yamlRead']++;
    if (draft !== undefined) checkDraft(draft, Buffer.from(text), file);
  }
  if (Object.getOwnPropertyNames(Object.prototype).join() !== reset)
    fail('changed what all objects inherit', bytes, file);
  if (file % TELL_EVERY === 0) process.send({ file, mib: Math.round(process.memoryUsage.rss() / 2 ** 20) });
}
const seconds = Number(process.hrtime.bigint() - began) / 1e9;
process.send({ report: { files, start, ...counts, kindsOfMessage: messages.size, slowestMs, seconds } }, () =>
  process.disconnect(),
);

/** Runs a reader; undefined where it refused. Whatever it throws must be a sentence. */
function attempt(read, bytes, file) {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Problem)) fail(`threw ${error.stack}`, bytes, file);
    if (error.message.length > 1000 || /[\x00-\x08\x0a-\x1f]/.test(error.message)) {
      fail(`said more than a sentence: ${JSON.stringify(error.message.slice(0, 200))}`, bytes, file);
    }
    if (messages.size < 10_000) messages.add(error.message.replace(/\d+|“[^”]*”/g, '#').slice(0, 80));
    return undefined;
  }
}

/** What every reader promises of a draft. */
function checkDraft(draft, bytes, file) {
  const { threading, tieUp, treadling, pickKinds, endUnits, pickUnits, yarns, warp, weft, sett, companions } = draft;
  const sum = (list) => list.reduce((a, b) => a + b, 0);
  const within = (list, most) => list.every((n) => Number.isInteger(n) && n >= 1 && n <= most);
  const sound =
    threading.length >= 1 &&
    threading.length <= 20_000 &&
    treadling.length >= 1 &&
    treadling.length <= 20_000 &&
    threading.every((on) => within(on, 256)) &&
    tieUp.every((on) => within(on, 256)) &&
    treadling.every((on) => within(on, tieUp.length)) &&
    warp.length === threading.length &&
    weft.length === treadling.length &&
    pickKinds.length === treadling.length &&
    [...warp, ...weft].every((yarn) => yarns[yarn] !== undefined) &&
    yarns.every(({ letter, hex }) => /^[A-Z]$/.test(letter) && /^#[0-9a-f]{6}$/.test(hex)) &&
    new Set(yarns.map(({ letter }) => letter)).size === yarns.length &&
    sum(endUnits) === threading.length &&
    sum(pickUnits) === treadling.length &&
    [...endUnits, ...pickUnits].every((size) => size >= 1) &&
    sett.ends > 0 &&
    sett.picks > 0 &&
    (companions === undefined ||
      (companions.ends.length === threading.length && companions.picks.length === treadling.length));
  if (!sound) fail('gave a draft that breaks its promises', bytes, file);
}

/** What was read, written and read again is the same. */
function checkWritten({ draft, kept }, bytes, file) {
  const reread = () => readWif(Buffer.from(writeWif(draft, { version: '0', kept })), { whole: true });
  const again = attempt(reread, bytes, file)?.draft;
  if (again === undefined) fail('wrote a file that is refused', bytes, file);
  const lifts = ({ treadling, tieUp }) => treadling.map((_, j) => liftAt({ treadling, tieUp }, j).join());
  const say = (one) =>
    JSON.stringify([one.threading, lifts(one), one.warp, one.weft, one.endUnits, one.yarns, one.sett]);
  if (say(again) !== say(draft)) fail(`wrote another draft\n${say(draft)}\n${say(again)}`, bytes, file);
  counts.writtenAgain++;
}

function fail(what, bytes, file) {
  console.error(`file ${file}: ${what}\n${bytes.subarray(0, 4000).toString('latin1')}`);
  process.exit(1);
}
