import { Command, Option } from 'commander';
import { QUESTION_TABLE } from '../../search/question/question-table.js';
import { addFlags, flagsGiven, seldom } from '../shell/command-flags.js';
import type { Io } from '../shell/io.js';

const EXAMPLES = `Examples:
  shedlight explore --structure "2/2 twill"
      all orders of 2 to 6 threads on a twill, the weft as the warp
  shedlight explore --structure "plain weave" --lengths 5 --weft own
      every warp order of five with every weft order of five
  shedlight explore --structure "summer and winter" --blocks 4 --profile search
      every order of four blocks, in a dark pattern weft on light
  shedlight explore turned-twill.yaml --sett 24 --limits "float 3/8 in"
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
  addFlags(
    command,
    QUESTION_TABLE,
    {
      'What is woven:': {
        usual: ['structure', 'treadling', 'blocks', 'profile', 'draft', 'on the loom', 'yarns', 'sett'],
        seldom: ['name draft', 'treadled', 'profile lengths'],
      },
      'Colour orders:': {
        usual: ['lengths', 'orders', 'warp', 'weft', 'by', 'fill', 'times'],
        seldom: ['tabby', 'starts'],
      },
      'What is set aside:': { usual: ['limits', 'loom', 'done'], seldom: ['unlike done', 'same'] },
      'What is shown:': { usual: ['rank', 'show'], seldom: ['seen', 'seed', 'tries'] },
    },
    { many: true },
  );
  command
    .optionsGroup('Output:')
    .option('--out <folder>', 'folder of the gallery (default: named after the question)')
    .option('--resume', 'go on with a search that was cut short')
    .option('--json', 'print what was found as JSON')
    .addOption(
      seldom(
        new Option(
          '--workers <n>',
          'most threads to work on (default: all the machine has); a short search takes fewer',
        ),
      ),
    )
    .addOption(seldom(new Option('--shard <i/n>', 'do one of n parts of the search, on any machine')))
    .addOption(seldom(new Option('--merge <parts...>', 'bring all parts together')))
    .addOption(seldom(new Option('--quiet', 'no progress')));
  return command.action(async (file: string | undefined, options: Record<string, unknown>) => {
    const { runExplore } = await import('./run.js');
    finish(await runExplore({ file, flags: flagsGiven(options, QUESTION_TABLE), ...options }, io));
  });
}
