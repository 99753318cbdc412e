import { Command } from 'commander';
import { SEEN } from '../../draft/point-of-view.js';
import type { Io } from '../shell/io.js';

const EXAMPLES = `Examples:
  shedlight convert towel.wif towel.yaml           a draft to write in
  shedlight convert towel.yaml towel.wif           for your own software or loom
  shedlight convert towel.wif table.wif --lift-plan
      for a table loom: shafts at each pick, no treadles
  shedlight convert towel.wif towel.yaml --units
      with the units of its structure, where one is recognised
  shedlight convert towel.yaml towel.txt           a draft in letters, for print
  shedlight convert cloth.png cloth.yaml           from black and white cells

`;

/** The command that turns a draft from one kind of file into another: its flags and help. */
export function convertCommand(io: Io, finish: (code: number) => void): Command {
  return new Command('convert')
    .summary('a draft from one kind of file to another')
    .description(
      'Turns a draft from one kind of file into another, by the endings of their names: .yaml, .wif (WIF 1.1), .txt (for print), or from the cells of a cloth (.txt with # and ., .png).',
    )
    .argument('<in>', 'input file')
    .argument('<out>', 'output file')
    .addHelpText('before', EXAMPLES)
    .option('--units', 'recognise structure and units, and write them')
    .option('--lift-plan', 'write the shafts of each pick, no treadles (.wif)')
    .option('--seen <places>', `${SEEN.about} (.txt; default: ${SEEN.usual})`)
    .option('--dots <n>', 'dots each way of one cell in a picture (default: 1)')
    .action(async (input: string, output: string, options: Record<string, unknown>) => {
      const { runConvert } = await import('./run.js');
      finish(await runConvert({ input, output, ...options }, io));
    });
}
