import { Command, CommanderError } from 'commander';
import { programVersion } from '../files/program-version.js';
import { brief, MachineFault, Problem } from '../problem.js';
import { completionCommand } from './completion/command.js';
import { convertCommand } from './convert/command.js';
import { dealCommand } from './deal/command.js';
import { drawCommand } from './draw/command.js';
import { enlargeCommand } from './enlarge/command.js';
import { exploreCommand } from './explore/command.js';
import { onEnd } from './explore/interrupt.js';
import { keepCommand } from './keep/command.js';
import { pageCommand } from './page/command.js';
import { planCommand } from './plan/command.js';
import { tellSeldom } from './shell/command-flags.js';
import { EXIT, EXIT_WORDS, type Io, sayLines, sayWrong } from './shell/io.js';
import { refusePasted } from './shell/pasted.js';
import { structuresCommand } from './structures/command.js';

const EXAMPLES = `Examples:
  shedlight explore --structure "2/2 twill"
      every order of 2 to 6 threads, ranked
  shedlight explore gallery/turned-twill.yaml
      the demo question, asked in a file: turned twill in two blocks
  shedlight draw --structure "2/2 twill" --warp D4L4 --out twill.png
      one draft, its figures and its picture
  shedlight structures "summer and winter"
      what is known of a structure
`;

const EXITS = `
Exit codes:
${Object.entries(EXIT)
  .map(([name, code]) => `  ${String(code).padStart(3)}  ${EXIT_WORDS[name as keyof typeof EXIT]}\n`)
  .join('')}Files and folders are written whole or not at all. What is called
.NAME.shedlight-… beside NAME is work under way; where a run was killed, the
next one into the same place puts it right.
Results go to stdout, everything else to stderr. NO_COLOR is respected.
`;

/** How a person calls this program: by npx in a checkout, else by its name. */
function called(): string {
  return process.env.npm_command === undefined ? 'shedlight' : 'npx shedlight';
}

/**
 * Runs the command line and returns the exit code. The code of a command is loaded only when it runs, so that help is
 * shown at once.
 *
 * @param argv as in process.argv: the first two are the program
 */
export async function main(
  argv: readonly string[],
  io: Io = { stdout: process.stdout, stderr: process.stderr, called: called() },
): Promise<number> {
  const listensNoLonger = onEnd();
  for (const stream of [io.stdout, io.stderr]) stream.on('error', (error) => leave(error, io));
  let code: number = EXIT.done;
  const program = programOf(
    io,
    (result) => {
      code = result;
    },
    asksForAll(argv),
  );
  try {
    refusePasted(
      argv.slice(2),
      new Set(program.commands.flatMap(({ options }) => options.map(({ long }) => `${long}`))),
    );
    await program.parseAsync(argv);
    return code;
  } catch (error) {
    return said(error, io);
  } finally {
    listensNoLonger();
  }
}

/** Whether the help that is asked for is to show the seldom flags too: `--help all`. */
function asksForAll(argv: readonly string[]): boolean {
  return argv.some((word, at) => (word === '--help' || word === '-h') && argv[at + 1] === 'all');
}

/** All commands with their flags and help. `all`: whether the help shows the seldom flags too. */
export function programOf(io: Io, finish: (code: number) => void, all: boolean): Command {
  const program = new Command('shedlight');
  const speech = {
    writeOut: (text: string) => sayLines(io.stdout, text),
    writeErr: (text: string) => sayLines(io.stderr, text),
    outputError: (text: string) =>
      sayWrong(io, `${plainly(shortened(text.replace(/^error:\s*|\.?\s*$/g, '')))}; --help tells what there is`),
  };
  program
    .description('Searches for colour-and-weave patterns for handweavers.')
    .version(programVersion(), '-V, --version', 'print the version')
    .helpCommand('help [command]', 'print the help of a command')
    .addHelpText('before', EXAMPLES)
    .addHelpText('after', EXITS);
  for (const command of [
    exploreCommand(io, finish),
    enlargeCommand(io, finish),
    drawCommand(io, finish),
    structuresCommand(io, finish),
    keepCommand(io, finish),
    planCommand(io, finish),
    dealCommand(io, finish),
    convertCommand(io, finish),
    pageCommand(io, finish),
    completionCommand(io, finish),
  ]) {
    tellSeldom(command, all);
    program.addCommand(command);
  }
  for (const command of [program, ...program.commands]) {
    command.helpOption('-h, --help', 'print this help; all: with the seldom options');
    command.exitOverride().configureOutput(speech).configureHelp({ helpWidth: 80 }).showSuggestionAfterError();
  }
  return program;
}

/** A message of the command-line library about too many words or too few, in plain words. */
function plainly(message: string): string {
  return message
    .replace(
      /^too many arguments for '(.*)'\. Expected (\d+) arguments? but got (\d+)$/,
      '$1: found $3 words; expected $2 at most, and quotation marks round a name of several words',
    )
    .replace(/^missing required argument '(.*)'$/, (_, what: string) => `found no ${MISSING[what] ?? what}`)
    .replace(/^required option '(\S+) .*' not specified$/, 'found no $1');
}

/** What an argument is, where its name does not say it. */
const MISSING: Readonly<Record<string, string>> = { in: 'input file', out: 'output file', order: 'colour order' };

/** A message of the command-line library with its quotations shortened. */
function shortened(message: string): string {
  return message.replace(/'([^']*)'/g, (_, found: string) => `'${brief(found)}'`);
}

/** Prints an error in one line and returns its exit code. */
function said(error: unknown, io: Io): number {
  // Commander has already printed the message: help and version with code 0, wrong usage with another.
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.wrong;
  if (error instanceof Problem) {
    sayWrong(io, error.message);
    return EXIT.wrong;
  }
  const { message } = error instanceof Error ? error : new Error(String(error));
  sayWrong(io, error instanceof MachineFault ? message : `internal error: ${message}`);
  return EXIT.machine;
}

/** Handles an error of an output stream: a closed pipe (as by `head`) is no failure, anything else is. */
function leave(error: NodeJS.ErrnoException, io: Io): never {
  if (error.code === 'EPIPE') process.exit(EXIT.done);
  sayWrong(io, `what it has to say could not be written (${error.code})`);
  process.exit(EXIT.machine);
}
