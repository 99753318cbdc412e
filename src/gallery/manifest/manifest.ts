import * as v from 'valibot';
import { storedDraft } from '../../formats/stored-draft.js';
import { schemaFault } from '../../input/schema-fault.js';
import { Problem, quote } from '../../problem.js';
import type { Question } from '../../search/question/question.js';
import { resolvedQuestion } from '../../search/question/read-question.js';
import type { Found, Outcome } from '../../search/strategy/outcome.js';
import {
  type CandidateWritten,
  GALLERY_FORMAT,
  type Manifest,
  type ManifestCandidate,
  type ManifestWritten,
  manifestSchema,
} from './manifest-schema.js';

export { manifestDraft } from './manifest-draft.js';
export type { Manifest, ManifestCandidate } from './manifest-schema.js';

/** Path of a cloth's picture in its gallery. */
export function swatchPath(code: string): string {
  return `swatches/${code}.png`;
}

/** Makes the contents of gallery.json from a search, checked as strictly as at reading. */
export function manifestOf(question: Question, outcome: Outcome): Manifest {
  const written: ManifestWritten = {
    format: GALLERY_FORMAT,
    version: 1,
    question: resolvedQuestion(question),
    palette: question.yarns,
    counts: outcome.counts,
    candidates: outcome.found.map(candidateOf),
  };
  return checked(written, 'gallery.json');
}

/** The text of a gallery.json: one cloth a line, so that two galleries can be compared line by line. */
export function manifestText(manifest: Manifest): string {
  const { candidates, ...head } = manifest;
  const lines = Object.entries(head).map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)},\n`);
  return `{\n${lines.join('')}"candidates": [\n${candidates.map((each) => JSON.stringify(each)).join(',\n')}\n]\n}\n`;
}

/** Reads a gallery.json. Throws a Problem with the place in `file` if it is no gallery, or damaged. */
export function parseManifest(text: string, file: string): Manifest {
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch {
    throw new Problem(`${file}: found text that is not whole JSON; expected a gallery.json as shedlight writes it`);
  }
  const head = v.safeParse(v.object({ format: v.literal(GALLERY_FORMAT), version: v.unknown() }), given);
  if (!head.success) throw new Problem(`${file}: found another kind of file; expected format "${GALLERY_FORMAT}"`);
  if (head.output.version !== 1) {
    const version = JSON.stringify(head.output.version).slice(0, 20);
    throw new Problem(
      `${file}: found version ${version} of a gallery; expected version 1 (is shedlight older than it?)`,
    );
  }
  return checked(given, file);
}

function candidateOf(found: Found): CandidateWritten {
  const { draft } = found;
  // Yarns and sett are the same for all cloths, and are stored once for the gallery.
  const { yarns: _, sett: __, ...draftWritten } = storedDraft(draft);
  return {
    ...found,
    draft: draftWritten,
    repeat: { ends: draft.warp.length, picks: draft.weft.length },
    swatch: swatchPath(found.code),
  };
}

function checked(given: unknown, file: string): Manifest {
  const result = v.safeParse(manifestSchema, given);
  if (!result.success) {
    throw new Problem(`${file}: ${schemaFault(result.issues[0])}`);
  }
  const manifest = result.output;
  const known = new Set(manifest.palette.map((yarn) => yarn.letter));
  const twice = manifest.palette.find(
    ({ letter }, at) => manifest.palette.findIndex((each) => each.letter === letter) < at,
  );
  if (twice) throw new Problem(`${file}: palette: found the letter ${twice.letter} twice, expected one yarn a letter`);
  manifest.candidates.forEach((candidate, at) => {
    const fault = disagreement(candidate, known);
    if (fault !== undefined) throw new Problem(`${file}: candidates.${at}.${fault}`);
  });
  return manifest;
}

/** The first contradiction between the fields of one cloth, with found and expected; undefined if there is none. */
function disagreement(candidate: ManifestCandidate, known: ReadonlySet<string>): string | undefined {
  const { draft, repeat, swatch } = candidate;
  const sum = (lengths: readonly number[]) => lengths.reduce((total, length) => total + length, 0);
  const lengths: readonly (readonly [string, number, number])[] = [
    ['draft.threading', draft.threading.length, repeat.ends],
    ['draft.warp', draft.warp.length, repeat.ends],
    ['draft.treadling', draft.treadling.length, repeat.picks],
    ['draft.pickKinds', draft.pickKinds.length, repeat.picks],
    ['draft.weft', draft.weft.length, repeat.picks],
    ['draft.endUnits', draft.endUnits ? sum(draft.endUnits) : repeat.ends, repeat.ends],
    ['draft.pickUnits', draft.pickUnits ? sum(draft.pickUnits) : repeat.picks, repeat.picks],
  ];
  for (const [where, found, expected] of lengths) {
    if (found !== expected) return `${where}: found ${found} threads, expected the repeat’s ${expected}`;
  }
  for (const where of ['warp', 'weft'] as const) {
    const stranger = Array.from(draft[where]).find((letter) => !known.has(letter));
    if (stranger !== undefined) {
      return `draft.${where}: found ${quote(stranger)}, expected letters of the palette (${[...known].join(' ')})`;
    }
  }
  const treadle = draft.treadling.flat().reduce((most, each) => Math.max(most, each), 0);
  if (treadle > draft.tieUp.length) {
    return `draft.treadling: found treadle ${treadle}, expected at most ${draft.tieUp.length}, the treadles tied up`;
  }
  if (swatch !== swatchPath(candidate.code))
    return `swatch: found ${quote(swatch)}, expected “${swatchPath(candidate.code)}”`;
  return undefined;
}
