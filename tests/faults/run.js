/**
 * Disturbs the commands that write, and checks what they leave: `npm run test:faults -- --kills 500 --seed 1`. Ends at the
 * first fault, with a sentence; else prints what was done, as JSON. The same seed disturbs the same commands at the same
 * changes; the moments of kills from outside depend on the machine.
 */
import { rmSync } from 'node:fs';
import { parseArgs } from 'node:util';
import seedrandom from 'seedrandom';
import { fullDisks } from './full-disk.js';
import { kills } from './kills.js';
import { outputs } from './outputs.js';
import { preparedAll } from './place.js';

const { values } = parseArgs({
  options: { kills: { type: 'string', default: '500' }, seed: { type: 'string', default: '1' } },
});
const count = Number(values.kills);
if (!Number.isInteger(count) || count < 0) {
  console.error(`--kills ${values.kills}: expected a whole number`);
  process.exit(2);
}

/** From so many kills on, everything is put in the way of every command; of fewer, of a few commands. */
const ALL_FROM = 100;
const FEW = 4;
const tell = (line) => process.stderr.write(`${line}\n`);
const random = seedrandom.alea(`faults ${values.seed}`);
try {
  const all = preparedAll(tell);
  const drawn = count < ALL_FROM ? all.filter(() => random() < FEW / all.length) : all;
  const report = {
    seed: values.seed,
    outputs: await outputs(drawn, tell),
    fullDisks: fullDisks(all, count, random, tell),
    kills: await kills(all, count, random, tell),
  };
  for (const { home, after } of all) for (const each of [home, after]) rmSync(each, { recursive: true });
  console.log(JSON.stringify(report, null, 2));
} catch (error) {
  console.error(`faults: ${error.message} (seed ${values.seed})`);
  process.exitCode = 1;
}
