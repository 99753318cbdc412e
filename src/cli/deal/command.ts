import { Command } from 'commander';
import { PLAN_TABLE } from '../../plan/options/plan-options.js';
import { addFlags, flagsGiven } from '../shell/command-flags.js';
import type { Io } from '../shell/io.js';
import { PLAN_FLAGS } from '../shell/plan-flags.js';

const EXAMPLES = `Examples:
  shedlight deal kept.json --weavers 6 --yarn-size "8/2 cotton"
      a different cloth for each of six, on looms like one another
  shedlight deal kept.json --weavers group.yaml
      with the looms of a group, one weaver an entry:
        weavers:
          - { name: A, loom: "4 shafts, 6 treadles, 32 in" }
          - { name: H, width: 13 in, loom: "4 shafts, 120 120 120 70 heddles" }

`;

/** The command that deals cloths to weavers: its flags and help. */
export function dealCommand(io: Io, finish: (code: number) => void): Command {
  const command = new Command('deal')
    .summary('a different cloth for each weaver of a group')
    .description(
      'Deals a shortlist to weavers, as different as possible and each within their loom, with a sheet for each.',
    )
    .argument('<shortlist>', 'a shortlist, as keep writes it')
    .argument('[setup]', 'yarns and usual figures as YAML file; keys as the flags')
    .addHelpText('before', EXAMPLES)
    .requiredOption('--weavers <n or file>', 'how many, or a YAML file of weavers with looms');
  addFlags(command, PLAN_TABLE, PLAN_FLAGS);
  command
    .optionsGroup('Output:')
    .option('--out <folder>', 'where to write (default: beside the shortlist)')
    .option('--json', 'print the deal as JSON');
  return command.action(async (shortlist: string, setup: string | undefined, options: Record<string, unknown>) => {
    const { runDeal } = await import('./run.js');
    const weavers = String(options.weavers);
    finish(await runDeal({ shortlist, setup, flags: flagsGiven(options, PLAN_TABLE), ...options, weavers }, io));
  });
}
