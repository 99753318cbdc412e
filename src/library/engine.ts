import type { Draft } from '../draft/draft.js';
import { readWif } from '../draft/wif/read-wif.js';
import { readDraft, writeDraft } from '../draft/yaml/read-draft.js';
import {
  type ManifestCandidate as Cloth,
  type Manifest as Gallery,
  manifestDraft,
  manifestOf,
} from '../gallery/manifest/manifest.js';
import { Problem, quote } from '../problem.js';
import { FLOAT_LIMIT } from '../score/model/float-limit.js';
import { DEFAULT_RANK, type Part } from '../score/parts/parts.js';
import type { Scores } from '../score/parts/scores.js';
import { measuredClassics, scoreDraft } from '../score/score.js';
import type { Question } from '../search/question/question.js';
import { readQuestion } from '../search/question/read-question.js';
import { rankOf } from '../search/question/read-rank.js';
import { oneDraft } from '../search/report/one-draft.js';
import { inTheUsualWay } from '../search/report/usual-colours.js';
import type { Outcome } from '../search/strategy/outcome.js';
import type { Stage } from '../search/strategy/strategies.js';
import { structures as all, type Structure } from '../structure/catalogue/catalogue.js';

export { Problem } from '../problem.js';
export type { Cloth, Draft, Gallery, Part, Scores, Stage, Structure };

/** Values of keys, as in a question or draft file: text, numbers, lists, or keys with values. See the reference. */
export type Values = Readonly<Record<string, unknown>>;

/** Every structure known, the plainest first. */
export const structures: readonly Structure[] = all;

/**
 * Makes a draft: from the text of a draft file (YAML or WIF), from the keys of one, or from a structure with the flags
 * of the command `draw` as keys.
 *
 * @example draft('threading: 1-4\ntie-up: [1 2, 2 3, 3 4, 4 1]\ntreadling: 1-4\n')
 * @example draft({ structure: '2/2 twill', warp: 'D4 L4' })
 */
export function draft(given: string | Values): Draft {
  if (typeof given !== 'string' && given.structure !== undefined) return fromStructure(given);
  const text = typeof given === 'string' ? given : JSON.stringify(given);
  return /^\s*(;[^\n]*\s*)*\[/.test(text) ? readWif(new TextEncoder().encode(text)).draft : readDraft(text, 'draft');
}

/** The text of a draft, in YAML, as the command `convert` writes it. */
export function draftText(given: Draft): string {
  return writeDraft(given);
}

/** Figures of one cloth. */
export interface Figures {
  readonly scores: Scores;
  /** The parts of the score, each from 0 to 1. */
  readonly parts: Readonly<Record<Part, number>>;
  /** The code that this draft has in every gallery and list. */
  readonly code: string;
  /** Whether it holds together as one cloth. */
  readonly holdsTogether: boolean;
}

/**
 * Every figure of a draft.
 *
 * @param rank weights or a ready-made ranking, as in a question
 * @param float the limit for floats, `7` (threads), `1/2 in` or `10 mm`
 */
export function score(given: Draft, { rank, float = '7' }: { rank?: string | Values; float?: string } = {}): Figures {
  const weights = rank === undefined ? DEFAULT_RANK : rankOf(asGiven(rank));
  const classics = measuredClassics(given, given.sett);
  const { scores, parts, code, holdsTogether } = scoreDraft(given, {
    weights,
    floatLimit: FLOAT_LIMIT.read(float),
    classics,
  });
  return { scores, parts, code, holdsTogether };
}

/** Options of a search. */
export interface ExploreOptions {
  /** Workers. Default: as many as the machine runs at once. */
  readonly workers?: number;
  /** Ends the search at once; the promise is rejected with the signal's reason. */
  readonly signal?: AbortSignal;
  /** Told at each stage how much is done. */
  readonly onStage?: (stage: Stage) => void;
  /** Reads the draft that `draft` or `on the loom` names. Default: the file of that name; in a browser there is none. */
  readonly readDraft?: (name: string) => Draft;
}

/** The draft of a file, where there are no files. */
export function noFile(name: string): never {
  throw new Problem(`found ${quote(name)}, the name of a draft’s file; expected readDraft, which reads it`);
}

/** Reads a question, has it searched, and gives the gallery. */
export async function answered(
  question: string | Values,
  load: (name: string) => Draft,
  search: (asked: Question) => Promise<Outcome>,
): Promise<Gallery> {
  const text = typeof question === 'string' ? question : JSON.stringify(question);
  const asked = readQuestion({ text, file: 'question', flags: {} }, load);
  return manifestOf(asked, await search(asked));
}

/** The draft of a cloth of a gallery. */
export function draftIn(gallery: Gallery, cloth: Cloth): Draft {
  return manifestDraft(cloth, gallery);
}

function fromStructure({ warp, ...given }: Values): Draft {
  const keys = { ...given, ...(warp !== undefined && { orders: [warp] }) };
  const question = readQuestion({ text: JSON.stringify(keys), file: 'draft', flags: {} }, noFile);
  const isGiven = Object.fromEntries(Object.keys(given).map((key) => [key, '']));
  return oneDraft(warp === undefined ? inTheUsualWay(question, isGiven) : question, [0, 0]).draft;
}

/** Weights by name as text, as a file holds them. */
function asGiven(rank: string | Values): string | Record<string, string> {
  if (typeof rank === 'string') return rank;
  return Object.fromEntries(Object.entries(rank).map(([part, weight]) => [part, String(weight)]));
}
