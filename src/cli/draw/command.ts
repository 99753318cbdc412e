import { Command, Option } from 'commander';
import { QUESTION_TABLE } from '../../search/question/question-table.js';
import { addFlags, flagsGiven, seldom } from '../shell/command-flags.js';
import type { Io } from '../shell/io.js';

const EXAMPLES = `Examples:
  shedlight draw my-draft.yaml
      a draft of your own: its figures, and what is wrong with it
  shedlight draw --structure "2/2 twill" --warp DDDDLLLL --out hound.png
      hound's tooth as a picture of the cloth at its true size
  shedlight draw --structure overshot
      a structure alone: a dark warp and a light weft, or a dark pattern weft
  shedlight draw --structure "summer and winter" --profile "A A B" \\
      --warp DLDDL --by unit --weft D --out draft.svg
      threading, tie-up and treadling as a drawing
  shedlight draw --structure "turned twill on four shafts" --warp DL \\
      --loom "sinking, 4 shafts, 6 treadles"
      tied up for a loom, with two feet where its treadles are too few
`;

/** The command that shows one draft: its flags and help. */
export function drawCommand(io: Io, finish: (code: number) => void): Command {
  const command = new Command('draw')
    .summary('one draft: its figures, its picture, what is wrong with it')
    .description('Shows one draft, from a file or made from a structure, with all its figures.')
    .argument('[draft]', 'a draft, YAML or WIF')
    .addHelpText('before', EXAMPLES);
  addFlags(
    command,
    QUESTION_TABLE,
    {
      'What is woven, where no draft is given:': {
        usual: ['structure', 'treadling', 'blocks', 'profile', 'yarns', 'sett'],
        seldom: ['name draft', 'treadled'],
      },
      'Colour orders:': { usual: ['warp', 'weft', 'by'], seldom: ['fill', 'times', 'tabby'] },
      'What is too long, and what it is woven on:': { usual: ['limits', 'loom'] },
      'The picture:': { usual: [], seldom: ['seen'] },
    },
    {
      instead: {
        warp: 'colour order of the warp, DLDDL (default: one colour)',
        weft: 'same, exchange, a letter or an order (default: same, where --warp is given)',
        limits: 'longest float: "float 1/2 in" (default: float 7)',
        loom: 'tie it up for a loom: "rising, 4 shafts, 6 treadles, 120 heddles, 400 ends"',
      },
    },
  );
  command
    .addOption(
      seldom(new Option('--start <end/pick>', 'end and pick (or units) on which the orders begin, 2/3 (default: 1/1)')),
    )
    .optionsGroup('Output:')
    .option('--out <file>', 'picture: .png for the cloth at true size, .svg for the draft')
    .option('--json', 'print the figures as JSON');
  return command.action(async (file: string | undefined, options: Record<string, unknown>) => {
    const { runDraw } = await import('./run.js');
    finish(await runDraw({ file, flags: flagsGiven(options, QUESTION_TABLE), ...options }, io));
  });
}
