// Files as each day's program wrote them, or read them. Every later one opens them: a day's folder is never changed.
// A key that was renamed is refused with its new name.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { readWif } from '../src/draft/wif/read-wif.js';
import { readDraft } from '../src/draft/yaml/read-draft.js';
import { dealSchema, planSchema } from '../src/formats/plan-schema.js';
import { parseShortlist } from '../src/formats/shortlist.js';
import { manifestDraft, parseManifest } from '../src/gallery/manifest/manifest.js';
import { readWeavers } from '../src/plan/deal/weavers.js';
import { readPlanOptions } from '../src/plan/options/plan-options.js';
import { readResults } from '../src/plan/results/results-form.js';
import { codeOf } from '../src/score/symmetry/cloth-code.js';
import { readQuestion } from '../src/search/question/read-question.js';

const FOLDER = fileURLToPath(new URL('corpus', import.meta.url));
const noDraft = () => {
  throw new Error('no draft');
};

/** How files of each name are opened; what comes of it is checked. */
const READERS: Readonly<Record<string, (text: string, name: string) => void>> = {
  'gallery.json': gallery,
  'name-draft.json': gallery,
  'kept.json': (text, name) => {
    const cloths = parseShortlist(text, name);
    expect(cloths).toHaveLength(3);
    for (const { code, draft, stars, note } of cloths) {
      expect([codeOf(draft), stars, note]).toEqual([code, 4, 'for the runner']);
    }
  },
  // Nothing but its schema reads these.
  'plan.json': (text) => expect(v.parse(planSchema, JSON.parse(text)).warps).toHaveLength(3),
  'deal.json': (text) => expect(v.parse(dealSchema, JSON.parse(text)).shares).toHaveLength(2),
  'results.yaml': (text, name) => {
    const [first, ...others] = readResults(text, name);
    expect(first).toMatchObject({ code: '6j1hzbpb', stars: 4 });
    expect(others).toHaveLength(2);
  },
  'question.yaml': (text, file) => {
    const read = () => readQuestion({ text, file, flags: {} }, noDraft);
    // Today’s name of this key.
    if (/^name:/m.test(text))
      expect(read).toThrow(`${file}:2:1: found the former key “name”; expected name draft: INDIGO`);
    const { name } = readQuestion({ text: text.replace(/^name:/m, 'name draft:'), file, flags: {} }, noDraft);
    expect(name).toMatchObject({ text: 'INDIGO', mirrored: true });
  },
  'draft.yaml': (text, name) => expect(readDraft(text, name).threading).toHaveLength(12),
  'draft.wif': (text, name) => {
    const { draft } = readWif(Buffer.from(text));
    const written = readDraft(readFileSync(join(FOLDER, name.replace('.wif', '.yaml')), 'utf8'), name);
    expect(codeOf(draft)).toBe(codeOf(written));
  },
  'setup.yaml': (text, name) =>
    expect(readPlanOptions(text, name)).toMatchObject({
      width: 500,
      paper: 'letter',
      loom: { kind: 'countermarch', shafts: 8, treadles: 10, width: 900 },
    }),
  'weavers.yaml': (text, name) => {
    const weavers = readWeavers(text, name);
    expect(weavers.map((weaver) => [weaver.name, weaver.loom.shafts])).toEqual([
      ['A', 4],
      ['Ελένη', 8],
    ]);
  },
};

function gallery(text: string, name: string): void {
  const manifest = parseManifest(text, name);
  expect(manifest.candidates.length).toBeGreaterThan(0);
  for (const cloth of manifest.candidates) expect(codeOf(manifestDraft(cloth, manifest))).toBe(cloth.code);
}

describe.each(readdirSync(FOLDER))('files of %s', (day) => {
  const names = readdirSync(join(FOLDER, day));
  test.each(names)('%s', (name) => {
    expect(Object.keys(READERS)).toContain(name);
    READERS[name]!(readFileSync(join(FOLDER, day, name), 'utf8'), join(day, name));
  });
  test('are of several kinds', () => expect(names.length).toBeGreaterThan(3));
});
