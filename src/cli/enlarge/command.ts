import { Command } from 'commander';
import { QUESTION_TABLE } from '../../search/question/question-table.js';
import { addFlags, flagsGiven } from '../shell/command-flags.js';
import type { Io } from '../shell/io.js';

const EXAMPLES = `Examples:
  shedlight enlarge "D L D D L" --structure "turned twill"
      one motif at 5, 20, 40 and 80 ends, with floats and finished widths
  shedlight enlarge DLDDL --structure "monk's belt" --out belt.png
      the same as a sheet of pictures at one scale
  shedlight enlarge DDL --structure crackle --sizes 12,24 --shrinkage "15 %"
      other sizes; those without whole units are refused, the nearest drawn
`;

/** The command that shows one motif at every size: its flags and help. */
export function enlargeCommand(io: Io, finish: (code: number) => void): Command {
  const command = new Command('enlarge')
    .summary('one motif at every size that holds whole units')
    .description('Lays one colour order at every size that holds whole units, in every way, at one scale.')
    .argument('<order>', 'the motif, such as "D L D D L"')
    .addHelpText('before', EXAMPLES);
  addFlags(
    command,
    QUESTION_TABLE,
    {
      'What is woven:': {
        usual: ['structure', 'treadling', 'blocks', 'profile', 'draft', 'yarns', 'sett'],
        seldom: ['name draft', 'treadled'],
      },
      'Colour orders:': { usual: ['weft'], seldom: ['tabby'] },
      'What is too long:': { usual: ['limits'] },
      'The sheet:': { usual: [], seldom: ['seen'] },
    },
    {
      instead: {
        weft: 'same, exchange, a letter or an order (default: same)',
        limits: 'longest float: "float 1/2 in" (default: float 7)',
      },
    },
  );
  command
    .optionsGroup('Sizes:')
    .option('--sizes <ends>', 'ends of the motif (default: 4, 8 and 16 an element)')
    .option('--shrinkage <share>', 'of the width, in finishing (default: 10 %)')
    .optionsGroup('Output:')
    .option('--out <file>', 'sheet of all sizes: .png or .svg')
    .option('--json', 'print sizes, drafts and floats as JSON');
  return command.action(async (order: string, options: Record<string, unknown>) => {
    const { runEnlarge } = await import('./run.js');
    finish(await runEnlarge({ order, flags: flagsGiven(options, QUESTION_TABLE), ...options }, io));
  });
}
