import { Command } from 'commander';
import type { Io } from '../shell/io.js';

const EXAMPLES = `Examples:
  shedlight keep gallery/turned-twill 01bfseap aj7s2er7
      two cloths of a gallery, into kept.json
  shedlight keep gallery/turned-twill 01bfseap --stars 4 --note "for the runner"
      with marks
  shedlight keep saved.json --out lesson-3.json
      the cloths that a gallery's page saved
  shedlight keep gallery/turned-twill 01bfseap --wif
      and kept-wif/01bfseap.wif, for your own software or loom

`;

/** The command that makes a shortlist: its flags and help. */
export function keepCommand(io: Io, finish: (code: number) => void): Command {
  return new Command('keep')
    .summary('a shortlist of cloths from a gallery')
    .description(
      'Makes a shortlist, or adds to one: cloths of a gallery by their codes, or a list that its page saved.',
    )
    .argument('<gallery>', "a gallery's folder, or a list that its page saved")
    .argument('[codes...]', 'codes of cloths in the gallery')
    .addHelpText('before', EXAMPLES)
    .option('--out <file>', 'the shortlist (default: kept.json)')
    .option('--stars <n>', 'stars from 0 to 5 for the codes given')
    .option('--note <words>', 'a note for the codes given')
    .option('--wif', 'write a WIF file of every cloth on the shortlist, in a folder beside it')
    .option('--json', 'print what was kept as JSON')
    .action(async (gallery: string, codes: string[], options: Record<string, unknown>) => {
      const { runKeep } = await import('./run.js');
      finish(await runKeep({ gallery, codes, ...options }, io));
    });
}
