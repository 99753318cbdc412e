import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { draft, draftIn, draftText, explore, Problem, score, structures } from '../../src/library/library.js';
import { inFolder, run } from '../cli/run.js';

const TWILL = 'threading: 1-4\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 1-4\nwarp: D4 L4\nweft: D4 L4\n';

describe('the library', () => {
  test('finds what the command finds: the same gallery.json', () =>
    inFolder(async (folder) => {
      const question = { structure: '2/2 twill', lengths: '2-5', weft: 'own', rank: 'clear', show: 12 };
      const flags = [
        '--structure',
        '2/2 twill',
        '--lengths',
        '2-5',
        '--weft',
        'own',
        '--rank',
        'clear',
        '--show',
        '12',
      ];
      await run('explore', ...flags, '--out', `${folder}/gallery`, '--quiet');
      const stages: string[] = [];
      const gallery = await explore(question, { workers: 1, onStage: ({ name }) => stages.push(name) });
      expect(JSON.parse(JSON.stringify(gallery))).toEqual(
        JSON.parse(readFileSync(`${folder}/gallery/gallery.json`, 'utf8')),
      );
      expect(stages.length).toBeGreaterThan(0);
      const [first] = gallery.candidates;
      const own = draftIn(gallery, first!);
      expect(score(own, { rank: 'clear' })).toMatchObject({
        code: first!.code,
        scores: { score: first!.scores.score },
      });
      expect(draft(draftText(own))).toEqual({ ...own, name: own.name });
    }));

  test('a draft from text, from keys and from a structure is the same; of hound’s tooth the float is two', () => {
    const keys = {
      threading: [1, 2, 3, 4],
      'tie-up': [
        [1, 2],
        [2, 3],
        [3, 4],
        [4, 1],
      ],
      treadling: '1-4',
      warp: 'D4 L4',
      weft: 'D4 L4',
    };
    expect(draft(keys)).toEqual(draft(TWILL));
    const named = draft({ structure: '2/2 twill', warp: 'D4 L4' });
    const { scores, parts, code, holdsTogether } = score(draft(TWILL), { rank: { contrast: 1 }, float: '3' });
    expect(score(named, { rank: 'contrast 1' }).code).toBe(code);
    expect(scores.floats.longest).toBe(2);
    expect(parts.float).toBe(0.5);
    expect(scores.score).toBe(scores.contrast);
    expect(scores.nearest).toBe('hound’s tooth');
    expect(holdsTogether).toBe(true);
  });

  test('a WIF is told by its first line; a structure alone has its usual colours', () => {
    const wif =
      '[WIF]\nVersion=1.1\n[CONTENTS]\nWEAVING=true\nWARP=true\nWEFT=true\nTHREADING=true\nTIEUP=true\nTREADLING=true\n[WEAVING]\nShafts=2\nTreadles=2\n[WARP]\nThreads=2\n[WEFT]\nThreads=2\n[THREADING]\n1=1\n2=2\n[TIEUP]\n1=1\n2=2\n[TREADLING]\n1=1\n2=2\n';
    expect(draft(wif).threading).toEqual([[1], [2]]);
    expect(structures.length).toBeGreaterThan(40);
    expect(draft({ structure: 'overshot' }).pickKinds).toContain('tabby');
  });

  test('a fault is a Problem in one sentence, with its place', async () => {
    expect(() => draft('threading: 1-4\n')).toThrow(Problem);
    expect(() => draft({ structure: '2/2 twil' })).toThrow(/did you mean|2\/2 twill/);
    await expect(explore({ structure: '2/2 twill', lenghts: 4 })).rejects.toThrow(
      /found the unknown key “lenghts”.*the nearest is “lengths”/,
    );
    expect(() => score(draft(TWILL), { rank: { contrst: 1 } })).toThrow('the nearest is “contrast”');
  });
});

describe('the package', () => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const importing = (path: string) =>
    spawnSync(process.execPath, ['--input-type=module', '-e', `await import('${path}')`], {
      cwd: root,
      encoding: 'utf8',
    });

  test('gives what it promises and nothing inside', () => {
    expect(importing('shedlight').status).toBe(0);
    expect(importing('shedlight/browser').status).toBe(0);
    for (const path of ['shedlight/dist/library/engine.js', 'shedlight/dist/score/score.js', 'shedlight/library']) {
      expect(importing(path).stderr, path).toContain('ERR_PACKAGE_PATH_NOT_EXPORTED');
    }
  });

  test('every schema can be found in it', () => {
    const found = createRequire(import.meta.url).resolve('shedlight/schemas/question.schema.json');
    expect(JSON.parse(readFileSync(found, 'utf8'))).toMatchObject({ $id: 'urn:shedlight:question:1' });
  });

  test('every name that it exports is explained', () => {
    const text = ['library', 'engine']
      .map((name) => readFileSync(join(root, `dist/library/${name}.d.ts`), 'utf8'))
      .join('\n');
    const declared = [...text.matchAll(/^export (?:declare )?(?:async )?(?:function|const|interface|type) (\w+)/gm)];
    expect(declared.length).toBeGreaterThan(8);
    for (const { 1: name, index } of declared) expect(text.slice(0, index).trimEnd(), name).toMatch(/\*\/$/);
  });
});

describe('the guide', () => {
  const guide = readFileSync(new URL('../../gallery/guide/library.md', import.meta.url), 'utf8');
  const examples = [...guide.matchAll(/```js\n(.*?)```/gs)].map(([, text]) => text!);

  test.each(examples.map((text, at) => [at + 1, text] as const))('example %i runs as printed', (at, text) => {
    // A module inside the package imports it by its name, as a stranger's does.
    const root = fileURLToPath(new URL('../..', import.meta.url));
    const ran = spawnSync(process.execPath, ['--input-type=module', '-e', text], { cwd: root, encoding: 'utf8' });
    expect([ran.stderr, ran.status]).toEqual(['', 0]);
    expect(ran.stdout).toMatch(
      [/^[0-9a-z]{8} .+ \d+ ends\n/, /hound’s tooth longest float 2\n/, /different cloths\n$/][at - 1]!,
    );
  });

  test('has three examples', () => expect(examples).toHaveLength(3));
});
