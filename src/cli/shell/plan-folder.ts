import { createHash } from 'node:crypto';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import * as v from 'valibot';
import { type FolderKind, judgeFolder, namesIn, type OwnFiles, replaceFolder } from '../../files/folder.js';
import { hashOfFile, textUpTo } from '../../files/reading.js';
import { LARGEST_LIST } from '../../formats/shortlist.js';
import { type FormEntry, grownForm, resultsForm } from '../../plan/results/results-form.js';
import { Problem } from '../../problem.js';
import { isTable } from '../../sheets/plan-table.js';

/** The form that a person fills in; a filled-in form is never overwritten. */
const FORM = 'results.yaml';
/** The list of written files with their hashes, which identifies a plan's folder and the files a person has changed. */
const WRITTEN = '.shedlight.json';

/** The kinds of plan: a plan, or a plan dealt to weavers. */
export type Planned = 'plan' | 'deal';

const FILES = {
  plan: ['plan.json', 'sheets.pdf', 'overview.pdf', 'album.pdf', 'cloths.csv', 'squares.json', FORM],
  deal: ['deal.json', 'plan.json', 'sheets.pdf', 'teacher.pdf', 'album.pdf', 'cloths.csv', FORM],
} as const;

/** Schema of the list of written files. */
export const writtenSchema = v.object({
  format: v.literal('shedlight-written'),
  version: v.literal(1),
  kind: v.picklist(['plan', 'deal']),
  files: v.record(v.string(), v.string()),
});

/** Checks whether a folder can take a plan, before anything is planned. */
export async function judgePlanFolder(folder: string, planned: Planned): Promise<void> {
  await judgeFolder(folder, kindOf(planned));
}

/**
 * Writes the files of a plan into a folder, which is replaced whole. An earlier plan is deleted; a person's files, and
 * a filled-in form, are kept. Such a form gets blanks for new cloths at its end.
 *
 * @param entries what the form asks for
 * @returns what became of a form that was filled in, in one line; undefined if there was none
 * @throws Problem if the folder holds anything but such a plan
 */
export async function writePlanFolder(
  folder: string,
  planned: Planned,
  files: Readonly<Record<string, string | Buffer>>,
  entries: readonly FormEntry[],
): Promise<string | undefined> {
  const all = { ...files, [FORM]: resultsForm(entries) };
  let isGrown = false;
  const grown = (begun: string): string | undefined => {
    const text = grownForm(begun, entries);
    isGrown = text !== undefined;
    return text;
  };
  const { left } = await replaceFolder(folder, { ...kindOf(planned), grown }, async (write) => {
    for (const [name, data] of Object.entries(all)) write(name, data);
    const hashes = Object.fromEntries(Object.entries(all).map(([name, data]) => [name, hashOf(data)]));
    const written = { format: 'shedlight-written', version: 1, kind: planned, files: hashes };
    write(WRITTEN, `${JSON.stringify(written, null, 1)}\n`);
  });
  if (!left.includes(FORM)) return undefined;
  return `${join(folder, FORM)}: ${isGrown ? 'your words are kept, blanks for new cloths are at its end' : 'left as it is'}`;
}

function kindOf(planned: Planned): FolderKind {
  return {
    called: `a ${planned}`,
    folders: [],
    always: [...FILES[planned], WRITTEN],
    yields: [FORM],
    ownFiles: (place, shown) => {
      const all = namesIn(place);
      const names = all.filter((name) => statSync(join(place, name), { throwIfNoEntry: false })?.isFile());
      const found = listedIn(place, names) ?? recognisedIn(place, names);
      if (found !== undefined && found.kind !== planned) {
        throw new Problem(
          `${shown}: found a ${found.kind} in it; expected a ${planned}, or an empty or new folder (--out)`,
        );
      }
      const halves = names.filter((name) => isHalfWritten(place, name));
      const named = new Set([...(found?.named ?? []), WRITTEN]);
      const unchanged = new Set([...(found?.unchanged ?? []), WRITTEN, ...halves]);
      const isKnown = found !== undefined || all.every((name) => halves.includes(name) || name === FORM);
      return isKnown ? { named, unchanged } : undefined;
    },
  };
}

type Known = OwnFiles & { readonly kind: Planned };

/** Reads the list of written files in a folder; undefined if there is none. */
function listedIn(place: string, names: readonly string[]): Known | undefined {
  if (!names.includes(WRITTEN)) return undefined;
  const read = v.safeParse(writtenSchema, jsonOf(join(place, WRITTEN)));
  if (!read.success) return undefined;
  const { kind, files } = read.output;
  const unchanged = names.filter((name) => files[name] !== undefined && files[name] === hashOfFile(join(place, name)));
  return { kind, named: new Set(Object.keys(files)), unchanged: new Set(unchanged) };
}

/** Recognises a folder without a list, as version 0.1.0 wrote it, by the contents of its files. */
function recognisedIn(place: string, names: readonly string[]): Known | undefined {
  const formatOf = (name: string): unknown => (names.includes(name) ? jsonOf(join(place, name))?.format : undefined);
  const isDeal = formatOf('deal.json') === 'shedlight-deal';
  const isPlan = formatOf('plan.json') === 'shedlight-plan';
  if (!isDeal && !isPlan) return undefined;
  const kind = isDeal ? 'deal' : 'plan';
  const isOurs = (name: string): boolean => {
    if (name === 'deal.json') return isDeal;
    if (name === 'plan.json') return isPlan;
    const text = textUpTo(join(place, name), LARGEST_LIST) ?? '';
    return name.endsWith('.pdf') ? text.includes('/Producer (shedlight)') : name.endsWith('.csv') && isTable(text);
  };
  const named = new Set<string>(FILES[kind]);
  return { kind, named, unchanged: new Set(names.filter((name) => named.has(name) && isOurs(name))) };
}

/**
 * Whether a file is a leftover of a killed run of version 0.1.0: the name of one of its files with a number of nine or
 * ten digits. A number that is a date, or the file's own time, marks a person's copy.
 */
function isHalfWritten(place: string, name: string): boolean {
  const [, whole, number] = /^(.+)\.(\d{9,10})$/.exec(name) ?? [];
  if (number === undefined || Number(number) >= 2 ** 32) return false;
  if (![...FILES.plan, ...FILES.deal].some((own) => own === whole && own !== FORM)) return false;
  const isDate = /^(19|20)\d\d(0[1-9]|1[0-2])([0-2]\d|3[01])/.test(number);
  const { mtimeMs } = statSync(join(place, name));
  return !isDate && Math.abs(mtimeMs - Number(number) * 1000) > 24 * 3_600_000;
}

function jsonOf(path: string): { format?: unknown } | undefined {
  try {
    const given: unknown = JSON.parse(textUpTo(path, LARGEST_LIST) ?? '');
    return typeof given === 'object' && given !== null ? given : undefined;
  } catch {
    return undefined;
  }
}

const hashOf = (data: string | Buffer): string => createHash('sha256').update(data).digest('hex');
