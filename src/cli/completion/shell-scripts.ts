import type { Command } from 'commander';
import { structures } from '../../structure/catalogue/catalogue.js';
import { type Flag, flagsOf } from '../shell/command-flags.js';

/** A command as a shell completes it. */
interface Completed {
  readonly name: string;
  readonly about: string;
  readonly flags: readonly Flag[];
  /** Words that it takes beside flags; empty if it takes files. */
  readonly words: readonly string[];
}

/** A script by which a shell completes the commands of a program. */
export function completionFor(shell: 'bash' | 'zsh' | 'fish', program: Command, shells: readonly string[]): string {
  const names = structures.map(({ name }) => name);
  const taken: Readonly<Record<string, readonly string[]>> = { structures: names, completion: shells };
  const commands = program.commands.map((command): Completed => {
    const flags = flagsOf(command).map((flag) => (flag.name === '--structure' ? { ...flag, words: names } : flag));
    const help: Flag = { name: '--help', about: 'print the help', words: [] };
    return {
      name: command.name(),
      about: command.summary(),
      flags: [...flags, help],
      words: taken[command.name()] ?? [],
    };
  });
  return SCRIPTS[shell](commands);
}

const SCRIPTS = { bash, zsh, fish };

/** Whether the value of a flag is a file or a folder. */
const isPath = ({ value = '' }: Flag): boolean => /file|folder|parts/.test(value);

/** A word in single quotes, for any of the shells. */
const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

/** Lines as bash holds them in one word. */
const listed = (words: readonly string[]): string =>
  `$'${words.join('\n').replace(/['\\]/g, '\\$&').replaceAll('\n', '\\n')}'`;

function bash(commands: readonly Completed[]): string {
  const cases = commands.flatMap(({ name, flags }) => {
    const taking = flags.filter(({ value }) => value !== undefined);
    const of = (some: readonly Flag[]): string => some.map((flag) => quoted(`${name} ${flag.name}`)).join(' | ');
    const [paths, others] = [taking.filter(isPath), taking.filter((flag) => !isPath(flag) && flag.words.length === 0)];
    return [
      ...taking.filter(({ words }) => words.length > 0).map((flag) => `${of([flag])}) words=${listed(flag.words)} ;;`),
      ...(paths.length > 0 ? [`${of(paths)}) files=yes ;;`] : []),
      ...(others.length > 0 ? [`${of(others)}) ;;`] : []),
    ].map((line) => `    ${line}`);
  });
  const beside = commands.flatMap(({ name, flags, words }) => {
    const does = words.length > 0 ? `words=${listed(words)}` : 'files=yes';
    return [
      `    ${quoted(`${name} -`)}*) words=${listed(flags.map((flag) => flag.name))} ;;`,
      `    ${quoted(`${name} `)}*) ${does} ;;`,
    ];
  });
  return `# shedlight in bash: commands, flags and their words on the Tab key.
_shedlight() {
  local word="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD - 1]}" command="\${COMP_WORDS[1]}"
  local words= files= mark= reply IFS=$'\\n'
  COMPREPLY=()
  case "$word" in \\"* | \\'*) mark="\${word:0:1}" word="\${word:1}" ;; esac
  if ((COMP_CWORD == 1)); then words=${listed(commands.map(({ name }) => name))}
  else case "$command $before" in
${cases.join('\n')}
    *) case "$command $word" in
${beside.map((line) => `  ${line}`).join('\n')}
      esac ;;
  esac; fi
  if [[ $files ]]; then
    compopt -o filenames 2>/dev/null
    COMPREPLY=($(compgen -f -- "$word"))
    return
  fi
  while read -r reply; do
    [[ $reply && $reply == "$word"* ]] || continue
    [[ $mark ]] || printf -v reply %q "$reply"
    COMPREPLY+=("$reply")
  done <<<"$words"
}
complete -F _shedlight shedlight`;
}

function zsh(commands: readonly Completed[]): string {
  const plain = (text: string): string => text.replace(/[[\]:\\]/g, '\\$&');
  const values = (flag: Flag): string => {
    if (flag.value === undefined) return '';
    const words = flag.words.map((word) => word.replace(/[ ()'"\\]/g, '\\$&')).join(' ');
    return `:${plain(flag.value)}:${isPath(flag) ? '_files' : words === '' ? ' ' : `(${words})`}`;
  };
  const cases = commands.flatMap(({ name, flags, words }) => {
    const own = words.map((word) => word.replace(/[ ()'"\\]/g, '\\$&')).join(' ');
    return [
      `    ${name}) _arguments \\`,
      ...flags.map((flag) => `      ${quoted(`${flag.name}[${plain(flag.about)}]${values(flag)}`)} \\`),
      `      ${quoted(own === '' ? '*:file:_files' : `1:name:(${own})`)} ;;`,
    ];
  });
  return `#compdef shedlight
# shedlight in zsh: commands, flags and their words on the Tab key. For ~/.zshrc, after compinit.
_shedlight() {
  local -a commands
  commands=(
${commands.map(({ name, about }) => `    ${quoted(`${name}:${about}`)}`).join('\n')}
  )
  if ((CURRENT == 2)); then
    _describe command commands
    return
  fi
  shift words
  ((CURRENT--))
  case $words[1] in
${cases.join('\n')}
  esac
}
compdef _shedlight shedlight`;
}

function fish(commands: readonly Completed[]): string {
  const lines = commands.flatMap(({ name, about, flags, words }) => {
    const within = `complete -c shedlight -n '__fish_seen_subcommand_from ${name}'`;
    const word = (text: string): string => text.replace(/[ ()'"\\]/g, '\\$&');
    const choices = (list: readonly string[]): string => `-a ${fishQuoted(list.map(word).join(' '))}`;
    return [
      `complete -c shedlight -n __fish_use_subcommand -f -a ${name} -d ${fishQuoted(about)}`,
      ...flags.map((flag) => {
        const takes =
          flag.value === undefined
            ? ''
            : isPath(flag)
              ? ' -r -F'
              : flag.words.length === 0
                ? ' -x'
                : ` -x ${choices(flag.words)}`;
        return `${within} -l ${flag.name.slice(2)}${takes} -d ${fishQuoted(flag.about)}`;
      }),
      ...(words.length > 0 ? [`${within} -f ${choices(words)}`] : []),
    ];
  });
  return ['# shedlight in fish: commands, flags and their words on the Tab key.', ...lines].join('\n');
}

/** In fish, a backslash and a quote are the two that must be escaped within single quotes. */
function fishQuoted(text: string): string {
  return `'${text.replace(/[\\']/g, '\\$&')}'`;
}
