import { styleText } from 'node:util';

/** Where a command writes: results to stdout, everything else to stderr. */
export interface Io {
  readonly stdout: NodeJS.WriteStream;
  readonly stderr: NodeJS.WriteStream;
}

/** What a process returns, as scripts may rely on. */
export const EXIT = {
  done: 0,
  nothingFits: 1,
  wrong: 2,
  machine: 3,
  // 128 and the number of the signal, as shells have it: Ctrl-C, a terminal that is closed, an end from outside.
  interrupted: 130,
  hungUp: 129,
  terminated: 143,
} as const;

/** Writes one line. */
export function say(stream: NodeJS.WriteStream, line: string): void {
  stream.write(`${line}\n`);
}

/** Writes one object as JSON, for machines. */
export function sayJson({ stdout }: Io, value: unknown): void {
  stdout.write(`${JSON.stringify(value, null, 2)}\n`);
}

/** Text in bold on a terminal that has it; plain in a pipe and with NO_COLOR. */
export function bold(stream: NodeJS.WriteStream, text: string): string {
  return styled(stream, 'bold', text);
}

/** Writes one line on stderr that begins with the program's name. */
export function sayWrong({ stderr }: Io, message: string): void {
  say(stderr, `${styled(stderr, 'red', 'shedlight:')} ${message.replace(/\s*\n\s*/g, ' ').trim()}`);
}

function styled(stream: NodeJS.WriteStream, format: 'bold' | 'red', text: string): string {
  return stream.isTTY && stream.hasColors() && !process.env.NO_COLOR ? styleText(format, text) : text;
}
