import { Command } from 'commander';
import type { Io } from '../shell/io.js';
import { NEEDS_FLAGS } from '../shell/plan-flags.js';
import { addFlags, flagsGiven } from '../shell/question-flags.js';

const EXAMPLES = `Examples:
  shedlight deal kept.json --weavers 6 --yarns "8/2 cotton"
      a different cloth for each of six, on looms like one another
  shedlight deal kept.json --weavers group.yaml
      with the looms of a group, one weaver an entry:
        weavers:
          - { name: A, shafts: 4, treadles: 6, loom width: 32 in }
          - { name: H, width: 13 in, shafts: 4, heddles: 120 120 120 70, shuttles: 2 }

`;

/** The command that deals cloths to weavers: its flags and help. */
export function dealCommand(io: Io, finish: (code: number) => void): Command {
  const command = new Command('deal')
    .summary('a different cloth for each weaver of a group')
    .description(
      'Deals a shortlist to weavers, as different as possible and each within their loom, with a sheet for each.',
    )
    .argument('<shortlist>', 'a shortlist, as keep writes it')
    .argument('[needs]', 'yarns and usual figures as YAML file; keys as the flags')
    .addHelpText('before', EXAMPLES)
    .requiredOption('--weavers <n or file>', 'how many, or a YAML file of weavers with looms');
  addFlags(command, NEEDS_FLAGS);
  command
    .optionsGroup('Output:')
    .option('--out <folder>', 'where to write (default: beside the shortlist)')
    .option('--json', 'print the deal as JSON');
  return command.action(async (shortlist: string, needs: string | undefined, options: Record<string, unknown>) => {
    const { runDeal } = await import('./run.js');
    const weavers = String(options.weavers);
    finish(await runDeal({ shortlist, needs, flags: flagsGiven(options, NEEDS_FLAGS), ...options, weavers }, io));
  });
}
