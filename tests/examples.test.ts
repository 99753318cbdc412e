import { copyFileSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from './cli/run.js';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const readme = readFileSync(join(ROOT, 'README.md'), 'utf8');
const COMMANDS = ['explore', 'enlarge', 'draw', 'structures', 'keep', 'plan', 'deal', 'convert'];

/** What stands between the fences of one language. */
function blocks(language: string): string[] {
  return [...readme.matchAll(new RegExp(`\`\`\`${language}\\n(.*?)\`\`\``, 'gs'))].map(([, text]) => text!);
}

/** The words of a command as a shell reads them, without the comment after it. */
function wordsOf(line: string): string[] {
  const [command] = line.split(/\s+#\s/);
  return [...command!.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!);
}

/**
 * The commands of the README in order. `npm` lines install and test the program itself, and are left to those who do.
 */
function readmeCommands(): string[][] {
  const lines = blocks('sh').flatMap((block) => block.split('\n').filter((line) => line !== ''));
  return lines
    .filter((line) => !line.startsWith('npm '))
    .map((line) => {
      expect(line).toMatch(/^npx shedlight /);
      return wordsOf(line.replace('npx shedlight ', ''));
    });
}

/** The commands under “Examples:” of a help text; what they do stands three spaces or more to the right, or below. */
function helpCommands(help: string): string[][] {
  return help
    .replaceAll(/\\\n\s*/g, '')
    .split('\n')
    .filter((line) => line.startsWith('  shedlight '))
    .map((line) => wordsOf(line.replace('  shedlight ', '').split(/\s{2,}/)[0]!));
}

/** A yaml block says in its first line which file it is. */
function writeYaml(): void {
  for (const block of blocks('yaml')) {
    const [, name] = /^# (\S+\.yaml)\n/.exec(block)!;
    writeFileSync(name!, block);
  }
}

const began = process.cwd();
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shedlight-examples-'));
  mkdirSync(join(folder, 'gallery', 'turned-twill'), { recursive: true });
  cpSync(join(ROOT, 'gallery/turned-twill/gallery.json'), join(folder, 'gallery/turned-twill/gallery.json'));
  copyFileSync(join(ROOT, 'gallery/turned-twill.yaml'), join(folder, 'gallery/turned-twill.yaml'));
  process.chdir(folder);
  writeYaml();
});

afterAll(() => {
  process.chdir(began);
  rmSync(folder, { recursive: true, force: true });
});

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
  for (const [, file] of out.matchAll(/^(?:Open|Print) (\S+)/gm)) expect(existsSync(file!), file).toBe(true);
  return out;
}

describe('the README', () => {
  test.each(readmeCommands().map((words) => [words.join(' '), words] as const))('%s', async (_, words) => {
    await passes(words);
  });

  test('its question finds the cloths of the demo, in their order; those kept are among them', () => {
    expect(clothsIn('my-question').map(({ code }) => code)).toEqual(
      clothsIn('gallery/turned-twill').map(({ code }) => code),
    );
    const codes = new Set(clothsIn('my-question').map(({ code }) => code));
    const kept = readmeCommands()
      .filter(([command]) => command === 'keep')
      .flatMap((words) => words.slice(2));
    expect(kept.length).toBeGreaterThan(1);
    for (const code of kept.filter((word) => !word.startsWith('-'))) expect(codes).toContain(code);
  });

  test('its numbers of structures and of sheets are those there are', () => {
    const index = readFileSync(join(ROOT, 'gallery/structures/index.html'), 'utf8');
    const sheets = new Set([...index.matchAll(/src="([^"]+\.png)"/g)].map(([, file]) => file)).size;
    expect(readme).toContain(`on ${sheets} structures`);
  });

  test('every file and folder that it links to is there', () => {
    const links = [...readme.matchAll(/\]\((?!https?:)([^)#]+)\)/g)].map(([, path]) => path!);
    expect(links.length).toBeGreaterThan(3);
    for (const path of links) expect(existsSync(join(ROOT, path)), path).toBe(true);
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
