import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { shortlistText } from '../../src/formats/shortlist.js';
import { run } from '../cli/run.js';
import { kept } from '../plan/cloths.js';

let folder = '';
const at = (name: string): string => join(folder, name);
const put = (name: string, text: string | Uint8Array): string => {
  writeFileSync(at(name), text);
  return at(name);
};
const cloth = kept('2/2 twill', { warp: 'DDLDL' });
const list = shortlistText([cloth]);
/** The shortlist with something else in its one cloth. */
const changed = (change: (cloth: Record<string, unknown> & { draft: Record<string, unknown> }) => void): string => {
  const whole = JSON.parse(list);
  change(whole.candidates[0]);
  return JSON.stringify(whole);
};

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shedlight-hard-'));
  put('kept.json', list);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('a note is no formula in the table of measures', async () => {
  const noted = put(
    'noted.json',
    changed((c) => Object.assign(c, { note: '=1+1', recipe: '-2, "twill"' })),
  );
  await run('plan', noted, '--out', at('noted-plan'));
  const [, row] = readFileSync(at('noted-plan/cloths.csv'), 'utf8').split('\r\n');
  expect(row).toContain(`,"'-2, ""twill""",2/2 twill,0,'=1+1,1,`);
});
