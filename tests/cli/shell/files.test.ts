import { execFileSync } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { draftAsWritten, draftLoader } from '../../../src/cli/shell/files.js';
import { explore } from '../../../src/search/explore.js';
import { readQuestion } from '../../../src/search/question/read-question.js';
import { findStructure, weaveOf } from '../../../src/structure/catalogue/catalogue.js';
import { inFolder, run, start } from '../run.js';

/** Says one word when a file that is no plain file is about to be opened. */
const TELL_OPEN = new URL('tell-open.mjs', import.meta.url).href;

/** Crackle's four blocks in bare numbers, begun two ends into its first unit. */
function bareCrackle(): string {
  const weave = weaveOf(findStructure('crackle'), ['A', 'B', 'C', 'D']);
  const threading = weave.threading.map(([shaft]) => shaft!);
  return [
    `threading: ${[...threading.slice(2), ...threading.slice(0, 2)].join(' ')}`,
    `tie-up: [${weave.tieUp.map((shafts) => shafts.join(' ')).join(', ')}]`,
    `treadling: ${weave.treadling.flat().join(' ')}`,
  ].join('\n');
}

describe('a draft of bare numbers', () => {
  it('is given the units of its structure, and says so in one line', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'bare.yaml');
      writeFileSync(file, bareCrackle());
      const notes: string[] = [];
      const draft = draftLoader((note) => notes.push(note))(file);
      const { endUnits } = weaveOf(findStructure('crackle'), ['A', 'B', 'C', 'D']);
      expect([...draft.endUnits].sort()).toEqual([...endUnits].sort());
      expect(notes).toHaveLength(1);
      expect(notes[0]).toMatch(/bare\.yaml: threading understood as crackle \(\w+\), 4 units, begun at end \d+/);
      const written = draftAsWritten(() => expect.unreachable())(file);
      expect(written.endUnits.every((unit) => unit === 1)).toBe(true);
    }));

  it('takes colours by unit', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'bare.yaml');
      writeFileSync(file, bareCrackle());
      const drawn = await run('draw', file, '--warp', 'DL', '--weft', 'L', '--by', 'unit');
      expect(drawn.err).toContain('threading understood as crackle');
      expect(drawn.code).toBe(0);
      expect(drawn.out).toContain('unit by unit');
    }));

  it.each([
    ['weft', 'own'],
    ['weft', 'exchange'],
    ['treadling', 'another'],
    ['profile', 'A B'],
  ])('takes blocks that the order chooses, and draws each again from what its card says: %s %s', (key, value) =>
    inFolder(async (folder) => {
      const file = join(folder, 'bare.yaml');
      writeFileSync(file, bareCrackle());
      const treadling = findStructure('crackle').manners[1]!.name;
      const asked = { [key]: key === 'treadling' ? treadling : value };
      const flags = { draft: file, by: key === 'profile' ? 'unit' : 'block', lengths: '2,3', ...asked };
      const question = readQuestion(
        { flags },
        draftLoader(() => undefined),
      );
      const { found } = await explore(question, { workers: 0 });
      expect(found.length).toBeGreaterThan(2);
      for (const { code, recipe, redraw } of found.slice(0, 4)) {
        expect(recipe).toMatch(
          key === 'profile' ? /, blocks A B, [DL]+, unit by unit/ : /bare\.yaml.*, [DL]+, as block order/,
        );
        // A card names the draft by its last name: its command is for the folder in which the draft lies.
        const words = redraw.flatMap(([flag, text]) => (flag === 'draft' ? [join(folder, text)] : [`--${flag}`, text]));
        const { out } = await run('draw', ...words, '--json');
        expect(JSON.parse(out).code).toBe(code);
      }
    }),
  );

  it('stays as it is where it states its units, or is no structure known here', () =>
    inFolder(async (folder) => {
      const notes: string[] = [];
      const load = draftLoader((note) => notes.push(note));
      const twill = 'threading: 1-4\ntie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4';
      writeFileSync(join(folder, 'own.yaml'), `${twill}\nunits: 2`);
      writeFileSync(join(folder, 'other.yaml'), 'threading: 1 3 1 4 2\ntie-up: [1 2, 3, 2 4]\ntreadling: 1 2 3 1 3');
      expect(load(join(folder, 'own.yaml')).endUnits).toEqual([2, 2]);
      expect(load(join(folder, 'other.yaml')).endUnits).toEqual([1, 1, 1, 1, 1]);
      expect(notes).toEqual([]);
    }));
});

describe.skipIf(process.platform === 'win32')('a pipe', () => {
  it('is read to its end', () =>
    inFolder(async (folder) => {
      const pipe = join(folder, 'pipe');
      execFileSync('mkfifo', [pipe]);
      const child = start(['draw', pipe], folder);
      const over = once(child, 'exit');
      writeFileSync(pipe, bareCrackle());
      expect(await over).toEqual([0, null]);
    }));

  it.each(['SIGINT', 'SIGTERM'] as const)('that nobody writes into is waited for until %s', (signal) =>
    inFolder(async (folder) => {
      const pipe = join(folder, 'pipe');
      execFileSync('mkfifo', [pipe]);
      const child = start(['draw', pipe], folder, ['--import', TELL_OPEN]);
      const over = once(child, 'exit');
      await once(child.stderr!, 'data');
      child.kill(signal);
      expect(await over).toEqual([null, signal]);
    }),
  );

  it('is no progress of a search, and is not waited for', () =>
    inFolder(async (folder) => {
      const pipe = join(folder, 'pipe');
      execFileSync('mkfifo', [pipe]);
      const said = `shedlight: ${pipe}: found no file; expected the progress of a search\n`;
      expect(await run('explore', '--merge', pipe)).toEqual({ code: 2, out: '', err: said });
    }));
});
