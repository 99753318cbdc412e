/**
 * Changes the program in one small place, runs the tests that reach it, and expects one to fail; and that for a random
 * sample of all places: `npm run test:mutation -- --sample 200 --seed 1 --only src/score`. The same seed takes the same
 * sample. Fails where fewer than 80 % of the mutants are seen. The report is mutation-report.json, which git ignores.
 *
 * A mutant is killed where a test fails, or does not end in time. Of the test files that import the mutant's file most
 * directly those are run that reach its branch (`baseline.js`), and only in their own process: what worker threads and
 * the built program run is `dist`, which holds no mutant, so that a mutant seen only there counts as survived. So does one
 * that no test reaches. The score is therefore rather too low than too high.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import seedrandom from 'seedrandom';
import { baselineOf } from './baseline.js';
import { placesOf } from './places.js';
import { filesUnder, testsByFile } from './reach.js';
import { copyOfProject, runTests } from './run-tests.js';

const FOLDERS = ['src/score', 'src/order', 'src/cloth', 'src/structure', 'src/search', 'src/plan'];
/** The share of mutants that the tests must see. */
const LEAST = 0.8;
/** Test files that are looked at for one mutant: so many import its file most directly. */
const NEAREST = 40;
/** As many of them are run as take so long together, the quick and near ones first; those of its folder in any case. */
const MOST_MS = 40_000;
/** So many of them are run before the others. */
const QUICKEST = 5;
/**
 * After so many mutants their tests are run on the program as it is, which must pass, and on one that throws at import,
 * which must fail: else neither a kill nor a survivor says anything.
 */
const CONTROL_EVERY = 10;
const REPORT = 'mutation-report.json';
/** Mutants that are the same program, each by its line, what it becomes, and the reason. */
const equivalent = JSON.parse(readFileSync(new URL('equivalent.json', import.meta.url), 'utf8'));

const { values } = parseArgs({
  options: {
    sample: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    only: { type: 'string', multiple: true, default: FOLDERS },
  },
});
const wanted = Number(values.sample);
if (!(Number.isInteger(wanted) && wanted > 0)) {
  console.error(`--sample ${values.sample}: expected a whole number from 1`);
  process.exit(2);
}

/** Wilson's interval for a share, at 95 %. */
function interval(killed, all) {
  const z = 1.96;
  const [share, part] = [killed / all, z ** 2 / all];
  const middle = (share + part / 2) / (1 + part);
  const half = (z * Math.sqrt((share * (1 - share) + part / 4) / all)) / (1 + part);
  return [middle - half, middle + half];
}

function scoreOf(mutants) {
  const count = (fate) => mutants.filter((mutant) => mutant.fate === fate).length;
  const [failed, timedOut] = [count('failed'), count('timed out')];
  const killed = failed + timedOut;
  // A mutant that is the same program cannot be seen.
  const all = mutants.filter(({ reason }) => reason === undefined).length;
  return {
    mutants: all,
    killed,
    timedOut,
    survived: all - killed,
    score: killed / all,
    between: interval(killed, all),
  };
}

function inWords(name, { mutants, killed, timedOut, survived, score, between }) {
  const percent = (share) => `${(share * 100).toFixed(0)} %`;
  return (
    `${name}: ${mutants} mutants, ${killed} killed (${timedOut} of them timed out), ${survived} survived: ` +
    `${percent(score)} (95 % interval ${between.map(percent).join(' to ')})`
  );
}

/** Why a mutant that passes is the same program, where equivalent.json names it; undefined else. */
function reasonOf(text, { start, text: becomes }) {
  const line = text.slice(text.lastIndexOf('\n', start) + 1, text.indexOf('\n', start)).trim();
  return equivalent.find((known) => known.line === line && known.becomes === becomes.trim())?.reason;
}

const files = filesUnder('src').filter((file) =>
  values.only.some((only) => file === only || file.startsWith(`${only}/`)),
);
const places = files.flatMap((file) => placesOf(file, readFileSync(file, 'utf8')));
const random = seedrandom(values.seed);
const sample = places
  .map((place) => ({ place, at: random() }))
  .sort((a, b) => a.at - b.at)
  .slice(0, wanted)
  .map(({ place }) => place);
if (sample.length === 0) {
  console.error(`--only ${values.only.join(' ')}: expected a file or folder of src in which something can be changed`);
  process.exit(2);
}

const copy = copyOfProject();
const reach = testsByFile();
const nearest = (file) => (reach.tests.get(file) ?? []).slice(0, NEAREST);
const used = [...new Set(sample.flatMap(({ file }) => nearest(file).map(({ test }) => test)))].sort();
const baseline = await baselineOf(copy, used, reach.imports);
const setAside = new Set(used.filter((test) => baseline.get(test).ms === undefined));
/** Test files that are known to pass on the program as it is. */
const sure = new Set(used.filter((test) => baseline.get(test).isSure));

/** The tests to run for a place, the near and quick ones first. */
function testsFor({ file, branch }) {
  const cost = ({ test, far }) => baseline.get(test).ms * far;
  let ms = 0;
  return nearest(file)
    .filter(({ test }) => !setAside.has(test))
    .filter(({ test }) => branch === undefined || baseline.get(test).reaches(file, branch))
    .sort((a, b) => cost(a) - cost(b))
    .filter(({ test, stands }, at) => {
      ms += baseline.get(test).ms;
      return at === 0 || stands < 2 || ms <= MOST_MS;
    })
    .map(({ test }) => test);
}

/** The file that was changed last. */
let before = sample[0].file;

/** Runs tests with `text` in place of a file. */
async function runWith(file, text, tests) {
  writeFileSync(path.join(copy, file), text);
  let result = { fate: tests.length === 0 ? 'no test' : 'passed' };
  // The quickest by themselves, so that a loop without end is soon known.
  for (const part of [tests.slice(0, QUICKEST), tests.slice(QUICKEST)]) {
    const usual = part.reduce((sum, test) => sum + baseline.get(test).ms, 0);
    if (result.fate !== 'passed' || part.length === 0) continue;
    result = await runTests(copy, part, 20_000 + 3 * usual, [before, file]);
    before = file;
  }
  return result;
}

/** What becomes of a mutant. A test file that fails, and that no one saw pass, must pass on the program as it is. */
async function fateOf(place, text) {
  const mutant = text.slice(0, place.start) + place.text + text.slice(place.end);
  for (;;) {
    const { fate, by } = await runWith(place.file, mutant, testsFor(place));
    if (by === undefined || sure.has(by)) return { fate, by };
    const asItIs = await runWith(place.file, text, [by]);
    (asItIs.fate === 'passed' ? sure : setAside).add(by);
    if (sure.has(by)) return { fate, by };
  }
}

/**
 * Expects tests to fail where the file throws at import, and to pass on the program as it is; the fate of the latter. A
 * test file that fails there, and that no one saw pass, is set aside.
 */
async function control(file, text, tests) {
  const broken = await runWith(file, `throw new Error('broken');\n${text}`, tests);
  if (broken.fate !== 'failed') throw new Error(`${tests.join(', ')}: ${broken.fate} where ${file} throws`);
  const { fate, by } = await runWith(file, text, tests);
  if (fate === 'failed' && (by === undefined || sure.has(by))) throw new Error(`${by}: fails on the program as it is`);
  if (fate === 'failed') setAside.add(by);
  return fate;
}

const mutants = [];
for (const place of sample) {
  const text = readFileSync(path.join(copy, place.file), 'utf8');
  const start = Date.now();
  let { fate, by } = await fateOf(place, text);
  const seconds = (Date.now() - start) / 1000;
  const tests = testsFor(place);
  const isUnclear = fate === 'timed out' || (fate === 'failed' && by === undefined);
  if (tests.length > 0 && (isUnclear || mutants.length % CONTROL_EVERY === 0)) {
    const asItIs = await control(place.file, text, tests);
    if (isUnclear && asItIs !== 'passed') fate = 'no verdict';
  }
  writeFileSync(path.join(copy, place.file), text);
  mutants.push({ ...place, was: text.slice(place.start, place.end), fate, seconds, tests });
  if (fate === 'passed') mutants.at(-1).reason = reasonOf(text, place);
  const { line, kind, was, reason } = mutants.at(-1);
  const change = `${JSON.stringify(was.slice(0, 60))} -> ${JSON.stringify(place.text.trim().slice(0, 60))}`;
  const because = reason === undefined ? '' : ` (the same program: ${reason})`;
  console.log(
    `${mutants.length} ${fate} in ${seconds.toFixed(1)} s: ${place.file}:${line} ${kind} ${change}${because}`,
  );
}

if (setAside.size > 0) console.log(`not run, since they fail or are slow: ${[...setAside].join(', ')}`);
const byFolder = FOLDERS.flatMap((folder) => {
  const within = mutants.filter(({ file }) => file.startsWith(`${folder}/`));
  return within.length === 0 ? [] : [[folder, scoreOf(within)]];
});
const overall = scoreOf(mutants);
writeFileSync(
  REPORT,
  JSON.stringify({ seed: values.seed, overall, folders: Object.fromEntries(byFolder), mutants }, null, 2),
);
console.log(['', ...byFolder.map((entry) => inWords(...entry)), inWords('all', overall)].join('\n'));
process.exit(overall.score >= LEAST ? 0 : 1);
