import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { FIGURES } from '../src/cli/reference/reference-words.js';
import { PARTS } from '../src/score/parts/parts.js';
import { inFolder, run } from './cli/run.js';
import { blocksOf, commandsOf, filesOf, GUIDE_PAGES, linksOf, type Page, README, wordsOf } from './guide-pages.js';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const COMMANDS = ['explore', 'enlarge', 'draw', 'structures', 'keep', 'plan', 'deal', 'convert', 'page'];

/** The commands under “Examples:” of a help text; what they do stands three spaces or more to the right, or below. */
function helpCommands(help: string): string[][] {
  return help
    .replaceAll(/\\\n\s*/g, '')
    .split('\n')
    .filter((line) => line.startsWith('  shedlight '))
    .map((line) => wordsOf(line.replace('  shedlight ', '').split(/\s{2,}/)[0]!));
}

const began = process.cwd();
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shedlight-examples-'));
  mkdirSync(join(folder, 'gallery', 'turned-twill'), { recursive: true });
  cpSync(join(ROOT, 'gallery/turned-twill/gallery.json'), join(folder, 'gallery/turned-twill/gallery.json'));
  copyFileSync(join(ROOT, 'gallery/turned-twill.yaml'), join(folder, 'gallery/turned-twill.yaml'));
  process.chdir(folder);
  writeFiles(README);
});

afterAll(() => {
  process.chdir(began);
  rmSync(folder, { recursive: true, force: true });
});

function writeFiles(page: Page): void {
  for (const [name, text] of Object.entries(filesOf(page))) writeFileSync(name, text);
}

interface Shown {
  readonly code: string;
}

/** The cloths of a gallery, the best first. */
function clothsIn(gallery: string): Shown[] {
  return (JSON.parse(readFileSync(join(gallery, 'gallery.json'), 'utf8')) as { candidates: Shown[] }).candidates;
}

async function passes(words: readonly string[]): Promise<string> {
  const { code, out, err } = await run(...words);
  expect(code, `shedlight ${words.join(' ')}\n${err}`).toBe(0);
  for (const [, file] of out.matchAll(/^(?:Open|Print) ([^\s,]+)/gm)) expect(existsSync(file!), file).toBe(true);
  return out;
}

describe('the README', () => {
  test.each(commandsOf(README).map((words) => [words.join(' '), words] as const))('%s', async (_, words) => {
    await passes(words);
  });

  test('its question finds the cloths of the demo, in their order; those kept are among them', () => {
    expect(clothsIn('my-question').map(({ code }) => code)).toEqual(
      clothsIn('gallery/turned-twill').map(({ code }) => code),
    );
    const codes = new Set(clothsIn('my-question').map(({ code }) => code));
    const kept = commandsOf(README)
      .filter(([command]) => command === 'keep')
      .flatMap((words) => words.slice(2));
    expect(kept.length).toBeGreaterThan(1);
    for (const code of kept.filter((word) => !word.startsWith('-'))) expect(codes).toContain(code);
  });

  test('its numbers of structures and of sheets are those there are', () => {
    const index = readFileSync(join(ROOT, 'gallery/structures/index.html'), 'utf8');
    const sheets = new Set([...index.matchAll(/src="([^"]+\.png)"/g)].map(([, file]) => file)).size;
    expect(README.text).toContain(`on ${sheets} structures`);
  });
});

describe('the guide', () => {
  const withCommands = GUIDE_PAGES.filter((page) => blocksOf(page, 'sh').length > 0);

  test('has the pages it should, and each is linked from the README or from another', () => {
    expect(withCommands.length).toBeGreaterThan(4);
    const linked = [README, ...GUIDE_PAGES].flatMap(linksOf);
    for (const { path } of GUIDE_PAGES) expect(linked).toContain(path);
    for (const page of withCommands)
      expect(
        linksOf(page).filter((path) => /guide\/.+\.md$/.test(path)),
        page.path,
      ).not.toEqual([]);
  });

  test.each([README, ...GUIDE_PAGES].map((page) => [page.path, page] as const))(
    '%s: every file and folder that it links to is there',
    (_, page) => {
      for (const path of linksOf(page)) expect(existsSync(join(ROOT, path)), path).toBe(true);
    },
  );

  test.each(withCommands.map((page) => [page.path, page] as const))(
    '%s: its commands run in their order, and print what it says',
    { timeout: 600_000 },
    async (_, page) =>
      inFolder(async (own) => {
        process.chdir(own);
        try {
          writeFiles(page);
          let printed = '';
          for (const words of commandsOf(page)) {
            printed += await passes(words);
            for (const file of readdirSync('.').filter((name) => name.endsWith('.yaml'))) {
              printed += readFileSync(file, 'utf8');
            }
          }
          for (const line of blocksOf(page, 'text').join('').trimEnd().split('\n')) expect(printed).toContain(line);
        } finally {
          process.chdir(folder);
        }
      }),
  );

  test('its page on figures names every figure and part', () => {
    const { text } = GUIDE_PAGES.find(({ path }) => path.endsWith('/figures.md'))!;
    for (const name of [...PARTS, ...Object.keys(FIGURES)]) expect(text, name).toContain(`\`${name}\``);
  });
});

/** What the examples of the help take for granted: files of the person who asks. */
async function filesOfHelp(): Promise<void> {
  copyFileSync('gallery/turned-twill.yaml', 'turned-twill.yaml');
  copyFileSync('my-draft.yaml', 'towel.yaml');
  const png = new PNG({ width: 4, height: 4 });
  for (let cell = 0; cell < 16; cell++) {
    const shade = (cell + Math.floor(cell / 4)) % 4 < 2 ? 0 : 255;
    png.data.set([shade, shade, shade, 255], 4 * cell);
  }
  writeFileSync('cloth.png', PNG.sync.write(png));
  writeFileSync('loom-4.yaml', 'loom: rising, 8 shafts\n');
  await passes([
    'explore',
    '--structure',
    '2/2 twill',
    '--weft',
    'own',
    '--lengths',
    '2-4',
    '--out',
    'twills',
    '--quiet',
  ]);
  const codes = clothsIn('twills');
  await passes(['keep', 'twills', ...codes.slice(0, 6).map(({ code }) => code), '--out', 'saved.json']);
  await passes(['convert', 'towel.yaml', 'towel.wif']);
  const { out } = await run('deal', '--help');
  const group = out.split('\n').filter((line) => /^ {8,}/.test(line));
  writeFileSync('group.yaml', group.slice(0, 3).join('\n'));
}

describe('the help of', () => {
  beforeAll(filesOfHelp);

  test.each(['', ...COMMANDS])('%s: every example runs', async (command) => {
    copyFileSync('saved.json', 'kept.json');
    // A form that was filled in for another list stays, and would not fit this one.
    rmSync('kept-plan', { recursive: true, force: true });
    const { code, out } = await run(...(command === '' ? [] : [command]), '--help');
    expect(code).toBe(0);
    const examples = helpCommands(out);
    expect(examples.length).toBeGreaterThan(1);
    for (const words of examples) {
      fillInForm('kept-plan/results.yaml');
      await passes(words);
    }
  });
});

/** Fills in the form of a plan, as a person does before results are of any use. */
function fillInForm(path: string): void {
  if (existsSync(path)) writeFileSync(path, readFileSync(path, 'utf8').replace(/^( *picks):.*$/gm, '$1: 20'));
}
