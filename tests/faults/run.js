/**
 * Disturbs the commands that write, and checks what they leave: `npm run test:faults -- --kills 500 --seed 1`. Ends at the
 * first fault, with a sentence; else prints what was done, as JSON. The same seed disturbs the same commands at the same
 * changes; the moments of kills from outside depend on the machine.
 */
import { parseArgs } from 'node:util';
import seedrandom from 'seedrandom';
import { fullDisks } from './full-disk.js';
import { kills } from './kills.js';
import { outputs } from './outputs.js';

const { values } = parseArgs({
  options: { kills: { type: 'string', default: '500' }, seed: { type: 'string', default: '1' } },
});
const count = Number(values.kills);
if (!Number.isInteger(count) || count < 0) {
  console.error(`--kills ${values.kills}: expected a whole number`);
  process.exit(2);
}

const tell = process.stderr.isTTY ? (line) => process.stderr.write(`\r\u001b[K${line}`) : () => undefined;
const random = seedrandom.alea(`faults ${values.seed}`);
try {
  // As many disks are filled as runs are killed, up to every write of every command.
  const report = {
    seed: values.seed,
    outputs: await outputs(tell),
    fullDisks: fullDisks(count, random, tell),
    kills: await kills(count, random, tell),
  };
  console.log(JSON.stringify(report, null, 2));
} catch (error) {
  console.error(`faults: ${error.message} (seed ${values.seed})`);
  process.exitCode = 1;
}
