import { extname } from 'node:path';
import type { Draft } from '../../draft/draft.js';
import { doneCloths } from '../../plan/results/done.js';
import { readResults } from '../../plan/results/results-form.js';
import { counted } from '../../words/counts.js';
import { readText } from '../shell/files.js';
import { loadCloths } from '../shell/kept-file.js';

/** Reads cloths already woven from results (YAML), shortlists and galleries; tells how many each file holds. */
export function doneLoader(tell: (note: string) => void): (paths: readonly string[]) => Draft[] {
  return (paths) => {
    const isResults = (path: string): boolean => /^\.ya?ml$/i.test(extname(path));
    const results = paths
      .filter(isResults)
      .map((file) => ({ file, items: readResults(readText(file, 'results of earlier pieces'), file) }));
    const lists = paths.filter((path) => !isResults(path)).map((file) => ({ file, items: loadCloths(file).cloths }));
    const done = doneCloths(results, lists);
    for (const { file, items } of done) {
      tell(`${file}: ${counted(items.length, 'cloth')} done before`);
    }
    return done.flatMap(({ items }) => items.map(({ draft }) => draft));
  };
}
