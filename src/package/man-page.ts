import type { Command } from 'commander';
import { FILES } from '../cli/reference/reference-words.js';
import { flagsOf } from '../cli/shell/command-flags.js';
import { EXIT, EXIT_WORDS } from '../cli/shell/io.js';

/** The manual page of a program, in the macros of man(7), from its commands and their flags. */
export function manPage(program: Command, version: string): string {
  const commands = program.commands.filter((command) => command.name() !== 'help');
  return [
    `.TH SHEDLIGHT 1 "" "shedlight ${said(version)}" "User commands"`,
    '.SH NAME',
    `shedlight \\- ${said(program.description().replace(/^S/, 's').replace(/\.$/, ''))}`,
    '.SH SYNOPSIS',
    '.B shedlight',
    '.I command',
    '[\\fIarguments\\fR] [\\fIoptions\\fR]',
    '.SH DESCRIPTION',
    'Lays colour orders on a weave structure, draws and measures each cloth, and shows the best in a page; then plans the',
    'warps of those that are kept. Every key of a question or setup file is an option too; options win.',
    ...commands.flatMap(sectionOf),
    '.SH FILES',
    'Files and folders are written whole or not at all; what a person has put beside them stays.',
    ...Object.values(FILES).flatMap((files) => Object.entries(files).flatMap(([name, about]) => entry(name, about))),
    '.SH EXIT STATUS',
    ...Object.entries(EXIT).flatMap(([name, code]) => entry(String(code), EXIT_WORDS[name as keyof typeof EXIT])),
    '.SH ENVIRONMENT',
    ...entry('NO_COLOR', 'where it is set, nothing is printed bold or in colour'),
    '',
  ].join('\n');
}

function sectionOf(command: Command): string[] {
  const takes = command.registeredArguments.map((argument) => {
    const name = `${argument.name()}${argument.variadic ? '...' : ''}`;
    return argument.required ? `\\fI${said(name)}\\fR` : `[\\fI${said(name)}\\fR]`;
  });
  return [
    `.SH ${said(command.name().toUpperCase())}`,
    `.B shedlight ${said(command.name())}`,
    `${takes.join(' ')} [\\fIoptions\\fR]`,
    '.PP',
    said(command.description()),
    ...command.registeredArguments.flatMap((argument) => entry(argument.name(), argument.description)),
    ...flagsOf(command).flatMap(({ name, value, about }) => entry(name, about, value)),
  ];
}

/** A word in bold, with what stands for its value, and what it means. */
function entry(word: string, about: string, value?: string): string[] {
  const taken = value === undefined ? '' : ` \\fI${said(value)}\\fR`;
  return ['.TP', `\\fB${said(word)}\\fR${taken}`, said(about.replaceAll('`', ''))];
}

/** A text in which nothing is taken for a command of the macros. */
function said(text: string): string {
  return text
    .replaceAll('\\', '\\e')
    .replaceAll('-', '\\-')
    .replace(/^([.'])/, '\\&$1');
}
