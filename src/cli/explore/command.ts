import { Command, Option } from 'commander';
import type { Io } from '../shell/io.js';
import { addFlags, flagsGiven, QUESTION_FLAGS } from '../shell/question-flags.js';

const EXAMPLES = `Examples:
  shedlight explore --structure "2/2 twill"
      all orders of 2 to 6 threads on a twill, the weft as the warp
  shedlight explore --structure "plain weave" --lengths 5 --weft own
      every warp order of five with every weft order of five
  shedlight explore turned-twill.yaml --sett 24 --limit-float "3/8 in"
      what a file asks, with another sett and a limit for floats
`;

/** The command that searches: its flags and help. The code that searches is loaded only when it is needed. */
export function exploreCommand(io: Io, finish: (code: number) => void): Command {
  const command = new Command('explore')
    .summary('search, score, rank; write a gallery')
    .description(
      'Lays colour orders on a weave in every way asked, scores each cloth and writes a gallery of the best.',
    )
    .argument('[question]', 'a question as YAML file; flags win over what it says')
    .addHelpText('before', EXAMPLES);
  addFlags(command, QUESTION_FLAGS);
  command
    .optionsGroup('Output:')
    .option('--out <folder>', 'folder of the gallery (default: named after the question)')
    .addOption(new Option('--workers <n>', 'threads to work on (default: all the machine has)'))
    .option('--resume', 'go on with a search that was cut short')
    .option('--shard <i/n>', 'do one of n parts of the search, on any machine')
    .option('--merge <parts...>', 'bring all parts together')
    .option('--json', 'print what was found as JSON')
    .option('--quiet', 'no progress');
  return command.action(async (file: string | undefined, options: Record<string, unknown>) => {
    const { runExplore } = await import('./run.js');
    finish(await runExplore({ file, flags: flagsGiven(options, QUESTION_FLAGS), ...options }, io));
  });
}
