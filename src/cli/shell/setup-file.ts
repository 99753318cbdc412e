import type { KeptCloth } from '../../formats/shortlist.js';
import { type PlanOptions, readPlanOptions } from '../../plan/options/plan-options.js';
import { readText } from './files.js';

/** The options of a plan: those of a setup file, if one is given, and of flags, which win. */
export function optionsOf(
  { setup: file, flags }: { readonly setup?: string | undefined; readonly flags: Readonly<Record<string, string>> },
  kept: readonly KeptCloth[],
): PlanOptions {
  const text = file === undefined ? '' : readText(file, 'a setup: loom, yarns and usual figures');
  return readPlanOptions(text, file ?? 'setup', flags, kept[0]?.draft.sett.per);
}
