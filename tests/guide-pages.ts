import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..');

/** A page in Markdown that shows commands: the README, or a page of the guide. */
export interface Page {
  /** Its path in the project. */
  readonly path: string;
  readonly text: string;
}

const pageOf = (path: string): Page => ({ path, text: readFileSync(join(ROOT, path), 'utf8') });

export const README = pageOf('README.md');
/** The pages of the guide, in the order of their names. */
export const GUIDE_PAGES: readonly Page[] = readdirSync(join(ROOT, 'gallery/guide'))
  .filter((name) => name.endsWith('.md'))
  .sort()
  .map((name) => pageOf(join('gallery/guide', name)));

/** What stands between the fences of one language. */
export function blocksOf({ text }: Page, language: string): string[] {
  return [...text.matchAll(new RegExp(`\`\`\`${language}\\n(.*?)\`\`\``, 'gs'))].map(([, block]) => block!);
}

/** The files that yaml blocks show, by the name in their first line. */
export function filesOf(page: Page): Record<string, string> {
  const named = blocksOf(page, 'yaml').map((block) => [/^# (\S+\.yaml)\n/.exec(block)![1]!, block] as const);
  return Object.fromEntries(named);
}

/** The commands in order, without `npx shedlight`; lines for `npm` are left to those who install. */
export function commandsOf(page: Page): string[][] {
  return blocksOf(page, 'sh')
    .flatMap((block) => block.split('\n').filter((line) => line !== ''))
    .filter((line) => !line.startsWith('npm '))
    .map((line) => {
      const [, command] = /^npx shedlight (.+)$/.exec(line) ?? [];
      if (command === undefined) throw new Error(`${page.path}: found “${line}”; expected npx shedlight …`);
      return wordsOf(command);
    });
}

/** The words of a command as a shell reads them, without the comment after it. */
export function wordsOf(line: string): string[] {
  const [command] = line.split(/\s+#\s/);
  return [...command!.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare!);
}

/** The paths that a page links to, from the root of the project. */
export function linksOf({ path, text }: Page): string[] {
  const links = [...text.matchAll(/\]\((?!https?:)([^)#]+)(?:#[^)]*)?\)/g)].map(([, link]) => link!);
  return links.map((link) => join(path, '..', link));
}
