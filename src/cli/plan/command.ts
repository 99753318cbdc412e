import { Command } from 'commander';
import type { Io } from '../shell/io.js';
import { NEEDS_FLAGS } from '../shell/plan-flags.js';
import { addFlags, flagsGiven } from '../shell/question-flags.js';

const EXAMPLES = `Examples:
  shedlight plan kept.json --yarns "8/2 cotton"
      sample warps, 20 in wide, and a sheet for each cloth
  shedlight plan kept.json loom-4.yaml --for towel --paper letter
      with the loom and the usual figures kept in a file; flags win
  shedlight plan kept.json --gamp --warps 5 --wefts 5
      all on one warp, in sections that weave the most different cloths
  shedlight plan kept.json --learnt kept-plan/results.yaml --out second
      corrected by what the last round showed

`;

/** The command that plans sample warps: its flags and help. */
export function planCommand(io: Io, finish: (code: number) => void): Command {
  const command = new Command('plan')
    .summary('sample warps and printable sheets for a shortlist')
    .description('Plans the warps of a shortlist: winding, threading, reed, picks, yarn; with sheets to print.')
    .argument('<shortlist>', 'a shortlist, as keep writes it')
    .argument('[needs]', 'loom, yarns and usual figures as YAML file; keys as the flags')
    .addHelpText('before', EXAMPLES);
  addFlags(command, NEEDS_FLAGS);
  command
    .optionsGroup('One warp for all:')
    .option('--gamp', 'warp sections crossed with weft sections')
    .option('--warps <n>', 'warp sections (default: all orders)')
    .option('--wefts <n>', 'weft sections (default: all orders)')
    .option('--section <n>', 'ends in each section (default: as many as fit)')
    .option('--separator <n>', 'ends and picks between sections (default: the fewest from 4 on that fit)')
    .optionsGroup('Output:')
    .option('--learnt <file>', 'results you filled in, each for its own cloth or structure')
    .option('--out <folder>', 'where to write (default: beside the shortlist)')
    .option('--json', 'print the plan as JSON');
  return command.action(async (shortlist: string, needs: string | undefined, options: Record<string, unknown>) => {
    const { runPlan } = await import('./run.js');
    finish(await runPlan({ shortlist, needs, flags: flagsGiven(options, NEEDS_FLAGS), ...options }, io));
  });
}
