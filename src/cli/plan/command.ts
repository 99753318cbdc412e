import { Command } from 'commander';
import { PLAN_TABLE } from '../../plan/options/plan-options.js';
import { addFlags, flagsGiven, refused } from '../shell/command-flags.js';
import type { Io } from '../shell/io.js';
import { PLAN_FLAGS } from '../shell/plan-flags.js';

const EXAMPLES = `Examples:
  shedlight plan kept.json --yarn-size "8/2 cotton"
      sample warps, 20 in wide, and a sheet for each cloth
  shedlight plan kept.json loom-4.yaml --for towel --paper letter
      with the loom and the usual figures kept in a file; flags win
  shedlight plan kept.json --gamp "5 by 5"
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
    .argument('[setup]', 'loom, yarns and usual figures as YAML file; keys as the flags')
    .addHelpText('before', EXAMPLES);
  addFlags(command, PLAN_TABLE, PLAN_FLAGS);
  command
    .optionsGroup('One warp for all:')
    .option('--gamp [sections]', 'warp sections crossed with weft sections, "5 by 5" (default: all orders)');
  addFlags(command, PLAN_TABLE, { 'One warp for all:': { usual: [], seldom: ['section', 'separator'] } });
  for (const flag of ['--warps', '--wefts']) command.addOption(refused(flag, '--gamp "5 by 5"'));
  command
    .optionsGroup('Output:')
    .option('--learnt <file>', 'results you filled in, each for its own cloth or structure')
    .option('--out <folder>', 'where to write (default: beside the shortlist)')
    .option('--json', 'print the plan as JSON');
  return command.action(async (shortlist: string, setup: string | undefined, options: Record<string, unknown>) => {
    const { runPlan } = await import('./run.js');
    finish(await runPlan({ shortlist, setup, flags: flagsGiven(options, PLAN_TABLE), ...options }, io));
  });
}
