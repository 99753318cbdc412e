import { stripVTControlCharacters, styleText } from 'node:util';
import { seen, TURNING } from '../../words/seen.js';

/** Where a command writes: results to stdout, everything else to stderr. */
export interface Io {
  readonly stdout: NodeJS.WriteStream;
  readonly stderr: NodeJS.WriteStream;
  /** How a person calls this program, for commands to copy: `npx shedlight` where npm runs it. Default: `shedlight`. */
  readonly called?: string;
}

/** Exit codes, on which scripts may rely. */
export const EXIT = {
  done: 0,
  nothingFits: 1,
  wrong: 2,
  machine: 3,
  // 128 plus the number of the signal, as in shells: Ctrl-C, a closed terminal, a request to end.
  interrupted: 130,
  hungUp: 129,
  terminated: 143,
} as const;

/** What each exit code means. */
export const EXIT_WORDS: Readonly<Record<keyof typeof EXIT, string>> = {
  done: 'done',
  nothingFits: 'nothing fits the question',
  wrong: 'the question, a flag or a file is wrong',
  machine: 'the disk or the machine failed',
  interrupted: 'ended by Ctrl-C',
  hungUp: 'ended by a terminal that was closed (SIGHUP)',
  terminated: 'ended from outside (SIGTERM)',
};

const UNSEEN_IN_JSON = new RegExp(`[\\u007f-\\u009f${TURNING}]`, 'gu');
/** The escape sequences of our styles; they do no harm even in a name from a file. */
const STYLES = new RegExp(`(${String.fromCharCode(27)}\\[(?:1|22|31|39)m)`);

/** Writes one line. Text from files and names in it can neither control the terminal nor begin another line. */
export function say(stream: NodeJS.WriteStream, line: string): void {
  const parts = hasStyles(stream) ? line.split(STYLES) : [line];
  // The odd parts are styles.
  stream.write(`${parts.map((part, at) => (at % 2 === 1 ? part : seen(stripVTControlCharacters(part)))).join('')}\n`);
}

/** Writes a text of several lines, each like {@link say}. */
export function sayLines(stream: NodeJS.WriteStream, text: string): void {
  for (const line of text.replace(/\n$/, '').split('\n')) say(stream, line);
}

/** Writes one object as JSON, for machines. */
export function sayJson(io: Io, value: unknown): void {
  sayJsonText(io, `${JSON.stringify(value, null, 2)}\n`);
}

/** Writes JSON, for machines; characters that would control a terminal are escaped. */
export function sayJsonText({ stdout }: Io, text: string): void {
  stdout.write(text.replace(UNSEEN_IN_JSON, (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`));
}

/** A command that a person can copy and run. */
export function commandLine({ called = 'shedlight' }: Io, ...words: readonly string[]): string {
  return [called, ...words].join(' ');
}

/** Text in bold on a terminal that supports it; plain in a pipe and with NO_COLOR. */
export function bold(stream: NodeJS.WriteStream, text: string): string {
  return styled(stream, 'bold', text);
}

/** Writes one line on stderr that begins with the program's name. */
export function sayWrong({ stderr }: Io, message: string): void {
  say(stderr, `${styled(stderr, 'red', 'shedlight:')} ${message.replace(/\s*\n\s*/g, ' ').trim()}`);
}

function styled(stream: NodeJS.WriteStream, format: 'bold' | 'red', text: string): string {
  return hasStyles(stream) ? styleText(format, text) : text;
}

function hasStyles(stream: NodeJS.WriteStream): boolean {
  return stream.isTTY && stream.hasColors() && !process.env.NO_COLOR;
}
