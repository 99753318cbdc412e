import { Command } from 'commander';
import type { Io } from '../shell/io.js';
import { addFlags, FLOAT_FLAG, flagsGiven, ONE_STRUCTURE_FLAGS, YARN_FLAGS } from '../shell/question-flags.js';

const EXAMPLES = `Examples:
  shedlight enlarge "D L D D L" --structure "turned twill"
      one motif at 5, 20, 40 and 80 ends, with floats and finished widths
  shedlight enlarge DLDDL --structure "monk's belt" --out belt.png
      the same as a sheet of pictures at one scale
  shedlight enlarge DDL --structure crackle --sizes 12,24 --shrinkage "15 %"
      other sizes; those without whole units are refused, the nearest drawn
`;

const ENLARGE_FLAGS = {
  'What is woven:': [
    ...ONE_STRUCTURE_FLAGS,
    { key: 'draft', flags: '--draft <file>', about: 'a draft of your own instead of a structure' },
    ...YARN_FLAGS,
  ],
  'Colour orders:': [
    { key: 'weft', flags: '--weft <rule>', about: 'same, exchange, a letter or an order (default: same)' },
    { key: 'tabby', flags: '--tabby <letter>', about: 'yarn of the tabby picks (default: the last)' },
  ],
  'What is too long:': [FLOAT_FLAG],
} as const;

/** The command that shows one motif at every size: its flags and help. */
export function enlargeCommand(io: Io, finish: (code: number) => void): Command {
  const command = new Command('enlarge')
    .summary('one motif at every size that holds whole units')
    .description('Lays one colour order at every size that holds whole units, in every way, at one scale.')
    .argument('<order>', 'the motif, such as "D L D D L"')
    .addHelpText('before', EXAMPLES);
  addFlags(command, ENLARGE_FLAGS);
  command
    .optionsGroup('Sizes:')
    .option('--sizes <ends>', 'ends of the motif (default: 4, 8 and 16 an element)')
    .option('--shrinkage <share>', 'of the width, in finishing (default: 10 %)')
    .optionsGroup('Output:')
    .option('--out <file>', 'sheet of all sizes: .png or .svg')
    .option('--json', 'print sizes, drafts and floats as JSON');
  return command.action(async (order: string, options: Record<string, unknown>) => {
    const { runEnlarge } = await import('./run.js');
    finish(await runEnlarge({ order, flags: flagsGiven(options, ENLARGE_FLAGS), ...options }, io));
  });
}
