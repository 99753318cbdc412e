import { drawdown } from '../../cloth/drawdown.js';
import { colourFace, faceFromRows } from '../../cloth/face.js';
import type { Weave } from '../../draft/draft.js';
import { clothKey, type Sameness } from '../symmetry/canonical-cloth.js';

const PLAIN = ['#.', '.#'];
const TWILL = ['##..', '.##.', '..##', '#..#'];

/**
 * What weavers call a classic order on a certain weave. Hound’s tooth, step, log cabin, hairline and shepherd’s check
 * after handbooks and dictionaries of the trade; pinwheel, gingham and glen check are common practice. Usage varies.
 */
const EFFECTS: readonly { readonly name: string; readonly weave: readonly string[]; readonly word: string }[] = [
  { name: 'hairline', weave: PLAIN, word: 'DL' },
  { name: 'pinwheel', weave: PLAIN, word: 'DDLL' },
  { name: 'gingham', weave: PLAIN, word: 'DDDDLLLL' },
  { name: 'log cabin', weave: PLAIN, word: 'DLDLDLDLLDLDLDLD' },
  { name: 'step', weave: TWILL, word: 'DL' },
  { name: 'hound’s tooth', weave: TWILL, word: 'DDDDLLLL' },
  { name: 'shepherd’s check', weave: TWILL, word: 'DDDDDDLLLLLL' },
  { name: 'shepherd’s check', weave: TWILL, word: 'DDDDDDDDLLLLLLLL' },
  { name: 'glen check', weave: TWILL, word: 'DDDDLLLLDDDDLLLLDDLLDDLLDDLLDDLL' },
];

/** Weaves are the same however they are turned, and whichever side is up. */
const SAME: readonly Sameness[] = ['mirror', 'half-turn', 'quarter-turn', 'exchange'];

/** The names that orders have on a weave, by the order; none for most. */
export function effectsOn(weave: Weave): ReadonlyMap<string, string> {
  const cloth = drawdown(weave);
  const dark = new Uint8Array(cloth.ends);
  const light = new Uint8Array(cloth.picks).fill(1);
  const key = clothKey(colourFace(cloth, dark, light), SAME, 2).join();
  return new Map(EFFECTS.filter(({ weave }) => keyOf(weave) === key).map(({ word, name }) => [word, name]));
}

function keyOf(rows: readonly string[]): string {
  const cells = rows.map((row) => Array.from(row, (cell) => (cell === '#' ? 0 : 1)));
  return clothKey(faceFromRows(cells), SAME, 2).join();
}
