import type { KeptCloth } from '../../formats/shortlist.js';
import type { Manifest } from './manifest-schema.js';

/** The keys of a question that say what was laid on what. */
const SAID = ['structure', 'draft', 'on the loom', 'orders', 'lengths', 'warp', 'weft', 'by', 'fill', 'times'] as const;
/** Most characters of a value: a list of many orders is cut. */
const LONGEST = 120;

/** What a shortlist says of where the cloths of a gallery come from. */
export type Source = Pick<KeptCloth, 'origin' | 'onTheLoom'>;

/** What a shortlist says of the cloths that answer a question. */
export function sourceOf(program: string, question: Manifest['question']): Source {
  const there = question['on the loom'] !== undefined;
  return { origin: `${program}: ${askedInShort(question)}`, ...(there && { onTheLoom: true }) };
}

/** What a question asks, whatever ranks, chooses and varies what is found: kept cloths belong to this. */
export function askedIn({ rank: _, show: __, seed: ___, tries: ____, seen: _____, ...asked }: Manifest['question']) {
  return asked;
}

/** What a question lays on what, in short: `structure 2/2 twill; lengths 2, 3, 4; weft same; …`. */
export function askedInShort(question: Manifest['question']): string {
  const said = SAID.flatMap((key) => {
    const value = question[key];
    if (value === undefined) return [];
    const text = typeof value === 'string' ? value : value.join(', ');
    return [`${key} ${text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text}`];
  });
  return said.join('; ');
}
