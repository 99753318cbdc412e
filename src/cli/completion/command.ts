import { Command } from 'commander';
import { Problem, quote } from '../../problem.js';
import { orList } from '../../words/counts.js';
import { EXIT, type Io, sayLines } from '../shell/io.js';

const EXAMPLES = `Examples:
  shedlight completion bash >> ~/.bash_completion
      the Tab key completes commands, flags and their words in new terminals
  shedlight completion fish > shedlight.fish
      for fish: put it into ~/.config/fish/completions
`;

const SHELLS = ['bash', 'zsh', 'fish'] as const;

/** The command that prints a script for a shell: its help. */
export function completionCommand(io: Io, finish: (code: number) => void): Command {
  const command = new Command('completion')
    .summary('the Tab key in bash, zsh or fish')
    .description('Prints a script by which a shell completes commands, flags and the words that flags take.')
    .argument('<shell>', orList(SHELLS))
    .addHelpText('before', EXAMPLES);
  return command.action(async (given: string) => {
    const shell = SHELLS.find((name) => name === given);
    if (shell === undefined) throw new Problem(`completion: found ${quote(given)}; expected ${orList(SHELLS)}`);
    const { completionFor } = await import('./shell-scripts.js');
    sayLines(io.stdout, completionFor(shell, command.parent!, SHELLS));
    finish(EXIT.done);
  });
}
