import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Manifest, manifestDraft, parseManifest } from '../../../src/gallery/manifest/manifest.js';
import { clothDistance, descriptorOf } from '../../../src/score/likeness/descriptor.js';
import { inFolder, run } from '../run.js';

const gallery = (folder: string): Manifest =>
  parseManifest(readFileSync(join(folder, 'gallery.json'), 'utf8'), 'gallery.json');
const portraits = (manifest: Manifest) =>
  manifest.candidates.map((candidate) => descriptorOf(manifestDraft(candidate, manifest)));

// A second course a year later: last year's twelve typed back (a situation of the trade; common practice, no source).
test('a second round: what was found corrects the plan, and nothing near to last year’s twelve is shown', async () => {
  await inFolder(async (folder) => {
    const at = (name: string): string => join(folder, name);
    const question = ['--structure', '2/2 twill', '--lengths', '2-5', '--weft', 'own', '--by', 'thread', '--quiet'];
    expect((await run('explore', ...question, '--show', '12', '--out', at('last'))).code).toBe(0);
    const last = gallery(at('last'));
    const codes = last.candidates.map(({ code }) => code);
    await run('keep', at('last'), ...codes, '--out', at('kept.json'));
    await run('plan', at('kept.json'), '--yarn-size', '8/2 cotton');
    const filled = (form: string): string =>
      form
        .replaceAll('    warp used:', '    warp used: 61.6 in')
        .replaceAll('    off the loom:', '    off the loom: 56.7 in')
        .replaceAll('    finished:', '    finished: 51 in')
        .replaceAll('    picks:', '    picks: 18');
    writeFileSync(at('results.yaml'), filled(readFileSync(at('kept-plan/results.yaml'), 'utf8')));

    const planned = await run('plan', at('kept.json'), '--learnt', at('results.yaml'), '--out', at('second-plan'));
    expect(planned.err).toContain('take-up 8 %');
    expect(planned.err).toContain('shrinkage 10.1 %');
    const plan = JSON.parse(readFileSync(at('second-plan/plan.json'), 'utf8'));
    expect(plan.warps[0].pieces[0].draft.sett.picks).toBe(18);

    const wider = ['--structure', '2/2 twill', '--lengths', '2-6', '--weft', 'own', '--by', 'thread,unit', '--quiet'];
    const done = ['--done', `${at('results.yaml')},${at('kept.json')}`, '--unlike-done', '0.35'];
    const given = ['--rank', 'unexpected', '--show', '8', '--times', '1,2', '--out', at('second')];
    const second = await run('explore', ...wider, ...done, ...given);
    expect(second.err).toContain('results.yaml: 12 cloths done before');
    expect(second.out).toMatch(/\d+ already woven or too similar/);
    const found = gallery(at('second'));
    expect(found.candidates).toHaveLength(8);
    for (const descriptor of portraits(found)) {
      for (const before of portraits(last)) expect(clothDistance(descriptor, before)).toBeGreaterThanOrEqual(0.35);
    }
    for (const { why } of found.candidates) expect(why!.length).toBeGreaterThan(20);

    const alone = await run('explore', ...question, '--done', at('results.yaml'), '--out', at('none'));
    expect(alone.code).toBe(2);
    expect(alone.err).toContain(
      `found ${codes[0]}, which no list given with it has; expected the shortlist or gallery`,
    );
    const galleryOnly = await run('explore', ...question, '--done', at('last'), '--out', at('rest'), '--json');
    expect(JSON.parse(galleryOnly.out).counts.setAside.done).toBeGreaterThanOrEqual(12);
    expect(gallery(at('rest')).candidates.filter(({ code }) => codes.includes(code))).toEqual([]);
  });
});
