/** A lock file of npm, as far as it is read here. */
export interface Lock {
  readonly packages: Readonly<
    Record<
      string,
      {
        readonly version?: string;
        readonly license?: string;
        readonly dependencies?: Readonly<Record<string, string>>;
        readonly optionalDependencies?: Readonly<Record<string, string>>;
      }
    >
  >;
}

/** What each package that we ask for is needed for. */
const WHY: Readonly<Record<string, string>> = {
  '@fontsource/atkinson-hyperlegible': 'the type of sheets and pictures',
  '@fontsource/noto-sans': 'letters that the first type lacks: Greek, Cyrillic and others',
  '@fontsource/noto-sans-arabic': 'names in Arabic letters',
  '@fontsource/noto-sans-hebrew': 'names in Hebrew letters',
  '@noble/hashes': 'the codes of cloths, the same in Node and in browsers',
  'cli-progress': 'the line that says how far a search is',
  commander: 'commands, flags and help',
  culori: 'colours as CSS writes them, and their lightness',
  fontkit: 'outlines of letters in pictures',
  pdfkit: 'sheets as PDF',
  seedrandom: 'random numbers that a seed brings back',
  sharp: 'PNG written and read',
  valibot: 'our own files, checked as they are read',
  'worker-threads-pool': 'the threads of a search',
  yaml: 'files that a person writes, with the place of each fault',
};

/** Licences of packages that do not name one in their description, from the text that they bring along. */
const UNNAMED: Readonly<Record<string, string>> = { 'png-js': 'MIT' };

/** The page on packages and licences, in Markdown, from the lock file. */
export function licences(lock: Lock): string {
  const asked = Object.keys(lock.packages['']!.dependencies!).sort();
  const all = [...reachedFrom(lock, asked)].sort();
  const others = all.filter((name) => !asked.includes(name) && !name.startsWith('@img/sharp-'));
  const row = (name: string): string => {
    const { version, license = UNNAMED[name] } = lock.packages[`node_modules/${name}`]!;
    if (license === undefined) throw new Error(`${name}: found no licence`);
    return `\`${name}\` ${version} | ${license}`;
  };
  const wanted = asked.map((name) => {
    if (WHY[name] === undefined) throw new Error(`${name}: found no reason for it`);
    return `| ${row(name)} | ${WHY[name]} |`;
  });
  return [
    '# Packages and licences',
    '',
    'Made by `npm run reference` from `package-lock.json`. shedlight itself is under the MIT licence. Installing it installs:',
    '',
    '| Package | Licence | What for |',
    '| --- | --- | --- |',
    ...wanted,
    '',
    'They bring along:',
    '',
    '| Package | Licence |',
    '| --- | --- |',
    ...others.map((name) => `| ${row(name)} |`),
    '',
    'Beside these, `sharp` brings its code for the machine at hand, `@img/sharp-…` (Apache-2.0), and the library in it,',
    '`@img/sharp-libvips-…` (LGPL-3.0-or-later), as files of their own that anyone may replace.',
    '',
    'A gallery’s page and the library for browsers hold code of some of them: `dist/licences.txt` in the package has those',
    'licences in full.',
    '',
  ].join('\n');
}

/** The packages that some need, those included that they need. */
function reachedFrom({ packages }: Lock, names: readonly string[], reached = new Set<string>()): Set<string> {
  for (const name of names.filter((each) => !reached.has(each))) {
    reached.add(name);
    const { dependencies = {}, optionalDependencies = {} } = packages[`node_modules/${name}`] ?? {};
    reachedFrom({ packages }, [...Object.keys(dependencies), ...Object.keys(optionalDependencies)], reached);
  }
  return reached;
}
