import { Command } from 'commander';
import type { Io } from '../shell/io.js';

const EXAMPLES = `Examples:
  shedlight page                         shedlight.html, to open in a browser
  shedlight page --out ask.html          the same under another name
`;

/** The command that writes the page in which questions are asked: its flags and help. */
export function pageCommand(io: Io, finish: (code: number) => void): Command {
  return new Command('page')
    .summary('a page in which questions are asked, without this command')
    .description(
      'Writes one HTML file that searches in a browser: no network, nothing to install. It shows the same cloths as explore.',
    )
    .addHelpText('before', EXAMPLES)
    .option('--out <file>', 'the page, .html (default: shedlight.html)')
    .action(async (options: { out?: string }) => {
      const { runPage } = await import('./run.js');
      finish(runPage(options, io));
    });
}
