import { Command } from 'commander';
import { SEEN } from '../../draft/point-of-view.js';
import type { Io } from '../shell/io.js';
import type { StructuresArguments } from './run.js';

const EXAMPLES = `Examples:
  shedlight structures                      all, one a line
  shedlight structures "summer and winter"  one, with units, tie-up and floats
  shedlight structures "turned twill" --blocks 4
                                            four blocks, on sixteen shafts
  shedlight structures --shafts 8           those that eight shafts weave
  shedlight structures huck --out huck.png  the same, with a sheet of its cloths
`;

/** The command that tells of structures: its flags and help. */
export function structuresCommand(io: Io, finish: (code: number) => void): Command {
  return new Command('structures')
    .summary('the structures known, or one with its units')
    .description('Lists the weave structures known, or tells of one: units, tie-up, treadlings, floats.')
    .argument('[name]', 'a structure, by any of its names')
    .addHelpText('before', EXAMPLES)
    .option('--shafts <n>', 'what a loom of so many shafts can weave, with how many blocks')
    .option('--blocks <n>', 'one with so many blocks, as many as 32 shafts hold')
    .option('--out <file>', 'draw one: a sheet of its cloths, .png')
    .option('--seen <places>', `${SEEN.about} (default: ${SEEN.usual})`)
    .option('--json', 'print as JSON')
    .action(async (name: string | undefined, options: Omit<StructuresArguments, 'name'>) => {
      const { runStructures } = await import('./run.js');
      finish(await runStructures({ name, ...options }, io));
    });
}
