/** Whole commands with files and flags that were made for them, as a person would start them, in this process. */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { main } from '../../dist/cli/main.js';
import { DRAFT_TABLE } from '../../dist/draft/yaml/draft-table.js';
import { flagOf } from '../../dist/input/flags.js';
import { WEAVERS_TABLE } from '../../dist/plan/deal/weavers.js';
import { PLAN_TABLE } from '../../dist/plan/options/plan-options.js';
import { RESULTS_TABLE } from '../../dist/plan/results/results-form.js';
import { QUESTION_TABLE } from '../../dist/search/question/question-table.js';
import { SHORTLIST } from './kinds.js';

/** Most files that one command may write here, and their bytes in all. */
const MOST_FILES = 200;
const MOST_BYTES = 50_000_000;
/** The exit codes of a command that can be asked anything: done, nothing fits, wrong. */
const CODES = [0, 1, 2];
/** Characters that would steer a terminal or turn the direction of its text. */
const STEERS = /(?!\n)[\p{Cc}\u202a-\u202e\u2066-\u2069]/u;

export function commandsOf(makes) {
  const { random, pick, file, flags, disturbed, cells, text } = makes;
  const home = mkdtempSync(join(tmpdir(), 'shedlight-fuzz-'));
  const counts = {};
  let inner = '';
  const put = (name, data) => {
    writeFileSync(join(inner, name), data);
    return name;
  };
  const list = () => put('kept.json', random() < 0.75 ? SHORTLIST : JSON.stringify(disturbed(JSON.parse(SHORTLIST))));
  const typed = (table, leftOut = []) =>
    Object.entries(flags(table))
      .filter(([key]) => !leftOut.includes(key))
      .flatMap(([key, value]) => [`${flagOf(key)}=${value}`]);
  const draft = () => put('draft.yaml', file(DRAFT_TABLE, ['threading', 'tie-up', 'treadling']));
  const out = (name) => ['--out', random() < 0.95 ? name : pick(['-', '.', '/', '', 'no/such/place', text()])];
  const json = () => (random() < 0.3 ? ['--json'] : []);
  // A search that is asked anything may take hours, as it should: here few orders are asked for.
  const short = ['--orders=DL, DDL', '--show=6', '--limits=repeat 60'];
  const commands = {
    explore: () => [
      'explore',
      put('asked.yaml', file(QUESTION_TABLE, ['structure'])),
      ...short,
      '--tries=1',
      '--workers=1',
    ],
    draw: () => ['draw', draft(), ...(random() < 0.3 ? typed(QUESTION_TABLE, ['draft', 'on the loom', 'done']) : [])],
    enlarge: () => [
      'enlarge',
      pick(['DL', 'DDLDL', text()]),
      '--structure=2/2 twill',
      '--sizes',
      pick(['20', '12, 1000', text()]),
    ],
    keep: () => ['keep', list(), '--note', text(), ...pick([[], ['--wif']])],
    plan: () => [
      'plan',
      list(),
      ...(random() < 0.6 ? [put('setup.yaml', file(PLAN_TABLE))] : []),
      ...typed(PLAN_TABLE),
      ...(random() < 0.3 ? ['--learnt', put('results.yaml', file(RESULTS_TABLE))] : []),
      ...(random() < 0.2 ? [`--gamp=${pick(['2 by 2', '3', text()])}`] : []),
    ],
    deal: () => ['deal', list(), '--weavers', random() < 0.3 ? '2' : put('weavers.yaml', file(WEAVERS_TABLE))],
    convert: () => [
      'convert',
      random() < 0.6 ? draft() : put('cells.txt', cells()),
      pick(['o.wif', 'o.yaml', 'o.txt']),
      ...pick([[], ['--units'], ['--lift-plan']]),
    ],
    structures: () => ['structures', pick(['huck', 'overshot', text()])],
    page: () => ['page'],
  };
  const outputs = { draw: ['o.png', 'o.svg'], enlarge: ['o.png', 'o.svg'], keep: ['o.json'], structures: ['o.png'] };
  const words = (name) => {
    const given = commands[name]();
    if (name === 'convert') return given;
    const takesJson = name !== 'page' ? json() : [];
    return [...given, ...out(pick(outputs[name] ?? (name === 'page' ? ['o.html'] : ['o']))), ...takesJson];
  };

  return {
    counts,
    /** Runs one command; fails where it does not end as documented, or writes where it must not, or too much. */
    async run(number, fail) {
      const name = pick(Object.keys(commands));
      inner = join(home, 'in');
      mkdirSync(inner);
      process.chdir(inner);
      const given = words(name);
      const [stdout, stderr] = [new PassThrough(), new PassThrough()];
      const said = { stdout: '', stderr: '' };
      stdout.on('data', (chunk) => (said.stdout += chunk));
      stderr.on('data', (chunk) => (said.stderr += chunk));
      const code = await main(['node', 'shedlight', ...given], { stdout, stderr });
      await new Promise(setImmediate);
      const wrong = (what) => {
        const inputs = readdirSync(inner).filter((each) => /\.(yaml|json|txt)$/.test(each));
        fail(
          `ended with ${code}: ${what}: ${said.stderr.slice(0, 600)}; see ${inputs.join(' ')} in ${inner}`,
          name,
          number,
          given,
        );
      };
      if (!CODES.includes(code)) wrong('expected 0, 1 or 2');
      if (code === 2 && !/^(shedlight: [^\n]+\n)+$/.test(said.stderr)) wrong('expected sentences');
      if (said.stderr.split('\n').some((line) => line.length > 1200)) wrong('said more than a sentence');
      if (STEERS.test(said.stdout + said.stderr)) wrong('steers a terminal');
      if (code === 0 && given.includes('--json')) JSON.parse(said.stdout);
      const outside = readdirSync(home).filter((each) => each !== 'in');
      if (outside.length > 0) wrong(`wrote ${outside} outside`);
      const all = readdirSync(inner, { recursive: true });
      if (all.some((each) => each.includes('.shedlight-')))
        wrong(`left ${all.filter((each) => each.includes('.shedlight-'))}`);
      const bytes = all.reduce((sum, each) => sum + statSync(join(inner, each)).size, 0);
      if (all.length > MOST_FILES || bytes > MOST_BYTES) wrong(`wrote ${all.length} files of ${bytes} bytes`);
      process.chdir(home);
      rmSync(inner, { recursive: true });
      counts[name] ??= { done: 0, nothingFits: 0, wrong: 0, mostBytes: 0 };
      const tally = counts[name];
      tally[['done', 'nothingFits', 'wrong'][code]]++;
      tally.mostBytes = Math.max(tally.mostBytes, bytes);
      return name;
    },
    end() {
      process.chdir(tmpdir());
      rmSync(home, { recursive: true });
    },
  };
}
