import { readFileSync } from 'node:fs';
import { build } from 'esbuild';
import { describe, expect, test } from 'vitest';
import { draft, explore, score } from '../../../src/library/library.js';
import { openBrowser } from '../../chromium.js';

const BUILT = new URL('../../../dist/library/', import.meta.url);
/** Answered by the test itself; nothing goes out into a network. */
const PLACE = 'http://shedlight.test/';
const QUESTION = { structure: '2/2 twill', lengths: '2-8', weft: 'own', show: 12 };
/** Large enough that a second worker is worth starting. */
const LARGE = { ...QUESTION, lengths: '2-13', rank: 'unexpected' };

/** Runs in a page that has the library from the files of its folder. Given as text, since its types are not known here. */
type InPage = <T>(script: string) => Promise<T>;

describe('the library in a browser', () => {
  async function withPage(
    context: Parameters<typeof openBrowser>[0],
    work: (run: InPage, asked: string[]) => Promise<void>,
  ): Promise<void> {
    const browser = await openBrowser(context);
    const window = await browser.newContext();
    const asked: string[] = [];
    await window.route('**', (route) => {
      const name = route.request().url().replace(PLACE, '');
      asked.push(name);
      const isPage = name === '';
      return route.fulfill({
        contentType: isPage ? 'text/html' : 'text/javascript',
        body: isPage ? '<!doctype html><title>a stranger’s page</title>' : readFileSync(new URL(name, BUILT)),
      });
    });
    const page = await window.newPage();
    await page.goto(PLACE);
    await work(
      (script) => page.evaluate(`(async () => { const s = await import('./browser.js'); ${script} })()`),
      asked,
    );
    await window.close();
    await browser.close();
  }

  test('finds what it finds in Node, in workers and without', { timeout: 180_000 }, (context) =>
    withPage(context, async (run, asked) => {
      for (const [workers, question] of [
        [1, QUESTION],
        [2, LARGE],
      ] as const) {
        const here = await explore(question);
        const there = await run(
          `const stages = [];
           const gallery = await s.explore(${JSON.stringify(question)}, { workers: ${workers}, onStage: ({ name }) => stages.push(name) });
           if (stages.length === 0) throw new Error('no stage was told');
           return JSON.stringify(gallery);`,
        );
        expect(JSON.parse(there as string)).toEqual(JSON.parse(JSON.stringify(here)));
        expect(asked.includes('browser-worker.js')).toBe(workers > 1);
      }
    }),
  );

  test('drafts, figures, faults, and a search that is stopped', { timeout: 180_000 }, (context) =>
    withPage(context, async (run) => {
      const tooth = draft({ structure: '2/2 twill', warp: 'D4 L4' });
      const figures = await run(
        "return JSON.stringify(s.score(s.draft(s.draftText(s.draft({ structure: '2/2 twill', warp: 'D4 L4' })))));",
      );
      expect(JSON.parse(figures as string)).toEqual(JSON.parse(JSON.stringify(score(tooth))));
      const faultOf = (script: string) =>
        run(`try { ${script} } catch (fault) { return [fault instanceof s.Problem, fault.message]; }`);
      expect(await faultOf("await s.explore({ draft: 'towel.yaml' })")).toEqual([
        true,
        expect.stringContaining('expected readDraft'),
      ]);
      expect(await faultOf("await s.explore({ structure: 'huk' })")).toEqual([true, expect.stringContaining('huck')]);
      expect(
        await faultOf(
          "const stop = new AbortController(); stop.abort(new Error('enough')); await s.explore({ structure: 'huck' }, { signal: stop.signal })",
        ),
      ).toEqual([false, 'enough']);
    }),
  );

  test('has the names of the library in Node, and a bundler for browsers takes it', async () => {
    const bundled = await build({
      stdin: {
        contents: "import * as all from 'shedlight'; import * as own from 'shedlight/browser'; console.log(all, own);",
        resolveDir: new URL('../../..', import.meta.url).pathname,
      },
      bundle: true,
      platform: 'browser',
      format: 'esm',
      write: false,
      metafile: true,
      logLevel: 'silent',
    });
    const inputs = Object.keys(bundled.metafile.inputs);
    expect(inputs.filter((file) => file.startsWith('dist') && !file.includes('/browser'))).toEqual([]);
    expect(inputs).toContain('dist/library/browser.js');
    const { exports } = Object.values(
      (
        await build({
          entryPoints: [new URL('browser.js', BUILT).pathname],
          format: 'esm',
          write: false,
          metafile: true,
          outdir: 'nowhere',
        })
      ).metafile.outputs,
    )[0]!;
    const node = await import('../../../src/library/library.js');
    expect(exports.sort()).toEqual(Object.keys(node).sort());
  });
});
